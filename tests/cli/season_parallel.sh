#!/bin/sh
# The recipe of docs/scale.md: the work shared out with GNU parallel, the lines put together, and the plan is the same byte for byte.
. tests/support/cli.sh
"$SPEZZATO" season corpus/season.csv --no-cache > "$folder/alone" || fault "the season alone"

# Without any batch system: three shares one after the other.
for share in 1 2 3; do
    "$SPEZZATO" season corpus/season.csv --no-cache --format ndjson --share "$share/3" -o "$folder/by-hand-$share.ndjson" || fault "share $share"
done
cat "$folder"/by-hand-3.ndjson "$folder"/by-hand-1.ndjson "$folder"/by-hand-2.ndjson | "$SPEZZATO" season corpus/season.csv --no-cache --lines - > "$folder/merged"
same "$folder/alone" "$folder/merged" "three shares by hand"

# The same season under another path, as on another computer: the lines still fit. A mark put into one of them shows that they were taken.
mkdir "$folder/elsewhere"
cp -R corpus/*.csv corpus/*.musicxml corpus/*.mxl corpus/halls "$folder/elsewhere/"
cat "$folder"/by-hand-*.ndjson | sed 's/"title": "/"title": "marked /' | sort > "$folder/sorted"
"$SPEZZATO" season "$folder/elsewhere/season.csv" --no-cache --lines "$folder/sorted" --format ndjson | sort > "$folder/lines-sorted"
same "$folder/sorted" "$folder/lines-sorted" "under another path"

# A line that was cut off on the way is told, and its score read again.
head -c 700 "$folder/by-hand-1.ndjson" > "$folder/cut.ndjson"
run 0 season corpus/season.csv --no-cache --lines "$folder/cut.ndjson"
says "cut.ndjson, line"
same "$folder/alone" "$folder/out" "with a line cut off"

if ! command -v parallel >/dev/null 2>&1 || ! parallel --version 2>/dev/null | grep -q "^GNU parallel"; then
    skip "GNU parallel is not at hand"
    finish
    exit
fi
seq 4 | parallel --jobs 2 --halt soon,fail=1 "$SPEZZATO" season corpus/season.csv --no-cache --format ndjson --share '{}/4' \
    --output "$folder/share-{}.ndjson" 2> "$folder/said" || fault "parallel: $(tail -n 1 "$folder/said")"
cat "$folder"/share-*.ndjson | "$SPEZZATO" season corpus/season.csv --no-cache --lines - > "$folder/merged"
same "$folder/alone" "$folder/merged" "the merged plan of GNU parallel"
finish
