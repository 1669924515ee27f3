/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which fields has the document, of which kind, in which range?
 * Answer:    hs_object tables: every field once; reader and schema are made from them.
 * Not here:  rules across fields (rules.c), reading (reader.c). */
#ifndef HS_FIELDS_H
#define HS_FIELDS_H

#include "task.h"

#include <glib.h>

typedef enum {
    HS_KIND_NUMBER,  /* double */
    HS_KIND_PAIR,    /* two doubles */
    HS_KIND_VECTOR,  /* hs_vec3 */
    HS_KIND_STRING,  /* const char * */
    HS_KIND_BOOL,    /* hs_tri */
    HS_KIND_FLAG,    /* bool */
    HS_KIND_WORD,    /* enum int, 0 absent */
    HS_KIND_OBJECT,  /* struct inside, flag at aux when given */
    HS_KIND_INLINE,  /* an object whose members belong to the same struct */
    HS_KIND_LIST,    /* pointer to structs, count at aux */
    HS_KIND_STRINGS, /* list of words: pointer to strings, count at aux */
    HS_KIND_INT,     /* int, 0 absent */
    HS_KIND_PLACES,  /* list of [x, z]: pointer to hs_vec2, count at aux */
    HS_KIND_REF, /* id of another list: read as string into aux store, resolved by the reader */
    HS_KIND_REFS, /* list of ids */
    HS_KIND_EACH, /* number, or a list with null: double at offset, list at aux (reach_m of an option) */
    HS_KIND_STANCES, /* word, or a list of words */
    HS_KIND_MAP      /* object of numbers (site limits) */
} hs_kind;

typedef struct hs_object hs_object;

typedef struct {
    const char *key;
    hs_kind kind;
    gsize offset, aux;  /* of the member, of its count or flag */
    double least, most; /* of a number; of a list: how many entries */
    gboolean above;     /* least itself is not allowed */
    gboolean required;
    const char *const *words; /* NULL-terminated; word i has value i + 1 */
    const hs_object *object;  /* of an object or a list's items */
    gboolean is_zero;         /* a number that is 0 when absent; else absent is HS_ABSENT */
    gboolean is_told;         /* with is_zero: a warning says that 0 was taken */
    gboolean is_whole;        /* a number without a fraction */
    int otherwise;            /* a word's value when absent */
} hs_field;

#define HS_PLACES_MOST 2000

struct hs_object {
    const char *name;
    gsize size;             /* of the struct */
    const hs_field *fields; /* ends with key NULL */
};

extern const hs_object hs_object_document;

/* The key is one of the format; type may be NULL. */
gboolean hs_object_knows(const hs_object *type, const char *key);

/* Words of kind REF: which list an id belongs to; told by the field's words[0]: "workers", "suits", "effectors", "grips". */

#endif
