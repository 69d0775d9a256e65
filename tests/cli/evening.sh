#!/bin/sh
# One seating for the evening, and what a change at the interval would gain: against a search through every seating, and through every two of them,
# written anew in another language from the lines of the movements; bars given up counted from the losses; desks by name.
. tests/support/cli.sh
run 0 season corpus/season.csv --no-cache
cp "$folder/out" "$folder/plan"
shows "One seating for the evening: violins opposed, cellos inside left. It gives up "
shows "One seating serves the whole evening and gives up nothing: "
# The plan's own change is told as such; where the house doesn't make it, as what it would gain.
shows "The plan changes once, at the interval, from violins opposed, "
shows_not "One change at the interval, "
# It leads: before the first work of its concert.
awk '/^  One seating/ { seen = 1 } /^  1\. / { if (!seen) bad = 1; seen = 0 } END { exit bad }' "$folder/plan" || fault "the one seating doesn't lead its concert"
run 0 season corpus/season.csv --no-cache --set 'concert.price at interval=100'
shows "One change at the interval, to violins together, "
shows_not "The plan changes once"

run 0 season corpus/season.csv --no-cache --sheet 1
tr '\n' ' ' < "$folder/out" | tr -s ' ' > "$folder/sheet"
grep -q 'Desks that stay: Vn I 1-6' "$folder/sheet" || fault "the sheet doesn't name the desks that stay"
grep -q 'Desks to be carried: ' "$folder/sheet" || fault "the sheet doesn't name the desks to be carried"

# Chamber music brings its own chairs: whatever order it asks for, no chair of the sections is moved for it.
{
    printf 'work: Quartet\ncomposed: 1790\ntime: 4/4  tempo: q=96\npart: Violin 1\npart: Violin 2\npart: Viola; clef alto\npart: Violoncello; clef bass\n\n'
    echo 'Violin 1:    e5:e( g5 f5 d5) c5:h | R | %*7'
    echo 'Violin 2:    R | e5:e( g5 f5 d5) c5:h | %*7'
    echo 'Viola:       c4:w | c4:w | %*7'
    echo 'Violoncello: c3:w | c3:w | %*7'
} > "$folder/quartet.txt"
if "${BUILD:-build}/sketch" "$folder/quartet.txt" "$folder/quartet.musicxml" < /dev/null 2> "$folder/err"; then
    printf 'concert,work,score\nA,Quartet,quartet.musicxml\n' > "$folder/quartet.csv"
    run 0 season "$folder/quartet.csv" --no-cache
    shows "Chamber music: each work has an order of its own, and no chair of the sections is moved."
    shows "Chamber music, one player a part: violins opposed, "
    shows_not "To be carried"
    shows_not "One seating "
    run 0 season "$folder/quartet.csv" --no-cache --format json
    grep -q '"chamber_music": true' "$folder/out" || fault "the quartet is not told as chamber music"
else
    fault "the sketch could not be made: $(head -n 1 "$folder/err")"
fi

