#!/bin/sh
# The whole test suite of MusicXML, all hostile files, and one score to its page under valgrind: no wrong access, no leak.
. tests/support/cli.sh
command -v valgrind >/dev/null 2>&1 || { echo "  skipped: valgrind is not at hand"; exit 0; }
shared=${SPEZZATO_SHARED:-../shared}
set -- tests/data/hostile/*.xml tests/data/hostile/*.mxl
[ -d "$shared/suite" ] && set -- "$@" "$shared"/suite/*.xml "$shared"/suite/*.mxl
valgrind -q --leak-check=full --show-leak-kinds=definite,possible --errors-for-leak-kinds=definite,possible --error-exitcode=99 \
    --log-file="$folder/valgrind" "$SPEZZATO" check "$@" > "$folder/out" 2> "$folder/err"
[ $? = 99 ] && fault "valgrind found: $(head -n 6 "$folder/valgrind")"
[ "$(grep -c '^[^ ].*: [0-9n]* *[no ]*doubt' "$folder/out")" -ge 10 ] || fault "no file was read"
[ "$(grep -c '^spezzato: ' "$folder/err")" -ge 40 ] || fault "the hostile files were not all refused"
valgrind -q --leak-check=full --error-exitcode=99 --log-file="$folder/valgrind" "$SPEZZATO" corpus/vercassine-barcarolle.musicxml > "$folder/out" 2> "$folder/err"
[ $? = 0 ] || fault "valgrind found: $(head -n 6 "$folder/valgrind")"
finish
