#!/bin/sh
# Makes sure that a compiler and the libraries are there: installs what is missing with apt when it may, else names it.
set -u
missing=""
have() { command -v "$1" >/dev/null 2>&1; }
compiles() { printf '#include <%s>\nint main(void){return 0;}\n' "$1" | ${CC:-cc} -x c -fsyntax-only $(xml2-config --cflags 2>/dev/null) - >/dev/null 2>&1; }
need() { missing="$missing $1"; }

have "${CC:-cc}" || need gcc
have ar || need binutils
if have "${CC:-cc}" && printf '#include <stdio.h>\nint main(void){return 0;}\n' | ${CC:-cc} -x c -fsyntax-only - >/dev/null 2>&1; then :; else need libc6-dev; fi
have xml2-config && compiles libxml/parser.h || need libxml2-dev
have xmllint || need libxml2-utils
compiles zlib.h || need zlib1g-dev
compiles ini.h || need libinih-dev
printf '#include <stddef.h>\n#include <stdio.h>\n#include <csv.h>\nint main(void){return 0;}\n' | ${CC:-cc} -x c -fsyntax-only - >/dev/null 2>&1 || need libcsv-dev
compiles CUnit/Basic.h || need libcunit1-dev
[ -z "$missing" ] && exit 0

if have apt-get; then
    as=""
    [ "$(id -u)" = 0 ] || { sudo -n true 2>/dev/null && as="sudo -n"; }
    if [ "$(id -u)" = 0 ] || [ -n "$as" ]; then
        echo "Installing what is missing:$missing"
        $as apt-get update -qq >/dev/null && $as env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null && exit 0
        echo "The packages could not be installed." >&2
    fi
fi
cat >&2 <<EOT
These are missing and could not be installed from here:$missing
  Debian, Ubuntu:  sudo apt-get install$missing
  Fedora:          sudo dnf install gcc make libxml2-devel zlib-devel inih-devel libcsv-devel CUnit-devel
  Arch:            sudo pacman -S gcc make libxml2 zlib libinih libcsv cunit
  macOS:           brew install libxml2 inih libcsv cunit
EOT
exit 1
