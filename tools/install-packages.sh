#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# install-packages.sh LIST...   installs the Debian packages of the lists in tools/ that are not there yet.
# Needs root (or sudo) and Debian 12; says so in one line when it cannot.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
wanted=
for list in "$@"; do
    wanted="$wanted $(cat "$here/packages-$list.txt")"
done
missing=
for package in $wanted; do
    dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'install ok installed' || missing="$missing $package"
done
[ -n "$missing" ] || exit 0
as_root=
if [ "$(id -u)" != 0 ]; then
    command -v sudo >/dev/null || { echo "install-packages: these packages are missing and root is needed:$missing" >&2; exit 1; }
    as_root=sudo
fi
export DEBIAN_FRONTEND=noninteractive
$as_root apt-get -o DPkg::Lock::Timeout=300 -qq update
# shellcheck disable=SC2086
$as_root apt-get -o DPkg::Lock::Timeout=300 -qq install -y --no-install-recommends $missing >/dev/null
