/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a thing on the stage grabbed, by pointer, keyboard or screen reader?
 * Answer:    a small widget over each route point, grip and pair of feet, with a name, keys and actions.
 * Not here:  what moving it means (grab.c), where it is (side_view.c). */
#ifndef HS_HANDLE_H
#define HS_HANDLE_H

#include "session.h"

#include <gtk/gtk.h>

typedef enum {
    HS_HANDLE_POINT,
    HS_HANDLE_GRIP,
    HS_HANDLE_FEET
} hs_handle_kind;

#define HS_HANDLE_SIZE 32 /* px: the place that takes the pointer; the mark is smaller */

#define HS_TYPE_HANDLE (hs_handle_get_type())
G_DECLARE_FINAL_TYPE(HsHandle, hs_handle, HS, HANDLE, GtkWidget)

GtkWidget *hs_handle_new(HsSession *session);
/* kind, option and index (point, grip of the load, bearer of the option); the name is for speech and for the tip. */
void
hs_handle_set(HsHandle *handle, hs_handle_kind kind, int option, int index, const char *name);
hs_handle_kind hs_handle_get_kind(HsHandle *handle);
int hs_handle_get_index(HsHandle *handle);
int hs_handle_get_option(HsHandle *handle);

#endif
