#!/bin/sh
# Corrections of parts: what `sections` says to write is understood as it stands, a changed line takes effect, and a line that meets
# no part is told without being asked for.
. tests/support/cli.sh
score=corpus/brelisk-balconies-2.musicxml

# The advice, given back: nothing changes but the reasons.
run 0 sections --width 200 "$score"
sed -n '/^    \[sections\]/,/^$/s/^    //p' "$folder/out" > "$folder/advice.ini"
[ "$(wc -l < "$folder/advice.ini")" -gt 4 ] || fault "sections says nothing to write"
# All columns but the last, 'because' (the title holds a comma).
run 0 sections --format csv "$score"
cut -d, -f1-15 "$folder/out" | tail -n +2 > "$folder/before"
run 0 sections --format csv --settings "$folder/advice.ini" "$score"
cut -d, -f1-15 "$folder/out" | tail -n +2 > "$folder/after"
same "$folder/before" "$folder/after" "the advice of sections, given back"

# One line changed.
sed 's/^\(Violino II *= *\).*/\1Va/' "$folder/advice.ini" > "$folder/changed.ini"
run 0 sections --settings "$folder/changed.ini" "$score"
grep -q 'Violino II .*strings *Va .*the settings say so' "$folder/out" || fault "a corrected part is not shown so"

# A slip in the name of a part.
printf '[sections]\nViolino III = Va\n' > "$folder/slip.ini"
run 0 sections --settings "$folder/slip.ini" "$score"
says "'Violino III' is no part of"
says "slip.ini, line 2"
printf '[sections]\nViolino II = Viols\n' > "$folder/fault.ini"
run 2 sections --settings "$folder/fault.ini" "$score"
says "names no section"
finish
