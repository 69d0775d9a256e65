#!/bin/sh
# The calendar of a season, read by an independent parser (python3-icalendar): an event for each concert and rehearsal, with the seatings and changes in its
# text, by RFC 5545: CR LF, lines of at most 75 bytes that end between characters, identities that stay.
. tests/support/cli.sh
SOURCE_DATE_EPOCH=1795852817 # 28 November 2026, 8:00:17 UTC
export SOURCE_DATE_EPOCH
ln -s "$PWD"/corpus/*.musicxml "$PWD"/corpus/*.mxl "$PWD/corpus/halls" "$folder/"
{ echo 'concert,date,hall,work,score,interval after,rehearsals,note'
  printf '%s\n' 'Frühling; „Öffnung“,2032-04-03 19:30,"Tithe Barn, Vellgate",Barcarolle,vercassine-barcarolle.musicxml,yes,2032-04-02 10:00 | 3.4.2032 15h,"slow; soft, \ low"'
  echo ',,,Balconies,brelisk-balconies-2.musicxml|brelisk-balconies-4.musicxml,,,'
  echo 'Matinée,2032-04-05,,Écluses,tolvesk-ecluses-1.musicxml,,,'
  echo 'Some day,,,Balconies,brelisk-balconies-1.musicxml,,,'; } > "$folder/plan.csv"
# An event lasts as long as its works with three minutes each and the interval (20 minutes by the settings), to the next five minutes; without a length two hours.
{ echo 'concert,date,work,score,interval after'
  echo 'Known,2032-05-01 19:30,Locks,brelisk-balconies-4.musicxml,yes'
  echo ',,Barcarolle,vercassine-barcarolle.musicxml,'
  echo 'Unknown,2032-05-02 19:30,Not there,,'; } > "$folder/long.csv"
run 2 season "$folder/long.csv" --format json
wanted=$(awk '/"seconds":/ { gsub(/[^0-9.]/, ""); if (n++ < 2) s += $0 } END { m = s / 60 + 6 + 20; print "PT" 5 * int(m / 5 + 1) "M" }' "$folder/out")
run 2 season "$folder/long.csv" --format ics
told=$(sed -n 's/^DURATION:\([^\r]*\)\r*$/\1/p' "$folder/out" | tr '\n\r' '  ')
[ "$(echo $told)" = "$wanted PT120M" ] || fault "the events last $told, not $wanted PT120M"

# A concert that can't be planned still tells what is played.
{ echo 'concert,date,work,score,fixed'
  echo 'Bound,2032-05-03,First,brelisk-balconies-1.musicxml,"violins opposed, cellos inside left"'
  echo ',,Second,brelisk-balconies-2.musicxml,"violins together, cellos outside"'; } > "$folder/bound.csv"
for form in text html ics calendar; do
    run 2 season "$folder/bound.csv" --format $form --set 'concert.change between works=no'
    tr -d '\r\n' < "$folder/out" | sed 's/ \{2,\}/ /g; s/\\;/;/g' > "$folder/flat"
    grep -q 'First;\( \|\)Second' "$folder/flat" || fault "$form: a concert that is not planned lacks its works"
done

run 0 season "$folder/plan.csv" --format ics
mv "$folder/out" "$folder/plan.ics"
run 0 season "$folder/plan.csv" --format ics --language de
mv "$folder/out" "$folder/german.ics"
run 0 season "$folder/plan.csv" --format json
run 0 season corpus/season.csv --format ics
mv "$folder/out" "$folder/corpus.ics"
run 0 season corpus/season.csv --format json
for line in "$folder/plan.ics" "$folder/german.ics" "$folder/corpus.ics"; do
    [ "$(LC_ALL=C tr -cd '\r' < "$line" | wc -c)" = "$(wc -l < "$line")" ] || fault "$(basename "$line"): a line does not end with CR LF"
    LC_ALL=C awk 'length($0) > 76 { exit 1 }' "$line" || fault "$(basename "$line"): a line is longer than 75 bytes"
    iconv -f UTF-8 -t UTF-16 "$line" > "$folder/wide" 2>&1 || fault "$(basename "$line") is not UTF-8"
done

at_hand python3 || exit 0
python=$(for name in python3 /usr/bin/python3; do "$name" -c "import icalendar" 2> /dev/null && echo "$name" && break; done)
if [ -z "$python" ]; then
    skip "python3-icalendar is not there: no calendar is read"
    finish
    exit
fi
"$python" - "$folder" <<'EOT' || fault "the independent parser reads something else"
import datetime, json, sys
from icalendar import Calendar
folder = sys.argv[1]

def events(name):
    raw = open(folder + "/" + name, "rb").read()
    for at, line in enumerate(raw.split(b"\r\n")):
        line.decode("utf-8") # no character is cut by a fold
    calendar = Calendar.from_ical(raw)
    assert calendar["VERSION"] == "2.0" and calendar["PRODID"] and not calendar.errors
    found = [c for c in calendar.walk() if c.name in ("VEVENT", "VTODO")]
    for event in found:
        assert event["UID"] and event["DTSTAMP"].dt == datetime.datetime(2026, 11, 28, 8, 0, 17, tzinfo=event["DTSTAMP"].dt.tzinfo) and not event.errors, event
    assert len({e["UID"] for e in found}) == len(found)
    return found

plan = events("plan.ics")
assert [(e.name, str(e["SUMMARY"])) for e in plan] == [
    ("VEVENT", "Rehearsal: Frühling; „Öffnung“"), ("VEVENT", "Rehearsal: Frühling; „Öffnung“"), ("VEVENT", "Frühling; „Öffnung“"), ("VEVENT", "Matinée"),
    ("VTODO", "Some day (no date)")], plan
assert [e["DTSTART"].dt for e in plan[:4]] == [datetime.datetime(2032, 4, 2, 10), datetime.datetime(2032, 4, 3, 15), datetime.datetime(2032, 4, 3, 19, 30),
                                               datetime.date(2032, 4, 5)]
assert str(plan[2]["LOCATION"]) == "Tithe Barn, Vellgate" and "LOCATION" not in plan[3]
text = str(plan[2]["DESCRIPTION"])
assert "slow; soft, \\ low" in text and "1. Barcarolle" in text and "2. Balconies" in text and "\nInterval\n" in text and "qualified people" in text, text
german = events("german.ics")
assert [e["UID"] for e in german] == [e["UID"] for e in plan] and str(german[0]["SUMMARY"]).startswith("Probe: ") and "\nPause\n" in str(german[2]["DESCRIPTION"])
# Every concert of the corpus with all its works, seatings and the minutes of its changes.
season = json.load(open(folder + "/out", encoding="utf-8"))
corpus = events("corpus.ics")
assert len(corpus) == len(season["concerts"]) > 2
for event, concert in zip(corpus, season["concerts"]):
    assert str(event["SUMMARY"]) == concert["concert"] and event["DTSTART"].dt.isoformat() == concert["date"] and str(event["LOCATION"]) == concert["hall"]
    text = str(event["DESCRIPTION"])
    for work in concert["works"]:
        assert work["title"] in text and work["seating"].lower() in text.lower(), work["title"]
    for change in concert["changes"] + ([concert["set_up"]] if concert["set_up"] else []):
        assert "%g minute" % change["minutes"] in text and "%d chairs" % change["chairs"] in text, (change["minutes"], text)
EOT
finish
