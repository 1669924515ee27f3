/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does a survey table become documents?
 * Answer:    a row's well-known columns make a box with handles, a route and a crew; a column that is a JSON path is set there.
 * Not here:  what is allowed at a path (document.h), assessing (survey.c). */
#include "csv.h"

#include "edit.h"
#include "json_text.h"
#include "translate.h"

#include <math.h>
#include <string.h>

#define MOST_CREW 4

/* Well-known columns; docs/survey-table.md says what each means. */
typedef enum {
    COL_TITLE,
    COL_PLACE,
    COL_TASK,
    COL_MASS,
    COL_KNOWN,
    COL_LENGTH,
    COL_WIDTH,
    COL_HEIGHT,
    COL_GRIP_HEIGHT,
    COL_GRIP_KIND,
    COL_COUPLING,
    COL_HANDS_START,
    COL_HANDS_END,
    COL_HANDS_CARRY,
    COL_DISTANCE,
    COL_REACH,
    COL_REACH_END,
    COL_TURN,
    COL_TURN_END,
    COL_PRECISE,
    COL_CREW,
    COL_CYCLES,
    COL_HOURS,
    COL_RECOVERY,
    COL_SEX,
    N_COLUMNS,
    COL_PATH = N_COLUMNS
} column;

typedef enum {
    KIND_TEXT,
    KIND_NUMBER,
    KIND_FLAG
} column_kind;

static const struct {
    const char *name;
    column_kind kind;
    gboolean is_required;
} columns[N_COLUMNS] = {
    [COL_TITLE] = {"title", KIND_TEXT, FALSE},
    [COL_PLACE] = {"place", KIND_TEXT, FALSE},
    [COL_TASK] = {"task", KIND_TEXT, FALSE},
    [COL_MASS] = {"mass_kg", KIND_NUMBER, TRUE},
    [COL_KNOWN] = {"known", KIND_TEXT, FALSE},
    [COL_LENGTH] = {"length_m", KIND_NUMBER, TRUE},
    [COL_WIDTH] = {"width_m", KIND_NUMBER, TRUE},
    [COL_HEIGHT] = {"height_m", KIND_NUMBER, TRUE},
    [COL_GRIP_HEIGHT] = {"grip_height_m", KIND_NUMBER, FALSE},
    [COL_GRIP_KIND] = {"grip_kind", KIND_TEXT, FALSE},
    [COL_COUPLING] = {"coupling", KIND_TEXT, FALSE},
    [COL_HANDS_START] = {"hand_height_start_m", KIND_NUMBER, TRUE},
    [COL_HANDS_END] = {"hand_height_end_m", KIND_NUMBER, TRUE},
    [COL_HANDS_CARRY] = {"hand_height_carry_m", KIND_NUMBER, FALSE},
    [COL_DISTANCE] = {"distance_m", KIND_NUMBER, FALSE},
    [COL_REACH] = {"reach_m", KIND_NUMBER, FALSE},
    [COL_REACH_END] = {"reach_end_m", KIND_NUMBER, FALSE},
    [COL_TURN] = {"turn_deg", KIND_NUMBER, FALSE},
    [COL_TURN_END] = {"turn_end_deg", KIND_NUMBER, FALSE},
    [COL_PRECISE] = {"precise", KIND_FLAG, FALSE},
    [COL_CREW] = {"crew", KIND_NUMBER, TRUE},
    [COL_CYCLES] = {"cycles_per_hour", KIND_NUMBER, FALSE},
    [COL_HOURS] = {"hours", KIND_NUMBER, FALSE},
    [COL_RECOVERY] = {"recovery_h", KIND_NUMBER, FALSE},
    [COL_SEX] = {"sex", KIND_TEXT, FALSE},
};

typedef struct {
    GPtrArray *header; /* char *: the cells of the first row */
    int *column_of;    /* per cell: a well-known column or COL_PATH */
    char separator;
    GPtrArray *faults;
    guint row; /* of the table, the header is row 1 */
    double number[N_COLUMNS];
    const char *text[N_COLUMNS];
} table;

static void
add_fault(table *in, const char *column_name, char *text)
{
    hs_fault *fault = g_new0(hs_fault, 1);

    /* Translators: a cell of a table, by its row and the name of its column */
    fault->path = *column_name != '\0' ? g_strdup_printf(_("row %u, %s"), in->row, column_name)
                                       : g_strdup_printf(_("row %u"), in->row);
    fault->text = text;
    g_ptr_array_add(in->faults, fault);
}

