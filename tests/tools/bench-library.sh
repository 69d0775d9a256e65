#!/bin/sh
# A library at scale: COUNT scores made from the shared ones, copied and transposed (tests/tools/transpose.py), are added by one core; against one bare pass of libxml2's SAX
# interface (tests/tools/measure/sax_pass.c) over the XML of the same scores (of the first 21, by the movement). Then what finding takes, how large the library is, and how much memory a tenth and all of it took.
# The shared scores when they are at hand, else those of corpus/. COUNT=10000 takes about 10 minutes of a core and 5 GB.
set -eu
build=${BUILD:-build}
count=${COUNT:-210}
runs=${RUNS:-5}
shared=${SPEZZATO_SHARED:-../shared}
program=$(cd "$build" && pwd)/spezzato
folder=$(mktemp -d "${TMPDIR:-/tmp}/spezzato-bench-XXXXXX")
trap 'rm -rf "$folder"' EXIT INT TERM
for tool in unzip python3; do command -v $tool > /dev/null 2>&1 || { echo "bench: $tool is missing" >&2; exit 1; }; done
${CC:-cc} -O2 -std=c11 -o "$folder/measure" tests/tools/measure/measure.c
${CC:-cc} -O2 -std=c11 $(pkg-config --cflags libxml-2.0) -o "$folder/sax_pass" tests/tools/measure/sax_pass.c $(pkg-config --libs libxml-2.0)
if [ -d "$shared/scores" ]; then set -- "$shared"/scores/*.mxl; else set -- corpus/*.musicxml; fi
python3 tests/tools/transpose.py "$count" "$folder/all" "$@"
sample=0
mkdir "$folder/xml" "$folder/tenth"
for score in "$folder"/all/*/*.mxl; do
    [ $sample -lt $# ] && unzip -p "$score" score.musicxml > "$folder/xml/$sample.xml"
    [ $((sample % 10)) = 0 ] && ln "$score" "$folder/tenth/"
    sample=$((sample + 1))
done

printf '#!/bin/sh\nexec "%s" library add --library "%s" "$1"\n' "$program" "$folder/library" > "$folder/add"
printf '#!/bin/sh\nexec "%s/sax_pass" "%s"/xml/*.xml\n' "$folder" "$folder" > "$folder/pass"
chmod +x "$folder/add" "$folder/pass"
pass=$("$folder/measure" "$runs" "$folder/pass" | cut -d ' ' -f 1)
tenth=$("$folder/measure" 1 "$folder/add" "$folder/tenth")
rm -f "$folder/library"
whole=$("$folder/measure" 1 "$folder/add" "$folder/all")
again=$("$folder/measure" "$runs" "$folder/add" "$folder/all")
bytes=$(wc -c < "$folder/library")
awk -v n="$count" -v files="$#" -v p="$pass" -v t="$tenth" -v w="$whole" -v a="$again" -v b="$bytes" 'BEGIN {
    split(t, tenth, " "); split(w, whole, " "); split(a, again, " ")
    printf "adding        %.1f ms of a core a movement, %.1f movements a second a core; one bare SAX pass %.1f ms: %.2f times\n", whole[1] / n, 1000 * n / whole[1], p / files, whole[1] / n / (p / files)
    printf "adding again  %.3f ms of a core a movement, nothing changed\n", again[1] / n
    printf "size          %.1f kB a movement\n", b / n / 1000
    printf "memory        %.1f MB at a tenth, %.1f MB at all\n", tenth[3] / 1024, whole[3] / 1024 }'
find() { # words for the line, conditions
    name=$1
    shift
    figures=$("$folder/measure" "$runs" "$program" library "$@" --library "$folder/library")
    awk -v name="$name" -v f="$figures" 'BEGIN { split(f, a, " "); printf "%-46s %7.1f ms of a core, %7.1f ms on the clock\n", name, a[1], a[2] }'
}
find "striking split lines of the violins" find --kind split-line --between 'Vn I, Vn II' --strength striking --passages 1
find "firsts led by seconds at the octave" find --between 'Vn II > Vn I' --at octave --strength clear --passages 1
find "works for 8-7-6-4-3 of at most 5 minutes" find --players 8-7-6-4-3 --lasts ..5 --titled 'No. 7'
find "works for two orchestras" find --two-orchestras
find "one work by its name" show 'No. 7,' --passages 1
find "what fits one seating, the best twenty" fits --seating 'violins together, cellos outside'
find "its partners, the best twenty" partners 'No. 7,'
find "works with passages like one of it" alike 'No. 7,' --bar 29 --passages 1
