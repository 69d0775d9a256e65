#!/bin/sh
# Speed and memory side by side: `spezzato SCORE` (read, analysed, reported) against one bare pass of libxml2's SAX interface over the same XML, with handlers that do nothing
# (tests/tools/measure/sax_pass.c); then every command on the largest score, and the largest score against itself written twice over. Medians of RUNS
# runs, turn by turn. The shared scores when they are at hand, else the scores of corpus/.
set -eu
build=${BUILD:-build}
runs=${RUNS:-5}
shared=${SPEZZATO_SHARED:-../shared}
folder=$(mktemp -d "${TMPDIR:-/tmp}/spezzato-bench-XXXXXX")
trap 'rm -rf "$folder"' EXIT INT TERM
${CC:-cc} -O2 -std=c11 -o "$folder/measure" tests/tools/measure/measure.c
${CC:-cc} -O2 -std=c11 $(pkg-config --cflags libxml-2.0) -o "$folder/sax_pass" tests/tools/measure/sax_pass.c $(pkg-config --libs libxml-2.0)

# The root file of a compressed score, unpacked.
unpack() {
    if command -v unzip >/dev/null 2>&1; then
        root=$(unzip -p "$1" META-INF/container.xml | sed -n 's/.*full-path="\([^"]*\)".*/\1/p' | head -n 1)
        unzip -p "$1" "$root" > "$2"
    else
        python3 -c 'import re, sys, zipfile
z = zipfile.ZipFile(sys.argv[1]); root = re.search(b"full-path=\"([^\"]*)\"", z.read("META-INF/container.xml")).group(1).decode()
open(sys.argv[2], "wb").write(z.read(root))' "$1" "$2"
    fi
}

