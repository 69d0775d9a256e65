#!/bin/sh
# No two modules give the same name to two things: the linker would take either without a word. What the library shows to others
# begins with spz_; everything else is hidden.
. tests/support/cli.sh
library=${BUILD:-build}/libspezzato.a
if ! command -v nm >/dev/null 2>&1; then
    echo "  skipped: nm is not at hand"
    exit 0
fi
nm "$library" | awk 'NF == 3 && $2 ~ /^[TDRBC]$/ { print $3 }' | sort > "$folder/names"
[ "$(wc -l < "$folder/names")" -gt 100 ] || fault "the library's names can't be read"
twice=$(uniq -d "$folder/names" | tr '\n' ' ')
[ -z "$twice" ] || fault "defined more than once: $twice"
if command -v readelf >/dev/null 2>&1; then
    readelf -sW "$library" 2> /dev/null | awk '$5 == "GLOBAL" && $6 == "DEFAULT" && $7 != "UND" { print $8 }' | grep -v '^spz_' > "$folder/shown"
    [ -s "$folder/shown" ] && fault "shown to others without spz_: $(head -n 5 "$folder/shown" | tr '\n' ' ')"
fi
finish
