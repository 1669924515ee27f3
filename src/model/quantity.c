/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do people write a figure?
 * Answer:    two tables: the units we show, with their rounding, and the units we understand.
 * Not here:  figures in files (locale-free, writer.c), sentences (words.c). */
#include "quantity.h"
#include "translate.h"

#include <locale.h>
#include <math.h>
#include <string.h>

/* US customary units: BIPM SI Brochure 9th ed. (2019) for SI; NIST Special Publication 811
 * (2008), appendix B.8 for the inch (0.0254 m, exact), the pound (0.45359237 kg, exact) and
 * standard gravity, of which the others are made. */
#define POUND_kg 0.45359237
#define INCH_m   0.0254
#define FOOT_m   0.3048
#define GRAVITY  9.80665 /* m/s2, standard gravity, exact */
#define POUND_N  (POUND_kg * GRAVITY)
#define PSI_kPa  (POUND_N / (INCH_m * INCH_m) / 1000.0)
#define MILE_m   1609.344

/* Digits after the point for figures below 10, below 100 and above: what a committee reads at a
 * glance, at most what a tape or a scale gives. Common practice, no source. */
typedef struct {
    const char *id; /* the suffix of the key */
    const char *si, *us;
    double us_per_si, us_offset; /* us = si * us_per_si + us_offset */
    int si_digits[3], us_digits[3];
} shown_unit;

static const shown_unit shown[] = {
    {"kg", "kg", "lb", 1.0 / POUND_kg, 0.0, {1, 1, 0}, {1, 1, 0}},
    {"N", "N", "lbf", 1.0 / POUND_N, 0.0, {0, 0, 0}, {1, 0, 0}},
    {"kN", "kN", "lbf", 1000.0 / POUND_N, 0.0, {1, 1, 0}, {0, 0, 0}},
    {"m", "m", "in", 1.0 / INCH_m, 0.0, {2, 2, 1}, {1, 1, 0}},
    {"cm", "cm", "in", 0.01 / INCH_m, 0.0, {0, 0, 0}, {1, 1, 0}},
    {"mm", "mm", "in", 0.001 / INCH_m, 0.0, {0, 0, 0}, {1, 1, 0}},
    {"s", "s", "s", 1.0, 0.0, {1, 1, 0}, {1, 1, 0}},
    {"min", "min", "min", 1.0, 0.0, {1, 0, 0}, {1, 0, 0}},
    {"h", "h", "h", 1.0, 0.0, {1, 1, 0}, {1, 1, 0}},
    {"deg", "°", "°", 1.0, 0.0, {1, 0, 0}, {1, 0, 0}},
    {"Nm", "N·m", "lbf·ft", 1.0 / (POUND_N * FOOT_m), 0.0, {1, 0, 0}, {1, 0, 0}},
    {"kPa", "kPa", "psi", 1.0 / PSI_kPa, 0.0, {1, 0, 0}, {1, 1, 0}},
    {"Hz", "Hz", "Hz", 1.0, 0.0, {2, 1, 0}, {2, 1, 0}},
    {"Wh", "Wh", "Wh", 1.0, 0.0, {1, 0, 0}, {1, 0, 0}},
    {"W", "W", "W", 1.0, 0.0, {0, 0, 0}, {0, 0, 0}},
    {"m_s", "m/s", "ft/s", 1.0 / FOOT_m, 0.0, {2, 1, 0}, {2, 1, 0}},
    {"m_s2", "m/s²", "ft/s²", 1.0 / FOOT_m, 0.0, {2, 1, 0}, {2, 1, 0}},
    {"kg_m3", "kg/m³", "lb/ft³", FOOT_m *FOOT_m *FOOT_m / POUND_kg, 0.0, {1, 0, 0}, {1, 1, 0}},
    {"kg_m2", "kg·m²", "lb·ft²", 1.0 / (POUND_kg * FOOT_m * FOOT_m), 0.0, {2, 1, 0}, {1, 0, 0}},
    {"C", "°C", "°F", 1.8, 32.0, {0, 0, 0}, {0, 0, 0}},
    {"pct", "%", "%", 1.0, 0.0, {0, 0, 0}, {0, 0, 0}},
    {"Nh", "N·h", "lbf·h", 1.0 / POUND_N, 0.0, {0, 0, 0}, {0, 0, 0}},
    {"kNh", "kN·h", "lbf·h", 1000.0 / POUND_N, 0.0, {1, 1, 0}, {0, 0, 0}},
    {"years", N_("years"), N_("years"), 1.0, 0.0, {0, 0, 0}, {0, 0, 0}},
    {"kg_per_h", "kg/h", "lb/h", 1.0 / POUND_kg, 0.0, {1, 0, 0}, {1, 0, 0}},
    {"Wh_per_h", "Wh/h", "Wh/h", 1.0, 0.0, {1, 0, 0}, {1, 0, 0}},
    {"minutes_per_h", "min/h", "min/h", 1.0, 0.0, {1, 1, 0}, {1, 1, 0}},
    {"W_per_Nm", "W/(N·m)", "W/(N·m)", 1.0, 0.0, {2, 1, 0}, {2, 1, 0}},
    {"per_hour", "/h", "/h", 1.0, 0.0, {1, 1, 0}, {1, 1, 0}},
    {"rad", "rad", "rad", 1.0, 0.0, {3, 2, 1}, {3, 2, 1}},
    {"J", "J", "J", 1.0, 0.0, {1, 0, 0}, {1, 0, 0}},
    {"int", "", "", 1.0, 0.0, {0, 0, 0}, {0, 0, 0}},
    {"", "", "", 1.0, 0.0, {2, 1, 0}, {2, 1, 0}},
};

