#!/bin/sh
# packages.sh build|test|sound [tell]: makes sure that the compiler and the libraries are there that the program needs (build), its tests too
# (test), or what makes a passage audible (sound): installs what is missing with apt when it may, else names it. `tell` only names it.
set -u
cc=${CC:-cc}
missing=""
have() { command -v "$1" >/dev/null 2>&1; }
need() { missing="$missing $1"; }
xml=$(pkg-config --cflags libxml-2.0 2>/dev/null || xml2-config --cflags 2>/dev/null)
# The compiler may be several words ('ccache gcc').
compiles() { $cc $xml -x c -fsyntax-only - >/dev/null 2>&1; }
header() { printf '#include <stddef.h>\n#include <stdio.h>\n#include <%s>\nint main(void){return 0;}\n' "$1" | compiles; }

have "${cc%% *}" || need gcc
have ar && have objcopy || need binutils
if [ -z "$missing" ] && ! header stdlib.h; then need libc6-dev; fi
header libxml/parser.h || need libxml2-dev
header zlib.h || need zlib1g-dev
header ini.h || need libinih-dev
header csv.h || need libcsv-dev
header sqlite3.h || need libsqlite3-dev
if [ "$1" = test ]; then
    header CUnit/Basic.h || need libcunit1-dev
    have xmllint || need libxml2-utils
    have pkg-config || need pkg-config
    have "${CXX:-c++}" || need g++
fi
if [ "$1" = sound ]; then
    header fluidsynth.h || need libfluidsynth-dev
    header mysofa.h || need libmysofa-dev
    header sndfile.h || need libsndfile1-dev
    header fftw3.h || need libfftw3-dev
    header ebur128.h || need libebur128-dev
    have pkg-config || need pkg-config
    ls /usr/share/sounds/sf[23]/* /usr/share/soundfonts/* >/dev/null 2>&1 || need timgm6mb-soundfont
fi
[ -z "$missing" ] && exit 0

if [ "${2:-}" != tell ] && have apt-get; then
    as=""
    [ "$(id -u)" = 0 ] || { sudo -n true 2>/dev/null && as="sudo -n"; }
    if [ "$(id -u)" = 0 ] || [ -n "$as" ]; then
        echo "Installing what is missing:$missing"
        $as apt-get update -qq >/dev/null && $as env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null && exit 0
        echo "The packages could not be installed." >&2
    fi
fi
fedora="" arch=""
for name in $missing; do
    case $name in
    gcc | binutils) set -- "$name" "$name" ;;
    libc6-dev) set -- glibc-devel glibc ;;
    libxml2-dev) set -- libxml2-devel libxml2 ;;
    zlib1g-dev) set -- zlib-devel zlib ;;
    libinih-dev) set -- inih-devel libinih ;;
    libcsv-dev) set -- libcsv-devel libcsv ;;
    libsqlite3-dev) set -- sqlite-devel sqlite ;;
    libcunit1-dev) set -- CUnit-devel cunit ;;
    libxml2-utils) set -- libxml2 libxml2 ;;
    pkg-config) set -- pkgconf pkgconf ;;
    g++) set -- gcc-c++ gcc ;;
    libfluidsynth-dev) set -- fluidsynth-devel fluidsynth ;;
    libmysofa-dev) set -- libmysofa-devel libmysofa ;;
    libsndfile1-dev) set -- libsndfile-devel libsndfile ;;
    libfftw3-dev) set -- fftw-devel fftw ;;
    libebur128-dev) set -- libebur128-devel libebur128 ;;
    timgm6mb-soundfont) set -- fluid-soundfont-gm soundfont-fluid ;;
    esac
    fedora="$fedora $1" arch="$arch $2"
done
cat >&2 <<EOT
To build this, what follows has to be installed first:
  Debian, Ubuntu:  sudo apt-get install$missing
  Fedora:          sudo dnf install$fedora
  Arch:            sudo pacman -S$arch
EOT
exit 1
