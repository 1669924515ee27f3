#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# check.sh   installs what is missing, builds with warnings as errors, runs every lint and test, then the tests once more
# under the address and undefined-behaviour sanitizers. Ends with one line: N passed, N failed.
set -u
cd "$(dirname "$0")/.." || exit 1
sh tools/install-packages.sh build window test || exit 1
passed=0 failed=0
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT

# step NAME COMMAND...   one thing that passes or fails; its output is shown when it fails
step() {
    name=$1
    shift
    if "$@" >"$out/log" 2>&1; then
        passed=$((passed + 1))
        echo "ok    $name"
    else
        failed=$((failed + 1))
        echo "FAIL  $name"
        tail -n 60 "$out/log"
    fi
}

# suite NAME BUILD ARGUMENTS...   meson test; counts each test
suite() {
    name=$1 build=$2
    shift 2
    meson test -C "$build" --no-rebuild --print-errorlogs "$@" >"$out/log" 2>&1
    status=$?
    good=$(sed -n 's/^Ok: *\([0-9]*\).*/\1/p' "$out/log" | tail -n 1)
    bad=$(sed -n 's/^Fail: *\([0-9]*\).*/\1/p' "$out/log" | tail -n 1)
    late=$(sed -n 's/^Timeout: *\([0-9]*\).*/\1/p' "$out/log" | tail -n 1)
    skipped=$(sed -n 's/^Skipped: *\([0-9]*\).*/\1/p' "$out/log" | tail -n 1)
    passed=$((passed + ${good:-0}))
    failed=$((failed + ${bad:-0} + ${late:-0} + ${skipped:-0}))
    [ "$status" = 0 ] || [ "$((${bad:-0} + ${late:-0}))" != 0 ] || failed=$((failed + 1))
    [ "${good:-0}" -gt 0 ] || failed=$((failed + 1))
    if [ "$status" != 0 ] || [ "${skipped:-0}" != 0 ]; then
        tail -n 120 "$out/log"
    fi
    echo "$name: ${good:-0} ok, ${bad:-0} failed, ${late:-0} timed out, ${skipped:-0} skipped (a skipped test counts as failed here)"
}

export LC_ALL=C.UTF-8
for lint in layers heads units lists tour limits_docs; do
    step "lint $lint" python3 tests/lint/$lint.py
done
step "format" sh tests/lint/format.sh
step "cppcheck" sh tests/lint/cppcheck.sh
step "translations" sh tests/lint/translations.sh

rm -rf build-check build-sanitized
step "set up" meson setup build-check -Dwerror=true -Dcomparisons=enabled
step "build, warnings are errors" ninja -C build-check
suite "tests" build-check

step "set up, sanitized" meson setup build-sanitized -Db_sanitize=address,undefined -Db_lundef=false -Doptimization=1 \
    -Dcomparisons=enabled
step "build, sanitized" ninja -C build-sanitized
export ASAN_OPTIONS=fast_unwind_on_malloc=0:strict_string_checks=1
export UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1
export LSAN_OPTIONS="suppressions=$PWD/tests/support/lsan.supp:print_suppressions=0"
# The long ones ask the same program as the other CLI tests, a hundred times over; the window runs unsanitized above.
suite "tests, sanitized" build-sanitized --timeout-multiplier 6 --no-suite long --no-suite gui
step "papers, sanitized" sh tests/cli/papers.sh build-sanitized/src/handspike data/examples
echo
echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