/* What may be typed. kind: the shown units that it can stand for, by the name of the base; base
 * = typed * factor + offset. */
typedef struct {
    const char *name, *kind;
    double factor, offset;
} typed_unit;

static const typed_unit typed[] = {
    {"kg", "mass", 1.0, 0.0},
    {"g", "mass", 0.001, 0.0},
    {"t", "mass", 1000.0, 0.0},
    {"lb", "mass", POUND_kg, 0.0},
    {"lbs", "mass", POUND_kg, 0.0},
    {"oz", "mass", POUND_kg / 16.0, 0.0},
    {"n", "force", 1.0, 0.0},
    {"kn", "force", 1000.0, 0.0},
    {"lbf", "force", POUND_N, 0.0},
    {"m", "length", 1.0, 0.0},
    {"cm", "length", 0.01, 0.0},
    {"mm", "length", 0.001, 0.0},
    {"in", "length", INCH_m, 0.0},
    {"\"", "length", INCH_m, 0.0},
    {"″", "length", INCH_m, 0.0},
    {"inch", "length", INCH_m, 0.0},
    {"inches", "length", INCH_m, 0.0},
    {"ft", "length", FOOT_m, 0.0},
    {"'", "length", FOOT_m, 0.0},
    {"′", "length", FOOT_m, 0.0},
    {"s", "time", 1.0, 0.0},
    {"sec", "time", 1.0, 0.0},
    {"min", "time", 60.0, 0.0},
    {"h", "time", 3600.0, 0.0},
    {"deg", "angle", 1.0, 0.0},
    {"°", "angle", 1.0, 0.0},
    {"rad", "angle", 57.29577951308232, 0.0},
    {"nm", "moment", 1.0, 0.0},
    {"n·m", "moment", 1.0, 0.0},
    {"n m", "moment", 1.0, 0.0},
    {"lbf·ft", "moment", POUND_N *FOOT_m, 0.0},
    {"lbfft", "moment", POUND_N *FOOT_m, 0.0},
    {"ft-lb", "moment", POUND_N *FOOT_m, 0.0},
    {"kpa", "pressure", 1.0, 0.0},
    {"pa", "pressure", 0.001, 0.0},
    {"bar", "pressure", 100.0, 0.0},
    {"psi", "pressure", PSI_kPa, 0.0},
    {"n/cm²", "pressure", 10.0, 0.0},
    {"n/cm2", "pressure", 10.0, 0.0},
    {"hz", "frequency", 1.0, 0.0},
    {"wh", "energy", 1.0, 0.0},
    {"kwh", "energy", 1000.0, 0.0},
    {"w", "power", 1.0, 0.0},
    {"kw", "power", 1000.0, 0.0},
    {"m/s", "speed", 1.0, 0.0},
    {"km/h", "speed", 1.0 / 3.6, 0.0},
    {"ft/s", "speed", FOOT_m, 0.0},
    {"mph", "speed", MILE_m / 3600.0, 0.0},
    {"kg/m³", "density", 1.0, 0.0},
    {"kg/m3", "density", 1.0, 0.0},
    {"kg/l", "density", 1000.0, 0.0},
    {"lb/ft³", "density", POUND_kg / (FOOT_m * FOOT_m * FOOT_m), 0.0},
    {"lb/ft3", "density", POUND_kg / (FOOT_m * FOOT_m * FOOT_m), 0.0},
    {"c", "temperature", 1.0, 0.0},
    {"°c", "temperature", 1.0, 0.0},
    {"f", "temperature", 1.0 / 1.8, -32.0 / 1.8},
    {"°f", "temperature", 1.0 / 1.8, -32.0 / 1.8},
    {"%", "share", 0.01, 0.0},
    {"/h", "rate", 1.0, 0.0},
    {"/min", "rate", 60.0, 0.0},
    {"years", "age", 1.0, 0.0},
};

