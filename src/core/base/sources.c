/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where is a figure published, and how is it known?
 * Answer:    the table made from lists/sources.def.
 * Not here:  the figures. */
#include "sources.h"

static const hs_source table[HS_N_SOURCES] = {
    {"none", "", 0, "", HS_CONF_COMMON_PRACTICE},
#define SOURCE(id, title, year, place, confidence)                                             \
    {#id, title, year, place, HS_CONF_##confidence},
#include "lists/sources.def"
#undef SOURCE
};

const hs_source *
hs_source_get(hs_source_id id)
{
    return &table[id < HS_N_SOURCES ? id : HS_SRC_none];
}
