/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  how does the window start?
 * Answer:    hs_app_run(): the GTK application, its options, accelerators and style.
 * Not here:  the command line without a window (cli/). */
#ifndef HS_APPLICATION_H
#define HS_APPLICATION_H

/* handspike [FILE...]; for the documentation: --window-picture OUT.png [--size WxH] [--page start|work|lesson]
 * [--select CHECK] [--moment SECONDS] [--dark] FILE. Returns the exit status. */
int hs_app_run(int argc, char **argv);

#endif
