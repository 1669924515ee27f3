#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# cppcheck over core, model and draw; the app goes without (GTK's macros).
cd "$(dirname "$0")/../.." || exit 1
includes=$(find src/core src/model src/draw -type d | sed 's/^/-I /' | tr '\n' ' ')
# shellcheck disable=SC2086
cppcheck --quiet --std=c11 --library=gtk --enable=warning,performance,portability --error-exitcode=1 --inline-suppr \
    --suppress=missingInclude --suppress=missingIncludeSystem --suppress=unknownMacro --suppress=internalAstError \
    --suppress=syntaxError --suppress=preprocessorErrorDirective -j 2 $includes src/core src/model src/draw
