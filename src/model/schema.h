/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does another program check a document?
 * Answer:    hs_schema_text(): a JSON Schema (2020-12) made from the tables of fields.c.
 * Not here:  rules across fields, which a schema cannot say (rules.c, docs/file-format.md). */
#ifndef HS_SCHEMA_H
#define HS_SCHEMA_H

char *hs_schema_text(void);

#endif
