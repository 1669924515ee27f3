/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how are thousands of tasks assessed in one go?
 * Answer:    a ring of slots: this thread fills them with lines and writes finished ones in order, workers assess.
 * Not here:  the assessment (core), what is wrong with a document (document.h). */
#include "survey.h"

#include "document.h"
#include "json_text.h"
#include "translate.h"
#include "words.h"

#include "assess.h"

#include <errno.h>
#include <math.h>
#include <string.h>

#define SLOTS_PER_JOB 4

typedef enum {
    SLOT_EMPTY,
    SLOT_READ,
    SLOT_TAKEN,
    SLOT_DONE
} slot_state;

typedef struct {
    slot_state state;
    guint64 line;
    GString *text;
    gboolean is_too_long;
    char *result;
} slot;

typedef struct {
    GMutex lock;
    GCond changed;
    slot *slots;
    guint n_slots;
    guint64 next_to_take; /* lines are taken in order, so the ring needs no search */
    guint64 n_read;
    gboolean is_over;
    const hs_site_set *set;
} ring;

/* A line of errors. */
static void
put_error(hs_json_text *json, const char *path, const char *text)
{
    hs_json_text_open(json, NULL, '{');
    hs_json_text_string(json, "path", path);
    hs_json_text_string(json, "text", text);
    hs_json_text_close(json, '}');
}

static void
put_faults(hs_json_text *json, const GPtrArray *faults)
{
    for (guint i = 0; i < faults->len; i++) {
        const hs_fault *fault = g_ptr_array_index(faults, i);

        if (!fault->is_warning)
            put_error(json, fault->path, fault->text);
    }
}

/* Beyond, then missing, near, within; loss.bearer compares crews and decides nothing. */
static int
rank_of(const hs_finding *at)
{
    if (at->check == HS_CHECK_loss_bearer)
        return 0;
    switch (at->status) {
    case HS_STATUS_BEYOND:
        return 4;
    case HS_STATUS_NEAR:
        return 2;
    case HS_STATUS_WITHIN:
        return 1;
    case HS_STATUS_NOT_JUDGED:
        return at->why == HS_WHY_MISSING ? 3 : 0;
    case HS_STATUS_NONE:
    default:
        return 0;
    }
}

/* Beyond without a figure (no pose, tipping) is past any figure; within without one (roles) is before any. */
static double
ratio_of(const hs_finding *at)
{
    if (hs_has(at->ratio))
        return at->ratio;
    return at->status == HS_STATUS_BEYOND ? (double)INFINITY : -1.0;
}

static const hs_finding *
worst_finding(const hs_option_result *option)
{
    const hs_finding *worst = NULL;

    for (int i = 0; i < option->n_findings; i++) {
        const hs_finding *at = &option->findings[i];
        int rank = rank_of(at), least = worst != NULL ? rank_of(worst) : 1;

        if (rank > least ||
            (rank == least && (worst == NULL || ratio_of(at) > ratio_of(worst))))
            worst = at;
    }
    return worst;
}

static gboolean
is_unconfirmed(const hs_finding *at)
{
    return hs_words_unconfirmed(at) != NULL;
}

static gboolean
is_out_of_scope(const hs_finding *at)
{
    return at->status == HS_STATUS_NOT_JUDGED && at->why == HS_WHY_SCOPE;
}

/* The checks of which this is to be said; nothing where there are none. */
static void
put_checks(hs_json_text *json,
           const char *key,
           const hs_option_result *option,
           gboolean (*is_one)(const hs_finding *))
{
    gboolean any = FALSE;

    for (int i = 0; i < option->n_findings; i++) {
        if (!is_one(&option->findings[i]))
            continue;
        if (!any)
            hs_json_text_open(json, key, '[');
        any = TRUE;
        hs_json_text_string(json, NULL, hs_words_check_id(option->findings[i].check));
    }
    if (any)
        hs_json_text_close(json, ']');
}

