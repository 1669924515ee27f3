/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a worked example in JSON become a question to core?
 * Answer:    hs_case_*: parts, weighings, grips from the keys of the file format.
 * Not here:  the whole reader with its errors (model/reader.c). */
#ifndef HS_CASE_LOAD_H
#define HS_CASE_LOAD_H

#include "load.h"

#include <json-glib/json-glib.h>

double hs_case_number(JsonObject *of, const char *key, double otherwise);
double hs_case_at(JsonArray *list, guint i);
hs_vec3 hs_case_vec3(JsonObject *of, const char *key);
/* Everything lives in the arena; strings belong to the JSON tree. */
void hs_case_parts(JsonArray *parts, hs_arena *arena, hs_load *load);
void hs_case_weighings(JsonArray *sets, hs_arena *arena, hs_load *load);
void hs_case_document_load(JsonObject *document, hs_arena *arena, hs_load *load);

typedef void (*hs_case_function)(JsonObject *of);
/* Calls the function for every case that has the member, by the case's `ask` where that is given. */
int
hs_case_each(const char *file, const char *member, const char *ask, hs_case_function function);

#endif