/* One row from *at on (quotes as in RFC 4180); *at moves behind its end. NULL at the end of the text. */
static GPtrArray *
read_row(const char **at, const char *end, char separator)
{
    GPtrArray *cells;
    g_autoptr(GString) cell = NULL;
    const char *s = *at;
    gboolean quoted = FALSE;

    if (s >= end)
        return NULL;
    cells = g_ptr_array_new_with_free_func(g_free);
    cell = g_string_new(NULL);
    for (; s < end && (quoted || *s != '\n'); s++) {
        if (quoted && *s == '"' && s + 1 < end && s[1] == '"')
            g_string_append_c(cell, *++s);
        else if (*s == '"' && (quoted || cell->len == 0))
            quoted = !quoted;
        else if (!quoted && *s == separator) {
            g_ptr_array_add(cells, g_strstrip(g_strdup(cell->str)));
            g_string_truncate(cell, 0);
        } else {
            g_string_append_c(cell, *s);
        }
    }
    g_ptr_array_add(cells, g_strstrip(g_strdup(cell->str)));
    *at = s < end ? s + 1 : s;
    return cells;
}

static char
separator_of(const char *text, const char *end)
{
    static const char candidates[] = {',', ';', '\t'};
    gsize best_n = 0;
    char best = ',';

    for (gsize i = 0; i < sizeof candidates; i++) {
        gsize n = 0;

        for (const char *s = text; s < end && *s != '\n'; s++)
            n += *s == candidates[i] ? 1 : 0;
        if (n > best_n) {
            best_n = n;
            best = candidates[i];
        }
    }
    return best;
}

/* A point, or a comma where the comma does not part the cells. */
static gboolean
read_number(const table *in, const char *cell, double *ret_value)
{
    g_autofree char *plain = g_strdup(cell);
    char *end = NULL;

    if (in->separator != ',')
        g_strdelimit(plain, ",", '.');
    *ret_value = g_ascii_strtod(plain, &end);
    return *plain != '\0' && *end == '\0' && isfinite(*ret_value) &&
           strpbrk(plain, "xX") == NULL;
}

static gboolean
read_flag(const char *cell, gboolean *ret_value)
{
    *ret_value = g_ascii_strcasecmp(cell, "true") == 0 ||
                 g_ascii_strcasecmp(cell, "yes") == 0 || strcmp(cell, "1") == 0;
    return *ret_value || g_ascii_strcasecmp(cell, "false") == 0 ||
           g_ascii_strcasecmp(cell, "no") == 0 || strcmp(cell, "0") == 0;
}

static void
read_header(table *in)
{
    in->column_of = g_new0(int, in->header->len);
    for (guint i = 0; i < in->header->len; i++) {
        const char *name = g_ptr_array_index(in->header, i);

        in->column_of[i] = COL_PATH;
        for (int k = 0; k < N_COLUMNS; k++)
            if (strcmp(columns[k].name, name) == 0)
                in->column_of[i] = k;
        /* A path has a point or an index; anything else is a column mistyped. */
        if (in->column_of[i] == COL_PATH && strpbrk(name, ".[") == NULL)
            add_fault(
                in, name,
                g_strdup(
                    _("this is neither a column of the table nor a path of the file format")));
    }
}

static void
read_known_cells(table *in, const GPtrArray *cells)
{
    for (int k = 0; k < N_COLUMNS; k++) {
        in->number[k] = HS_ABSENT;
        in->text[k] = NULL;
    }
    for (guint i = 0; i < cells->len && i < in->header->len; i++) {
        const char *cell = g_ptr_array_index(cells, i);
        int k = in->column_of[i];
        gboolean flag = FALSE;

        if (k == COL_PATH || *cell == '\0')
            continue;
        in->text[k] = cell;
        if (columns[k].kind == KIND_NUMBER && !read_number(in, cell, &in->number[k]))
            add_fault(
                in, columns[k].name,
                g_strdup_printf(
                    _("“%s” is not a number; a plain number without unit is wanted"), cell));
        if (columns[k].kind == KIND_FLAG && !read_flag(cell, &flag))
            add_fault(in, columns[k].name,
                      g_strdup_printf(_("“%s” is not allowed; true or false is"), cell));
        if (columns[k].kind == KIND_FLAG)
            in->number[k] = flag ? 1.0 : 0.0;
    }
    for (int k = 0; k < N_COLUMNS; k++)
        if (columns[k].is_required && in->text[k] == NULL)
            add_fault(in, columns[k].name, g_strdup(_("this column is wanted and empty")));
}

static void
set_number(JsonObject *object, const char *key, double value)
{
    if (hs_has(value))
        json_object_set_double_member(object, key, value);
}

