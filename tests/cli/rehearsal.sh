#!/bin/sh
# The rehearsal sheet: one story in text, page, table and data; times against the score's own beats.
. tests/support/cli.sh
score=corpus/brelisk-balconies-1.musicxml
scores="corpus/brelisk-balconies-1.musicxml corpus/tolvesk-ecluses-2.mxl"

run 0 rehearsal "$score"
shows "Violins: "
shows "Vn I in 29, 33, 37, 39, 41, 43; Vn II in 31, 38,"
shows "26 degrees between them"

run 0 rehearsal --format json $scores
cp "$folder/out" "$folder/sheet.json"
json_ok "$folder/sheet.json" || fault "the rehearsal sheet as JSON can't be read"
run 0 rehearsal --format csv $scores
cp "$folder/out" "$folder/sheet.csv"
"$SPEZZATO" passages --format json --strength clear $scores > "$folder/passages.json" 2> /dev/null
"$SPEZZATO" passages --format json $scores > "$folder/all.json" 2> /dev/null
"$SPEZZATO" streams --format json $score > "$folder/streams.json" 2> /dev/null
if at_hand python3; then
    python3 - "$folder" "$score" <<'END' || fault "the rehearsal sheet, looked at by another reader"
import csv, json, sys
import xml.etree.ElementTree as xml
folder, score = sys.argv[1:]
sheet, clear, every = (json.load(open(folder + name, encoding="utf-8"))["movements"] for name in ("/sheet.json", "/passages.json", "/all.json"))
rows = list(csv.DictReader(open(folder + "/sheet.csv", encoding="utf-8", newline="")))
assert len(sheet) == len(clear) == 2
at = 0
for movement, listed, all_of in zip(sheet, clear, every):
    items = [item for call in movement["calls"] for item in call["passages"]]
    # Every clear passage once, and none else; each is the passage that it points to.
    assert sorted((i["kind"], i["first_bar"], i["last_bar"], i["what"]) for i in items) == sorted((p["kind"], p["first_bar"], p["last_bar"], p["reason"]) for p in listed["passages"])
    for item in items:
        passage = all_of["passages"][item["passage"]]
        assert (passage["kind"], passage["first_bar"]) == (item["kind"], item["first_bar"])
    # The longest and most exposed first, in each call and from call to call; a call lasts no longer than its passages together.
    weights = []
    for call in movement["calls"]:
        own = [i["seconds"] * i["exposure"] for i in call["passages"]]
        assert all(a >= b - 0.3 for a, b in zip(own, own[1:])), own
        assert max(i["seconds"] for i in call["passages"]) - 0.06 <= call["call_seconds"] <= sum(i["seconds"] for i in call["passages"]) + 0.06
        weights.append(sum(own))
    assert all(a >= b - 0.3 * len(items) for a, b in zip(weights, weights[1:])), weights
    for item in items:
        assert (rows[at]["kind"], rows[at]["first_bar"], rows[at]["listen"]) == (item["kind"], item["first_bar"], item["listen"])
        assert abs(float(rows[at]["seconds"]) - item["seconds"]) < 1e-9
        at += 1
assert at == len(rows)
# Seconds against the file itself: beats of its time signature at its one tempo, counted by another reader of XML.
root = xml.parse(score).getroot()
part = root.find("part")
tempi = [float(s.get("tempo")) for s in part.iter("sound") if s.get("tempo")]
times = [(t.findtext("beats"), t.findtext("beat-type")) for t in part.iter("time")]
assert len(set(tempi)) == 1 and len(set(times)) == 1, (tempi, times)
bar = float(times[0][0]) * 4 / float(times[0][1]) * 60 / tempi[0]
numbers = [m.get("number") for m in part.findall("measure")]
compared = 0
for call in sheet[0]["calls"]:
    for item in call["passages"]:
        bars = numbers.index(item["last_bar"]) - numbers.index(item["first_bar"]) + 1
        assert abs(item["seconds"] - bars * bar) < 0.051, (item["first_bar"], item["seconds"], bars * bar)
        compared += 1
assert compared > 8
END
fi

run 0 rehearsal --format html $scores
cp "$folder/out" "$folder/sheet.html"
if at_hand xmllint; then xmllint --html --noout "$folder/sheet.html" 2> /dev/null || fault "the page is no HTML"; fi
[ "$(grep -o 'class="done"' "$folder/sheet.html" | wc -l)" = "$(($(wc -l < "$folder/sheet.csv") - 1))" ] || fault "the page has not a row for each passage"
run 0 rehearsal --language de "$score"
shows "Aus der Mitte des Saals, 26 Grad zwischen ihnen"
run 0 rehearsal --arrangement "violins together, cellos outside" "$score"
tr "\n" " " < "$folder/out" | grep -q "Seating: violins together, cellos outside\." || fault "the sheet is not for the seating asked for"
run 1 rehearsal --arrangement "violins on the roof" "$score"
says "there is no seating 'violins on the roof'"
run 1 rehearsal --format odt "$score"
says "text|html|csv|json"
run 1 rehearsal
says "which score?"
finish
