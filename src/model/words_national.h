/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  what are the sets that ship called?
 * Answer:    a title and a wording for each set of lists/national_sets.def and for that by age and sex; both stand in the set's file and are translated where they show.
 * Not here:  the figures (core). */
/* clang-format off */
NATIONAL_WORDS("australia-1990", N_("Australia, code of 1990 (remembered)"), N_("What nobody was to move alone. Remembered, not read: unconfirmed. Later codes name no figure."))
NATIONAL_WORDS("austria", N_("Austria, accident insurer's leaflet"), N_("Orientation values for repeated lifting, ages 19 to 45; read in a restatement. For one person without a suit."))
NATIONAL_WORDS("chile", N_("Chile, law"), N_("Greatest masses for one person; read in weak restatements only."))
NATIONAL_WORDS("china", N_("China, GB 12330-90"), N_("One load carried in the hands, and a day's mass; not above 10 degrees of slope. Its limits of mass times distance are not asked."))
NATIONAL_WORDS("colombia", N_("Colombia, rule on handling"), N_("Greatest masses for one person; read in weak restatements only."))
NATIONAL_WORDS("czech-republic-frequent", N_("Czech Republic, order 361/2007, frequent"), N_("Frequent lifting and carrying, and the mass of a shift; read in restatements. Law: for one person without a suit."))
NATIONAL_WORDS("czech-republic-occasional", N_("Czech Republic, order 361/2007, now and then"), N_("Lifting and carrying of up to 30 minutes a shift in all, and the mass of a shift; read in restatements. Law: for one person without a suit."))
NATIONAL_WORDS("france-acceptable", N_("France, NF X35-109, acceptable"), N_("The mass that the standard calls acceptable, for men and women, and the mass of a day as revised in 2011; read in restatements."))
NATIONAL_WORDS("france-at-most", N_("France, NF X35-109, at most"), N_("The greatest mass, under conditions that the standard names, and the mass of a day as revised in 2011; read in restatements."))
NATIONAL_WORDS("france-labour-code", N_("France, labour code"), N_("Masses that men may be asked to carry by hand. Law, no acceptable mass; nothing on women was read."))
NATIONAL_WORDS("germany-1981-frequent", N_("Germany, table of 1981, frequent"), N_("Recommended masses for lifting and carrying by Hettinger, frequent; read in a restatement. A later copy has other figures for men over 45."))
NATIONAL_WORDS("germany-1981-occasional", N_("Germany, table of 1981, now and then"), N_("Recommended masses for lifting and carrying by Hettinger, now and then; read in a restatement. A later copy has other figures for men over 45."))
NATIONAL_WORDS("germany-insurer", N_("Germany, accident insurer"), N_("Orientation values for about 250 lifts or half an hour of carrying a day; carrying in front or on one side. Read in a publication of the insurer."))
NATIONAL_WORDS("germany-later-often", N_("Germany, later copy of the table, often"), N_("The table of 1981 as a later copy has it, for work that comes often. The two disagree for men over 45."))
NATIONAL_WORDS("germany-later-repeated", N_("Germany, later copy of the table, repeated"), N_("The table of 1981 as a later copy has it, for repeated work. The two disagree for men over 45."))
NATIONAL_WORDS("germany-later-seldom", N_("Germany, later copy of the table, seldom"), N_("The table of 1981 as a later copy has it, for work that comes seldom. The two disagree for men over 45."))
NATIONAL_WORDS("ilo-1967", N_("ILO recommendation of 1967 (remembered)"), N_("The greatest mass for men. Remembered, not read: unconfirmed."))
NATIONAL_WORDS("italy", N_("Italy, reference masses"), N_("Reference masses by sex and age in good conditions; read in restatements."))
NATIONAL_WORDS("japan", N_("Japan, guideline against low back pain"), N_("A share of the worker's own body mass, as quoted in 2025 by a study that finds it too high for heavy men."))
NATIONAL_WORDS("new-caledonia", N_("New Caledonia, order of 1993"), N_("Masses carried by hand without the physician's consent; read in an ILO comment of 1995. Law, no acceptable mass."))
NATIONAL_WORDS("poland", N_("Poland, regulation of 2000, amended 2017"), N_("Constant work, or now and then (at most four times an hour and four hours a shift), lifting above the shoulder, carrying beyond 25 m; energy of a shift from literature. Ways that rise more than 4 m and loads of a team have figures of their own that are not asked."))
NATIONAL_WORDS("russia", N_("Russia, norms for lifting by hand"), N_("All shift, or beside other work up to twice an hour; read in a restatement."))
NATIONAL_WORDS("spain-general", N_("Spain, technical guide, general"), N_("Greatest mass in good conditions; read in a restatement."))
NATIONAL_WORDS("spain-protected", N_("Spain, technical guide, protected workers"), N_("Greatest mass for women, the young and the old, or to protect nearly all; read in a restatement."))
NATIONAL_WORDS("spain-trained", N_("Spain, technical guide, trained workers"), N_("Greatest mass for trained and fit workers, by exception; read in a restatement."))
NATIONAL_WORDS("spine-age-sex", N_("Low back by age and sex (remembered)"), N_("Compression of the low back by the Dortmund recommendations, from 20 years. Remembered, not read: unconfirmed. Between the rows the next older one."))
NATIONAL_WORDS("switzerland", N_("Switzerland, guide values"), N_("By sex and age for lifting now and then close to the body, and one figure each for more than four times an hour; read in restatements."))
NATIONAL_WORDS("uk-defence", N_("United Kingdom, defence standard 00-25"), N_("Carrying, and lifting to just below the waist (asked up to the worker's knuckle height); read in a restatement."))
/* clang-format on */
