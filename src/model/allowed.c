/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what may stand in a field, said to a person?
 * Answer:    one phrase for each kind of field, with its range and unit.
 * Not here:  the same for other programs (schema.c). */
#include "allowed.h"

#include "digest.h"
#include "translate.h"

#include <float.h>
#include <string.h>

const char *
hs_allowed_unit(const char *key)
{
    /* Longer endings first: kg_m3 before m3's last letters, W_per_Nm before Nm. */
    static const struct {
        const char *end, *unit;
    } units[] = {
        {"_kg_m3", "kg/m3"}, {"_W_per_Nm", "W/Nm"}, {"_m_s", "m/s"},     {"_Nm", "Nm"},
        {"_Wh", "Wh"},       {"_kPa", "kPa"},       {"_deg", "deg"},     {"_min", "min"},
        {"_pct", "%"},       {"_cm", "cm"},         {"_Hz", "Hz"},       {"_kg", "kg"},
        {"_years", ""},      {"_N", "N"},           {"_C", "degrees C"}, {"_W", "W"},
        {"_h", "h"},         {"_s", "s"},           {"_m", "m"},         {"hours", "h"}};

    for (guint i = 0; i < G_N_ELEMENTS(units); i++)
        if (g_str_has_suffix(key, units[i].end))
            return units[i].unit;
    return "";
}

static char *
range_text(const hs_field *field)
{
    g_autofree char *least = hs_canonical_number(field->least),
                    *most = hs_canonical_number(field->most);
    const char *unit = hs_allowed_unit(field->key);
    g_autofree char *tail = *unit != '\0' ? g_strconcat(" ", unit, NULL) : g_strdup("");

    if (!(field->least > -DBL_MAX) && !(field->most < DBL_MAX))
        return g_strdup(_("any number"));
    if (field->above)
        return g_strdup_printf(_("above %s, at most %s%s"), least, most, tail);
    return g_strdup_printf(_("%s to %s%s"), least, most, tail);
}

static char *
words_text(const char *const *words)
{
    g_autofree char *all = g_strjoinv(", ", (char **)(guintptr)words);

    return g_strdup_printf(_("one of %s"), all);
}

char *
hs_allowed_text(const hs_field *field)
{
    g_autofree char *range = range_text(field);

    switch (field->kind) {
    case HS_KIND_NUMBER:
    case HS_KIND_INT:
        return g_strdup_printf(field->is_whole || field->kind == HS_KIND_INT
                                   ? _("a whole number, %s")
                                   : _("a number, %s"),
                               range);
    case HS_KIND_PAIR:
        return g_strdup_printf(_("a list of two numbers, each %s"), range);
    case HS_KIND_VECTOR:
        return g_strdup_printf(_("a list of three numbers, each %s"), range);
    case HS_KIND_PLACES:
        return g_strdup_printf(_("a list of at most %d places [x, z], each number %s"),
                               HS_PLACES_MOST, range);
    case HS_KIND_EACH:
        return g_strdup_printf(
            _("a number, %s, or a list with a number or null for each route point"), range);
    case HS_KIND_MAP:
        return g_strdup_printf(_("an object with numbers, each %s"), range);
    case HS_KIND_BOOL:
    case HS_KIND_FLAG:
        return g_strdup(_("true or false"));
    case HS_KIND_WORD:
        return words_text(field->words);
    case HS_KIND_STANCES: {
        g_autofree char *words = words_text(field->words);

        return g_strdup_printf(_("%s, or a list with one for each route point"), words);
    }
    case HS_KIND_STRINGS: {
        g_autofree char *words = words_text(field->words);

        return g_strdup_printf(_("a list, each entry %s"), words);
    }
    case HS_KIND_LIST:
        return g_strdup_printf(_("a list of %.0f to %.0f objects"), field->least, field->most);
    case HS_KIND_REFS:
        return g_strdup_printf(_("a list of %.0f to %.0f ids of %s"), field->least, field->most,
                               field->words[0]);
    case HS_KIND_REF:
        return g_strdup_printf(_("an id of %s"), field->words[0]);
    case HS_KIND_OBJECT:
    case HS_KIND_INLINE:
        return g_strdup(_("an object"));
    case HS_KIND_STRING:
    default:
        return g_strdup(_("a text"));
    }
}
