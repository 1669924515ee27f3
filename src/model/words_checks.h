/* SPDX-License-Identifier: GPL-3.0-or-later */
/* clang-format off */
/* Every check of lists/checks.def once: its name on screen and sheet, and a line that explains it. */
CHECK_WORDS(share, N_("Largest share"),
            N_("The greatest vertical force that one bearer of a crew has on the load, against the team rule chosen."))
CHECK_WORDS(load_polygon, N_("Load within its grips"),
            N_("Whether the resultant passes between the grips; where it does not, somebody must hold a couple."))
CHECK_WORDS(load_weighing, N_("Parts against weighing"),
            N_("How far the scale readings differ from the mass and centre of gravity of the parts."))
CHECK_WORDS(grip_hold, N_("Hold at the grips"),
            N_("The squeeze or force that every grip needs, against hands, effector and what the load may take."))
CHECK_WORDS(lift_niosh_1994, N_("Lifting index, single task"),
            N_("Mass over the recommended weight of the revised lifting equation; made for one person without a suit."))
CHECK_WORDS(lift_niosh_composite, N_("Lifting index, all legs"),
            N_("The composite index where a cycle has more than one lifting or lowering leg."))
CHECK_WORDS(lift_iso_11228_1, N_("Lifting and carrying, ISO 11228-1"),
            N_("Mass against the international standard's recommended limits for lifting and carrying."))
CHECK_WORDS(lift_en_1005_2, N_("Handling at machinery, EN 1005-2"),
            N_("Risk index of the European standard for manual handling of machinery and its parts."))
CHECK_WORDS(lift_mil_std_1472, N_("Design weight, MIL-STD-1472"),
            N_("Mass against the design weight limits of the military standard for human engineering."))
CHECK_WORDS(lift_gb_guideline, N_("Guideline figures, Great Britain"),
            N_("Mass against the British guideline figures by height and reach, which are no limits in law."))
CHECK_WORDS(spine_compression, N_("Low back, compression"),
            N_("Force along the spine at the lowest disc (L5/S1), from the moment that back muscles must hold."))
CHECK_WORDS(spine_shear, N_("Low back, shear"),
            N_("Force across the spine at the lowest disc (L5/S1)."))
CHECK_WORDS(strength, N_("Strength of the joints"),
            N_("The largest joint moment over the strength that most people of the worker's sex have there."))
CHECK_WORDS(balance, N_("Balance"),
            N_("Where all weights meet the floor, against the part of the soles on which a person can stand."))
CHECK_WORDS(suit_rating, N_("Suit's rating"),
            N_("Force on the suit's arms against the payload that its maker states at this reach and height."))
CHECK_WORDS(suit_scope, N_("Suit fits wearer and place"),
            N_("The wearer's size, stairs, slope, temperature and wet, against what the suit's data allow."))
CHECK_WORDS(suit_power_loss, N_("Power lost"),
            N_("What happens where the suit loses its power: seconds that the load is held against seconds needed."))
CHECK_WORDS(suit_energy, N_("Battery"),
            N_("Energy that the work takes from the suit's battery, less the reserve."))
CHECK_WORDS(hold_endurance, N_("Holding still"),
            N_("How long the load is held, against how long the most loaded joint can hold."))
CHECK_WORDS(placing, N_("Precise placing"),
            N_("Time that it takes to meet studs, pins or rails, against the time that there is."))
CHECK_WORDS(slosh, N_("Liquid that moves"),
            N_("Frequency of the liquid in a part-filled container against that of the steps, and what a tilt moves."))
CHECK_WORDS(floor_load, N_("Load on the floor"),
            N_("Pressure under one sole and the weight at one place, against what the floor is rated for."))
CHECK_WORDS(floor_friction, N_("Grip of the floor"),
            N_("Friction that the feet need, against the floor's."))
CHECK_WORDS(route_clearance, N_("Room on the way"),
            N_("Headroom, width, openings, corners and obstacles against the load, the bearers and the suit."))
CHECK_WORDS(route_sight, N_("Sight over the load"),
            N_("How much of the floor ahead the load hides from the one who walks behind it."))
CHECK_WORDS(site_wind, N_("Wind on the load"),
            N_("Force of the highest gust worked in on the load's face, against what the bearers can hold."))
CHECK_WORDS(site_heat, N_("Heat and cold"),
            N_("Temperature at the place, against what work of this rate allows."))
CHECK_WORDS(day_mass, N_("Mass moved in the shift"),
            N_("All that one bearer moves in the shift, against the published cumulative limit."))
CHECK_WORDS(day_energy, N_("Energy of the work"),
            N_("Metabolic rate of the work against what can be kept up for its duration."))
CHECK_WORDS(day_spine, N_("Low back over the shift"),
            N_("Compression times time over the shift: for comparing options only."))
CHECK_WORDS(loss_bearer, N_("One bearer lets go"),
            N_("Peak share of those who stay when another lets go; it compares crews and decides no verdict."))
CHECK_WORDS(rescue, N_("Rescue"),
            N_("Who can release the wearer from the suit, and how fast."))
CHECK_WORDS(roles, N_("Roles filled"),
            N_("Whether everything that the second person did besides lifting is done by somebody."))
CHECK_WORDS(gates, N_("Gates"),
            N_("Conditions that must be met before the work begins: health advice, drill, and what else was entered."))
CHECK_WORDS(data, N_("Facts missing"),
            N_("What has no default and was not entered, so that it cannot be judged."))
/* clang-format on */
