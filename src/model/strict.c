/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is this text JSON to the letter, small enough in depth, without double keys?
 * Answer:    one pass over the bytes with a stack of at most 64 frames, which makes the tree on its way.
 * Not here:  what the document says (reader.c). */
#include "strict.h"

#include "faults.h"
#include "translate.h"

#include <math.h>
#include <string.h>

#define VALUES_MOST 1000000 /* a tree takes some 100 bytes a value */
#define WHOLE_DIGITS                                                                           \
    15 /* a whole number of so many digits is exact as an integer and as a double */

typedef struct {
    JsonNode *node; /* borrowed: the parent, or the scan, owns it */
    gboolean is_array;
    char *key; /* of the member under way; NULL before the first */
} frame;

typedef struct {
    const char *text, *at, *end;
    frame stack[HS_STRICT_DEPTH];
    guint depth, n_values;
    JsonNode *root;
    GPtrArray *faults;
    gboolean failed;
} scan;

static char *
path_of(const scan *s)
{
    GString *path = g_string_new(NULL);

    for (guint i = 0; i < s->depth; i++) {
        const frame *at = &s->stack[i];

        if (at->is_array) {
            guint n = json_array_get_length(json_node_get_array(at->node));

            /* A container under way is in its list already, a scalar is not. */
            hs_path_add_index(path, i + 1 < s->depth ? n - 1 : n);
        } else if (at->key != NULL) {
            hs_path_add_key(path, at->key);
        }
    }
    if (path->len == 0)
        g_string_append_c(path, '$');
    return g_string_free(path, FALSE);
}

static gboolean
fail(scan *s, char *what)
{
    guint line = 1, column = 1;
    g_autofree char *path = path_of(s);
    g_autofree char *said = what;

    for (const char *p = s->text; p < s->at && p < s->end; p++) {
        if (((guchar)*p & 0xC0) != 0x80)
            column++;
        if (*p == '\n') {
            line++;
            column = 1;
        }
    }
    if (!s->failed)
        hs_faults_add(s->faults, path,
                      g_strdup_printf(_("line %u, column %u: %s"), line, column, said), FALSE);
    s->failed = TRUE;
    return FALSE;
}

static void
skip_space(scan *s)
{
    while (s->at < s->end &&
           (*s->at == ' ' || *s->at == '\t' || *s->at == '\n' || *s->at == '\r'))
        s->at++;
}

static gboolean
hex4(scan *s, guint *ret_code)
{
    *ret_code = 0;
    for (int i = 0; i < 4; i++, s->at++) {
        if (s->at >= s->end || !g_ascii_isxdigit(*s->at))
            return FALSE;
        *ret_code = *ret_code * 16 + (guint)g_ascii_xdigit_value(*s->at);
    }
    return TRUE;
}

static gboolean
escape(scan *s, GString *into)
{
    static const char from[] = "\"\\/bfnrt", to[] = "\"\\/\b\f\n\r\t";
    const char *found;
    guint code, low;

    if (s->at >= s->end)
        return fail(s, g_strdup(_("the text ends inside a string")));
    if (*s->at != 'u') {
        found = memchr(from, *s->at, sizeof from - 1);
        if (found == NULL)
            return fail(s, g_strdup(_("no such escape in a string; allowed: \\\" \\\\ \\/ \\b "
                                      "\\f \\n \\r \\t \\uXXXX")));
        g_string_append_c(into, to[found - from]);
        s->at++;
        return TRUE;
    }
    s->at++;
    if (!hex4(s, &code))
        return fail(s, g_strdup(_("\\u needs four hexadecimal digits")));
    if (code >= 0xD800 && code <= 0xDBFF) {
        if (s->end - s->at < 6 || s->at[0] != '\\' || s->at[1] != 'u')
            return fail(s, g_strdup(_("half of a surrogate pair")));
        s->at += 2;
        if (!hex4(s, &low) || low < 0xDC00 || low > 0xDFFF)
            return fail(s, g_strdup(_("half of a surrogate pair")));
        code = 0x10000 + ((code - 0xD800) << 10) + (low - 0xDC00);
    } else if (code >= 0xDC00 && code <= 0xDFFF) {
        return fail(s, g_strdup(_("half of a surrogate pair")));
    }
    if (code == 0)
        return fail(s, g_strdup(_("the character U+0000 is not allowed")));
    g_string_append_unichar(into, code);
    return TRUE;
}