/* The suffixes that can be typed in other units: their kind, and base units in one of theirs.
 */
static const struct {
    const char *id, *kind;
    double base;
} kinds[] = {
    {"kg", "mass", 1.0},       {"N", "force", 1.0},      {"kN", "force", 1000.0},
    {"m", "length", 1.0},      {"cm", "length", 0.01},   {"mm", "length", 0.001},
    {"s", "time", 1.0},        {"min", "time", 60.0},    {"h", "time", 3600.0},
    {"hours", "time", 3600.0}, {"deg", "angle", 1.0},    {"Nm", "moment", 1.0},
    {"kPa", "pressure", 1.0},  {"Hz", "frequency", 1.0}, {"Wh", "energy", 1.0},
    {"W", "power", 1.0},       {"m_s", "speed", 1.0},    {"kg_m3", "density", 1.0},
    {"C", "temperature", 1.0}, {"pct", "share", 0.01},   {"", "share", 1.0},
    {"per_hour", "rate", 1.0}, {"years", "age", 1.0},
};

static const shown_unit *
shown_find(const char *unit)
{
    for (gsize i = 0; i < G_N_ELEMENTS(shown); i++)
        if (g_strcmp0(shown[i].id, unit) == 0)
            return &shown[i];
    return NULL;
}

static double
to_shown(const shown_unit *at, double value, hs_units units)
{
    return units == HS_UNITS_US ? value * at->us_per_si + at->us_offset : value;
}

int
hs_quantity_digits(double value, const char *unit, hs_units units)
{
    const shown_unit *at = shown_find(unit);
    const int *digits;
    double size;

    if (at == NULL)
        return 2;
    digits = units == HS_UNITS_US ? at->us_digits : at->si_digits;
    size = fabs(to_shown(at, value, units));
    return size < 10.0 ? digits[0] : size < 100.0 ? digits[1] : digits[2];
}

char *
hs_quantity_number_digits(double value, const char *unit, hs_units units, int digits)
{
    const shown_unit *at = shown_find(unit);
    double out = at != NULL ? to_shown(at, value, units) : value;
    char *text;

    if (!isfinite(out))
        return g_strdup("?");
    /* "-0" would read as a figure with a sign. */
    if (fabs(out) < 0.5 * pow(10.0, -digits))
        out = 0.0;
    text = g_strdup_printf("%.*f", digits, out);
    return text;
}

/* A plain number ("2", "0.83") is written without zeros at its end; figures with a unit keep
 * them. */
static void
trim_zeros(char *text)
{
    gsize length = strlen(text);

    if (strpbrk(text, ".,") == NULL)
        return;
    while (length > 1 && text[length - 1] == '0')
        text[--length] = '\0';
    if (length > 1 && !g_ascii_isdigit(text[length - 1]))
        text[length - 1] = '\0';
}

