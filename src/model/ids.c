/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which entry of a list does an id mean?
 * Answer:    a walk over the list; lists are short.
 * Not here:  what a wrong id makes of a document (reader.c), ids that stand twice (rules.c). */
#include "ids.h"

#include <stddef.h>
#include <string.h>

#define TEXT_MOST 200 /* bytes of ids that a fault shows */
#define IDS(path, list, count, type)                                                           \
    ((hs_ids){path, count, list, sizeof(type), offsetof(type, id)})

hs_ids
hs_ids_of(const hs_task *task, const hs_suit *suit, const char *list)
{
    if (strcmp(list, "workers") == 0)
        return IDS("workers", task->workers, task->n_workers, hs_worker);
    if (strcmp(list, "suits") == 0)
        return IDS("suits", task->suits, task->n_suits, hs_suit);
    if (strcmp(list, "grips") == 0)
        return IDS("load.grips", task->load.grips, task->load.n_grips, hs_grip);
    if (suit == NULL)
        return IDS("effectors", NULL, 0, hs_effector);
    return IDS("effectors", suit->effectors, suit->n_effectors, hs_effector);
}

static const char *
id_at(const hs_ids *ids, int i)
{
    const char *item = (const char *)ids->items + (gsize)i * ids->size;

    return *(const char *const *)(const void *)(item + ids->at);
}

int
hs_ids_find(const hs_ids *ids, const char *id)
{
    for (int i = 0; i < ids->n; i++)
        if (g_strcmp0(id_at(ids, i), id) == 0)
            return i;
    return -1;
}

char *
hs_ids_text(const hs_ids *ids)
{
    GString *text = g_string_new(NULL);

    for (int i = 0; i < ids->n && text->len < TEXT_MOST; i++)
        if (id_at(ids, i) != NULL)
            g_string_append_printf(text, "%s%s", text->len > 0 ? ", " : "", id_at(ids, i));
    return g_string_free(text, FALSE);
}
