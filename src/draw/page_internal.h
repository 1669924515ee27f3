/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what do the files of a page share?
 * Answer:    the layout of a text, the short form of a digest.
 * Not here:  what others may call (page.h). */
#ifndef HS_PAGE_INTERNAL_H
#define HS_PAGE_INTERNAL_H

#include "page.h"

/* Lines stand a little closer than the type's own distance, which is made for the screen: by eye. */
#define HS_PAGE_LEADING 0.9

PangoLayout *
hs_page_layout(const hs_page *page, hs_type type, const char *text, double width_pt);
/* The file code as readers compare it: the first twelve characters. */
char *hs_page_code(const char *digest);

#endif
