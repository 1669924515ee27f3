/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how do the zones share the window's width?
 * Answer:    HsZones: brief, centre, findings side by side; in narrow windows the brief is a rail that opens over the stage.
 * Not here:  what the zones hold. */
#ifndef HS_ZONES_H
#define HS_ZONES_H

#include <gtk/gtk.h>

#define HS_TYPE_ZONES (hs_zones_get_type())
G_DECLARE_FINAL_TYPE(HsZones, hs_zones, HS, ZONES, GtkWidget)

typedef enum {
    HS_ZONES_WIDE,
    HS_ZONES_RAIL,
    HS_ZONES_ONE_VIEW
} hs_zones_kind;

/* signal "kind-changed" */
GtkWidget *
hs_zones_new(GtkWidget *rail, GtkWidget *brief, GtkWidget *centre, GtkWidget *findings);
hs_zones_kind hs_zones_get_kind(HsZones *zones);
void hs_zones_open_brief(HsZones *zones, gboolean open);
gboolean hs_zones_is_brief_open(HsZones *zones);

#endif
