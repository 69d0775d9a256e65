#!/bin/sh
# A second reader of MusicXML (the verovio package of npm, used here and nowhere else in the tests) reads the smaller scores of corpus/: onset,
# duration and pitch of every note agree, and the order of the bars. `make accuracy-reader` does the same for all scores at hand.
. tests/support/cli.sh
build=${BUILD:-build}
skip() { echo "  skipped: the second reader is not at hand ($1)"; exit 0; }
command -v node >/dev/null 2>&1 || skip "node is missing"
command -v npm >/dev/null 2>&1 || skip "npm is missing"
[ -x "$build/written" ] || skip "its side of the comparison is not built"
[ -d tests/independent/node_modules/verovio ] || (cd tests/independent && npm ci --no-audit --no-fund --silent >/dev/null 2>&1) || skip "npm could not install it"
scores=$(ls -rS corpus/*.musicxml | head -n 4)
node tests/independent/compare.mjs "$build/written" $scores > "$folder/table" 2> "$folder/err" || fault "notes differ: $(cat "$folder/table")"
grep -q '^| all | [1-9]' "$folder/table" || fault "nothing was compared: $(head -n 1 "$folder/err")"
[ "$(grep -c '^| [a-z].*musicxml' "$folder/table")" = 4 ] || fault "not all scores were compared"
finish
