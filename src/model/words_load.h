/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sentences of the reasons in lists/reasons_load.def. {0:unit}: a number; {a}, {b}: a name. */
WORD(assumed_estimated, N_("How the mass is known is not given: taken as estimated."))
WORD(assumed_mass_tolerance, N_("The mass may be off by {0:kg}, by how it is known."))
WORD(assumed_on_line, N_("The supports stood on one line: the centre of gravity is taken to lie on it."))
WORD(weighing_agrees, N_("The weighing gives {0:kg}, the parts give {1:kg}; they differ by {2:kg} and the parts may be off by {3:kg}. The centre of gravity differs by {4:cm}. The weighing is used."))
WORD(weighing_differs, N_("The weighing gives {0:kg} and the parts give {1:kg}: a difference of {2:kg}, more than the {3:kg} that the parts may be off. The centre of gravity differs by {4:cm}. The weighing is used."))
WORD(weighing_fix, N_("Weigh again, or correct the parts: their masses have to add up to between {0:kg} and {1:kg}."))
WORD(slosh_near_drive, N_("The liquid in {a} swings {b} at {0:Hz}; the walk drives it at {1:Hz} ({2} times the step's {3:Hz}), only {4:pct} away. About {5:kg} of liquid is free to move."))
WORD(slosh_clear, N_("The liquid in {a} swings {b} at {0:Hz}; the nearest drive of the walk is at {1:Hz} ({2} times the step's {3:Hz}), {4:pct} away. About {5:kg} of liquid is free to move."))
WORD(slosh_no_surface, N_("The liquid in {a} has no free surface: it does not slosh."))
WORD(slosh_fix_depth, N_("Fill to {0:cm}, or walk at {1:Hz} steps, or fill to the brim and close it: then the liquid's swing is clear of the walk."))
WORD(slosh_fix_pace, N_("Walk at {0:Hz} steps, or fill to the brim and close it: then the liquid's swing is clear of the walk."))
WORD(slosh_fix_close, N_("Fill the container to the brim and close it, so that the liquid has no free surface."))
