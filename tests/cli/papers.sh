#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# papers.sh PROGRAM EXAMPLES   prints sheet, handout, side view and text report of every worked example, in both paper sizes and
# both languages by turns. Fails where one is not printed; what it is for is a program built with the sanitizers, which ends at a fault.
set -u
program=$1 examples=$2 failed=0 n=0
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT

# try COMMAND...   the program must end with 0
try() {
    "$program" "$@" >"$out/text" 2>"$out/log" || {
        echo "FAIL: $*"
        tail -n 40 "$out/log"
        failed=$((failed + 1))
    }
}

for file in "$examples"/*.json; do
    case $((n % 2)) in 0) paper=a4 lang=en answers=;; *) paper=letter lang=de answers=--answers;; esac
    option=$(/usr/bin/python3 -c 'import json, sys; print(json.load(open(sys.argv[1]))["options"][0]["id"])' "$file")
    n=$((n + 1))
    try assess "$file"
    try sheet "$file" -o "$out/sheet.pdf" --paper $paper --lang $lang
    try handout "$file" -o "$out/handout.pdf" $answers
    for form in svg png pdf; do
        try draw "$file" -o "$out/view.$form" --option "$option" --at 1
    done
    for made in sheet.pdf handout.pdf view.svg view.png view.pdf; do
        [ -s "$out/$made" ] || { echo "FAIL: $file has no $made"; failed=$((failed + 1)); }
        rm -f "$out/$made"
    done
done
echo "$n documents, $failed failed"
[ "$n" -gt 0 ] && [ "$failed" = 0 ]
