#!/bin/sh
# The season planned from the table: the same whatever way the scores are read, rows that can't be used named with their line, results
# kept and taken again, an interrupted run going on.
. tests/support/cli.sh
library="$folder/data/spezzato/library.sqlite"

run 0 season corpus/season.csv --no-cache
[ "$(error_lines)" = 0 ] || fault "the corpus: $(cat "$folder/err")"
[ -e "$folder/data" ] && fault "--no-cache keeps something"
for word in "Opening night" "interval" "chairs and" "Given up in all" "exits and"; do shows "$word"; done
mv "$folder/out" "$folder/plan"

# More at a time, nothing known, all known, other forms of the table: the same bytes.
run 0 season corpus/season.csv --jobs 3
same "$folder/plan" "$folder/out" "three at a time, nothing known"
[ -s "$library" ] || fault "nothing was kept"
run 0 season corpus/season.csv
same "$folder/plan" "$folder/out" "all known"
"$SPEZZATO" season corpus/season.csv > "$folder/one" 2>&1 &
first=$!
"$SPEZZATO" season corpus/season.csv > "$folder/two" 2>&1
wait "$first" || fault "one of two runs at once failed"
same "$folder/plan" "$folder/one" "two runs at once, the first"
same "$folder/plan" "$folder/two" "two runs at once, the second"

