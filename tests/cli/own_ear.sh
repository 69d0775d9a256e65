#!/bin/sh
# [passages] of a settings file: what the conductor takes out or weighs is told in every document where it stood, and counts.
. tests/support/cli.sh
score=corpus/brelisk-balconies-1.musicxml

# --explain names the line to write; given back as it stands it changes nothing but who says so.
run 0 passages --explain 10 "$score"
sed -n '/^    \[passages /,/^$/s/^    //p' "$folder/out" > "$folder/advice.ini"
grep -q '^\[passages brelisk-balconies-1.musicxml\]$' "$folder/advice.ini" || fault "no section to write: $(head -n 1 "$folder/advice.ini")"
grep -q '^7-15 Vn I Vn II = striking$' "$folder/advice.ini" || fault "no line to write for bars 7-15"
run 0 passages --explain 10 --settings "$folder/advice.ini" "$score"
shows "striking (conductor)"
[ "$(error_lines)" = 0 ] || fault "the line that --explain names: $(head -n 1 "$folder/err")"

# A veto, with its reason: on the page, among the grounds, and in the points.
sed 's/ = .*/ = no, the horns cover it/' "$folder/advice.ini" > "$folder/veto.ini"
run 0 --width 200 --settings "$folder/veto.ini" --all "$score"
grep -q '^  7-15 .*taken out' "$folder/out" || fault "the passage that was taken out doesn't stand in its place"
shows "taken out by the conductor: the horns cover it (found as striking)"
shows "Taken out by the conductor: 1 passage (bars 7-15)"
shows_not "(bars 7-15, 29-44"
# What the exchanges of the violins weigh; the sum is rounded and may not show one more passage among many.
points() { "$SPEZZATO" seating --format json "$@" "$score" | grep -m 1 '"antiphony of the violins"'; }
[ "$(points)" != "$(points --settings "$folder/veto.ini")" ] || fault "a veto changes no figure of the seating"

run 0 passages --format json --settings "$folder/veto.ini" "$score"
tr -d '\n' < "$folder/out" | tr -s ' ' | grep -q '"strength": 0.00, "strength_word": "marginal", "ruling": "vetoed", "ruling_reason": "the horns cover it", "strength_found": 0.[89]' ||
    fault "the JSON doesn't say who took bars 7-15 out, and why"

# What is taken out is cited nowhere, and marked in no part.
run 0 notes --all --format csv "$score"
grep -q ',7,15,' "$folder/out" || fault "the note doesn't cite bars 7-15 before"
run 0 notes --all --format csv --settings "$folder/veto.ini" "$score"
if grep -q ',7,15,' "$folder/out"; then fault "the note cites what was taken out"; fi

# What was heard and left out can be raised: --explain names the line, which makes a passage of it that counts; without the line it is gone.
run 0 passages --explain 50 "$score"
shows "Left out: "
sed -n '/To hold one of those/,/^$/s/^    //p' "$folder/out" > "$folder/raise.ini"
grep -q '^44-50 Vn II Vn I = clear$' "$folder/raise.ini" || fault "no line for what was left out in bars 44-50"
run 0 passages --format csv "$score"
if grep -q ',44,50,' "$folder/out"; then fault "bars 44-50 are a passage before they are raised"; fi
run 0 passages --format csv --settings "$folder/raise.ini" "$score"
[ "$(error_lines)" = 0 ] || fault "a line that raises: $(head -n 1 "$folder/err")"
grep -q ',exchange,Vn II,Vn I,44,50,.*,0.65,clear,weighted,,0.[0-4]' "$folder/out" || fault "bars 44-50 are not raised"
[ "$(points)" != "$(points --settings "$folder/raise.ini")" ] || fault "a raised passage changes no figure of the seating"
run 0 notes --all --settings "$folder/raise.ini" "$score"
run 0 parts --all --settings "$folder/raise.ini" "$score"
run 0 rehearsal --settings "$folder/raise.ini" "$score"
grep -q '^  44-50' "$folder/out" || fault "a raised passage is not rehearsed"
run 0 report --engraver none --settings "$folder/raise.ini" "$score" -o "$folder/raised"
grep -q 'data-line="44-50 Vn II Vn I" data-ruling="clear"' "$folder/raised/brelisk-balconies-1.html" || fault "a raised passage is not on the page"
sed 's/ = .*/ = no/' "$folder/raise.ini" > "$folder/none.ini"
run 0 passages --format csv --settings "$folder/none.ini" "$score"
says "'44-50 Vn II Vn I' meets no passage"