static void
put_option(hs_json_text *json, const hs_option_result *option)
{
    const hs_finding *worst = worst_finding(option);
    double share_N = HS_ABSENT, felt_N = HS_ABSENT;

    for (int i = 0; i < option->n_samples; i++)
        for (int b = 0; b < option->asked->n_bearers; b++) {
            /* fmax leaves an absent figure aside */
            share_N = fmax(share_N, option->samples[i].bearers[b].share_N);
            felt_N = fmax(felt_N, option->samples[i].bearers[b].felt_force_N);
        }
    hs_json_text_open(json, NULL, '{');
    hs_json_text_string(json, "id", option->id);
    hs_json_text_string(json, "status", hs_words_verdict_id(option->verdict.status));
    hs_json_text_number(json, "share_max_N", share_N);
    hs_json_text_number(json, "felt_max_N", felt_N);
    if (worst != NULL) {
        hs_json_text_open(json, "worst", '{');
        hs_json_text_string(json, "check", hs_words_check_id(worst->check));
        hs_json_text_number(json, "ratio", worst->ratio);
        hs_json_text_close(json, '}');
    }
    if (option->verdict.suit_only)
        hs_json_text_bool(json, "suit_only", TRUE);
    put_checks(json, "unconfirmed", option, is_unconfirmed);
    put_checks(json, "out_of_scope", option, is_out_of_scope);
    hs_json_text_close(json, '}');
}

static void
put_assessed(hs_json_text *json, hs_document *document, const hs_site_set *set, hs_arena *arena)
{
    const hs_task *task = hs_site_set_apply(set, hs_document_task(document), arena);
    hs_results results;
    hs_error error = {0};

    if (hs_assess(task, HS_ASSESS_PLAIN, arena, &results, &error) != HS_OK) {
        hs_json_text_open(json, "errors", '[');
        put_error(json, error.where, _("The task cannot be worked out with this value."));
        hs_json_text_close(json, ']');
        return;
    }
    hs_json_text_string(json, "title", task->about.title);
    hs_json_text_string(json, "digest", hs_document_digest(document));
    if (set != NULL) {
        hs_json_text_open(json, "site_limits", '{');
        hs_json_text_string(json, "id", hs_site_set_id(set));
        hs_json_text_string(json, "edition", hs_site_set_edition(set));
        hs_json_text_string(json, "digest", hs_site_set_digest(set));
        hs_json_text_close(json, '}');
    }
    hs_json_text_open(json, "options", '[');
    for (int i = 0; i < results.n_options; i++)
        put_option(json, &results.options[i]);
    hs_json_text_close(json, ']');
}

static char *
result_of(const char *text, gsize length, guint64 line, const hs_site_set *set, hs_arena *arena)
{
    hs_json_text json = {.out = g_string_new(NULL)};
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_from_bytes(text, length, faults);

    hs_json_text_open(&json, NULL, '{');
    hs_json_text_number(&json, "line", (double)line);
    if (document != NULL && !hs_document_is_read_only(document) &&
        hs_document_task(document) != NULL) {
        put_assessed(&json, document, set, arena);
    } else {
        hs_json_text_open(&json, "errors", '[');
        put_faults(&json, faults);
        if (document != NULL && hs_document_is_read_only(document))
            put_error(
                &json, "version",
                _("The file is of a newer version than this program reads; 1 is allowed."));
        hs_json_text_close(&json, ']');
    }
    hs_json_text_close(&json, '}');
    return g_string_free(json.out, FALSE);
}

char *
hs_survey_line(const char *text, gsize length, guint64 line, const hs_site_set *set)
{
    hs_arena *arena = hs_arena_new();
    char *result = result_of(text, length, line, set, arena);

    hs_arena_free(arena);
    return result;
}

static char *
too_long(guint64 line)
{
    hs_json_text json = {.out = g_string_new(NULL)};

    hs_json_text_open(&json, NULL, '{');
    hs_json_text_number(&json, "line", (double)line);
    hs_json_text_open(&json, "errors", '[');
    put_error(&json, "", _("The line is too long; 16 MiB are allowed."));
    hs_json_text_close(&json, ']');
    hs_json_text_close(&json, '}');
    return g_string_free(json.out, FALSE);
}

