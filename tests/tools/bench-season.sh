#!/bin/sh
# Speed of a whole season: all scores planned with two jobs, nothing known and all known, against one bare pass of libxml2's SAX interface over
# the same XML (tests/tools/measure/sax_pass.c). Medians of RUNS runs, turn by turn. The shared scores when they are at hand, else those of corpus/.
set -eu
build=${BUILD:-build}
runs=${RUNS:-5}
jobs=${JOBS:-2}
shared=${SPEZZATO_SHARED:-../shared}
program=$(cd "$build" && pwd)/spezzato
folder=$(mktemp -d "${TMPDIR:-/tmp}/spezzato-bench-XXXXXX")
trap 'rm -rf "$folder"' EXIT INT TERM
command -v unzip >/dev/null 2>&1 || { echo "bench: unzip is missing" >&2; exit 1; }
${CC:-cc} -O2 -std=c11 -o "$folder/measure" tests/tools/measure/measure.c
${CC:-cc} -O2 -std=c11 $(pkg-config --cflags libxml-2.0) -o "$folder/sax_pass" tests/tools/measure/sax_pass.c $(pkg-config --libs libxml-2.0)

# One row a score, a concert of three at a time; the XML beside it for the bare pass.
if [ -d "$shared/scores" ]; then scores=$(cd "$shared/scores" && pwd); else scores=$PWD/corpus; fi
echo "concert,order,work,score,interval after" > "$folder/season.csv"
number=0
for score in "$scores"/*.mxl "$scores"/*.musicxml; do
    [ -e "$score" ] || continue
    interval=""
    [ $((number % 3)) = 1 ] && interval=yes
    echo "Concert $((number / 3 + 1)),$((number % 3 + 1)),Work $number,$score,$interval" >> "$folder/season.csv"
    case $score in
    *.mxl)
        root=$(unzip -p "$score" META-INF/container.xml | sed -n 's/.*full-path="\([^"]*\)".*/\1/p' | head -n 1)
        unzip -p "$score" "$root" > "$folder/$number.xml" ;;
    *) cp "$score" "$folder/$number.xml" ;;
    esac
    number=$((number + 1))
done

export XDG_DATA_HOME="$folder/data"
printf '#!/bin/sh\nrm -rf "%s"\nexec "%s" season "%s" --jobs %s -o "%s"\n' "$XDG_DATA_HOME" "$program" "$folder/season.csv" "$jobs" "$folder/plan" > "$folder/cold"
printf '#!/bin/sh\nexec "%s" season "%s" --jobs %s -o "%s"\n' "$program" "$folder/season.csv" "$jobs" "$folder/plan" > "$folder/warm"
printf '#!/bin/sh\nexec "%s/sax_pass" "%s"/*.xml\n' "$folder" "$folder" > "$folder/pass"
chmod +x "$folder/cold" "$folder/warm" "$folder/pass"

bytes=$(cat "$folder"/*.xml | wc -c)
awk -v n="$number" -v b="$bytes" -v j="$jobs" 'BEGIN { printf "%d scores, %.1f MB of XML, %d jobs\n", n, b / 1e6, j }'
printf '%-12s %9s %9s | %9s %9s | %6s %6s | %7s\n' season "CPU ms" "clock ms" "xml CPU" "xml clock" CPU clock "MB peak"
for state in cold warm; do
    [ "$state" = cold ] || "$folder/warm"
    set -- $("$folder/measure" "$runs" "$folder/$state" --against "$folder/pass" 2> /dev/null)
    awk -v s="$state" -v c="$1" -v w="$2" -v k="$3" -v xc="$4" -v xw="$5" \
        'BEGIN { printf "%-12s %9.0f %9.0f | %9.0f %9.0f | %6.2f %6.2f | %7.1f\n", s, c, w, xc, xw, c / xc, w / xw, k / 1024 }'
done