static void
set_text(JsonObject *object, const char *key, const char *text)
{
    if (text != NULL)
        json_object_set_string_member(object, key, text);
}

static JsonArray *
numbers(int n, const double *values)
{
    JsonArray *array = json_array_new();

    for (int i = 0; i < n; i++)
        json_array_add_double_element(array, values[i]);
    return array;
}

static double
grip_height_m(const table *in)
{
    return hs_or(in->number[COL_GRIP_HEIGHT], in->number[COL_HEIGHT] / 2.0);
}

/* Where a crew of n holds a box: one at both sides, two at the ends, three at two corners and an end, four at the corners.
 * In half lengths and half widths. */
static const struct {
    int crew, bearer;
    const char *id;
    double x, y;
} places[] = {
    {1, 0, "left", 0, 1},         {1, 0, "right", 0, -1},       {2, 0, "front", 1, 0},
    {2, 1, "rear", -1, 0},        {3, 0, "front", 1, 0},        {3, 1, "rear-left", -1, 1},
    {3, 2, "rear-right", -1, -1}, {4, 0, "front-left", 1, 1},   {4, 1, "front-right", 1, -1},
    {4, 2, "rear-left", -1, 1},   {4, 3, "rear-right", -1, -1},
};

static JsonObject *
make_grip(const table *in, gsize place)
{
    JsonObject *grip = json_object_new();
    double at_m[3] = {places[place].x * in->number[COL_LENGTH] / 2.0,
                      places[place].y * in->number[COL_WIDTH] / 2.0, grip_height_m(in)};

    json_object_set_string_member(grip, "id", places[place].id);
    json_object_set_array_member(grip, "at_m", numbers(3, at_m));
    json_object_set_string_member(
        grip, "kind", in->text[COL_GRIP_KIND] != NULL ? in->text[COL_GRIP_KIND] : "handle");
    set_text(grip, "coupling", in->text[COL_COUPLING]);
    return grip;
}

static JsonObject *
make_load(const table *in, int crew)
{
    JsonObject *load = json_object_new(), *part = json_object_new();
    JsonArray *parts = json_array_new(), *grips = json_array_new();
    double size_m[3] = {in->number[COL_LENGTH], in->number[COL_WIDTH], in->number[COL_HEIGHT]};
    double centre_m[3] = {0.0, 0.0, in->number[COL_HEIGHT] / 2.0};

    json_object_set_string_member(part, "id", "box");
    json_object_set_string_member(part, "shape", "box");
    json_object_set_array_member(part, "size_m", numbers(3, size_m));
    json_object_set_array_member(part, "centre_m", numbers(3, centre_m));
    set_number(part, "mass_kg", in->number[COL_MASS]);
    set_text(part, "known", in->text[COL_KNOWN]);
    json_array_add_object_element(parts, part);
    for (gsize i = 0; i < G_N_ELEMENTS(places); i++)
        if (places[i].crew == crew)
            json_array_add_object_element(grips, make_grip(in, i));
    json_object_set_array_member(load, "parts", parts);
    json_object_set_array_member(load, "grips", grips);
    return load;
}

static JsonObject *
add_point(JsonArray *points, const char *move, double x_m, double z_m)
{
    JsonObject *point = json_object_new();

    json_object_set_double_member(point, "x_m", x_m);
    /* Heights are sums of typed figures: 1 um keeps their last digit clean. */
    json_object_set_double_member(point, "z_m", rint(z_m * 1e6) / 1e6);
    json_object_set_string_member(point, "move", move);
    json_array_add_object_element(points, point);
    return point;
}

/* start, lift or lower to the carrying height, carry, lift or lower to the end: what is not needed is left out. */
static JsonArray *
make_points(const table *in)
{
    JsonArray *points = json_array_new();
    double base_m = grip_height_m(in), distance_m = hs_or(in->number[COL_DISTANCE], 0.0);
    double start_m = in->number[COL_HANDS_START], end_m = in->number[COL_HANDS_END],
           at_m = start_m;
    double carry_m = hs_or(in->number[COL_HANDS_CARRY], fmax(start_m, end_m));
    JsonObject *first = add_point(points, "start", 0.0, start_m - base_m), *last;

    if (distance_m > 0.0) {
        if (carry_m != at_m)
            add_point(points, carry_m > at_m ? "lift" : "lower", 0.0, carry_m - base_m);
        at_m = carry_m;
        add_point(points, "carry", distance_m, carry_m - base_m);
    }
    if (end_m != at_m)
        add_point(points, end_m > at_m ? "lift" : "lower", distance_m, end_m - base_m);
    last = json_array_get_object_element(points, json_array_get_length(points) - 1);
    json_object_set_boolean_member(first, "set_down", TRUE);
    json_object_set_boolean_member(last, "set_down", TRUE);
    set_number(first, "reach_m", in->number[COL_REACH]);
    set_number(last, "reach_m", hs_or(in->number[COL_REACH_END], in->number[COL_REACH]));
    set_number(first, "turn_deg", in->number[COL_TURN]);
    set_number(last, "turn_deg", in->number[COL_TURN_END]);
    if (in->number[COL_PRECISE] == 1.0)
        json_object_set_boolean_member(last, "precise", TRUE);
    for (guint i = 1; i + 1 < json_array_get_length(points); i++)
        set_number(json_array_get_object_element(points, i), "reach_m", in->number[COL_REACH]);
    return points;
}