if [ -d "$shared/scores" ]; then
    for score in "$shared"/scores/*.mxl; do unpack "$score" "$folder/$(basename "$score" .mxl).xml"; done
else
    echo "The shared scores are not at hand: the scores of corpus/ instead."
    cp corpus/*.musicxml "$folder"
fi

heads='%-34s %7s | %9s %9s | %9s %9s | %6s %6s | %7s\n'
rows='%-34s %7.2f | %9.1f %9.1f | %9.1f %9.1f | %6.2f %6.2f | %7.1f\n'
line() { # name, megabytes, then the six figures of measure
    awk -v rows="$rows" -v name="$1" -v size="$2" -v c="$3" -v w="$4" -v k="$5" -v xc="$6" -v xw="$7" \
        'BEGIN { printf rows, name, size, c, w, xc, xw, c / xc, w / xw, k / 1024 }'
}
megabytes() { awk -v b="$(wc -c < "$1")" 'BEGIN { printf "%.3f", b / 1e6 }'; }

printf "$heads" "" "" "spezzato" "" "SAX pass" "" "ratio" "" "peak"
printf "$heads" "whole page of" "MB XML" "CPU ms" "clock ms" "CPU ms" "clock ms" "CPU" "clock" "MB"
largest=""; most=0
for score in "$folder"/*.xml "$folder"/*.musicxml; do
    [ -e "$score" ] || continue
    figures=$("$folder/measure" "$runs" "$build/spezzato" "$score" --against "$folder/sax_pass" "$score")
    size=$(wc -c < "$score")
    if [ "$size" -gt "$most" ]; then most=$size; largest=$score; fi
    line "$(basename "$score" | cut -c 1-34)" "$(megabytes "$score")" $figures
    echo "$(megabytes "$score") $figures" >> "$folder/all"
done
awk -v rows="$rows" '{ s += $1; c += $2; w += $3; if ($4 > k) k = $4; xc += $5; xw += $6; r = $2 / $5; if (r > worst) worst = r }
    END { printf rows, "all together", s, c, w, xc, xw, c / xc, w / xw, k / 1024; printf "highest ratio of CPU time: %.2f\n", worst }' "$folder/all"

# All of them in one call, and all their pages for the browser. (On two cores: bench-season.sh.)
together() { # words, goal, command...
    name=$1 goal=$2
    shift 2
    "$folder/measure" "$runs" "$@" "$folder"/*.xml --against "$folder/sax_pass" "$folder"/*.xml |
        awk -v name="$name" -v goal="$goal" '{ printf "  %-10s CPU %.0f ms against %.0f ms: %.2f times (goal: %s)\n", name, $1, $4, $1 / $4, goal }'
}
ls "$folder"/*.xml > /dev/null 2>&1 || for score in "$folder"/*.musicxml; do mv "$score" "${score%.musicxml}.xml"; done
largest=${largest%.musicxml}; largest=${largest%.xml}.xml
echo
echo "All of them in one call, against a bare pass over each:"
together "text" "1.5" "$build/spezzato" -o "$folder/together"
together "report" "2.0" "$build/spezzato" report --engraver none -o "$folder/together-pages"

echo
echo "Every command on the largest, $(basename "$largest"), against the same pass:"
printf "$heads" "command" "MB XML" "CPU ms" "clock ms" "CPU ms" "clock ms" "CPU" "clock" "MB"
for command in "" "--format json" "sections" "streams" "streams --played" "passages" "passages --format json" "passages --explain 20" "seating" "seating --format json" "check" "stage" "stage --set stage.width=9.5" "stage --format html" "stage --format csv" "parts" "parts --format html" \
    "bowings" "bowings --format html" \
    "notes" "notes --many --format json" "notes --for listeners" "notes --engraver none --notation --format html" "rehearsal" "mark -o $folder/marked.musicxml" "report --engraver none --work -o $folder/pages" "settings"; do
    operand=$largest
    [ "$command" = settings ] && operand=""
    figures=$("$folder/measure" "$runs" "$build/spezzato" $command $operand --against "$folder/sax_pass" "$largest")
    line "spezzato ${command%%-o*}" "$(megabytes "$largest")" $figures
done

# The conductor's page of a movement, with all that is drawn on it, against the same movement's page as text in the same run.
echo
figures=$("$folder/measure" "$runs" "$build/spezzato" report --engraver none "$largest" -o "$folder/page" --against "$build/spezzato" "$largest")
awk -v f="$figures" -v kb="$(($(cat "$folder"/page/*.html | wc -c) / 1000))" 'BEGIN { split(f, a, " ")
    printf "The largest'"'"'s page for the browser: CPU %.1f ms against %.1f ms as text, %.2f times; %d kB of pages\n", a[1], a[4], a[1] / a[4], kb }'

# A season's papers, its scores known already: each against the plan as text. The library is one of its own.
echo
echo "Papers of a season, corpus/season.csv, all its scores known, against the plan as text in the same run:"
export XDG_DATA_HOME="$folder/data"
"$build/spezzato" season corpus/season.csv -o "$folder/plan" 2> /dev/null
for form in "--format csv" "--format html" "--format calendar" "--format ics" "--sheet 1" "--sheet 1 --format html"; do
    figures=$("$folder/measure" "$runs" "$build/spezzato" season corpus/season.csv $form -o "$folder/paper" --against "$build/spezzato" season corpus/season.csv -o "$folder/plan")
    awk -v f="$figures" -v form="$form" 'BEGIN { split(f, a, " "); printf "  season %-24s CPU %5.1f ms against %5.1f ms: %.2f times; memory %.1f MB\n", form, a[1], a[4], a[1] / a[4], a[3] / 1024 }'
done

# Each part's bars once more behind its own: the same music twice. Measured three times as often: two figures stand here against a bound.
awk '/<part [^>]*id=/ { print; inside = 1; n = 0; next } /<\/part>/ { for (i = 0; i < n; i++) print keep[i]; for (i = 0; i < n; i++) print keep[i]; inside = 0; print; next }
     inside { keep[n++] = $0; next } { print }' "$largest" > "$folder/twice"
echo
echo "Twice the bars: the same score written twice over, against the score itself (goal: a ratio of 2 at most):"
figures=$("$folder/measure" "$((3 * runs))" "$build/spezzato" "$folder/twice" --against "$build/spezzato" "$largest")
awk -v f="$figures" 'BEGIN { split(f, a, " "); printf "  CPU %.1f ms against %.1f ms: %.2f times; memory %.1f MB against %.1f MB\n", a[1], a[4], a[1] / a[4], a[3] / 1024, a[6] / 1024 }'
if command -v python3 >/dev/null 2>&1; then
    echo
    python3 tests/tools/patterns.py "$build/spezzato"
fi

# Eight bars of an orchestra of sixty, made audible in two seatings (goal: less time on one core than they last).
printf '[players]\nfirst violins = 16\nsecond violins = 14\nviolas = 12\ncellos = 10\nbasses = 8\n' > "$folder/sixty.ini"
echo
echo "Made audible: bars 29-36 of corpus/brelisk-balconies-1.musicxml with 60 string players, both seatings (goal: CPU under their duration):"
if heard=$("$build/spezzato" listen corpus/brelisk-balconies-1.musicxml --bars 29-36 --settings "$folder/sixty.ini" -o "$folder/heard" 2>&1); then
    figures=$("$folder/measure" "$runs" "$build/spezzato" listen corpus/brelisk-balconies-1.musicxml --bars 29-36 --settings "$folder/sixty.ini" -o "$folder/heard" --against "$folder/sax_pass" corpus/brelisk-balconies-1.musicxml)
    printf '%s\n%s\n' "$figures" "$heard" | awk 'NR == 1 { split($0, a, " ") } NR == 2 { match($0, /[0-9.]+ seconds/); printf "  CPU %.1f s, clock %.1f s for %s; memory %.0f MB\n", a[1] / 1000, a[2] / 1000, substr($0, RSTART, RLENGTH), a[3] / 1024 }'
else
    echo "  not measured: $heard" | head -n 1
fi
echo "The same for the page: report --listen of that movement, its decisive passages from four seats each, against listen for one of them from one seat:"
if heard=$("$build/spezzato" report corpus/brelisk-balconies-1.musicxml --listen --engraver none -o "$folder/audible" 2>&1); then
    "$folder/measure" 1 "$build/spezzato" report corpus/brelisk-balconies-1.musicxml --listen --engraver none -o "$folder/audible" --against "$build/spezzato" listen corpus/brelisk-balconies-1.musicxml -o "$folder/heard" |
        awk -v files="$(ls "$folder/audible" | grep -c '\.js$')" '{ printf "  CPU %.1f s for %d sounds in both seatings (%.2f s each; one by itself %.2f s); memory %.0f MB\n", $1 / 1000, files, $1 / 1000 / files, $4 / 1000, $3 / 1024 }'
else
    echo "  not measured: $heard" | head -n 1
fi