static char *
string(scan *s)
{
    GString *into = g_string_new(NULL);

    for (s->at++; s->at < s->end && *s->at != '"';) {
        if ((guchar)*s->at < 0x20) {
            fail(s, g_strdup(_("a control character inside a string; write it as an escape")));
            break;
        }
        if (*s->at != '\\') {
            g_string_append_c(into, *s->at++);
            continue;
        }
        s->at++;
        if (!escape(s, into))
            break;
    }
    if (!s->failed && s->at >= s->end)
        fail(s, g_strdup(_("the text ends inside a string")));
    s->at++;
    return g_string_free(into, FALSE);
}

static gboolean
digits(scan *s)
{
    const char *from = s->at;

    while (s->at < s->end && g_ascii_isdigit(*s->at))
        s->at++;
    return s->at > from;
}

/* Puts a value where the scan stands; it is taken over. */
static gboolean
put(scan *s, JsonNode *node)
{
    frame *top = s->depth > 0 ? &s->stack[s->depth - 1] : NULL;

    if (++s->n_values > VALUES_MOST) {
        json_node_unref(node);
        return fail(s, g_strdup_printf(_("more than %d values"), VALUES_MOST));
    }
    if (top == NULL)
        s->root = node;
    else if (top->is_array)
        json_array_add_element(json_node_get_array(top->node), node);
    else
        json_object_set_member(json_node_get_object(top->node), top->key, node);
    return TRUE;
}

static JsonNode *
node_of_number(const char *text)
{
    double value = g_ascii_strtod(text, NULL);

    if (strpbrk(text, ".eE") == NULL && strlen(text) <= WHOLE_DIGITS)
        return json_node_init_int(json_node_alloc(), (gint64)value);
    return json_node_init_double(json_node_alloc(), value);
}

static gboolean
number(scan *s)
{
    const char *from = s->at;
    g_autofree char *copy = NULL;
    gboolean good;

    if (*s->at == '-')
        s->at++;
    if (s->at < s->end && *s->at == '0') {
        s->at++;
        good = TRUE;
    } else {
        good = digits(s);
    }
    if (good && s->at < s->end && *s->at == '.') {
        s->at++;
        good = digits(s);
    }
    if (good && s->at < s->end && (*s->at == 'e' || *s->at == 'E')) {
        s->at++;
        if (s->at < s->end && (*s->at == '+' || *s->at == '-'))
            s->at++;
        good = digits(s);
    }
    if (!good || (s->at < s->end && (g_ascii_isalnum(*s->at) || strchr("+-.", *s->at) != NULL)))
        return fail(s, g_strdup(_("no number as JSON writes it; allowed: 12, -0.5, 3e-2")));
    copy = g_strndup(from, (gsize)(s->at - from));
    if (!isfinite(g_ascii_strtod(copy, NULL))) {
        s->at = from;
        return fail(s, g_strdup_printf(
                           _("the number %.40s is too large; allowed is up to 1.7e308"), copy));
    }
    return put(s, node_of_number(copy));
}

static gboolean
literal(scan *s)
{
    static const char *const words[] = {"true", "false", "null"};

    for (guint i = 0; i < G_N_ELEMENTS(words); i++) {
        gsize n = strlen(words[i]);

        if ((gsize)(s->end - s->at) < n || strncmp(s->at, words[i], n) != 0)
            continue;
        s->at += n;
        return put(s, i == 2 ? json_node_init_null(json_node_alloc())
                             : json_node_init_boolean(json_node_alloc(), i == 0));
    }
    if (*s->at == '/' || *s->at == '#')
        return fail(s, g_strdup(_("a comment; JSON has none")));
    if (*s->at == 'N' || *s->at == 'I' || *s->at == '+')
        return fail(s, g_strdup(_("no number as JSON writes it; allowed: 12, -0.5, 3e-2")));
    return fail(s, g_strdup(_("not a JSON value; allowed: an object, a list, a string, a "
                              "number, true, false, null")));
}

static gboolean
push(scan *s)
{
    gboolean is_array = *s->at == '[';
    JsonNode *node;

    if (s->depth == HS_STRICT_DEPTH)
        return fail(s, g_strdup_printf(_("nested deeper than %d"), HS_STRICT_DEPTH));
    if (is_array)
        node = json_node_init_array(json_node_alloc(), NULL);
    else
        node = json_node_init_object(json_node_alloc(), NULL);
    if (is_array)
        json_node_take_array(node, json_array_new());
    else
        json_node_take_object(node, json_object_new());
    if (!put(s, node))
        return FALSE;
    s->stack[s->depth++] = (frame){.node = node, .is_array = is_array};
    s->at++;
    return TRUE;
}

