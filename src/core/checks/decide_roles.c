/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  who does what the second person did, and were the gates passed?
 * Answer:    roles: an empty one is beyond; a list that is not there is missing where people are saved; gates: yes, no, open.
 * Not here:  the verdict (decide.c). */
#include "decide_roles.h"

#include "check.h"

#include <stdbool.h>

#define DEVICE "device:" /* file format, section roles */

static bool
is_blank(char c)
{
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

static const char *
first_letter(const char *text)
{
    while (is_blank(*text))
        text++;
    return text;
}

static char
small(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/* Capital letters of the plain alphabet count as small ones. */
static bool
begins_with(const char *text, const char *word)
{
    for (; *word != '\0'; text++, word++)
        if (small(*text) != *word)
            return false;
    return true;
}

static bool
uses_before(const hs_asking *asking)
{
    const hs_setup *setup = asking->run->setup;

    if (setup->is_baseline || asking->baseline == NULL || asking->baseline == asking->run)
        return true;
    return setup->n_bearers >= asking->baseline->setup->n_bearers;
}

const char *
hs_role_filler(const hs_asking *asking, const hs_role *role)
{
    const char *filler = uses_before(asking) ? role->before : role->after;

    return filler != NULL ? filler : "";
}

bool
hs_role_is_empty(const char *filler)
{
    return *first_letter(filler) == '\0';
}

bool
hs_role_is_device(const char *filler)
{
    return begins_with(first_letter(filler), DEVICE);
}

hs_role_kind
hs_role_kind_of(const hs_role *role)
{
    static const struct {
        const char *word;
        hs_role_kind kind;
    } words[] = {
#define ROLE_WORD(word, kind) {word, HS_ROLE_##kind},
#include "lists/role_words.def"
#undef ROLE_WORD
    };
    const char *text = role->role != NULL ? role->role : "";

    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++)
        for (const char *at = text; *at != '\0'; at++)
            if ((at == text || is_blank(at[-1])) && begins_with(at, words[i].word))
                return words[i].kind;
    return HS_ROLE_OTHER;
}

const char *
hs_roles_person_for(const hs_asking *asking, hs_role_kind kind)
{
    for (int i = 0; i < asking->task->n_roles; i++) {
        const char *filler = hs_role_filler(asking, &asking->task->roles[i]);

        if (hs_role_kind_of(&asking->task->roles[i]) == kind && !hs_role_is_empty(filler) &&
            !hs_role_is_device(filler))
            return filler;
    }
    return NULL;
}

int
hs_roles_n_devices(const hs_asking *asking)
{
    int n = 0;

    for (int i = 0; i < asking->task->n_roles; i++)
        n += hs_role_is_device(hs_role_filler(asking, &asking->task->roles[i]));
    return n;
}

void
hs_check_roles(const hs_asking *asking, hs_finding *finding)
{
    const hs_task *task = asking->task;
    const char *first_empty = NULL;
    int n_empty = 0;

    finding->confidence = HS_CONF_COMMON_PRACTICE;
    finding->source = HS_SRC_site_roles;
    if (!task->has_roles) {
        if (!uses_before(asking))
            hs_finding_missing(finding, HS_SAY(roles_missing));
        return;
    }
    if (task->n_roles == 0)
        return;
    for (int i = 0; i < task->n_roles; i++)
        if (hs_role_is_empty(hs_role_filler(asking, &task->roles[i]))) {
            first_empty = n_empty == 0 ? task->roles[i].role : first_empty;
            n_empty++;
        }
    if (n_empty > 0) {
        hs_finding_beyond(finding, HS_SAY(roles_empty, n_empty, task->n_roles));
        finding->text.name[0] = first_empty;
        finding->remedy = HS_SAY(roles_remedy);
        finding->remedy.name[0] = first_empty;
        return;
    }
    finding->status = HS_STATUS_WITHIN;
    finding->why = HS_WHY_COMPUTED;
    finding->text = HS_SAY(roles_filled, task->n_roles, hs_roles_n_devices(asking));
}

static const hs_gate *
first_gate(const hs_task *task, hs_gate_answer answer)
{
    for (int i = 0; i < task->n_gates; i++)
        if (task->gates[i].answer == answer)
            return &task->gates[i];
    return NULL;
}

void
hs_check_gates(const hs_asking *asking, hs_finding *finding)
{
    const hs_task *task = asking->task;
    const hs_gate *refused = first_gate(task, HS_GATE_NO),
                  *open = first_gate(task, HS_GATE_OPEN);

    if (open == NULL)
        open = first_gate(task, (hs_gate_answer)0); /* not answered is open */
    finding->confidence = HS_CONF_COMMON_PRACTICE;
    finding->source = HS_SRC_site_roles;
    if (refused != NULL) {
        hs_finding_beyond(finding, HS_SAY(gates_no));
        finding->text.name[0] = refused->gate;
        finding->remedy = HS_SAY(gates_remedy);
        finding->remedy.name[0] = refused->gate;
    } else if (open != NULL) {
        hs_finding_missing(finding, HS_SAY(gates_open));
        finding->text.name[0] = open->gate;
    } else if (task->n_gates > 0) {
        finding->status = HS_STATUS_WITHIN;
        finding->why = HS_WHY_COMPUTED;
        finding->text = HS_SAY(gates_yes, task->n_gates);
    }
}