char *
hs_quantity_number(double value, const char *unit, hs_units units)
{
    char *text =
        hs_quantity_number_digits(value, unit, units, hs_quantity_digits(value, unit, units));

    if (unit == NULL || *unit == '\0')
        trim_zeros(text);
    return text;
}

const char *
hs_quantity_unit(const char *unit, hs_units units)
{
    const shown_unit *at = shown_find(unit);

    if (at == NULL)
        return unit != NULL ? unit : "";
    if (g_strcmp0(unit, "years") == 0)
        return _(at->si);
    return units == HS_UNITS_US ? at->us : at->si;
}

char *
hs_quantity_text(double value, const char *unit, hs_units units)
{
    g_autofree char *number = hs_quantity_number(value, unit, units);
    const char *name = hs_quantity_unit(unit, units);

    if (*name == '\0')
        return g_steal_pointer(&number);
    /* The degree sign stands at the figure; a no-break space keeps other units on its line. */
    return g_strdup_printf(strcmp(name, "°") == 0 ? "%s%s" : "%s\u00a0%s", number, name);
}

/* A number at the start of *at, either decimal sign; *at moves behind it. NULL, or a sentence
 * that says what is wrong. */
static char *
read_number(const char **at, double *ret_value)
{
    g_autoptr(GString) plain = g_string_new(NULL);
    const char *s = *at, *decimal = localeconv()->decimal_point, *separator = NULL;
    int n_separators = 0, digits_before = 0, digits_after = 0;

    if (g_str_has_prefix(s, "\u2212") || *s == '-') {
        g_string_append_c(plain, '-');
        s += *s == '-' ? 1 : strlen("\u2212");
    } else if (*s == '+') {
        s++;
    }
    for (; g_ascii_isdigit(*s) || *s == '.' || *s == ','; s++) {
        if (g_ascii_isdigit(*s)) {
            *(n_separators > 0 ? &digits_after : &digits_before) += 1;
            g_string_append_c(plain, *s);
        } else {
            n_separators++;
            separator = s;
            g_string_append_c(plain, '.');
        }
    }
    if (digits_before + digits_after == 0 || n_separators > 1)
        return g_strdup_printf(
            _("“%s” is not a number. Write it with one decimal sign at most, for example 1.5."),
            *at);
    /* 1,500: a thousand and a half, or one and a half? A guess here could be wrong a thousand
     * times over. */
    if (separator != NULL && *separator != *decimal && digits_after == 3 && digits_before > 0 &&
        plain->str[*plain->str == '-' ? 1 : 0] != '0')
        return g_strdup_printf(_("“%s” can be read in two ways. Leave the sign out of "
                                 "thousands, or write fewer decimals."),
                               *at);
    if ((*s == 'e' || *s == 'E') &&
        (g_ascii_isdigit(s[1]) || ((s[1] == '-' || s[1] == '+') && g_ascii_isdigit(s[2])))) {
        g_string_append_c(plain, 'e');
        for (s++; g_ascii_isdigit(*s) || *s == '-' || *s == '+'; s++)
            g_string_append_c(plain, *s);
    }
    *ret_value = g_ascii_strtod(plain->str, NULL);
    *at = s;
    return isfinite(*ret_value) ? NULL : g_strdup(_("The number is too large."));
}

/* The unit's word at *at, in lower case; *at moves behind it. */
static char *
read_unit(const char **at)
{
    const char *s = *at;
    g_autofree char *word = NULL;
    char *lower;

    while (*s != '\0' && !g_ascii_isdigit(*s) && *s != '-' && *s != '+')
        s++;
    /* ft-lb is one word */
    if (*s == '-' && g_ascii_isalpha(s[1]))
        while (*s != '\0' && !g_ascii_isdigit(*s))
            s++;
    word = g_strstrip(g_strndup(*at, (gsize)(s - *at)));
    *at = s;
    lower = g_utf8_strdown(word, -1);
    return lower;
}

