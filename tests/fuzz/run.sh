#!/bin/sh
# Runs each harness for SECONDS (60 when not given; HARNESSES: only these, 'xml:900' for seconds of its own), seeded with corpus, suite and hostile files, and writes what came of it as Markdown to
# $BUILD/fuzz.md. TIMEOUT: seconds of the clock that one input may take (20); more on a machine that is busy with other things. Exit status 1 when a harness found something; the input that did it is kept in $BUILD/fuzz/found.
set -u
build=${BUILD:-build}
shared=${SPEZZATO_SHARED:-../shared}
folder=$build/fuzz
mkdir -p "$folder/found" "$folder/seeds-xml" "$folder/seeds-archive" "$folder/seeds-settings"
cp corpus/*.musicxml tests/data/hostile/*.xml "$folder/seeds-xml" 2>/dev/null
[ -d "$shared/suite" ] && cp "$shared"/suite/*.xml "$folder/seeds-xml"
find "$folder/seeds-xml" -size +200k -delete
cp corpus/*.mxl tests/data/hostile/*.mxl "$folder/seeds-archive" 2>/dev/null
[ -d "$shared/suite" ] && cp "$shared"/suite/*.mxl "$folder/seeds-archive"
for seed in "$folder"/seeds-xml/[0-4]*.xml; do [ -e "$seed" ] && { printf 'A'; cat "$seed"; } > "$folder/seeds-archive/$(basename "$seed")"; done
cp tests/data/hostile/*.ini "$folder/seeds-settings" 2>/dev/null
"$build/spezzato" settings > "$folder/seeds-settings/all.ini" 2>/dev/null
mkdir -p "$folder/seeds-music" "$folder/seeds-season"
for sketch in tests/fuzz/music/*.txt; do "$build/sketch" "$sketch" "$folder/seeds-music/$(basename "$sketch" .txt).musicxml" || exit 1; done
cp tests/fuzz/season.csv "$folder/seeds-season/small.csv"
cp corpus/season.csv "$folder/seeds-season/bundled.csv"
# Where the harnesses write, in memory where the system has a folder for that.
SPEZZATO_FUZZ_PLACE=$(mktemp -d /dev/shm/spezzato-fuzz-XXXXXX 2> /dev/null || mktemp -d "${TMPDIR:-/tmp}/spezzato-fuzz-XXXXXX") || exit 1
export SPEZZATO_FUZZ_PLACE
trap 'rm -rf "$SPEZZATO_FUZZ_PLACE"' EXIT
trap 'exit 1' HUP INT TERM
cp tests/fuzz/season.csv "$folder"/seeds-music/*.musicxml "$SPEZZATO_FUZZ_PLACE"
mkdir -p "$folder/seeds-library" "$folder/seeds-stage"
for harness in library stage; do # rows of decisions: any bytes will do to begin with
    for seed in 1 2 3 4 5 6 7 8; do awk -v seed="$seed" 'BEGIN { srand(seed); for (i = 0; i < 60; i++) printf "%c", 33 + int(94 * rand()) }' > "$folder/seeds-$harness/$seed"; done
done
faults=0
{
    echo "| harness | seconds | executions | reached a verdict | edges | inputs kept | findings |"
    echo "|---|---|---|---|---|---|---|"
} > "$build/fuzz.md"
for wanted in ${HARNESSES:-xml archive settings analysis music season library stage}; do
    harness=${wanted%%:*} seconds=${SECONDS_EACH:-60}
    case "$wanted" in *:*) seconds=${wanted#*:} ;; esac
    seeds=$harness
    [ "$harness" = analysis ] && seeds=xml
    lengths=-max_len=200000
    case $harness in library | stage) lengths="-max_len=400 -len_control=0" ;; esac
    mkdir -p "$folder/work-$harness"
    # shellcheck disable=SC2086
    "$folder/fuzz_$harness" -max_total_time="$seconds" -print_final_stats=1 -timeout="${TIMEOUT:-20}" -rss_limit_mb=2048 $lengths \
        -dict=tests/fuzz/musicxml.dict -artifact_prefix="$folder/found/$harness-" "$folder/work-$harness" "$folder/seeds-$seeds" > "$folder/$harness.log" 2>&1
    status=$?
    runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$folder/$harness.log")
    edges=$(sed -n 's/.*cov: \([0-9]*\) .*/\1/p' "$folder/$harness.log" | tail -n 1)
    reached=$(sed -n 's/^[a-z]*: \([0-9]*\) runs, \([0-9]*\) with a verdict.*/\2 \1/p' "$folder/$harness.log" | awk '$2 { printf "%.1f %%", 100 * $1 / $2 }')
    kept=$(find "$folder/work-$harness" -type f | wc -l | tr -d ' ')
    found=none
    [ "$status" = 0 ] || { found="$(grep -m 1 -E 'ERROR|runtime error' "$folder/$harness.log" | cut -c1-120)"; faults=$((faults + 1)); echo "fuzz_$harness: $found"; }
    echo "| $harness | $seconds | ${runs:-?} | ${reached:--} | ${edges:-?} | $kept | $found |" >> "$build/fuzz.md"
done
cat "$build/fuzz.md"
[ "$faults" = 0 ]
