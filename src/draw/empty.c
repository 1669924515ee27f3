typedef int hs_empty_draw;
