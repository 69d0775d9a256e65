#!/bin/sh
# A second reader of MusicXML (the verovio package of npm, used here and nowhere else in the tests): onset, duration and pitch of every note agree,
# and the order of the bars; what differs is one of the differences that docs/accuracy-reader.md names with its bars and explains. `make test` compares
# all scores of corpus/ and of the shared folder (some minutes), `make check` the smallest four.
. tests/support/cli.sh
build=${BUILD:-build}
at_hand node npm || exit 0
[ -d tests/independent/node_modules/verovio ] || (cd tests/independent && npm ci --no-audit --no-fund --silent >/dev/null 2>&1) ||
    { skip "npm could not install the second reader"; exit 0; }
if [ "${SPEZZATO_WHOLE:-no}" = yes ]; then
    set -- corpus/*.musicxml corpus/*.mxl
    shared_has scores && set -- "$@" "$shared"/scores/*.mxl
else
    set -- $(ls -rS corpus/*.musicxml | head -n 4)
fi
node tests/independent/compare.mjs "$build/written" "$@" > "$folder/table" 2> "$folder/err"
grep -q '^| all | [1-9]' "$folder/table" || fault "nothing was compared: $(head -n 1 "$folder/err")"
[ "$(grep -c '^| [A-Za-z].*\.m[a-z]* |' "$folder/table")" = $# ] || fault "not all scores were compared"
awk -F'|' '/^- / || (/^\| [^|]*\.m[a-z]* \|/ && ($7 != " 0 " || /differ/ || $3 == " - "))' "$folder/table" > "$folder/differences"
while read -r line; do
    grep -qxF -e "$line" docs/accuracy-reader.md || fault "a difference that is not explained: $line"
done < "$folder/differences"
finish
