#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# try.sh   installs what is missing, builds, and does the main job: the window where there is a display; without one the
# report, the sheet (PDF) and a picture of the window (PNG) in out/.
set -eu
cd "$(dirname "$0")/.."
sh tools/install-packages.sh build
[ -f build/build.ninja ] || meson setup build >/dev/null
ninja -C build
example=$(ls data/examples/*.handspike.json | head -n 1)
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    exec ./build/src/handspike "$example"
fi
sh tools/install-packages.sh window
mkdir -p out
./build/src/handspike assess "$example" | tee out/report.txt
./build/src/handspike sheet "$example" -o out/sheet.pdf
bash tests/gui/display.sh -s 1600x1000 -- ./build/src/handspike --window-picture out/window.png --size 1600x1000 "$example"
echo
echo "No display here, so the window was drawn into a file. See out/report.txt, out/sheet.pdf, out/window.png"
