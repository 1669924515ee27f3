/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the person see first?
 * Answer:    HsGalleryView: the worked scenarios as small side views, and a blank one.
 * Not here:  reading them (model/gallery.c). */
#ifndef HS_GALLERY_VIEW_H
#define HS_GALLERY_VIEW_H

#include <gtk/gtk.h>

GtkWidget *hs_gallery_view_new(void);

#endif
