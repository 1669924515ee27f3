/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who works out what is too slow for a drag?
 * Answer:    a thread that takes the newest request, and an idle source that hands over its answer unless it is outdated.
 * Not here:  what is asked and shown (session.c). */
#include "desk.h"

/* Shared by the desk, its thread and the sources under way; the last one frees it. */
typedef struct {
    gatomicrefcount refs;
    GMutex lock;
    GCond changed;
    GMainContext *context;
    hs_desk_ready ready;
    gpointer data;
    hs_document *asked; /* NULL: nothing waits */
    hs_site_set *set;   /* goes with what is asked; NULL: none */
    hs_assess_mode mode;
    guint64 serial; /* of the newest request; an answer to another one is dropped */
    gboolean is_over;
} shared;

struct hs_desk {
    shared *common;
    GThread *thread;
};

typedef struct {
    shared *common;
    hs_answer *answer;
    guint64 serial;
} delivery;

hs_answer *
hs_answer_new(hs_document *document,
              const hs_site_set *set,
              hs_assess_mode mode,
              hs_memo *memo,
              hs_arena *arena)
{
    hs_answer *answer = g_new0(hs_answer, 1);

    answer->document = hs_document_ref(document);
    answer->arena = arena != NULL ? arena : hs_arena_new();
    answer->status =
        hs_assess_again(hs_site_set_apply(set, hs_document_task(document), answer->arena), mode,
                        memo, answer->arena, &answer->results, &answer->error);
    return answer;
}

hs_arena *
hs_answer_recycle(hs_answer *answer)
{
    hs_arena *arena;

    if (answer == NULL)
        return NULL;
    arena = answer->arena;
    hs_arena_reset(arena);
    hs_document_unref(answer->document);
    g_free(answer);
    return arena;
}

void
hs_answer_free(hs_answer *answer)
{
    hs_arena_free(hs_answer_recycle(answer));
}

static void
shared_unref(shared *common)
{
    if (!g_atomic_ref_count_dec(&common->refs))
        return;
    g_clear_pointer(&common->asked, hs_document_unref);
    g_clear_pointer(&common->set, hs_site_set_unref);
    g_main_context_unref(common->context);
    g_mutex_clear(&common->lock);
    g_cond_clear(&common->changed);
    g_free(common);
}

static gboolean
deliver(gpointer data)
{
    delivery *parcel = data;
    gboolean is_newest;

    g_mutex_lock(&parcel->common->lock);
    is_newest = !parcel->common->is_over && parcel->serial == parcel->common->serial;
    g_mutex_unlock(&parcel->common->lock);
    if (is_newest)
        parcel->common->ready(g_steal_pointer(&parcel->answer), parcel->common->data);
    return G_SOURCE_REMOVE;
}

static void
delivery_free(gpointer data)
{
    delivery *parcel = data;

    g_clear_pointer(&parcel->answer, hs_answer_free);
    shared_unref(parcel->common);
    g_free(parcel);
}

static void
send(shared *common, hs_answer *answer, guint64 serial)
{
    delivery *parcel = g_new0(delivery, 1);
    GSource *source = g_idle_source_new();

    g_atomic_ref_count_inc(&common->refs);
    parcel->common = common;
    parcel->answer = answer;
    parcel->serial = serial;
    g_source_set_callback(source, deliver, parcel, delivery_free);
    g_source_attach(source, common->context);
    g_source_unref(source);
    /* the source owns the parcel and frees it */
    /* cppcheck-suppress memleak */
}

static gpointer
work(gpointer data)
{
    shared *common = data;
    hs_memo *memo = hs_memo_new();

    g_mutex_lock(&common->lock);
    while (!common->is_over) {
        hs_document *document = g_steal_pointer(&common->asked);
        hs_site_set *set = g_steal_pointer(&common->set);
        hs_assess_mode mode = common->mode;
        guint64 serial = common->serial;

        if (document == NULL) {
            g_cond_wait(&common->changed, &common->lock);
            continue;
        }
        g_mutex_unlock(&common->lock);
        send(common, hs_answer_new(document, set, mode, memo, NULL), serial);
        hs_document_unref(document);
        hs_site_set_unref(set);
        g_mutex_lock(&common->lock);
    }
    g_mutex_unlock(&common->lock);
    hs_memo_free(memo);
    shared_unref(common);
    return NULL;
}

hs_desk *
hs_desk_new(hs_desk_ready ready, gpointer data)
{
    hs_desk *desk = g_new0(hs_desk, 1);
    shared *common = g_new0(shared, 1);

    g_atomic_ref_count_init(&common->refs);
    g_atomic_ref_count_inc(&common->refs);
    g_mutex_init(&common->lock);
    g_cond_init(&common->changed);
    common->context = g_main_context_ref_thread_default();
    common->ready = ready;
    common->data = data;
    desk->common = common;
    desk->thread = g_thread_new("desk", work, common);
    return desk;
}

static void
tell(hs_desk *desk,
     hs_document *document,
     hs_site_set *set,
     hs_assess_mode mode,
     gboolean is_over)
{
    shared *common = desk->common;

    g_mutex_lock(&common->lock);
    g_clear_pointer(&common->asked, hs_document_unref);
    common->asked = document != NULL ? hs_document_ref(document) : NULL;
    g_clear_pointer(&common->set, hs_site_set_unref);
    common->set = set != NULL ? hs_site_set_ref(set) : NULL;
    common->mode = mode;
    common->serial++;
    common->is_over = is_over;
    g_cond_signal(&common->changed);
    g_mutex_unlock(&common->lock);
}

void
hs_desk_request(hs_desk *desk, hs_document *document, hs_site_set *set, hs_assess_mode mode)
{
    tell(desk, document, set, mode, FALSE);
}

void
hs_desk_cancel(hs_desk *desk)
{
    tell(desk, NULL, NULL, HS_ASSESS_FULL, FALSE);
}

void
hs_desk_free(hs_desk *desk)
{
    if (desk == NULL)
        return;
    tell(desk, NULL, NULL, HS_ASSESS_FULL, TRUE);
    g_thread_join(desk->thread);
    shared_unref(desk->common);
    g_free(desk);
}
