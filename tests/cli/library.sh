#!/bin/sh
# A library of scores: adding, finding, showing, forgetting, checking; what it holds is what the other commands say; faults lose nothing.
. tests/support/cli.sh
library="$folder/data/spezzato/library.sqlite"
mkdir -p "$folder/shelf/one/deep" "$folder/shelf/two/.hidden"
cp corpus/brelisk-*.musicxml "$folder/shelf/one"
cp corpus/caldremi-*.musicxml "$folder/shelf/one/deep"
cp corpus/tolvesk-* corpus/scarrowmere-fell-and-mere.musicxml corpus/lindquarre-* "$folder/shelf/two"
cp corpus/vercassine-barcarolle.musicxml "$folder/shelf/two/.hidden"
touch -d '2 hours ago' "$folder"/shelf/*/* "$folder"/shelf/*/*/*

# Nothing there yet is told, and nothing is made by asking.
run 2 library find
says "there is no library here yet"
[ -e "$folder/data" ] && fault "asking makes a library"

run 0 library add "$folder/shelf" --jobs 2
shows "12 scores: 12 heard (12 movements, 834 bars), 0 known already, 0 can't be used"
run 0 library add "$folder/shelf"
shows "12 scores: 0 heard (0 movements, 0 bars), 12 known already"

# What is found is what `passages` lists.
run 0 library find --kind exchange --between 'Vn I, Vn II' --strength striking --passages 1000 --format json
json_ok "$folder/out" || fault "the answer is no JSON"
cp "$folder/out" "$folder/found.json"
run 0 passages --kind exchange --strength striking --format json "$folder"/shelf/*/*.m* "$folder"/shelf/one/deep/*
if at_hand python3; then
    python3 - "$folder/found.json" "$folder/out" > "$folder/compared" <<'EOT' || fault "$(cat "$folder/compared")"
import json, sys
pair = {"Vn I", "Vn II"}
mine = {(m["title"], p["caller"], p["responder"], p["first_bar"], p["last_bar"], p["strength"])
        for w in json.load(open(sys.argv[1]))["works"] for m in w["movements"] for p in m["passages"]}
theirs = {(m["title"], *p["sections"], p["first_bar"], p["last_bar"], p["strength"])
          for m in json.load(open(sys.argv[2]))["movements"] for p in m["passages"] if set(p["sections"]) == pair}
print("only in the library", sorted(mine - theirs)[:3], "only in passages", sorted(theirs - mine)[:3])
sys.exit(mine != theirs or len(mine) < 10)
EOT
fi
run 0 library find --composer brelisk --before 1800 --lasts ..12 --players 8-7-6-4-3
shows "Sinfonia in D, The Two Balconies (1786), 11:47"
shows "1 work"
run 0 library find --composer brelisk --lasts 12..
shows "No work in the library answers this."
run 0 library find --two-orchestras
shows "Fell and Mere"
shows "1 work"
run 0 library find --violins-in-three --players 8-2-6-4-3
shows "No work"
run 0 library find --too-large --players 8-2-6-4-3
shows "Trois écluses"
run 0 library find --too-large
shows "No work"
run 0 library find --too-large --set 'players.second violins=2'
shows "Trois écluses"
run 0 library find --composer "' OR 1=1 --"
shows "No work"
for words in "--between Oboes" "--lasts 5" "--players 8-7" "--at ninth" "--kind waltz" "--format xml"; do
    # shellcheck disable=SC2086
    run 1 library find $words
done
run 1 library dance
says "there is no 'library dance'"

run 0 library show 'concerto grosso in g minor'
shows "players at least: Vn I 2, Vn II 2, Va 1, Vc 2, Db 1"
shows "caldremi-grosso-3.musicxml"
run 2 library show 'Nobody knows it'
says "no work of that name"

# What each work gives up in the evening's seating is what `seating` says of its movements; partners lose least together in one arrangement.
run 0 library fits --seating 'violins together, cellos outside' --first 100 --format json
cp "$folder/out" "$folder/fits.json"
run 0 library partners 'Trois écluses' --first 100 --format json
cp "$folder/out" "$folder/partners.json"
"$SPEZZATO" seating --format json "$folder"/shelf/*/*.m* "$folder"/shelf/one/deep/* > "$folder/seatings.json"
if at_hand python3; then
    python3 - "$folder/fits.json" "$folder/partners.json" "$folder/seatings.json" > "$folder/compared" <<'EOT' || fault "$(cat "$folder/compared")"
import json, sys
fits, partners, seatings = (json.load(open(name)) for name in sys.argv[1:])
given, ways = {}, set()
for m in seatings["movements"]:
    points = {r["arrangement"]: sum(t["points"] for t in r["terms"]) for r in m["ranked"]}
    for way, sum_of in points.items():
        key = m["title"].split(": ")[0], way
        given[key] = given.get(key, 0) + max(points.values()) - sum_of
        ways.add(way)
works, before = 0, -1
for w in fits["works"]:
    expected = given.get((w["work"].split(": ")[0], "violins together, cellos outside"), 0)
    if abs(expected - w["work_points_given_up"]) > 0.05 or w["work_points_given_up"] < before: sys.exit("fits: %s %s %s" % (w["work"], w["work_points_given_up"], expected))
    before = w["work_points_given_up"]
    works += 1
for w in partners["works"]:
    sums = [given.get((w["work"].split(": ")[0], a), 0) + given.get(("Trois écluses", a), 0) for a in ways]
    if abs(min(sums) - w["work_points_given_up"] - w["partner_points_given_up"]) > 0.05: sys.exit("partners: %s %s" % (w["work"], sums))
    if w["orchestras"] != 1: sys.exit("a work for two orchestras beside one for one")
    works += 1
sys.exit(works < 8 and "only %d works" % works)
EOT
fi
run 0 library fits --with 'Trois écluses' --first 1
shows "1 work, those first that lose least in: violins together"
shows_not "Trois"
run 1 library fits
run 1 library find --players 0-0-0-0-0
says "--players 0-0-0-0-0: nobody would play"
run 0 library find --format html
shows_not "Given up"
run 0 library fits --seating opposed --format html
shows "Given up"
run 0 library find --format json && cp "$folder/out" "$folder/all.json"
run 0 library find --first 2 --format json
[ "$(grep '"works_found"' "$folder/all.json")" = "$(grep '"works_found"' "$folder/out")" ] || fault "works_found hangs on --first"
for option in fits\ --seating find\ --recommended; do
    run 1 library $option 'violins upstairs'
    says "there is no seating 'violins upstairs'; there are 'violins opposed, cellos inside left'"
done
run 0 library find --recommended 'Violins together, c' --format csv && cp "$folder/out" "$folder/seated"
run 0 library find --recommended 'violons côte à côte, violoncelles' --format csv
same "$folder/seated" "$folder/out" "a seating by words of its French name"
run 2 library partners 'Nobody knows it'
run 2 library partners 'i'
says "say which"

# Passages alike: the same section leads the same other one at the same interval, in other works only.
run 0 library alike 'Concerto grosso in G minor: III. Giga. Allegro' --bar 29 --passages 50 --format json
cp "$folder/out" "$folder/numbered.json"
run 0 library alike 'Concerto grosso in G minor: Giga. Allegro' --bar 29 --passages 50 --format json
same "$folder/numbered.json" "$folder/out" "a title without the movement's number is another movement"
grep -q '"caller": "Vn I", "responder": "Vn II"' "$folder/out" || fault "nothing alike was found"
[ "$(grep -c '"kind"' "$folder/out")" = "$(grep -c '"caller": "Vn I", "responder": "Vn II".*"interval": "third"' "$folder/out")" ] || fault "something else was found"
shows_not "Concerto grosso"
run 0 library find --between 'Vn II > Vn I' --at octave --passages 50 --format json
[ "$(grep -c '"kind"' "$folder/out")" = "$(grep -c '"caller": "Vn II", "responder": "Vn I".*"interval": "octave"' "$folder/out")" ] || fault "not led so, or not at the octave"
cp "$folder/out" "$folder/alike.json"
run 0 library alike 'Concerto grosso in G minor' --bar 29 --passages 50 --format json
json_ok "$folder/out" || fault "alike to a movement: no JSON"
run 2 library alike 'Nothing of that name' --bar 29
says "no work of that name"
run 2 library alike 'allegro' --bar 1
says "several of that name"

# Of many only the first are listed, and how many there are is told; data hold them all.
run 0 library find
whole=$(sed -n 's/^\([0-9]*\) works$/\1/p' "$folder/out")
run 0 library find --first 3
shows "$whole works, the first 3 of them listed"
run 0 library find --first 3 --language de
shows "$whole Werke, davon die ersten 3 aufgeführt"
run 1 library find --first 0

# Every form; a page that runs nothing but its own script.
for form in text csv json html; do
    for language in en de fr; do
        run 0 library find --strength clear --format $form --language $language
        [ -s "$folder/out" ] || fault "nothing as $form"
    done
done
run 0 library find --strength clear --format html
shows "script-src 'sha256-"
shows "Sinfonia in D, The Two Balconies"

# Its pages by the work's name.
run 0 report 'library:Trois écluses' -o "$folder/pages"
[ "$(ls "$folder"/pages/tolvesk-*.html | wc -l)" = 2 ] || fault "not two pages of a work of two scores"
run 2 report 'library:Nobody knows it' -o "$folder/nothing"
says "no work of that name is in the library"

# Only what changed is heard again; the same bytes elsewhere are known; a file that can't be used is one line, each time.
sed 's/<movement-title>Menuetto/<movement-title>Minuet/' corpus/brelisk-balconies-3.musicxml > "$folder/shelf/one/brelisk-balconies-3.musicxml"
cp corpus/caldremi-grosso-1.musicxml "$folder/shelf/two/copy.musicxml"
printf 'no music' > "$folder/shelf/two/broken.xml"
touch -d '1 hour ago' "$folder/shelf/two/broken.xml"
run 2 library add "$folder/shelf"
shows "14 scores: 1 heard"
says "broken.xml"
[ "$(error_lines)" = 1 ] || fault "one file can't be used, $(error_lines) lines"
run 2 library add "$folder/shelf"
shows "0 heard"
says "broken.xml"
run 0 library find --titled minuet
shows "1 work"
run 0 library find --titled menuetto
shows "No work"

# A work that is called otherwise now is not there twice.
sed 's/Barcarolle/Gondoliera/' corpus/vercassine-barcarolle.musicxml > "$folder/renamed.musicxml"
run 0 library add --library "$folder/renamed" corpus/vercassine-barcarolle.musicxml
cp corpus/vercassine-barcarolle.musicxml "$folder/other.musicxml"
run 0 library add --library "$folder/renamed" "$folder/other.musicxml"
run 0 library forget --library "$folder/renamed" corpus
run 0 library check --library "$folder/renamed"
shows "1 works"
mv "$folder/renamed.musicxml" "$folder/other.musicxml"
run 0 library add --library "$folder/renamed" "$folder/other.musicxml"
run 0 library check --library "$folder/renamed"
shows "1 works"
run 0 library show --library "$folder/renamed" Gondoliera
run 2 library show --library "$folder/renamed" Barcarolle

run 0 library check
mv "$folder/shelf/one/brelisk-balconies-1.musicxml" "$folder/away.musicxml"
printf ' ' >> "$folder/shelf/two/tolvesk-ecluses-1.musicxml"
run 3 library check
shows "1 files missing, 1 changed"
run 3 library check --set stage.width=30
shows "13 heard under other settings or by another edition, 1 that can't be used"
run 0 library forget "$folder/shelf/one/brelisk-balconies-1.musicxml"
run 0 library add "$folder/shelf/two/tolvesk-ecluses-1.musicxml"
run 0 library check
run 0 library forget "$folder/shelf/two"
run 0 library forget 'Concerto grosso in G minor'
run 0 library find
shows "1 work"
shows_not "Concerto"
run 2 library forget 'Nobody knows it'

# People who know SQL: the views, and nothing left behind.
run 0 library add "$folder/shelf/one" --year 1800
run 0 library find --from 1800 --before 1801
shows "2 works"
if at_hand sqlite3; then
    ask() { sqlite3 -readonly "$library" "$1"; }
    [ "$(ask 'SELECT count(*) FROM movements')" = 6 ] || fault "the view movements has $(ask 'SELECT count(*) FROM movements') rows"
    [ "$(ask 'SELECT count(*) FROM score WHERE id NOT IN (SELECT score FROM movement)')" = 0 ] || fault "scores without movements"
    [ "$(ask 'PRAGMA integrity_check; PRAGMA foreign_key_check; PRAGMA application_id')" = "ok
1936751212" ] || fault "the database is not whole"
    sed -n 's/^    \(SELECT .*;\)$/\1/p' docs/scores.md > "$folder/examples"
    [ "$(wc -l < "$folder/examples")" = 3 ] || fault "docs/scores.md has other examples"
    while read -r example; do
        sqlite3 -readonly "$library" "$example" > "$folder/rows" 2>&1 || fault "docs/scores.md: $(cat "$folder/rows")"
        [ -s "$folder/rows" ] || fault "no rows: $example"
    done < "$folder/examples"
fi
# The sums add up, a place that isn't there among them.
run 2 library add --library "$folder/sums.sqlite" corpus/brelisk-balconies-1.musicxml "$folder/nofolder"
grep -q '^2 scores: 1 heard (.*), 0 known already, 1 can' "$folder/out" || fault "the sums do not add up: $(cat "$folder/out")"
finish
