#!/bin/sh
# Runs each harness for SECONDS (60 when not given; HARNESSES: only these), seeded with corpus, suite and hostile files, and writes what came of it as Markdown to
# $BUILD/fuzz.md. Exit status 1 when a harness found something; the input that did it is kept in $BUILD/fuzz/found.
set -u
build=${BUILD:-build}
seconds=${SECONDS_EACH:-60}
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
SPEZZATO_FUZZ_PLACE=$folder/season
export SPEZZATO_FUZZ_PLACE
rm -rf "$SPEZZATO_FUZZ_PLACE" && mkdir -p "$SPEZZATO_FUZZ_PLACE" && cp tests/fuzz/season.csv "$folder"/seeds-music/*.musicxml "$SPEZZATO_FUZZ_PLACE"
faults=0
{
    echo "| harness | seconds | executions | reached a verdict | edges | inputs kept | findings |"
    echo "|---|---|---|---|---|---|---|"
} > "$build/fuzz.md"
for harness in ${HARNESSES:-xml archive settings analysis music season}; do
    seeds=$harness
    [ "$harness" = analysis ] && seeds=xml
    mkdir -p "$folder/work-$harness"
    "$folder/fuzz_$harness" -max_total_time="$seconds" -print_final_stats=1 -timeout=20 -rss_limit_mb=2048 -max_len=200000 \
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
