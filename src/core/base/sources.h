/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where is a figure published, and how is it known?
 * Answer:    one line of lists/sources*.def for each source.
 * Not here:  the figures (units.h, lists/ *.def). */
#ifndef HS_SOURCES_H
#define HS_SOURCES_H

typedef enum {
    HS_CONF_SEEN = 1,
    HS_CONF_DERIVED,
    HS_CONF_MEMORY,
    HS_CONF_COMMON_PRACTICE
} hs_confidence;

typedef enum {
    HS_SRC_none = 0,
#define SOURCE(id, title, year, place, confidence) HS_SRC_##id,
#include "lists/sources.def"
#undef SOURCE
    HS_N_SOURCES
} hs_source_id;

typedef struct {
    const char *id, *title;
    int year; /* 0: not dated */
    const char *place;
    hs_confidence confidence;
} hs_source;

const hs_source *hs_source_get(hs_source_id id);

#endif
