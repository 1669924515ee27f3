/* SPDX-License-Identifier: GPL-3.0-or-later */
WORD(assume_time, N_("The time of this leg is not given: {0:s}, from its length at 0.8 m/s for a carry and 0.35 m/s otherwise, at least 1 s."))
WORD(assume_hands, N_("Hands on this grip: {0}. Two where it is its bearer's only grip, else one."))
WORD(assume_coupling, N_("How well the hand holds here is not given: taken as fair."))
WORD(assume_reach, N_("Reach is not given: {0:m} from the ankles to the hands, estimated as 20 cm (25 cm for hands below 25 cm) plus the distance from the hands to the load's near face."))
WORD(assume_walking, N_("Walking adds to the weight carried: 1 + 0.2 (v / 1.5 m/s)², and 1.6 on a leg over risers."))
WORD(assume_sketched, N_("The height of this point was sketched freehand and not typed: {0:cm} either way in the doubt."))
