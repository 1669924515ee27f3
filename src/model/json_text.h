/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how is JSON written in the order that the file format has?
 * Answer:    a writer that puts commas and skips what is absent; numbers locale-free, shortest that reads back the same.
 * Not here:  reading; documents (writer.c). */
#ifndef HS_JSON_TEXT_H
#define HS_JSON_TEXT_H

#include "vec.h"

#include <json-glib/json-glib.h>

typedef struct {
    GString *out;
    gboolean follows; /* a value stands before: the next one needs a comma */
} hs_json_text;

/* key NULL inside an array. */
void hs_json_text_open(hs_json_text *json, const char *key, char bracket);
void hs_json_text_close(hs_json_text *json, char bracket);
/* Not finite: the member is left out. */
void hs_json_text_number(hs_json_text *json, const char *key, double value);
/* NULL: the member is left out. */
void hs_json_text_string(hs_json_text *json, const char *key, const char *text);
void hs_json_text_bool(hs_json_text *json, const char *key, gboolean value);
/* [x, z] or [x, y]; left out unless both are known. */
void hs_json_text_vec2(hs_json_text *json, const char *key, hs_vec2 at);
/* [x, y, z]; [x, y] where z is not known; left out where nothing is. */
void hs_json_text_vec3(hs_json_text *json, const char *key, hs_vec3 at);
/* A tree as it is, its keys in their order. */
void hs_json_text_node(hs_json_text *json, const char *key, JsonNode *node);

#endif
