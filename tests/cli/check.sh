#!/bin/sh
# spezzato check: what is doubtful in a score, exit status 3 where there are doubts.
. tests/support/cli.sh

cat > "$folder/sound.musicxml" <<'X'
<score-partwise><part-list><score-part id="P1"><part-name>Viola</part-name></score-part></part-list><part id="P1">
<measure number="1"><attributes><divisions>1</divisions><time><beats>4</beats><beat-type>4</beat-type></time></attributes><sound tempo="90"/>
<note><pitch><step>C</step><octave>4</octave></pitch><duration>4</duration></note></measure></part></score-partwise>
X
sed 's/<duration>4</<duration>5</; s/<sound tempo="90"\/>//' "$folder/sound.musicxml" > "$folder/doubtful.musicxml"

run 0 check "$folder/sound.musicxml"
shows "no doubts"
run 3 check "$folder/doubtful.musicxml"
shows "2 doubts"
shows "bar 1: all parts fill 5 crotchets; the time signature asks for 4"
shows "no tempo is given"
run 3 check --language de "$folder/doubtful.musicxml"
shows "2 Zweifelsfälle"
shows "Takt 1: alle Stimmen füllen 5 Viertel; die Taktart verlangt 4"
run 3 check --language de --format json "$folder/doubtful.musicxml" # data are English whatever the language
shows "all parts fill 5 crotchets"
run 3 check "$folder/sound.musicxml" "$folder/doubtful.musicxml"
shows "sound.musicxml: no doubts"
run 2 check "$folder/doubtful.musicxml" "$folder/none.musicxml"
says "none.musicxml"
shows "2 doubts"
run 1 check
run 1 check --format html "$folder/sound.musicxml"
run 1 check -o "$folder/sound.musicxml" "$folder/sound.musicxml"
run 3 check --format json -o "$folder/doubts.json" "$folder/doubtful.musicxml"
json_ok "$folder/doubts.json" || fault "the JSON can't be read"
grep -q '"kind": "bar"' "$folder/doubts.json" || fault "no doubt about a bar in the JSON"
run 3 check --format csv "$folder/doubtful.musicxml"
shows "file,kind,severity,movement,title,part,bar,line,text"
[ "$(wc -l < "$folder/out" | tr -d ' ')" = 3 ] || fault "the CSV has not a line for each doubt"
run 2 check "$folder/none.musicxml" -o "$folder/nothing.txt"
[ ! -e "$folder/nothing.txt" ] || fault "a report about nothing was written"
finish
