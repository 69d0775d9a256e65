#!/bin/sh
# Each plan of the corpus against a search through every row of seatings, written anew in another language from the lines of the movements
# and the prices of the settings. With what the house allows, with everything free, and with a change between movements allowed.
. tests/support/cli.sh
at_hand python3 || exit 0
ln -s "$PWD"/corpus/*.musicxml "$PWD"/corpus/*.mxl "$PWD/corpus/halls" "$folder/"
cat > "$folder/search.py" <<'EOT'
import itertools, json, sys
plan, lines, interval, works, movements = sys.argv[1:]
price = {"interval": float(interval), "works": float(works), "movements": float(movements)}
concert = json.load(open(plan, encoding="utf-8"))["concerts"][0]
seats = {}
for line in open(lines, encoding="utf-8"):
    m = json.loads(line)
    seats[m["file"].rsplit("/", 1)[-1], m["movement"]] = {s["name"]: s["points"] for s in m["seatings"]}
steps = []
for w, work in enumerate(concert["works"]):
    for i, m in enumerate(work["movements"]):
        gap = "movements" if i else None if w == 0 else "interval" if concert["works"][w - 1]["interval_after"] else "works"
        steps.append((gap, seats[m["file"], m["movement"]], work["fixed"]))
names = sorted({n for _, s, _ in steps for n in s})
best = None
def search(at, before, total):
    # All rows of seatings; one whose sum is past the best already is not followed to its end.
    global best
    if best is not None and total >= best + 1e-9: return
    if at == len(steps):
        best = total
        return
    gap, points, fixed = steps[at]
    for name in names:
        if fixed and name != fixed: continue
        if before is None: cost = 0            # setting up is free
        elif name == before: cost = 0
        elif price[gap] < 0: continue          # not allowed
        else: cost = price[gap]
        search(at + 1, name, total + cost + (max(points.values()) - points[name] if points else 0))
search(0, None, 0)
found = concert["points_given_up"] + concert["price"]
if abs(found - best) > 0.005 * len(steps) + 0.006: sys.exit("%s: the plan costs %.2f, the search finds %.2f" % (concert["concert"], found, best))
EOT
# try WHAT INTERVAL WORKS MOVEMENTS: prices in points; -1: not allowed there.
try() {
    allowed() { [ "$1" = -1 ] && echo no || echo yes; }
    points() { [ "$1" = -1 ] && echo 0 || echo "$1"; }
    for first in "Opening night" "Fell and Mere" "Balconies and locks" "Spring by the quay"; do
        { head -n 1 corpus/season.csv; grep "^$first," corpus/season.csv; } > "$folder/one.csv"
        for form in json ndjson; do
            run 0 season "$folder/one.csv" --no-cache --format $form --set "concert.price of a minute=0" --set "concert.longest wait=60" \
                --set "concert.change at interval=$(allowed "$2")" --set "concert.price at interval=$(points "$2")" \
                --set "concert.change between works=$(allowed "$3")" --set "concert.price between works=$(points "$3")" \
                --set "concert.change between movements=$(allowed "$4")" --set "concert.price between movements=$(points "$4")"
            mv "$folder/out" "$folder/$form"
        done
        python3 "$folder/search.py" "$folder/json" "$folder/ndjson" "$2" "$3" "$4" || fault "$1: $first"
    done
}
try "as the house usually allows" 1 10 -1
try "no change at all" -1 -1 -1
try "everything free" 0 0 0
try "dear between movements" 1 3 5
finish
