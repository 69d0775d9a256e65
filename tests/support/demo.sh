#!/bin/sh
# The main job on the bundled season: a page for each movement into reports/, an overview of all, and what to look at.
# REPORTS names another folder, SPEZZATO another program.
set -eu
XDG_CONFIG_HOME=/nonexistent # no house of the one who builds this
export XDG_CONFIG_HOME
build=${BUILD:-build}
program=${SPEZZATO:-$build/spezzato}
reports=${REPORTS:-reports}
mkdir -p "$reports"
rm -f "$reports"/*.txt "$reports"/*.csv "$reports"/*.html "$reports"/*.md "$reports"/*.svg
export LC_ALL=C

count=0
all=""
echo "Reading the scores of corpus/ and writing a page for each ..."
for score in corpus/*.musicxml corpus/*.mxl; do
    [ -e "$score" ] || continue
    name=$(basename "$score")
    "$program" "$score" -o "$reports/${name%.*}.txt"
    all="$all $score"
    count=$((count + 1))
done
[ "$count" -gt 0 ] || { echo "There are no scores in corpus/." >&2; exit 1; }
# The names in corpus/ have no blanks.
echo "Writing the report to look at in a browser, the sheets for the librarian and the programme note, the stage and the season ..."
"$program" --brief $all -o "$reports/overview.txt"
"$program" report --engraver none $all corpus/season.csv -o "$reports"
"$program" parts --format html $all -o "$reports/parts.html"
"$program" notes --format markdown $all -o "$reports/notes.md"
"$program" stage --format svg corpus/brelisk-balconies-1.musicxml -o "$reports/stage.svg"
"$program" stage --format html --set stage.riser=0.2 corpus/lindquarre-salt-road-1.musicxml -o "$reports/laying.html"
"$program" stage --format csv --set stage.riser=0.2 corpus/lindquarre-salt-road-1.musicxml -o "$reports/laying.csv"
"$program" season --no-cache corpus/season.csv -o "$reports/season.txt"
"$program" season --no-cache --format csv corpus/season.csv -o "$reports/season-stage-manager.csv"
rm -f "$reports/library.sqlite"
"$program" library add --library "$reports/library.sqlite" corpus > /dev/null
"$program" library find --library "$reports/library.sqlite" --strength clear --passages 3 --format html -o "$reports/library.html"
rm -f "$reports/library.sqlite"
"$program" passages --kind antiphony,divisi --strength clear --format csv $all -o "$reports/passages.csv"

echo "$count movements read; their pages are in $reports/. The season at a glance:"
echo
sed '/^$/,$d' "$reports/overview.txt"
echo
echo "Look at:"
echo "  $reports/index.html        open it in a browser: it leads to a page for each movement, with map, passages and stage"
echo "  $reports/overview.txt      the seating of every movement, one line each"
for page in "$reports"/brelisk-balconies-1.txt "$reports"/lindquarre-salt-road-1.txt "$reports"/tolvesk-ecluses-1.txt; do
    [ -e "$page" ] && echo "  $page      $(head -n 1 "$page")"
done
echo "  $reports/season.html       the season's concerts: seatings, changes, what moves (season.txt: the same as text)"
echo "  $reports/parts.html        for the librarian: what to write into each string part"
echo "  $reports/notes.md          for the programme note: what to listen for, and when"
echo "  $reports/stage.svg         the stage to scale"
echo "  $reports/laying.html       every chair, stool and stand by its place, with risers and sums; laying.csv is the table"
echo "  $reports/library.html      the same works as a library: a table to be sorted and filtered"
echo "  $reports/passages.csv      every clear or striking passage of the season, for a spreadsheet"
