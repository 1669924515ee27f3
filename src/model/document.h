/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what does the document say?
 * Answer:    an immutable version: the JSON tree as it was read (unknown keys kept), the task made from it, its digest.
 * Not here:  reading and faults (reader.c), changing (edit.c), history (history.c). */
#ifndef HS_DOCUMENT_H
#define HS_DOCUMENT_H

#include "faults.h"
#include "task.h"

#include <gio/gio.h>
#include <json-glib/json-glib.h>

/* Reference counted and never changed after it was made: any thread may read it. */
typedef struct hs_document hs_document;

hs_document *hs_document_ref(hs_document *document);
void hs_document_unref(hs_document *document);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(hs_document, hs_document_unref)

/* The tree; read only. */
JsonNode *hs_document_root(const hs_document *document);
/* The structs for core, or NULL while the document has faults (a half-entered one in the window). */
const hs_task *hs_document_task(const hs_document *document);
/* SHA-256 (hex) of the document without signatures, RFC 8785 form. */
const char *hs_document_digest(const hs_document *document);
/* A newer `version`: may be looked at, not changed or saved. */
gboolean hs_document_is_read_only(const hs_document *document);

/**
 * hs_document_from_bytes - read a document
 *
 * What    strict JSON (UTF-8, no duplicate keys, finite numbers, depth at most 64), then types, ranges, references; every
 *         fault in one go
 * In      text of any length and content
 * Out     a new document, or NULL when it has faults (faults says all); warnings are faults with is_warning and do not
 *         prevent the document; a newer `version` alone gives a read-only document and yet a fault, so that the window can
 *         show what a command refuses
 * Frame   none
 * Errors  faults: GPtrArray of hs_fault*, never NULL, owned by the caller
 * Source  file format
 */
hs_document *hs_document_from_bytes(const char *text, gsize length, GPtrArray *faults);
/* From a tree, which is sealed: from now on nobody can change it. Faults as above; with keep_faulty a document with task
 * NULL is returned instead of NULL, for the window. A tree that no file could hold (deeper than 64, a number that is not
 * finite) gives NULL in any case. */
hs_document *hs_document_from_node(JsonNode *root, gboolean keep_faulty, GPtrArray *faults);
/* Faults of a document kept faulty (borrowed), empty for a good one. */
const GPtrArray *hs_document_faults(const hs_document *document);

/* Read from a file or standard input ("-"); error is a G_IO_ERROR when it cannot be read. */
hs_document *hs_document_load(const char *path, GPtrArray *faults, GError **error);
/* Pretty printed, keys in the order of the file format then unknown ones, numbers shortest round trip; by temporary file and
 * rename: the old file stays when anything fails. */
gboolean hs_document_save(const hs_document *document, const char *path, GError **error);
char *hs_document_to_text(const hs_document *document, gsize *ret_length);
/* The smallest document that assesses: for "New". */
hs_document *hs_document_new_blank(void);

#endif
