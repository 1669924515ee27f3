/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which worked scenarios come with the program?
 * Answer:    hs_gallery_list(): the documents of data/examples with title and caption.
 * Not here:  their pictures (draw). */
#ifndef HS_GALLERY_H
#define HS_GALLERY_H

#include "document.h"

typedef struct {
    char *path;
    char *title, *caption; /* of the document: about.title, about.task */
    hs_document *document;
} hs_example;

void hs_example_free(hs_example *example);
/* Folder of the program's data (examples, catalogue): HS_DATA_DIR, the installed one, or the source tree's beside the build;
 * NULL when there is none. */
char *hs_gallery_data_dir(void);
/* GPtrArray of hs_example *, by file name; empty when there is no folder. */
GPtrArray *hs_gallery_list(void);

#endif