# What two sections do at once can be raised too, where the line names them and the kind, and the notes bear it; where they don't, it is told why.
printf '[passages]\n121-124 Va Vc coupling = clear, one bow\n60-61 Va Vc coupling = clear\n60-61 Vn I Vn II split-line = clear\n60-61 Va div3 = clear\n' > "$folder/together.ini"
run 0 passages --format csv --settings "$folder/together.ini" "$score"
grep -q ',coupling,Va,Vc,121,124,.*,0.65,clear,weighted,one bow,' "$folder/out" || fault "a coupling is not raised"
[ "$(grep -c ',weighted,' "$folder/out")" = 1 ] || fault "more is raised than the notes bear"
says "'60-61 Va Vc coupling' meets no passage of brelisk-balconies-1.musicxml (the notes don't bear it: the two have less than half of their attacks there together)"
says "'60-61 Vn I Vn II split-line' meets no passage of brelisk-balconies-1.musicxml (the notes don't bear it: no line on top passes between the two there)"
says "'60-61 Va div3' meets no passage of brelisk-balconies-1.musicxml (a division stands in the parts or it doesn't: no line makes one)"
run 0 report --engraver none --settings "$folder/together.ini" "$score" -o "$folder/together"
grep -q 'data-line="121-124 Va Vc[^"]*" data-ruling="clear" data-why="one bow"' "$folder/together/brelisk-balconies-1.html" || fault "a raised coupling is not on the page"
# Five notes of the published pattern of a split line (Deutsch 1975): too few to be reported, enough to be held for one.
cat > "$folder/braid.txt" <<'NOTES'
title: Braid
work: Braid
time: 4/4  tempo: q=120
Violin I:  c5:q d4 a4 f4 | c5:w | c5:w |]
Violin II: c4:q b4 e4 g4 | c4:w | c4:w |]
Viola:     R | c4:w | c4:w |]
Cello:     R | c3:w | c3:w |]
NOTES
"$BUILD/sketch" "$folder/braid.txt" "$folder/braid.musicxml" || fault "the sketch can't be made"
run 0 passages --format csv "$folder/braid.musicxml"
if grep -q ',split-line,' "$folder/out"; then fault "five notes are reported as a split line"; fi
printf '[passages]\n1 Vn I Vn II split-line = striking\n' > "$folder/braid.ini"
run 0 passages --format csv --settings "$folder/braid.ini" "$folder/braid.musicxml"
grep -q ',split-line,Vn I,Vn II,1,1,.*,0.90,striking,weighted,' "$folder/out" || fault "a split line is not raised"

# A line about nothing is one doubt; one that can't be understood is one line with its place.
printf '[passages]\n\n2-3 Va Db hocket = no\n' > "$folder/nothing.ini"
run 0 passages --settings "$folder/nothing.ini" "$score"
says "nothing.ini, line 3: doubt: '2-3 Va Db hocket' meets no passage of brelisk-balconies-1.musicxml"
[ "$(error_lines)" = 1 ] || fault "a line about nothing: $(error_lines) lines"
printf '[passages]\n46-48 = perhaps\n' > "$folder/fault.ini"
run 2 passages --settings "$folder/fault.ini" "$score"
says "fault.ini, line 2: '46-48 = perhaps' in [passages]: it says no, marginal, clear or striking"
[ "$(error_lines)" = 1 ] || fault "a line that can't be understood: $(error_lines) lines"

# All settings, with hers, can be read back.
run 0 settings --settings "$folder/veto.ini"
cp "$folder/out" "$folder/all.ini"
run 0 settings --settings "$folder/all.ini"
same "$folder/all.ini" "$folder/out" "settings with [passages], given back"
finish