static const typed_unit *
typed_find(const char *name, const char *kind)
{
    for (gsize i = 0; i < G_N_ELEMENTS(typed); i++)
        if (strcmp(typed[i].name, name) == 0 && strcmp(typed[i].kind, kind) == 0)
            return &typed[i];
    return NULL;
}

static char *
allowed_units(const char *kind)
{
    GString *text = g_string_new(NULL);

    for (gsize i = 0; i < G_N_ELEMENTS(typed); i++)
        if (strcmp(typed[i].kind, kind) == 0)
            g_string_append_printf(text, "%s%s", text->len > 0 ? ", " : "", typed[i].name);
    return g_string_free(text, FALSE);
}

/* One number with or without its unit, in the unit of the key. */
static char *
read_part(const char **at,
          const char *unit,
          const char *kind,
          double base,
          hs_units units,
          double *ret_value)
{
    const shown_unit *as_shown = shown_find(unit);
    const typed_unit *as_typed;
    g_autofree char *name = NULL, *allowed = NULL;
    char *fault = read_number(at, ret_value);

    if (fault != NULL)
        return fault;
    name = read_unit(at);
    if (*name == '\0') {
        if (units == HS_UNITS_US && as_shown != NULL)
            *ret_value = (*ret_value - as_shown->us_offset) / as_shown->us_per_si;
        return NULL;
    }
    as_typed = kind != NULL ? typed_find(name, kind) : NULL;
    if (as_typed != NULL) {
        *ret_value = (*ret_value * as_typed->factor + as_typed->offset) / base;
        return NULL;
    }
    if (kind == NULL)
        return g_strdup_printf(_("“%s” is not expected here: this figure has no unit."), name);
    allowed = allowed_units(kind);
    return g_strdup_printf(_("“%s” is not a unit of this figure. Use one of: %s."), name,
                           allowed);
}

/* Figures that we show have a no-break space before their unit, and may be pasted back. */
static char *
plain_spaces(const char *text)
{
    GString *out = g_string_new(text);

    g_string_replace(out, "\u00a0", " ", 0);
    g_string_replace(out, "\u202f", " ", 0);
    return g_strstrip(g_string_free(out, FALSE));
}

gboolean
hs_quantity_parse(
    const char *text, const char *unit, hs_units units, double *ret_value, char **ret_fault)
{
    g_autofree char *stripped = plain_spaces(text != NULL ? text : "");
    const char *at = stripped, *kind = NULL;
    double base = 1.0, sum = 0.0;
    char *fault = NULL;
    int n = 0;

    for (gsize i = 0; i < G_N_ELEMENTS(kinds); i++)
        if (g_strcmp0(kinds[i].id, unit) == 0) {
            kind = kinds[i].kind;
            base = kinds[i].base;
        }
    if (*at == '\0')
        fault = g_strdup(_("Enter a number."));
    /* "5 ft 3 in": the parts of one length add up. */
    while (fault == NULL && *at != '\0' && n < 3) {
        double value = 0.0;

        fault = read_part(&at, unit, kind, base, units, &value);
        sum += value;
        n++;
        at += strspn(at, " ");
        if (fault == NULL && *at != '\0' && g_strcmp0(kind, "length") != 0)
            fault = g_strdup_printf(_("“%s” holds more than one number."), text);
    }
    if (fault == NULL && *at != '\0')
        fault = g_strdup_printf(_("“%s” holds more than one number."), text);
    if (fault == NULL) {
        *ret_value = sum;
        return TRUE;
    }
    if (ret_fault != NULL)
        *ret_fault = fault;
    else
        g_free(fault);
    return FALSE;
}

char *
hs_number_text(double value)
{
    char buffer[G_ASCII_DTOSTR_BUF_SIZE];

    if (value == 0.0)
        return g_strdup("0");
    /* Nearly every figure that a person wrote reads back at 15 digits; the rest needs 16 or 17.
     */
    for (int digits = 15; digits <= 17; digits++) {
        char format[8];

        g_snprintf(format, sizeof format, "%%.%dg", digits);
        g_ascii_formatd(buffer, sizeof buffer, format, value);
        if (g_ascii_strtod(buffer, NULL) == value)
            break;
    }
    return g_strdup(buffer);
}
