/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which code tells one document from another?
 * Answer:    the canonical form of RFC 8785, hashed by GLib.
 * Not here:  the pretty form of a file (writer.c). */
#include "digest.h"

#include <math.h>
#include <string.h>

static void write_node(GString *out, JsonNode *node, const char *skip);

/* The decimal one unit in the last digit above or below, so that both neighbours can be tried. */
static double
neighbour(const char *text, int step, char *ret_text, gsize size)
{
    char digits[32];
    const char *mark = strchr(text, 'e');
    int n = 0, exponent = (int)g_ascii_strtoll(mark + 1, NULL, 10);
    gint64 whole;

    for (const char *p = text; p < mark; p++)
        if (g_ascii_isdigit(*p))
            digits[n++] = *p;
    digits[n] = '\0';
    whole = g_ascii_strtoll(digits, NULL, 10) + step;
    g_snprintf(ret_text, size, "%" G_GINT64_FORMAT "e%d", whole, exponent - (n - 1));
    return g_ascii_strtod(ret_text, NULL);
}

/* Digits and exponent of the shortest decimal that reads back the same: d.ddd x 10^(*exponent). The nearest decimal of a
 * length is tried first; beside a power of two the one next to it may read back the same although the nearest does not. */
static void
shortest(double value, char digits[24], int *ret_exponent)
{
    char text[40], form[8], other[48], *mark;
    int n = 0;

    for (int precision = 0; precision <= 16; precision++) {
        g_snprintf(form, sizeof form, "%%.%de", precision);
        g_ascii_formatd(text, sizeof text, form, value);
        if (g_ascii_strtod(text, NULL) == value)
            break;
        if (neighbour(text, 1, other, sizeof other) == value ||
            neighbour(text, -1, other, sizeof other) == value) {
            /* Written out with as many digits it is that decimal again. */
            g_snprintf(text, sizeof text, "%s", other);
            break;
        }
    }
    mark = strchr(text, 'e');
    *ret_exponent = (int)g_ascii_strtoll(mark + 1, NULL, 10);
    for (const char *p = text; p < mark; p++)
        if (g_ascii_isdigit(*p))
            digits[n++] = *p;
    /* "1234e-5" has no point: its exponent belongs to the last digit. */
    if (memchr(text, '.', (gsize)(mark - text)) == NULL)
        *ret_exponent += n - 1;
    while (n > 1 && digits[n - 1] == '0')
        n--;
    digits[n] = '\0';
}

char *
hs_canonical_number(double value)
{
    GString *out = g_string_new(NULL);
    char digits[24];
    int exponent, n;

    if (value == 0.0)
        return g_string_free(g_string_append_c(out, '0'), FALSE);
    if (value < 0.0)
        g_string_append_c(out, '-');
    shortest(fabs(value), digits, &exponent);
    n = (int)strlen(digits);
    if (exponent >= 0 && exponent < 21) {
        for (int i = 0; i <= exponent || i < n; i++) {
            if (i == exponent + 1)
                g_string_append_c(out, '.');
            g_string_append_c(out, i < n ? digits[i] : '0');
        }
    } else if (exponent < 0 && exponent >= -7 + 1) {
        g_string_append(out, "0.");
        for (int i = -1; i > exponent; i--)
            g_string_append_c(out, '0');
        g_string_append(out, digits);
    } else {
        g_string_append_c(out, digits[0]);
        if (n > 1)
            g_string_append_printf(out, ".%s", digits + 1);
        g_string_append_printf(out, "e%c%d", exponent < 0 ? '-' : '+',
                               exponent < 0 ? -exponent : exponent);
    }
    return g_string_free(out, FALSE);
}

static void
write_string(GString *out, const char *text)
{
    static const char from[] = "\"\\\b\f\n\r\t", to[] = "\"\\bfnrt";

    g_string_append_c(out, '"');
    for (const char *p = text; *p != '\0'; p++) {
        const char *found = strchr(from, *p);

        if (found != NULL)
            g_string_append_printf(out, "\\%c", to[found - from]);
        else if ((guchar)*p < 0x20)
            g_string_append_printf(out, "\\u%04x", (guint)(guchar)*p);
        else
            g_string_append_c(out, *p);
    }
    g_string_append_c(out, '"');
}

/* By UTF-16 code units: differs from UTF-8 order where surrogates meet U+E000 and above. */
static int
by_utf16(gconstpointer a, gconstpointer b)
{
    g_autofree gunichar2 *x = g_utf8_to_utf16(a, -1, NULL, NULL, NULL),
                         *y = g_utf8_to_utf16(b, -1, NULL, NULL, NULL);
    gsize i = 0;

    while (x[i] != 0 && x[i] == y[i])
        i++;
    return (x[i] > y[i]) - (x[i] < y[i]);
}

static void
write_object(GString *out, JsonObject *object, const char *skip)
{
    g_autoptr(GList) keys = g_list_sort(json_object_get_members(object), by_utf16);
    gboolean follows = FALSE;

    g_string_append_c(out, '{');
    for (GList *at = keys; at != NULL; at = at->next) {
        if (skip != NULL && strcmp(at->data, skip) == 0)
            continue;
        if (follows)
            g_string_append_c(out, ',');
        follows = TRUE;
        write_string(out, at->data);
        g_string_append_c(out, ':');
        write_node(out, json_object_get_member(object, at->data), NULL);
    }
    g_string_append_c(out, '}');
}

static void
write_value(GString *out, JsonNode *node)
{
    GType type = json_node_get_value_type(node);

    if (type == G_TYPE_STRING) {
        write_string(out, json_node_get_string(node));
    } else if (type == G_TYPE_BOOLEAN) {
        g_string_append(out, json_node_get_boolean(node) ? "true" : "false");
    } else {
        g_autofree char *number = hs_canonical_number(json_node_get_double(node));

        g_string_append(out, number);
    }
}

static void
write_node(GString *out, JsonNode *node, const char *skip)
{
    if (JSON_NODE_HOLDS_OBJECT(node)) {
        write_object(out, json_node_get_object(node), skip);
    } else if (JSON_NODE_HOLDS_ARRAY(node)) {
        JsonArray *array = json_node_get_array(node);

        g_string_append_c(out, '[');
        for (guint i = 0; i < json_array_get_length(array); i++) {
            if (i > 0)
                g_string_append_c(out, ',');
            write_node(out, json_array_get_element(array, i), NULL);
        }
        g_string_append_c(out, ']');
    } else if (JSON_NODE_HOLDS_NULL(node)) {
        g_string_append(out, "null");
    } else {
        write_value(out, node);
    }
}

char *
hs_canonical_text(JsonNode *root, const char *skip)
{
    GString *out = g_string_new(NULL);

    write_node(out, root, skip);
    return g_string_free(out, FALSE);
}

char *
hs_digest_of(JsonNode *root)
{
    g_autofree char *text = hs_canonical_text(root, "signatures");

    return g_compute_checksum_for_string(G_CHECKSUM_SHA256, text, -1);
}