# The table as spreadsheets save it: semicolons, a byte order mark, CR LF, columns turned about.
ln -s "$PWD"/corpus/*.musicxml "$PWD"/corpus/*.mxl "$PWD/corpus/halls" "$folder/"
{ printf '\357\273\277'; printf 'Note;INTERVAL AFTER;score;Work;Order;Hall;Date;Concert\r\n'
  printf ';x;vercassine-barcarolle.musicxml;Barcarolle;1;Tithe Barn, Vellgate;3.4.2032;Spring\r\n'
  printf '"two lines\r\nof note";;brelisk-balconies-2.musicxml | brelisk-balconies-4.musicxml;Balconies;2;;;\r\n'; } > "$folder/sheet.csv"
{ echo 'concert,date,hall,order,work,score,interval after,note'
  echo 'Spring,2032-04-03,"Tithe Barn, Vellgate",1,Barcarolle,vercassine-barcarolle.musicxml,yes,'
  echo 'Spring,2032-04-03,"Tithe Barn, Vellgate",2,Balconies,brelisk-balconies-2.musicxml|brelisk-balconies-4.musicxml,,two lines of note'; } > "$folder/plain.csv"
run 0 season "$folder/plain.csv"
mv "$folder/out" "$folder/expected"
run 0 season "$folder/sheet.csv"
same "$folder/expected" "$folder/out" "semicolons and a byte order mark"
shows "tithe-barn-vellgate.ini"

# Rows that can't be used are named with their line; the rest goes on.
{ cat "$folder/plain.csv"; echo 'Spring,2032-02-30,,3,Never,vercassine-barcarolle.musicxml,,'
  echo 'Spring,2032-04-03,,3,Lost,not-there.musicxml,,'; echo 'Spring,2032-04-03,,4,Broken,broken.xml,,'; } > "$folder/faulty.csv"
printf '<?xml version="1.0"?>\n<score-partwise>' > "$folder/broken.xml"
run 2 season "$folder/faulty.csv" -o "$folder/result"
says "faulty.csv, line 4: '2032-02-30' is no date"
says "faulty.csv, line 5: the score 'not-there.musicxml' is not there"
says "broken.xml"
[ "$(error_lines)" = 3 ] || fault "three rows can't be used, $(error_lines) lines"
grep -q "Balconies" "$folder/result" || fault "the good rows are not planned"
grep -q "3 rows or scores could not be used" "$folder/result" || fault "the plan doesn't tell of the rows left out"

# A name that is nearly right is told with the right one; several scores with the wrong sign between them with the right sign.
{ head -1 "$folder/plain.csv"
  echo 'Spring,2032-04-03,,1,Barcarolle,vercassine-barcarolle,,'
  echo 'Spring,2032-04-03,,2,Balconies,Brelisk-Balconies-2.MUSICXML,,'
  echo 'Spring,2032-04-03,,3,Balconies,brelisk-balconies-2.musicxml;brelisk-balconies-4.musicxml,,'; } > "$folder/nearly.csv"
run 2 season "$folder/nearly.csv" -o "$folder/result"
says "line 2: the score 'vercassine-barcarolle' is not there; 'vercassine-barcarolle.musicxml' is"
says "line 3: the score 'Brelisk-Balconies-2.MUSICXML' is not there; 'brelisk-balconies-2.musicxml' is"
says "line 4: the score 'brelisk-balconies-2.musicxml;brelisk-balconies-4.musicxml' is not there; between several scores stands '|'"

{ head -1 "$folder/plain.csv"
  echo 'Spring,2032-04-03,,1,Barcarolle,vercassine-barcarole.musicxml,,'; echo 'Spring,2032-04-03,,2,Broken,broken.xml,,'; } > "$folder/misspelt.csv"
run 2 season "$folder/misspelt.csv" -o "$folder/result"
says "line 2: the score 'vercassine-barcarole.musicxml' is not there; 'vercassine-barcarolle.musicxml' is"
says "misspelt.csv, line 3: the score 'broken.xml' could not be read: line 2: the file breaks off here, before its end"
[ "$(error_lines)" = 2 ] || fault "two rows can't be used, $(error_lines) lines"

# What is no table of concerts is told as what it is; nothing is written.
mkdir "$folder/tables" "$folder/no-tables"
cp "$folder/plain.csv" "$folder/tables/spring.csv"
head -1 "$folder/plain.csv" > "$folder/header.csv"
for try in "tables|this is a folder; a season is planned from a table (CSV, .ods or .xlsx) that names concerts and scores; in it lies 'spring.csv'" \
           "no-tables|this is a folder" "header.csv|there is no concert in the table: no row follows its header" "none.csv|the file can't be opened: No such file"\
           "vercassine-barcarolle.musicxml|this is a score; a season is planned from a table"; do
    run 2 season "$folder/${try%%|*}"
    says "${try#*|}"
    [ ! -s "$folder/out" ] && [ "$(error_lines)" = 1 ] || fault "season ${try%%|*}: more than one line, or a plan"
done

# A house that forbids every seating is told so once, not by each hall and concert.
printf '[house]\nforbidden = violins opposed | violins together\n' > "$folder/strict.ini"
run 2 season corpus/season.csv --settings "$folder/strict.ini" --no-cache
says "strict.ini, line 2: the house allows no seating at all"
[ "$(error_lines)" = 1 ] || fault "a house that forbids all: $(error_lines) lines"
shows "the house allows no seating at all"

# What is not used stands in every form, with line and cause; what is doubtful beside it.
{ cat "$folder/faulty.csv"; echo 'Spring,2032-04-03,,5,Barcarolle,vercassine-barcarolle.musicxml,perhaps,'
  echo 'Spring,2032-04-03,,1,Barcarolle,vercassine-barcarolle.musicxml,,'; } | sed '1s/$/,cloakroom/' > "$folder/notes.csv"
for language in en:"Not used" de:"Nicht verwendet" fr:"Laissé de côté"; do
    run 2 season "$folder/notes.csv" --language "${language%%:*}"
    shows "${language#*:}"
    run 2 season "$folder/notes.csv" --format html --language "${language%%:*}"
    grep -q '<p>4 ' "$folder/out" || fault "the page in ${language%%:*} doesn't begin with how many rows could not be used"
    shows "${language#*:}"
done
run 2 season "$folder/notes.csv"
shows "Line 7: 'interval after' is yes or no, not 'perhaps'"
shows "Line 8: 'Barcarolle' stands in this concert already, in line 2"
shows "Line 1: nothing is done with these columns: cloakroom"
run 2 season "$folder/notes.csv" --format csv
[ "$(grep -c ',not used,line ' "$folder/out")" = 4 ] || fault "csv: $(grep -c ',not used,' "$folder/out") rows not used, not 4"
[ "$(grep -c ',to be looked at,line ' "$folder/out")" -ge 2 ] || fault "csv: no doubts"
run 2 season "$folder/notes.csv" --format json
if at_hand python3; then
    python3 - "$folder/out" <<'EOT' || fault "not_used does not tell what was not used"
import json, sys
plan = json.load(open(sys.argv[1], encoding="utf-8"))
assert [(n["line"], n["fault"]) for n in plan["not_used"]] == [(4, "no-date"), (5, "score-not-there"), (6, "score-unreadable"), (7, "no-interval")], plan["not_used"]
assert all(n["cause"] for n in plan["not_used"] + plan["doubts"])
assert {"columns", "row-twice"} <= {n["fault"] for n in plan["doubts"]}
assert sum(len(c["works"]) for c in plan["concerts"]) == 7 # nothing vanishes
EOT
fi
printf 'concert,date,work,score\nA,3/4/2032,One,vercassine-barcarolle.musicxml\nB,5/4/2032 20h,One,vercassine-barcarolle.musicxml\n' > "$folder/dates.csv"
run 2 season "$folder/dates.csv"
[ "$(error_lines)" = 1 ] || fault "two dates of one kind: $(error_lines) questions"
says "--dates day-first or --dates month-first"
run 0 season "$folder/dates.csv" --dates day-first --format json
grep -q '"date": "2032-04-03"' "$folder/out" || fault "day first: another day"
grep -q '"time": "20:00"' "$folder/out" || fault "no time"
run 0 season "$folder/dates.csv" --dates month-first --format json
grep -q '"date": "2032-05-04"' "$folder/out" || fault "month first: another day"
run 1 season "$folder/dates.csv" --dates soon

# Two seatings that can't both be had: both rows, both wishes, the minutes, the rule.
{ echo 'concert,work,score,fixed seating'; echo 'A,One,brelisk-balconies-1.musicxml,"violins together, violas outside"'
  echo 'A,Free,brelisk-balconies-2.musicxml,'; echo 'A,Two,brelisk-balconies-3.musicxml,"violins opposed"'; } > "$folder/conflict.csv"
run 2 season "$folder/conflict.csv" --set "concert.change between works=no"
for word in "line 2" "line 4" "violins opposed" "violins together, violas outside" "minutes"; do shows "$word"; done
says "conflict.csv, line 4: the concert 'A' can't be planned: 'Two' is fixed as 'violins opposed', 'One' (line 2) as 'violins together, violas outside'"
run 2 season "$folder/conflict.csv" --set "concert.longest wait=1" --format json
grep -q '"longest": 1' "$folder/out" || fault "the minutes that the house gives are not told"
run 2 season "$folder/conflict.csv" --set "concert.longest wait=1" --language de
shows "lässt zwischen den Werken 1 Minute Zeit"
run 0 season "$folder/conflict.csv"

# A fixed seating holds, an unknown one is named; a hall that can't be read keeps its concert from being planned, not the others.
{ echo 'concert,work,score,fixed seating,hall'; echo 'A,Two,brelisk-balconies-1.musicxml,"violins together, violas outside",'
  echo 'B,Two,brelisk-balconies-1.musicxml,in a circle,'; echo 'C,Two,brelisk-balconies-1.musicxml,,Odd'; } > "$folder/fixed.csv"
rm "$folder/halls"
mkdir "$folder/halls"
printf '[stage]\nwidth = wide\n' > "$folder/halls/odd.ini"
run 2 season "$folder/fixed.csv"
shows "Violins together, violas outside (fixed in the table)"
says "fixed.csv, line 3: this hall has no seating 'in a circle'"
says "odd.ini, line 2"
shows "Not planned"

# The house's word: no change between works and at the interval means none.
run 0 season corpus/season.csv --set "concert.change at interval=no" --set "concert.change between works=no" --set "house.forbidden=" --format json
if at_hand python3; then
    # The fixed seating of the last concert then holds for all of it.
    python3 - "$folder/out" <<'EOT' || fault "changes although the house allows none"
import json, sys
plan = json.load(open(sys.argv[1], encoding="utf-8"))
# What is left is carried for the work for two orchestras, and the plan says that the house has a word to say to that.
for x in (x for c in plan["concerts"] for x in c["changes"]):
    assert x["from"] == x["to"] and x["two_orchestras_before"] != x["two_orchestras_after"] and "allows no change" in x["remark"]
for c in plan["concerts"]:
    assert len({m["seating"] for w in c["works"] for m in w["movements"]}) <= 1
EOT
fi

# Works of one half that would need fewer changes in another order: a remark.
{ echo 'concert,work,score'; echo 'A,First,corpus/brelisk-balconies-1.musicxml'; echo 'A,Odd,corpus/tolvesk-ecluses-1.musicxml'
  echo 'A,Last,corpus/brelisk-balconies-4.musicxml'; } | sed "s#corpus/#$PWD/corpus/#" > "$folder/order.csv"
run 0 season "$folder/order.csv" --set "concert.price between works=1" --set "concert.price of a minute=0"
shows "Remark: in the order"
run 0 season "$folder/order.csv" --set "concert.change between works=no"
shows_not "Remark"
shows "If two more were allowed"
shows "doesn't allow there"

# Each form; what is no form; one sheet.
for form in json ndjson; do
    run 0 season corpus/season.csv --format "$form"
    [ "$form" = ndjson ] || json_ok "$folder/out" || fault "$form is not well formed"
done
lines=$(wc -l < "$folder/out")
[ "$lines" -ge 14 ] || fault "ndjson: $lines lines"
head -n 1 "$folder/out" > "$folder/line"
json_ok "$folder/line" || fault "a line of ndjson is not well formed"
run 0 season corpus/season.csv --format csv
[ "$(grep -c ',work,' "$folder/out")" = 12 ] || fault "csv: not a row for each work"
run 0 season corpus/season.csv --format calendar
shows "October 2031"
run 0 season corpus/season.csv --format html
shows "<!DOCTYPE html>"
run 0 season corpus/season.csv --sheet 1
shows "Change sheet: Opening night"
run 0 season corpus/season.csv --sheet 1 --format html
shows "break-inside"
run 0 season corpus/season.csv --sheet 1 --language de
shows "Umbauplan: Opening night"
run 0 season corpus/season.csv --format calendar --language fr
shows "Octobre 2031"
run 0 season corpus/season.csv --format csv --language fr
shows "Before the concert"
for words in "--format music" "--sheet 9" "--sheet 1 --format json" "--share 1/2" "--format ndjson --share 3/2" "--jobs 0" "extra.csv"; do
    # shellcheck disable=SC2086
    run 1 season corpus/season.csv $words
done
run 1 season
run 2 season "$folder/none.csv"
[ "$(error_lines)" = 1 ] || fault "a missing table: $(error_lines) lines"

# A title that looks like markup is shown as text.
{ echo 'concert,work,score,note'; echo '<b>A</b>,<script>x</script>,vercassine-barcarolle.musicxml,"""=1+1"" & more"'; } > "$folder/markup.csv"
run 0 season "$folder/markup.csv" --format html
shows "&lt;script&gt;"
shows_not "<script>"

# Stopped in the middle, it goes on where it stopped: many copies, each a score of its own.
rm -rf "$folder/data"
mkdir "$folder/many"
echo 'concert,work,score' > "$folder/many.csv"
for number in 1 2 3 4 5 6 7 8 9 10 11 12; do
    sed "s/<movement-title>/<movement-title>$number /" corpus/brelisk-balconies-1.musicxml > "$folder/many/piece-$number.musicxml"
done
echo 'A,All,many' >> "$folder/many.csv"
if at_hand sqlite3; then
    kept() { sqlite3 -readonly "$library" 'SELECT count(*) FROM result' 2> /dev/null || echo 0; }
else
    kept() { if [ -s "$library" ]; then echo 1; else echo 0; fi; }
fi
"$SPEZZATO" season "$folder/many.csv" > "$folder/stopped" 2> "$folder/err" &
running=$!
tries=0 # it is stopped once something is kept, however long that takes on a busy machine
while kill -0 "$running" 2> /dev/null && [ "$(kept)" -lt 1 ] && [ "$tries" -lt 600 ]; do sleep 0.05; tries=$((tries + 1)); done
kill -TERM "$running" 2>/dev/null # a shell lets its background runs ignore INT
wait "$running"
status=$?
[ "$status" = 0 ] || [ "$status" = 2 ] || fault "interrupted: exit status $status"
[ "$status" = 0 ] || [ ! -s "$folder/stopped" ] || fault "interrupted, and half a plan"
[ "$(kept)" -ge 1 ] || fault "interrupted, and nothing kept"
run 0 season "$folder/many.csv"
mv "$folder/out" "$folder/resumed"
run 0 season "$folder/many.csv" --no-cache
same "$folder/out" "$folder/resumed" "after an interrupted run"

# Works by their names from the library; a name that means several, or none, is told.
run 0 library add "$PWD/corpus"
{ echo 'concert,work,score'; echo 'A,"Sinfonia in D, The Two Balconies",library'; echo 'A,Barcarolle,library: Barcarolle pour violons'; } > "$folder/by-name.csv"
{ echo 'concert,work,score'; echo "A,\"Sinfonia in D, The Two Balconies\",$PWD/corpus/brelisk-balconies-1.musicxml|$PWD/corpus/brelisk-balconies-2.musicxml|$PWD/corpus/brelisk-balconies-3.musicxml|$PWD/corpus/brelisk-balconies-4.musicxml"
  echo "A,Barcarolle,$PWD/corpus/vercassine-barcarolle.musicxml"; } > "$folder/by-file.csv"
run 0 season "$folder/by-file.csv" --no-cache
mv "$folder/out" "$folder/expected"
run 0 season "$folder/by-name.csv"
same "$folder/expected" "$folder/out" "works by their names"
{ echo 'concert,work,score'; echo 'A,"Sinfonia in D, The Two Balconies",'; echo 'A,Barcarolle,library: Barcarolle'; } > "$folder/by-option.csv"
run 0 season "$folder/by-option.csv" --scores library
same "$folder/expected" "$folder/out" "rows without a score"
{ echo 'concert,work,score'; echo 'A,in,library'; echo 'A,Nobody knows it,library'; } > "$folder/by-name.csv"
run 2 season "$folder/by-name.csv"
says "by-name.csv, line 2: the library has"
says "by-name.csv, line 3: no work of the name 'Nobody knows it' is in the library"

# A library that can't be used keeps nobody from planning; it is told and left as it is.
printf 'something else' > "$folder/no-library"
run 0 season "$folder/by-file.csv" --library "$folder/no-library"
same "$folder/expected" "$folder/out" "a file that is no library"
says "it is no library; it is left as it is"
[ "$(cat "$folder/no-library")" = 'something else' ] || fault "a file that is no library was changed"

# On a terminal it says how far it is; the result is the same.
if at_hand python3; then
    python3 - "$SPEZZATO" "$folder/many.csv" "$folder/terminal" > "$folder/shown" <<'EOT' || fault "no run on a terminal"
import os, pty, sys
program, plan, result = sys.argv[1:]
child, terminal = pty.fork()
if child == 0: os.execv(program, [program, "season", plan, "--no-cache", "-o", result])
shown = b""
while True:
    try: piece = os.read(terminal, 4096)
    except OSError: break
    if not piece: break
    shown += piece
sys.stdout.buffer.write(shown)
sys.exit(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]))
EOT
    same "$folder/resumed" "$folder/terminal" "on a terminal"
    grep -q "of 12 scores" "$folder/shown" || fault "nothing on the terminal about how far it is"
    grep -q "bars a second" "$folder/shown" || fault "nothing on the terminal about the speed"
fi

# Soloist, piano and podium come from the table and go on and off before their work.
{ echo 'concert,work,score,piano,Solist,podium'
  echo 'A,One,brelisk-balconies-1.musicxml,,,'
  echo 'A,Two,brelisk-balconies-2.musicxml,yes,,2.9 m from the edge'
  echo 'A,Three,brelisk-balconies-3.musicxml,no,violin,'; } > "$folder/pieces.csv"
run 0 season --no-cache --sheet 1 "$folder/pieces.csv"
shows "[ ] Piano on; Podium: 2.9 m from the edge"
shows "[ ] Piano off; Podium back to its usual place; Soloist's place: violin"
run 0 season --no-cache --format json "$folder/pieces.csv"
shows '"podium": "2.9 m from the edge"'

# A repeated programme begins with what the performance before left on the stage.
cp "$folder/pieces.csv" "$folder/again.csv"
sed -n '2,$s/^A,/B,/p' "$folder/pieces.csv" >> "$folder/again.csv"
run 0 season --no-cache --sheet 2 "$folder/again.csv"
shows "The same programme as the concert before it in this hall: set up once"
shows "[ ] No soloist's place any more"

# The same programme twice in one hall is set up once; the change sheet names every desk, and its sums are those that the plan tells.
{ echo 'concert,date,work,score,fixed seating'
  echo 'A,2032-05-01,Two,brelisk-balconies-1.musicxml,"violins opposed, cellos inside left"'
  echo 'B,2032-05-02,Two,brelisk-balconies-1.musicxml,"violins opposed, cellos inside left"'
  echo 'C,2032-05-09,Three,brelisk-balconies-2.musicxml,"violins opposed, cellos inside left"'; } > "$folder/twice.csv"
run 0 season --no-cache --format json "$folder/twice.csv"
[ "$(grep -c '"repeats": true' "$folder/out")" = 1 ] || fault "one concert repeats a programme, not $(grep -c '"repeats": true' "$folder/out")"
[ "$(grep -c '"set_up": null' "$folder/out")" = 1 ] || fault "the repeated programme is set up again"
run 0 season --no-cache --sheet 2 "$folder/twice.csv"
shows "The same programme as on 2032-05-01: set up once"
run 0 season --no-cache --sheet 1 "$folder/twice.csv"
told=$(sed -n 's/^ *In all \([0-9]*\) chairs and \([0-9]*\) stands to be carried.*/\1 \2/p' "$folder/out")
tr -s '\n ' '  ' < "$folder/out" | sed 's/\[ \]/\n/g' | sed -n 's/.*; \([0-9]*\) chairs*, \([0-9]*\) stands*.*/\1 \2/p' | awk '{ c += $1; s += $2 } END { print c, s }' > "$folder/sums"
[ -n "$told" ] && [ "$told" = "$(cat "$folder/sums")" ] || fault "the desks add up to $(cat "$folder/sums"), told are $told"

