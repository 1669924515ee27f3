/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a document written into a file?
 * Answer:    hs_writer_text(): two spaces a level, keys in the order of the format, unknown ones after them.
 * Not here:  the canonical form (digest.c), the file itself (document.c). */
#ifndef HS_WRITER_H
#define HS_WRITER_H

#include <json-glib/json-glib.h>

char *hs_writer_text(JsonNode *root);

#endif