static JsonObject *
make_bearer(int crew, int bearer)
{
    JsonObject *made = json_object_new();
    JsonArray *grips = json_array_new();
    g_autofree char *worker = g_strdup_printf("worker-%d", bearer + 1);
    char id[2] = {(char)('A' + bearer), '\0'};

    for (gsize i = 0; i < G_N_ELEMENTS(places); i++)
        if (places[i].crew == crew && places[i].bearer == bearer)
            json_array_add_string_element(grips, places[i].id);
    json_object_set_string_member(made, "id", id);
    json_object_set_string_member(made, "worker", worker);
    json_object_set_array_member(made, "grips", grips);
    return made;
}

static JsonArray *
make_workers(const table *in, int crew)
{
    JsonArray *workers = json_array_new();

    for (int i = 0; i < crew; i++) {
        JsonObject *worker = json_object_new();
        g_autofree char *id = g_strdup_printf("worker-%d", i + 1);

        json_object_set_string_member(worker, "id", id);
        set_text(worker, "sex", in->text[COL_SEX]);
        json_array_add_object_element(workers, worker);
    }
    return workers;
}

static JsonArray *
make_options(int crew)
{
    JsonArray *options = json_array_new(), *bearers = json_array_new();
    JsonObject *today = json_object_new();

    for (int i = 0; i < crew; i++)
        json_array_add_object_element(bearers, make_bearer(crew, i));
    json_object_set_string_member(today, "id", "today");
    json_object_set_boolean_member(today, "baseline", TRUE);
    json_object_set_array_member(today, "bearers", bearers);
    json_array_add_object_element(options, today);
    return options;
}

static JsonNode *
make_document(const table *in, int crew)
{
    JsonObject *root = json_object_new(), *about = json_object_new(),
               *route = json_object_new(), *work = json_object_new();
    JsonNode *node = json_node_new(JSON_NODE_OBJECT);

    json_object_set_string_member(root, "format", "handspike-assessment");
    json_object_set_int_member(root, "version", 1);
    set_text(about, "title", in->text[COL_TITLE]);
    set_text(about, "place", in->text[COL_PLACE]);
    set_text(about, "task", in->text[COL_TASK]);
    json_object_set_object_member(root, "about", about);
    json_object_set_object_member(root, "load", make_load(in, crew));
    json_object_set_array_member(route, "points", make_points(in));
    json_object_set_object_member(root, "route", route);
    set_number(work, "cycles_per_hour", in->number[COL_CYCLES]);
    set_number(work, "hours", in->number[COL_HOURS]);
    set_number(work, "recovery_h", in->number[COL_RECOVERY]);
    json_object_set_object_member(root, "work", work);
    json_object_set_array_member(root, "workers", make_workers(in, crew));
    json_object_set_array_member(root, "options", make_options(crew));
    json_node_take_object(node, root);
    return node;
}

/* The cells whose column is a path: a number, true or false, or a word. */
static hs_edit *
make_edit(const table *in, const GPtrArray *cells)
{
    hs_edit *edit = hs_edit_new("row");

    for (guint i = 0; i < cells->len && i < in->header->len; i++) {
        const char *cell = g_ptr_array_index(cells, i),
                   *path = g_ptr_array_index(in->header, i);
        double value;

        if (in->column_of[i] != COL_PATH || *cell == '\0')
            continue;
        if (read_number(in, cell, &value))
            hs_edit_set_number(edit, path, value);
        else if (strcmp(cell, "true") == 0 || strcmp(cell, "false") == 0)
            hs_edit_set_bool(edit, path, strcmp(cell, "true") == 0);
        else
            hs_edit_set_string(edit, path, cell);
    }
    return edit;
}

