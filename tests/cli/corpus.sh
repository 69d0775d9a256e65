#!/bin/sh
# The corpus is what its sketches say: every score is made again and compared; each is valid MusicXML 4.0; the bars that composed.csv
# names are there; the season names scores and halls that exist.
. tests/support/cli.sh
sketch=${BUILD:-build}/sketch
made=0
for text in corpus/sketches/*.txt; do
    name=$(basename "$text" .txt)
    score=corpus/$name.musicxml
    [ -e "$score" ] || score=corpus/$name.mxl
    again=$folder/$(basename "$score")
    "$sketch" "$text" "$again" 2> "$folder/err" || { fault "$(head -n 1 "$folder/err")"; continue; }
    cmp -s "$again" "$score" || fault "$score is not what $text gives"
    made=$((made + 1))
done
scores=$(ls corpus/*.musicxml corpus/*.mxl | wc -l)
[ "$made" -ge 10 ] && [ "$made" = "$scores" ] || fault "$made sketches for $scores scores"

# MusicXML 4.0 (W3C Community Group): schema in the shared folder.
schema=$shared/schema
if shared_has schema/musicxml.xsd && at_hand xmllint; then
    for text in corpus/sketches/*.txt; do
        "$sketch" "$text" "$folder/plain.musicxml" 2> /dev/null
        XML_CATALOG_FILES=$schema/catalog.xml xmllint --noout --nonet --schema "$schema/musicxml.xsd" "$folder/plain.musicxml" 2> "$folder/err" ||
            fault "$text: $(head -n 1 "$folder/err")"
    done
fi

# The last bar of every composed passage is a bar of its score, and no passage ends before it begins.
tail -n +2 corpus/composed.csv | awk -F, '{ print $1, $5, $6 }' > "$folder/passages"
[ -s "$folder/passages" ] || fault "composed.csv is empty"
while read -r file first last; do
    [ -e "corpus/$file" ] || fault "composed.csv names $file, which is not there"
    [ "$first" -le "$last" ] || fault "composed.csv, $file: bars $first to $last"
    text=corpus/sketches/${file%.*}.txt
    "$sketch" "$text" "$folder/plain.musicxml" 2> /dev/null
    grep -q "<measure number=\"$last\"" "$folder/plain.musicxml" || fault "composed.csv, $file: there is no bar $last"
done < "$folder/passages"

for score in $(grep -oE '[a-z0-9-]+\.(musicxml|mxl)' corpus/season.csv | sort -u); do
    [ -e "corpus/$score" ] || fault "season.csv names $score, which is not there"
done
for hall in corpus/halls/*.ini; do
    run 0 stage --settings "$hall"
done
finish
