/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is this text JSON to the letter, small enough in depth, without double keys?
 * Answer:    one pass over the bytes with a stack of at most 64 frames.
 * Not here:  what the document says (reader.c). */
#include "strict.h"

#include "translate.h"

#include <errno.h>
#include <math.h>
#include <string.h>

typedef struct {
    gboolean is_array;
    guint index;      /* of the item under way */
    char *key;        /* of the member under way */
    GHashTable *seen; /* keys of an object */
} frame;

typedef struct {
    const char *text, *at, *end;
    frame stack[HS_STRICT_DEPTH];
    guint depth;
    GPtrArray *faults;
    gboolean failed;
} scan;

hs_fault *
hs_fault_new(const char *path, char *text, gboolean is_warning)
{
    hs_fault *fault = g_new0(hs_fault, 1);

    fault->path = g_strdup(path);
    fault->text = text;
    fault->is_warning = is_warning;
    return fault;
}

void
hs_fault_free(hs_fault *fault)
{
    if (fault == NULL)
        return;
    g_free(fault->path);
    g_free(fault->text);
    g_free(fault);
}

static char *
path_of(const scan *s)
{
    GString *path = g_string_new(NULL);

    for (guint i = 0; i < s->depth; i++) {
        if (s->stack[i].is_array)
            g_string_append_printf(path, "[%u]", s->stack[i].index);
        else if (s->stack[i].key != NULL)
            g_string_append_printf(path, "%s%s", path->len > 0 ? "." : "", s->stack[i].key);
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
        column++;
        if (*p == '\n') {
            line++;
            column = 1;
        }
    }
    if (!s->failed)
        g_ptr_array_add(s->faults, hs_fault_new(path, g_strdup_printf(_("line %u, column %u: %s"), line, column, said), FALSE));
    s->failed = TRUE;
    return FALSE;
}

static void
skip_space(scan *s)
{
    while (s->at < s->end && (*s->at == ' ' || *s->at == '\t' || *s->at == '\n' || *s->at == '\r'))
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
            return fail(s, g_strdup(_("no such escape in a string; allowed: \\\" \\\\ \\/ \\b \\f \\n \\r \\t \\uXXXX")));
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

static gboolean
number(scan *s)
{
    const char *from = s->at;
    gboolean good;

    if (*s->at == '-')
        s->at++;
    if (s->at < s->end && *s->at == '0')
        good = ++s->at <= s->end;
    else
        good = digits(s);
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
    if (!good)
        return fail(s, g_strdup(_("not a number as JSON writes it")));
    g_autofree char *copy = g_strndup(from, (gsize)(s->at - from));

    /* Beyond 2^53 an integer is no longer what was written; such a figure has no place in this document. */
    if (strpbrk(copy, ".eE") == NULL && strlen(copy) > 16)
        return fail(s, g_strdup_printf(_("the whole number %.40s has too many digits; at most 15"), copy));

    if (!isfinite(g_ascii_strtod(copy, NULL)))
        return fail(s, g_strdup_printf(_("the number %.40s is too large"), copy));
    return TRUE;
}

static gboolean
literal(scan *s, const char *word)
{
    gsize n = strlen(word);

    if ((gsize)(s->end - s->at) < n || strncmp(s->at, word, n) != 0)
        return fail(s, g_strdup(_("not a JSON value; allowed: an object, a list, a string, a number, true, false, null")));
    s->at += n;
    return TRUE;
}

static gboolean
push(scan *s)
{
    frame *top;

    if (s->depth == HS_STRICT_DEPTH)
        return fail(s, g_strdup_printf(_("nested deeper than %d"), HS_STRICT_DEPTH));
    top = &s->stack[s->depth++];
    *top = (frame){.is_array = *s->at == '['};
    if (!top->is_array)
        top->seen = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    s->at++;
    return TRUE;
}

static void
pop(scan *s)
{
    frame *top = &s->stack[--s->depth];

    g_free(top->key);
    if (top->seen != NULL)
        g_hash_table_unref(top->seen);
}

static gboolean
member_key(scan *s)
{
    frame *top = &s->stack[s->depth - 1];

    skip_space(s);
    if (s->at >= s->end || *s->at != '"')
        return fail(s, g_strdup(_("a key in quotes is wanted here")));
    g_free(top->key);
    top->key = string(s);
    if (s->failed)
        return FALSE;
    if (!g_hash_table_add(top->seen, g_strdup(top->key))) {
        g_autofree char *path = path_of(s);

        g_ptr_array_add(s->faults, hs_fault_new(path, g_strdup(_("this key stands twice; each key once")), FALSE));
    }
    skip_space(s);
    if (s->at >= s->end || *s->at != ':')
        return fail(s, g_strdup(_("a colon is wanted after the key")));
    s->at++;
    return TRUE;
}

/* Begins a value: a scalar is read whole, a container is entered. TRUE: a value is complete. */
static gboolean
value(scan *s, gboolean *ret_entered)
{
    *ret_entered = FALSE;
    skip_space(s);
    if (s->at >= s->end)
        return fail(s, g_strdup(_("the text ends where a value is wanted")));
    switch (*s->at) {
    case '{':
    case '[':
        *ret_entered = TRUE;
        return push(s);
    case '"':
        g_free(string(s));
        return !s->failed;
    case 't':
        return literal(s, "true");
    case 'f':
        return literal(s, "false");
    case 'n':
        return literal(s, "null");
    default:
        if (*s->at == '-' || g_ascii_isdigit(*s->at))
            return number(s);
        return fail(s, g_strdup(_("not a JSON value; allowed: an object, a list, a string, a number, true, false, null")));
    }
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
            return fail(s, g_strdup(top->is_array ? _("the text ends inside a list") : _("the text ends inside an object")));
        if (*s->at == ',') {
            s->at++;
            top->index++;
            *ret_more = TRUE;
            return top->is_array || member_key(s);
        }
        if (*s->at != (top->is_array ? ']' : '}'))
            return fail(s, g_strdup(top->is_array ? _("a comma or ] is wanted here") : _("a comma or } is wanted here")));
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

gboolean
hs_strict_scan(const char *text, gsize length, GPtrArray *faults)
{
    scan s = {.text = text, .at = text, .end = text + length, .faults = faults};
    const char *bad;
    guint before = faults->len;

    if (length == 0) {
        g_ptr_array_add(faults, hs_fault_new("$", g_strdup(_("the document is empty; a JSON object is wanted")), FALSE));
        return FALSE;
    }
    if (!g_utf8_validate_len(text, length, &bad)) {
        s.at = bad;
        return fail(&s, g_strdup(_("not UTF-8")));
    }
    whole(&s);
    while (s.depth > 0)
        pop(&s);
    return faults->len == before;
}
