/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how high is the walking surface, where are risers, how steep is it?
 * Answer:    hs_floor_* on the site's list of points; level at its ends beyond them; level at 0 without points.
 * Not here:  what stands on it (obstacles), where the feet are (place.c). */
#include "floor.h"

#include "units.h"

#define FLIGHT_STEP_m                                                                          \
    0.6 /* risers nearer than this belong to one flight: file format, section Motion */

static bool
is_riser(const hs_site *site, int i)
{
    return site->floor[i + 1].x - site->floor[i].x <= HS_SAME_PLACE_m &&
           fabs(site->floor[i + 1].y - site->floor[i].y) > HS_SAME_PLACE_m;
}

double
hs_floor_height_m(const hs_site *site, double x_m)
{
    int i = site->n_floor - 1;

    if (site->n_floor == 0)
        return 0.0;
    /* The last point at or before x: at a riser that is the later one. */
    while (i >= 0 && !(site->floor[i].x <= x_m + HS_SAME_PLACE_m))
        i--;
    if (i < 0)
        return site->floor[0].y;
    if (i == site->n_floor - 1)
        return site->floor[i].y;
    double run_m = site->floor[i + 1].x - site->floor[i].x;

    if (run_m <= HS_SAME_PLACE_m)
        return site->floor[i + 1].y;
    double u = fmin(fmax((x_m - site->floor[i].x) / run_m, 0.0), 1.0);

    return site->floor[i].y + u * (site->floor[i + 1].y - site->floor[i].y);
}

double
hs_floor_slope_rad(const hs_site *site, double x_m)
{
    for (int i = 0; i + 1 < site->n_floor; i++) {
        double run_m = site->floor[i + 1].x - site->floor[i].x;

        if (run_m > HS_SAME_PLACE_m && x_m >= site->floor[i].x - HS_SAME_PLACE_m &&
            x_m < site->floor[i + 1].x - HS_SAME_PLACE_m)
            return atan2(site->floor[i + 1].y - site->floor[i].y, run_m);
    }
    return 0.0;
}

double
hs_floor_riser_m(const hs_site *site, double from_x_m, double to_x_m)
{
    double least = fmin(from_x_m, to_x_m), most = fmax(from_x_m, to_x_m), height_m = 0.0;

    for (int i = 0; i + 1 < site->n_floor; i++)
        if (is_riser(site, i) && site->floor[i].x >= least - HS_SAME_PLACE_m &&
            site->floor[i].x <= most + HS_SAME_PLACE_m)
            height_m = fmax(height_m, fabs(site->floor[i + 1].y - site->floor[i].y));
    return height_m;
}

int
hs_floor_n_risers(const hs_site *site, double from_x_m, double to_x_m, double least_m)
{
    double least = fmin(from_x_m, to_x_m), most = fmax(from_x_m, to_x_m);
    int n = 0;

    for (int i = 0; i + 1 < site->n_floor; i++)
        if (is_riser(site, i) && site->floor[i].x >= least - HS_SAME_PLACE_m &&
            site->floor[i].x <= most + HS_SAME_PLACE_m &&
            fabs(site->floor[i + 1].y - site->floor[i].y) > least_m)
            n++;
    return n;
}

/* One flight: its first and last riser (indices of the lower-numbered floor point), same direction throughout. */
typedef struct {
    int first, last, n;
    double going_m; /* from the riser at the foot to the next */
    bool rises;
} flight;

static flight
flight_from(const hs_site *site, int i)
{
    flight found = {i, i, 1, 0.0, site->floor[i + 1].y > site->floor[i].y};
    int at = i;

    for (int j = i + 1; j + 1 < site->n_floor; j++) {
        if (!is_riser(site, j))
            continue;
        if (site->floor[j].x - site->floor[at].x > FLIGHT_STEP_m ||
            (site->floor[j + 1].y > site->floor[j].y) != found.rises)
            break;
        if (found.n == 1 || !found.rises)
            found.going_m = site->floor[j].x - site->floor[at].x;
        at = found.last = j;
        found.n++;
    }
    return found;
}

double
hs_floor_line_m(const hs_site *site, double x_m)
{
    for (int i = 0; i + 1 < site->n_floor;) {
        if (!is_riser(site, i)) {
            i++;
            continue;
        }
        flight f = flight_from(site, i);

        if (f.n >= 2) {
            /* From the floor one going before the nosing at the foot to the nosing at the top. */
            hs_vec2 a = {site->floor[f.first].x, site->floor[f.first].y};
            hs_vec2 b = {site->floor[f.last].x, site->floor[f.last + 1].y};

            if (f.rises)
                a.x -= f.going_m;
            else
                b.x += f.going_m;
            if (x_m >= a.x && x_m <= b.x)
                return a.y + (b.y - a.y) * (x_m - a.x) / (b.x - a.x);
        }
        i = f.last + 1;
    }
    return hs_floor_height_m(site, x_m);
}

double
hs_floor_steepest_rad(const hs_site *site, double from_x_m, double to_x_m)
{
    double least = fmin(from_x_m, to_x_m), most = fmax(from_x_m, to_x_m), steepest_rad = 0.0;

    for (int i = 0; i + 1 < site->n_floor; i++) {
        double run_m = site->floor[i + 1].x - site->floor[i].x;

        if (run_m > HS_SAME_PLACE_m && site->floor[i + 1].x > least && site->floor[i].x < most)
            steepest_rad =
                fmax(steepest_rad, fabs(atan2(site->floor[i + 1].y - site->floor[i].y, run_m)));
    }
    return steepest_rad;
}
