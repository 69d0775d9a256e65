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

# The ready file: every part stands in it, and given back it changes nothing but the reasons. What is there already stays.
written=$folder/corrections.ini
run 0 sections --write "$written" "$score"
says "is written"
grep -q '^# .*: its name says' "$written" || fault "the ready file gives no reasons"
run 0 sections --format csv --settings "$written" "$score"
cut -d, -f1-15 "$folder/out" | tail -n +2 > "$folder/after"
same "$folder/before" "$folder/after" "the ready file, given back"
run 1 sections --write "$written" "$score"
says "is there already"
for word in 'Vn III' 'staff 2' 'orchestra 2' 'continuo' 'not strings' 'not played'; do
    grep -q "^#.*$word" "$written" || fault "the ready file does not say that '$word' may be written"
done

# A correction that does nothing is told on a page too, after however many doubts.
printf '[sections]\nViolino III = Va\nViolino II = Vn II staff 7\n' > "$folder/slip.ini"
run 0 seating --settings "$folder/slip.ini" "$score"
says "'Violino III' is no part of"
says "staff 7"

# Parts that nothing names. Two treble clefs, an alto and two bass clefs below a flute: the strings, told as guesses. With the viola's line
# below its lowest string, nothing is guessed, and the overview does not say that there is nothing to decide.
nameless() { # pitch of the third part
    printf '<score-partwise><part-list>'
    for part in 1 2 3 4 5 6; do printf '<score-part id="P%s"><part-name>%s</part-name></score-part>' "$part" "$([ "$part" = 1 ] && echo Flute || echo "Part $part")"; done
    printf '</part-list>'
    part=0
    for music in 'G 2 6' 'G 2 5' 'G 2 4' "C 3 $1" 'F 4 2' 'F 4 2'; do
        set -- $music
        part=$((part + 1))
        printf '<part id="P%s"><measure number="1"><attributes><divisions>1</divisions><clef><sign>%s</sign><line>%s</line></clef></attributes>' "$part" "$1" "$2"
        printf '<note><pitch><step>C</step><octave>%s</octave></pitch><duration>4</duration></note></measure></part>' "$3"
    done
    printf '</score-partwise>'
}
nameless 3 > "$folder/nameless.musicxml"
run 0 sections --format csv "$folder/nameless.musicxml"
cut -d, -f3,7,8 "$folder/out" | tail -n +2 | tr '\n' ' ' > "$folder/guessed"
[ "$(grep -c 'a guess from its clef' "$folder/out")" = 5 ] || fault "five guesses are not told"
for guessed in 'Part 2,Vn I,' 'Part 3,Vn II,' 'Part 4,Va,' 'Part 5,Vc,' 'Part 6,Db,'; do
    grep -q "$guessed" "$folder/guessed" || fault "not guessed: $guessed; $(cat "$folder/guessed")"
done
says "a guess: Vn II"
nameless 2 > "$folder/nameless.musicxml"
run 0 sections --format csv "$folder/nameless.musicxml"
grep -q 'a guess' "$folder/out" && fault "a viola below its lowest string is guessed"
run 0 --brief "$folder/nameless.musicxml"
grep -q 'violins not recognised' "$folder/out" || fault "a score without recognised violins has nothing to decide"
grep -q 'nothing to decide' "$folder/out" && fault "nothing to decide, without violins"
finish
