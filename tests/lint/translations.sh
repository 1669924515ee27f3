#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Every file with a sentence is listed in po/POTFILES; every catalogue is well formed, translates each sentence that the sources
# have now, none only roughly ("fuzzy"), and keeps every placeholder. Exit status 1 when one of these fails.
cd "$(dirname "$0")/../.." || exit 1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
faults=0

# 1. The list of files: marked sentences in C, tables (.def) and .ui files.
{
    find src \( -name '*.[ch]' -o -name '*.def' \) ! -name translate.h -exec grep -lE '\b(N_|C_|_|g_dngettext) ?\(' {} +
    find ui -name '*.ui' -exec grep -l 'translatable="yes"' {} +
    find data ui -name '*.in' 2>/dev/null
} | sort > "$work/marked"
grep -v '^#' po/POTFILES | sort > "$work/listed"
for file in $(comm -23 "$work/marked" "$work/listed"); do
    echo "po/POTFILES: $file has sentences and is not listed"
    faults=1
done
for file in $(cat "$work/listed"); do
    [ -f "$file" ] || { echo "po/POTFILES: $file does not exist"; faults=1; }
done
[ "$faults" = 0 ] || exit 1

# 2. The sentences as they are now, against each catalogue. The keywords are those of meson's preset "glib".
xgettext --files-from="$work/listed" --from-code=UTF-8 --add-comments=Translators -k_ -kN_ -kC_:1c,2 -kg_dngettext:2,3 \
    -o "$work/now.pot" 2> "$work/warnings" || { cat "$work/warnings"; exit 1; }
for language in $(grep -v '^#' po/LINGUAS); do
    msgfmt --check -o /dev/null "po/$language.po" || faults=1
    msgmerge --quiet --no-fuzzy-matching -o "$work/$language.po" "po/$language.po" "$work/now.pot" || exit 1
    msgattrib --untranslated --no-obsolete --no-wrap "$work/$language.po" > "$work/open"
    msgattrib --only-fuzzy --no-obsolete --no-wrap "po/$language.po" > "$work/rough"
    for kind in open rough; do
        n=$(grep -c '^msgid "..*"$' "$work/$kind")
        if [ "$n" != 0 ]; then
            echo "po/$language.po: $n sentences without a good translation ($kind):"
            grep '^msgid "..*"$' "$work/$kind"
            faults=1
        fi
    done
    echo "$language: $(msgfmt --statistics -o /dev/null "$work/$language.po" 2>&1)"
done

# 3. The same {0:kg} and {a} on both sides.
python3 tests/lint/placeholders.py || faults=1
exit $faults