static void
pop(scan *s)
{
    g_free(s->stack[--s->depth].key);
}

static gboolean
member_key(scan *s)
{
    frame *top = &s->stack[s->depth - 1];
    char *key;

    skip_space(s);
    if (s->at < s->end && *s->at == '/')
        return fail(s, g_strdup(_("a comment; JSON has none")));
    if (s->at >= s->end || *s->at != '"')
        return fail(s, g_strdup(_("a key in quotes is wanted here")));
    key = string(s);
    if (s->failed) {
        g_free(key);
        return FALSE;
    }
    g_free(top->key);
    top->key = key;
    if (json_object_has_member(json_node_get_object(top->node), key)) {
        g_autofree char *path = path_of(s);

        hs_faults_add(s->faults, path,
                      g_strdup(_("this key stands twice; allowed is once in an object")),
                      FALSE);
    }
    skip_space(s);
    if (s->at >= s->end || *s->at != ':')
        return fail(s, g_strdup(_("a colon is wanted after the key")));
    s->at++;
    return TRUE;
}

/* Begins a value: a scalar is read whole, a container is entered. */
static gboolean
value(scan *s, gboolean *ret_entered)
{
    *ret_entered = FALSE;
    skip_space(s);
    if (s->at >= s->end)
        return fail(s, g_strdup(_("the text ends where a value is wanted")));
    if (*s->at == '{' || *s->at == '[') {
        *ret_entered = TRUE;
        return push(s);
    }
    if (*s->at == '"') {
        g_autofree char *text = string(s);

        return !s->failed && put(s, json_node_init_string(json_node_alloc(), text));
    }
    return *s->at == '-' || g_ascii_isdigit(*s->at) ? number(s) : literal(s);
}

/* After a container was entered: its first item, or its end at once. */
static gboolean
first_item(scan *s, gboolean *ret_closed)
{
    frame *top = &s->stack[s->depth - 1];

    *ret_closed = FALSE;
    skip_space(s);
    if (s->at < s->end && *s->at == (top->is_array ? ']' : '}')) {
        s->at++;
        pop(s);
        *ret_closed = TRUE;
        return TRUE;
    }
    return top->is_array || member_key(s);
}

/* After a complete value: the next item (TRUE, *ret_more), or containers that end here. */
static gboolean
next_item(scan *s, gboolean *ret_more)
{
    *ret_more = FALSE;
    while (s->depth > 0) {
        frame *top = &s->stack[s->depth - 1];

        skip_space(s);
        if (s->at >= s->end)
            return fail(s, g_strdup(top->is_array ? _("the text ends inside a list")
                                                  : _("the text ends inside an object")));
        if (*s->at == ',') {
            s->at++;
            *ret_more = TRUE;
            return top->is_array || member_key(s);
        }
        if (*s->at != (top->is_array ? ']' : '}'))
            return fail(s, g_strdup(top->is_array ? _("a comma or ] is wanted here")
                                                  : _("a comma or } is wanted here")));
        s->at++;
        pop(s);
    }
    return TRUE;
}

static gboolean
whole(scan *s)
{
    gboolean entered, closed, more = TRUE;

    while (more) {
        if (!value(s, &entered))
            return FALSE;
        if (entered) {
            if (!first_item(s, &closed))
                return FALSE;
            if (!closed)
                continue;
        }
        if (!next_item(s, &more))
            return FALSE;
    }
    skip_space(s);
    if (s->at < s->end)
        return fail(s, g_strdup(_("something follows after the end of the document")));
    return TRUE;
}

JsonNode *
hs_strict_parse(const char *text, gsize length, GPtrArray *faults)
{
    scan s = {.text = text, .at = text, .end = text + length, .faults = faults};
    const char *bad;
    guint before = faults->len;

    if (length >= 3 && memcmp(text, "\xEF\xBB\xBF", 3) == 0)
        s.at += 3;
    if (s.at == s.end) {
        hs_faults_add(faults, "$",
                      g_strdup(_("the document is empty; a JSON object is wanted")), FALSE);
        return NULL;
    }
    if (!g_utf8_validate_len(text, length, &bad)) {
        s.at = bad;
        fail(&s, g_strdup(_("not UTF-8")));
        return NULL;
    }
    whole(&s);
    while (s.depth > 0)
        pop(&s);
    if (faults->len > before)
        g_clear_pointer(&s.root, json_node_unref);
    return s.root;
}
