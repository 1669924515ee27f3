#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Catalogues are well formed, complete enough to compile, and keep every placeholder of the sentence.
cd "$(dirname "$0")/../.." || exit 1
for language in $(grep -v '^#' po/LINGUAS); do
    msgfmt --check --statistics -o /dev/null "po/$language.po" || exit 1
done
python3 tests/lint/placeholders.py
