#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Every C file is laid out by clang-format 14 with the project's own .clang-format.
cd "$(dirname "$0")/../.." || exit 1
find src tests -name '*.[ch]' ! -name 'words_*.h' -print0 | xargs -0 clang-format-14 --dry-run -Werror --style=file