at_hand python3 || exit 0
ln -s "$PWD"/corpus/*.musicxml "$PWD"/corpus/*.mxl "$PWD/corpus/halls" "$folder/"
cat > "$folder/search.py" <<'EOT2'
import itertools, json, sys
concert = json.load(open(sys.argv[1], encoding="utf-8"))["concerts"][0]
lines = {}
for text in open(sys.argv[2], encoding="utf-8"):
    m = json.loads(text)
    lines[m["file"].rsplit("/", 1)[-1], m["movement"]] = m

def bars(seat, count):
    found = set()
    for loss in seat["losses"]:
        where = range(count) if loss["throughout"] else [b for s in loss["bars"] for b in range(s["first"], s["last"] + 1)]
        found |= {(loss["kind"], tuple(loss["sides"]), b) for b in where}
    return found

steps, halves, half = [], [], 0
for work in concert["works"]:
    for movement in work["movements"]:
        m = lines[movement["file"], movement["movement"]]
        steps.append((movement, dict(m, fixed=work["fixed"])))
        halves.append(half)
    half += work["interval_after"]
names = sorted({s["name"] for _, m in steps for s in m["seatings"]})
def lost(m, name):
    if m["fixed"] and name != m["fixed"]: return 1e9 # the table's word
    return max(s["points"] for s in m["seatings"]) - next(s["points"] for s in m["seatings"] if s["name"] == name) if m["seatings"] else 0
sums = {name: sum(lost(m, name) for _, m in steps) for name in names}
one = concert["without_change"]
assert abs(one["points_given_up"] - min(sums.values())) < 0.01 * len(steps) and abs(sums[one["seating"]] - min(sums.values())) < 0.01 * len(steps), concert["concert"]
# Movement by movement, in playing order: points, and bars weakened that the movement's best seating doesn't weaken.
assert [m["title"] for m in one["movements"]] == [m["title"] for m, _ in steps]
for told, (_, m) in zip(one["movements"], steps):
    assert abs(told["points_given_up"] - lost(m, one["seating"])) < 0.011
    if told["points_given_up"] == 0:
        assert told["lost_bars"] == 0
        continue
    best = bars(m["seatings"][0], m["bars"])
    here = bars(next(s for s in m["seatings"] if s["name"] == one["seating"]), m["bars"])
    assert told["lost_bars"] == len({b for _, _, b in here - best}), (told, len({b for _, _, b in here - best}))
    assert (told["lost_seconds"] > 0) == (told["lost_bars"] > 0) and told["lost_seconds"] <= told["seconds"] + 0.1
two = concert["change_at_interval"]
if max(halves, default=0):
    least = min(sum(lost(m, pair[h]) for (_, m), h in zip(steps, halves)) for pair in itertools.product(names, repeat=2))
    if two:
        assert two["points_given_up"] < one["points_given_up"] and two["change"]["where"] == "at the interval"
        # The interval's own price may make a dearer seating the better one.
        assert least - 0.01 <= two["points_given_up"] + 0.01 * len(steps) and two["points_given_up"] <= least + two["price"] + 0.01 * len(steps)
    else:
        assert one["points_given_up"] <= least + 1 + 0.01 * len(steps), concert["concert"]
for change in concert["changes"] + ([concert["set_up"]] if concert["set_up"] else []):
    carried = [d for d in change["desks"] if not d["stays"]]
    assert len(carried) == change["stands"], (change["before"], len(carried), change["stands"])
    assert len({(d["section"], d["orchestra"], d["desk"]) for d in change["desks"]}) == len(change["desks"])
print("gains" if two else "nothing to gain")
EOT2
for first in "Opening night" "Fell and Mere" "Balconies and locks" "Spring by the quay"; do
    { head -n 1 corpus/season.csv; grep "^$first," corpus/season.csv; } > "$folder/one.csv"
    "$SPEZZATO" season "$folder/one.csv" --no-cache --format json > "$folder/json"
    "$SPEZZATO" season "$folder/one.csv" --no-cache --format ndjson > "$folder/lines"
    python3 "$folder/search.py" "$folder/json" "$folder/lines" >> "$folder/found" || fault "one seating for the evening, looked for anew: $first"
done
[ "$(grep -c '^gains$' "$folder/found")" -ge 2 ] || fault "no concert gains by a change at the interval"

# One seating for a work: its movements in playing order, with bars and minutes.
run 0 seating --work --width 200 corpus/tolvesk-ecluses-1.musicxml corpus/brelisk-balconies-1.musicxml corpus/tolvesk-ecluses-2.mxl
grep -E '^  - ' "$folder/out" | tail -n 3 | cut -c 5-30 > "$folder/order"
printf '%s\n' "Trois écluses: I. Vannes: by itself" "Sinfonia in D, The Two Balconies" "Trois écluses: II. Roues: by itself" | cut -c 1-20 > "$folder/expected"
cut -c 1-20 "$folder/order" > "$folder/got"
same "$folder/expected" "$folder/got" "the movements of a work in playing order"
grep -Eq 'it loses [0-9.]+ points in [0-9]+ bars, [0-9]+:[0-9]+ of music: ' "$folder/out" || fault "a work doesn't say how many bars and minutes are given up"
# The same as a page, to which the overview leads.
run 0 report --engraver none --work corpus/tolvesk-ecluses-1.musicxml corpus/brelisk-balconies-1.musicxml corpus/tolvesk-ecluses-2.mxl -o "$folder/pages"
grep -q 'href="work.html"' "$folder/pages/index.html" || fault "the overview does not lead to the one seating"
grep -o '<tr><th scope="row"><a href="[^"]*"' "$folder/pages/work.html" | sed 's/.*href="//; s/"$//' > "$folder/got"
printf 'tolvesk-ecluses-1.html\nbrelisk-balconies-1.html\ntolvesk-ecluses-2.html\n' > "$folder/expected"
same "$folder/expected" "$folder/got" "the movements of the page of one seating"
"$SPEZZATO" seating --work --format json corpus/tolvesk-ecluses-1.musicxml corpus/brelisk-balconies-1.musicxml corpus/tolvesk-ecluses-2.mxl > "$folder/json" 2> /dev/null
bars=$(grep -o '"lost_bars": [0-9]*' "$folder/json" | tail -n 4 | head -n 1 | grep -o '[0-9]*$')
grep -q "<td class=\"figure\">$bars</td>" "$folder/pages/work.html" || fault "the page has not the $bars bars of the data"
cp corpus/brelisk-balconies-1.musicxml "$folder/work.musicxml"
run 0 report --work --engraver none "$folder/work.musicxml" -o "$folder/pages"
grep -q 'href="work-2.html' "$folder/pages/work.html" || fault "a score that is called work is not found from the page of one seating"
finish