static void
take_faults(table *in, const GPtrArray *found)
{
    for (guint i = 0; i < found->len; i++) {
        const hs_fault *fault = g_ptr_array_index(found, i);

        if (!fault->is_warning)
            add_fault(in, fault->path, g_strdup(fault->text));
    }
}

/* The document with the cells of the path columns, checked. */
static hs_document *
finish(table *in, JsonNode *root, const GPtrArray *cells)
{
    g_autoptr(GPtrArray) found = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    g_autoptr(hs_document) plain = hs_document_from_node(root, TRUE, found);
    g_autoptr(hs_edit) edit = make_edit(in, cells);
    hs_document *made;
    hs_fault *fault = NULL;

    if (plain == NULL) {
        take_faults(in, found);
        return NULL;
    }
    made = hs_document_apply(plain, edit, TRUE, &fault);
    if (made == NULL) {
        if (fault != NULL)
            add_fault(in, fault->path, g_strdup(fault->text));
        g_clear_pointer(&fault, hs_fault_free);
        return NULL;
    }
    if (hs_document_task(made) == NULL) {
        take_faults(in, hs_document_faults(made));
        g_clear_pointer(&made, hs_document_unref);
    }
    return made;
}

static gboolean
is_blank(const GPtrArray *cells)
{
    for (guint i = 0; i < cells->len; i++)
        if (*(const char *)g_ptr_array_index(cells, i) != '\0')
            return FALSE;
    return TRUE;
}

static void
check_row(table *in, const GPtrArray *cells)
{
    double crew = in->number[COL_CREW];

    if (cells->len > in->header->len)
        add_fault(in, "",
                  g_strdup_printf(_("the row has %u cells, the header %u"), cells->len,
                                  in->header->len));
    if (hs_has(crew) && !(crew >= 1.0 && crew <= MOST_CREW && crew == floor(crew)))
        add_fault(in, "crew",
                  g_strdup_printf(_("a whole number from 1 to %d is allowed"), MOST_CREW));
    if (in->number[COL_HANDS_START] == in->number[COL_HANDS_END] &&
        !(in->number[COL_DISTANCE] > 0.0))
        add_fault(
            in, "distance_m",
            g_strdup(_("the load does not move: a distance or another end height is wanted")));
}

static void
convert_row(table *in, const GPtrArray *cells, GString *out)
{
    guint faults_before = in->faults->len;
    g_autoptr(JsonNode) root = NULL;
    g_autoptr(hs_document) document = NULL;
    hs_json_text json = {.out = out};

    read_known_cells(in, cells);
    check_row(in, cells);
    if (in->faults->len > faults_before)
        return;
    root = make_document(in, (int)in->number[COL_CREW]);
    document = finish(in, root, cells);
    if (document == NULL)
        return;
    hs_json_text_node(&json, NULL, hs_document_root(document));
    g_string_append_c(out, '\n');
}

char *
hs_csv_convert(const char *text, gsize length, GPtrArray *faults, gsize *ret_length)
{
    const char *end = text + length, *at = text;
    table in = {.faults = faults, .row = 1};
    g_autoptr(GString) out = g_string_new(NULL);
    GPtrArray *cells;

    if (!g_utf8_validate_len(text, length, NULL)) {
        add_fault(&in, "", g_strdup(_("the table is not UTF-8 text")));
        return NULL;
    }
    if (g_str_has_prefix(text, "\xef\xbb\xbf"))
        at += 3;
    in.separator = separator_of(at, end);
    in.header = read_row(&at, end, in.separator);
    if (in.header == NULL) {
        add_fault(&in, "", g_strdup(_("the table is empty: a header row is wanted")));
        return NULL;
    }
    read_header(&in);
    /* A bad header would make a fault of every row. */
    while (faults->len == 0 || in.row > 1) {
        in.row++;
        cells = read_row(&at, end, in.separator);
        if (cells == NULL)
            break;
        if (!is_blank(cells))
            convert_row(&in, cells, out);
        g_ptr_array_unref(cells);
    }
    g_ptr_array_unref(in.header);
    g_free(in.column_of);
    *ret_length = out->len;
    return faults->len == 0 ? g_string_free(g_steal_pointer(&out), FALSE) : NULL;
}

char *
hs_csv_convert_file(const char *path, GPtrArray *faults, gsize *ret_length, GError **error)
{
    g_autofree char *contents = NULL;
    gsize length = 0;

    /* g_file_get_contents() reads pipes too, when they have a name. */
    if (!g_file_get_contents(strcmp(path, "-") == 0 ? "/dev/stdin" : path, &contents, &length,
                             error))
        return NULL;
    return hs_csv_convert(contents, length, faults, ret_length);
}