static gpointer
worker(gpointer data)
{
    ring *at = data;
    hs_arena *arena = hs_arena_new();

    g_mutex_lock(&at->lock);
    for (;;) {
        slot *mine;

        while (at->next_to_take == at->n_read && !at->is_over)
            g_cond_wait(&at->changed, &at->lock);
        if (at->next_to_take == at->n_read)
            break;
        mine = &at->slots[at->next_to_take++ % at->n_slots];
        mine->state = SLOT_TAKEN;
        g_mutex_unlock(&at->lock);
        mine->result = mine->is_too_long ? too_long(mine->line)
                                         : result_of(mine->text->str, mine->text->len,
                                                     mine->line, at->set, arena);
        hs_arena_reset(arena);
        g_mutex_lock(&at->lock);
        mine->state = SLOT_DONE;
        g_cond_broadcast(&at->changed);
    }
    g_mutex_unlock(&at->lock);
    hs_arena_free(arena);
    return NULL;
}

/* One line without its newline; FALSE at the end. What is too long is skipped to the newline. */
static gboolean
read_line(FILE *in, GString *text, gboolean *ret_is_too_long)
{
    int c;
    gboolean any = FALSE;

    g_string_truncate(text, 0);
    *ret_is_too_long = FALSE;
    while ((c = getc_unlocked(in)) != EOF) {
        any = TRUE;
        if (c == '\n')
            break;
        if (text->len < HS_SURVEY_MOST_bytes)
            g_string_append_c(text, (char)c);
        else
            *ret_is_too_long = TRUE;
    }
    if (text->len > 0 && text->str[text->len - 1] == '\r')
        g_string_truncate(text, text->len - 1);
    return any;
}

/* Waits until the slot's result is there and writes it. */
static gboolean
write_slot(ring *at, slot *done, FILE *out)
{
    gboolean good;

    g_mutex_lock(&at->lock);
    while (done->state != SLOT_DONE)
        g_cond_wait(&at->changed, &at->lock);
    g_mutex_unlock(&at->lock);
    good = fprintf(out, "%s\n", done->result) > 0;
    g_clear_pointer(&done->result, g_free);
    done->state = SLOT_EMPTY;
    return good;
}

static gboolean
pump(ring *at, FILE *in, FILE *out)
{
    guint64 n = 0, written = 0;
    gboolean good = TRUE;

    while (good) {
        slot *next = &at->slots[n % at->n_slots];

        if (n >= at->n_slots) {
            good = write_slot(at, next, out);
            written++;
        }
        if (!good || !read_line(in, next->text, &next->is_too_long))
            break;
        next->line = ++n;
        g_mutex_lock(&at->lock);
        next->state = SLOT_READ;
        at->n_read = n;
        g_cond_broadcast(&at->changed);
        g_mutex_unlock(&at->lock);
    }
    for (; good && written < n; written++)
        good = write_slot(at, &at->slots[written % at->n_slots], out);
    return good && fflush(out) == 0;
}

static void
set_error(GError **error, const char *what)
{
    int number = errno;

    g_set_error(error, G_IO_ERROR, (gint)g_io_error_from_errno(number), "%s: %s", what,
                g_strerror(number));
}

gboolean
hs_survey_run(FILE *in, FILE *out, int jobs, const hs_site_set *set, GError **error)
{
    ring at = {.n_slots = (guint)(jobs * SLOTS_PER_JOB), .set = set};
    g_autoptr(GPtrArray) threads = g_ptr_array_new();
    gboolean written;

    g_mutex_init(&at.lock);
    g_cond_init(&at.changed);
    at.slots = g_new0(slot, at.n_slots);
    for (guint i = 0; i < at.n_slots; i++)
        at.slots[i].text = g_string_new(NULL);
    for (int i = 0; i < jobs; i++)
        g_ptr_array_add(threads, g_thread_new("survey", worker, &at));

    written = pump(&at, in, out);
    if (!written)
        set_error(error, _("The results cannot be written"));
    else if (ferror(in))
        set_error(error, _("The input cannot be read"));

    g_mutex_lock(&at.lock);
    at.is_over = TRUE;
    if (!written)
        at.next_to_take = at.n_read;
    g_cond_broadcast(&at.changed);
    g_mutex_unlock(&at.lock);
    for (guint i = 0; i < threads->len; i++)
        g_thread_join(g_ptr_array_index(threads, i));
    for (guint i = 0; i < at.n_slots; i++) {
        g_string_free(at.slots[i].text, TRUE);
        g_free(at.slots[i].result);
    }
    g_free(at.slots);
    g_cond_clear(&at.changed);
    g_mutex_clear(&at.lock);
    return written && !ferror(in);
}