# The numbers of the edition: those of a reading by itself, also where the score comes from the library or lies there under another name.
printf '[bars brelisk-balconies-1.musicxml]\nfirst = 101\n[bars copy.musicxml]\nfirst = 1001\n' > "$folder/bars.ini"
cp corpus/brelisk-balconies-1.musicxml "$folder/copy.musicxml"
{ echo 'concert,work,score,fixed seating'
  echo 'A,One,brelisk-balconies-1.musicxml,"violins together, cellos outside"'
  echo 'A,Two,copy.musicxml,"violins together, cellos outside"'; } > "$folder/numbers.csv"
"$SPEZZATO" seating --format json --settings "$folder/bars.ini" "$folder/brelisk-balconies-1.musicxml" "$folder/copy.musicxml" > "$folder/read.json"
for turn in heard kept; do
    run 0 season --settings "$folder/bars.ini" --format json "$folder/numbers.csv"
    ! at_hand python3 || python3 - "$folder/read.json" "$folder/out" <<'EOT' || fault "the season's bars are not those of a reading by itself ($turn)"
import json, sys
read, season = (json.load(open(path)) for path in sys.argv[1:])
read = {m["file"].split("/")[-1]: next(r for r in m["ranked"] if r["arrangement"] == "violins together, cellos outside") for m in read["movements"]}
season = {m["file"].split("/")[-1]: m for w in season["concerts"][0]["works"] for m in w["movements"]}
assert len(season) == 2
for name, least in (("brelisk-balconies-1.musicxml", 101), ("copy.musicxml", 1001)):
    assert read[name]["losses"] == season[name]["weakened"] != ""
    assert all(int(first) >= least for l in season[name]["losses"] for first, last in l["spans"])
EOT
done
printf '[bars]\njoined = 5 7\n' > "$folder/bars.ini"
run 2 season --settings "$folder/bars.ini" --no-cache "$folder/numbers.csv"
says "copy.musicxml: bars.ini, line 2: 'joined = 5 7' in [bars] is none of"
finish
