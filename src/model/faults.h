/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is a fault of a document kept and where does it say that it stands?
 * Answer:    hs_fault_new(), paths grown key by key, values quoted so that a fault stays one line.
 * Not here:  what is a fault (strict.c, reader.c, rules.c). */
#ifndef HS_FAULTS_H
#define HS_FAULTS_H

#include <json-glib/json-glib.h>

typedef struct {
    char *path;          /* JSON path: "load.parts[2].mass_kg" */
    char *text;          /* what is wrong, what is allowed; translated */
    gboolean is_warning; /* unknown key */
} hs_fault;

void hs_fault_free(hs_fault *fault);

/* A new fault; text is taken over. */
hs_fault *hs_fault_new(const char *path, char *text, gboolean is_warning);
/* Adds a fault unless the list is full already: after HS_FAULTS_MOST one last line says that there are more. */
void hs_faults_add(GPtrArray *faults, const char *path, char *text, gboolean is_warning);
#define HS_FAULTS_MOST 1000

/* An error is there at this path or below it. */
gboolean hs_faults_has(const GPtrArray *faults, const char *path);
/* A fault stands at the path itself: nothing below it was read. */
gboolean hs_faults_stands(const GPtrArray *faults, const char *path);
guint hs_faults_errors(const GPtrArray *faults);

/* ".key" or, for a key that is no plain word, ["key"] with JSON escapes. */
void hs_path_add_key(GString *path, const char *key);
void hs_path_add_index(GString *path, guint index);

/* The value as JSON, shortened: "handle", 12.5, null, [...], {...} */
char *hs_fault_value(JsonNode *node);

#endif
