/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  does every newton reach the floor, and is loss of power worked out, at every place of every example?
 * Answer:    every bearer of every option at every sample: account of the load path, ground force, power lost.
 * Not here:  single figures of the account (forces/test_suit.c, checks/test_power_loss.c). */
#include "defaults.h"
#include "document.h"
#include "examples.h"
#include "load_path.h"
#include "near.h"
#include "runner.h"
#include "units.h"

static int n_accounts, n_lost, n_places;

static void
check_account(const hs_run *run, int s, int b, const char *where)
{
    const hs_bearer_sample *sample = &run->samples[s].bearers[b];
    const hs_bearer_place *place = &run->stations[s].place.bearers[b];
    hs_load_path path;
    double own_N;

    if (!hs_has(sample->felt_force_N))
        return;
    hs_load_path_of(run->setup->bearers[b].suit, run->persons[b].mass_kg, sample->hand_force_N,
                    sample->felt_force_N, place->walking_factor, &path);
    if (!hs_has(path.sum_N))
        return;
    n_accounts++;
    hs_near(where, path.sum_N, 0.0, 1e-9);
    hs_near(where, sample->felt_force_N + sample->suit_force_N, sample->hand_force_N, 1e-9);
    /* what the results call ground force is both lots of soles together, when nothing speeds the body up */
    own_N = path.along_N[HS_PATH_WEARER_TO_FLOOR] + path.along_N[HS_PATH_SUIT_TO_FLOOR];
    hs_near_rel(where, sample->ground_force_N, own_N, 1e-9);
}

static void
check_lost(const hs_run *run, int s, int b, const char *where)
{
    const hs_suit *suit = run->setup->bearers[b].suit;
    const hs_power_lost *lost = &run->samples[s].bearers[b].power_lost;

    if (suit == NULL || suit->kind != HS_SUIT_POWERED || suit->on_power_loss == 0)
        return;
    n_lost++;
    if (!lost->is_known || !hs_has(lost->felt_force_N) || !hs_has(lost->hold_s))
        g_error("%s: power lost is not worked out at sample %d", where, s);
    if (lost->state == HS_LOST_LOCKED)
        hs_near(where, lost->hold_s, suit->lock_s, 0.0);
    if (lost->state != HS_LOST_LIMP)
        hs_near(where, lost->felt_force_N, 0.0, 0.0);
    else
        hs_near(where, lost->felt_force_N, run->samples[s].bearers[b].hand_force_N, 0.0);
}

static void
check_example(const char *path, const char *name)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) document = hs_document_load(path, faults, NULL);
    hs_arena *arena = hs_arena_new();
    const hs_task *task;
    hs_load_state load;
    hs_error error;

    (void)name;
    g_assert_nonnull(document);
    task = hs_defaults_apply(hs_document_task(document), arena, NULL);
    g_assert_cmpint(hs_load_solve(&task->load, arena, NULL, NULL, &load, &error), ==, HS_OK);
    for (int o = 0; o < task->n_options; o++) {
        hs_run run;

        g_assert_cmpint(
            hs_run_make(task, &load, &task->options[o], o, false, arena, NULL, &run, &error),
            ==, HS_OK);
        for (int s = 0; s < run.n_stations; s++)
            for (int b = 0; b < run.setup->n_bearers; b++) {
                n_places++;
                check_account(&run, s, b, path);
                check_lost(&run, s, b, path);
            }
    }
    hs_arena_free(arena);
}

static void
all_examples(void)
{
    hs_each_example(check_example);
    g_assert_cmpint(n_accounts, ==, n_places);
    g_assert_cmpint(n_lost, >, 100);
    g_test_message("%d accounts, %d places without power", n_accounts, n_lost);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/every_place/all_examples", all_examples);
    return g_test_run();
}
