#!/bin/sh
# Writes docs/reliability.md: files tried, notes compared, fuzzing. Tries every file at hand itself; takes the comparisons from the documents that
# `make accuracy-notes` and `make accuracy-reader` wrote, and the fuzzing from what `make fuzz` left in fuzz.md, or who joined several runs there.
set -u
build=${BUILD:-build}
shared=${SPEZZATO_SHARED:-../shared}
fuzz=$build/fuzz.md
[ -e "$fuzz" ] || { echo "run make fuzz first" >&2; exit 1; }
folder=$(mktemp -d "${TMPDIR:-/tmp}/spezzato-reliability-XXXXXX")
trap 'rm -rf "$folder"' EXIT

# row NAME FILE...: how many were read, refused with one line, or ended in any other way.
row() {
    name=$1
    shift
    read=0 refused=0 other=0
    for file in "$@"; do
        [ -e "$file" ] || continue
        "$build/spezzato" check "$file" > "$folder/out" 2> "$folder/err"
        case $? in
        0 | 3) read=$((read + 1)) ;;
        2) if [ "$(wc -l < "$folder/err")" = 1 ]; then refused=$((refused + 1)); else other=$((other + 1)); fi ;;
        *) other=$((other + 1)) ;;
        esac
    done
    echo "| $name | $((read + refused + other)) | $read | $refused | $other |"
}

# The row 'all' of a table: its columns by number.
all_row() { awk -F'|' -v columns="$2" '$2 ~ /^ all $/ { n = split(columns, c, " "); for (i = 1; i <= n; i++) printf "%s|", $c[i]; exit }' "$1"; }

{
    cat <<'T'
# Reliability

Made by `make reliability`; not written by hand, but for the note under the table of fuzzing.

## Files tried

Each file is read, its parts are named and it is checked. Refused means: exit status 2 and exactly one line that says why.

| files | tried | read | refused with one line | anything else |
|---|---|---|---|---|
T
    row "orchestral scores of the OpenScore corpus (shared folder)" "$shared"/scores/*.mxl
    row "unofficial MusicXML test suite (shared folder; see suite.md)" "$shared"/suite/*.xml "$shared"/suite/*.mxl
    row "the bundled season" corpus/*.musicxml corpus/*.mxl
    row "hostile files meant to be refused" $(ls tests/data/hostile/*.xml tests/data/hostile/*.mxl | grep -v '/fine')
    row "hostile files meant to be read" tests/data/hostile/fine.*
    echo
    echo "## Notes compared"
    echo
    echo "| with | compared | agree | explained by a habit of the other, with its bars | not explained |"
    echo "|---|---|---|---|---|"
    [ -e docs/accuracy-notes.md ] && all_row docs/accuracy-notes.md "7 8 9 10 11" | awk -F'|' '{ gsub(/ /, ""); printf "| independent tables (accuracy-notes.md): moment x part | %s | %s | %d | %s |\n", $1, $2, $3 + $4, $5 }'
    [ -e docs/accuracy-reader.md ] && all_row docs/accuracy-reader.md "3 5 6 7" | awk -F'|' '{ gsub(/ /, ""); printf "| second reader (accuracy-reader.md): notes | %s | %s | %s | %s |\n", $1, $2, $3, $4 }'
    cat <<'T'

## Fuzzing

libFuzzer under address and undefined-behaviour sanitizers (`make fuzz SECONDS=...`), seeded with the bundled season, the test suite and the hostile files. `xml`
reads any bytes as a score and joins and plays its notes; `archive` reads them as the packed score or the container of an archive, or as the archive itself;
`settings` as a settings file; `analysis` takes a score the whole way to its seating. `music` changes scores as music (tests/fuzz/score_mutator.c: stretches of one part given to
another, notes, bars, marks and parts moved, copied, changed), so that most of what it makes gets to a verdict, and takes each through every report, the notes, the time line, the parts, the rehearsal and bowing sheets, the stage, one seating for the work, and
marking and unmarking, which has to give the bytes back; `season` reads any bytes as the table of a season and plans it. `library` adds, asks, forgets, checks
and opens anew in any order while scores change on the disk, held against a plain list of what should be in it, and damages the library's file in its bytes and its values; `stage` sets any
values of stage, players, hall, weights and house, own arrangements and corrections, and leads a score to its seating, plans, laying and the ways of sound, every figure of which has to stay in its range. Edges are the branches that were seen. What was found is fixed and kept in tests/data/hostile.

T
    cat "$fuzz"
    cat <<'T'

Found so far, and fixed: an offset to an array that is not there, in a score of which no string section sounds (harness `analysis`, at its first seeds); a work that stayed in the
library when its only score was given another title, words about bad files that were not freed where adding broke off, files that could not be used told as heard under other settings, and a question for kinds that don't exist taken for a broken file (`library`, in its first minute); an overview in German for a page of 60 columns that never ended (`music`, at its first input with the narrow page). Found by the
tests under the same sanitizers: a leak in the parser's own document where entities are refused.

## Another C library

`make test-musl` builds the libraries from Debian's sources with musl's compiler, then the program and its unit tests, runs them there, and holds every page of the demo and the tables of every bundled
score against those of this system's build, byte for byte (904 statements pass, 2 about the library of sound are skipped; 44 pages and 112 tables are the same). What it found is fixed: where two entries of a passage began together, which of them was told hung on the order in which the C
library's `qsort` leaves what is equal (`tests/cli/musl.sh` now sorts equals the other way and compares), and one radius of a drawing stood midway between two tenths.

## Memory that runs out

The tests make the first, second, third ... request for memory fail until reading succeeds: each failure ends in a status, nothing leaks (`make asan`,
`make valgrind`; `make test` runs all unit tests, the test suite and the hostile files under valgrind, or under sanitizers where that is missing).
T
} > "$folder/reliability.md"
cp "$folder/reliability.md" docs/reliability.md
