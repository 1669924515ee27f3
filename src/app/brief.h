/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  where does the person enter what is asked?
 * Answer:    the brief: sections with a one-line summary each, opened one at a time or several.
 * Not here:  what a section holds (brief_*.c). */
#ifndef HS_BRIEF_H
#define HS_BRIEF_H

#include "session.h"

#include <gtk/gtk.h>

/* One section. summary: one line for the closed section, new. shape: a text that differs whenever other rows are needed
 * (lists grew, another option is edited), new; NULL: never. build: appends the rows. */
typedef struct {
    const char *id;
    const char *title; /* N_() */
    char *(*summary)(HsSession *session);
    char *(*shape)(HsSession *session);
    void (*build)(HsSession *session, GtkBox *content);
} hs_brief_part;

extern const hs_brief_part hs_brief_about, hs_brief_load, hs_brief_site, hs_brief_route,
    hs_brief_bearers, hs_brief_suit, hs_brief_work, hs_brief_checks, hs_brief_ways;

#define HS_TYPE_BRIEF (hs_brief_get_type())
G_DECLARE_FINAL_TYPE(HsBrief, hs_brief, HS, BRIEF, GtkWidget)
GtkWidget *hs_brief_new(HsSession *session);
/* Open a section by its id, and put the focus on the field of a JSON path where it has one. */
void hs_brief_open(HsBrief *brief, const char *id);
/* Open the section that holds a JSON path. */
void hs_brief_show_path(HsBrief *brief, const char *path);

#endif
