#!/bin/sh
# JSON and CSV of every report on every score of the corpus: read by an independent reader, with the fields that were promised.
. tests/support/cli.sh
scores=$(ls corpus/*.musicxml corpus/*.mxl 2> /dev/null)
for command in "" sections passages seating streams; do
    run 0 $command --format json $scores
    json_ok "$folder/out" || fault "spezzato $command --format json: no JSON"
    cp "$folder/out" "$folder/${command:-page}.json"
done
run 0 settings --format json
json_ok "$folder/out" || fault "spezzato settings --format json: no JSON"
if at_hand python3; then
    python3 - "$folder/passages.json" "$folder/seating.json" "$folder/page.json" $scores > "$folder/said" 2>&1 << 'END' || fault "$(tail -n 1 "$folder/said")"
import json, os, sys
passages, seating, page = (json.load(open(p, encoding="utf-8")) for p in sys.argv[1:4])
names = [os.path.basename(s) for s in sys.argv[4:]]
KINDS = {"exchange", "hocket", "split-line", "imitation", "div2", "div3", "coupling"}
SECTIONS = {"Vn I", "Vn II", "Vn III", "Va", "Vc", "Db", "Violins", "Strings", "Winds"}
for report in passages, seating, page:
    assert [m["file"] for m in report["movements"]] == names, "the scores in their order"
seen = 0
for m in passages["movements"]:
    assert isinstance(m["title"], str) and m["bars"] > 0
    before = -1
    for p in m["passages"]:
        seen += 1
        where = "%s, bars %s-%s" % (m["file"], p["first_bar"], p["last_bar"])
        assert p["kind"] in KINDS, where
        assert set(p["sections"]) <= SECTIONS and len(p["sections"]) == (1 if p["kind"] in ("div2", "div3") else 2), where
        assert isinstance(p["first_bar"], str) and isinstance(p["last_bar"], str), where
        assert 0 <= p["first_index"] <= p["last_index"] < m["bars"], where
        assert 0 <= p["strength"] <= 1 and isinstance(p["turns"], int), where
        assert p["strength_word"] == ("striking" if p["strength"] >= 0.8 else "clear" if p["strength"] >= 0.5 else "marginal"), where
        assert p["reason"] and isinstance(p["rehearsal"], str), where
        assert before <= p["first_index"], where + ": out of order"
        before = p["first_index"]
assert seen > 0, "no passage in the whole corpus"
for m in seating["movements"]:
    if not m["ranked"]:
        assert m["recommended"] is None and m["statement"] and m["margin"] == 0 and m["confidence"] == "open", m["file"]
        continue
    assert m["recommended"] == m["ranked"][0]["arrangement"], m["file"]
    assert all(r["violins"] in ("opposed", "together") and r["outside"] and 0 <= r["score"] <= 100 for r in m["ranked"]), m["file"]
    scores = [r["score"] for r in m["ranked"]]
    assert scores == sorted(scores, reverse=True), m["file"]
    assert 0 <= m["margin"] <= 1 and m["confidence"] in ("firm", "leaning", "open"), m["file"]
    assert all(isinstance(r["text"], str) and r["text"] and isinstance(r["bars"], str) for r in m["reasons"]), m["file"]
assert "exits" in seating["cautions"] and "cautions" in page
END
fi

# The choice of kinds and strengths.
run 0 passages --format csv $scores
head -n 1 "$folder/out" | grep -qx "file,title,kind,caller,responder,first_bar,last_bar,first_index,last_index,rehearsal,strength,strength_word,ruling,ruling_reason,strength_found,turns,chain,reason" || fault "the heads of the passages' CSV"
grep -c ',coupling,' "$folder/out" > "$folder/couplings"
cp "$folder/out" "$folder/all.csv"
run 0 passages --kind coupling --format csv $scores
[ "$(tail -n +2 "$folder/out" | wc -l)" = "$(cat "$folder/couplings")" ] || fault "--kind coupling is not all couplings"
run 0 passages --kind divisi,antiphony --kind coupling --format csv $scores
same "$folder/all.csv" "$folder/out" "all kinds by name"
run 0 passages --strength clear --format csv $scores
if grep -q ',marginal,' "$folder/out"; then fault "--strength clear lets marginal ones through"; fi
grep -q ',clear,' "$folder/out" || fault "--strength clear shows nothing clear"

# Streams: the columns that were promised; two more where several movements are told apart.
first=$(echo "$scores" | head -n 1)
run 0 streams "$first"
[ "$(head -n 1 "$folder/out")" = "part_name,staff,voice,section,bar,bar_index,beat,onset,duration,pitch,midi,grace,dynamic" ] || fault "the heads of the streams"
[ "$(wc -l < "$folder/out")" -gt 100 ] || fault "hardly any notes"
run 0 streams $scores
[ "$(head -n 1 "$folder/out" | tr , '\n' | tail -n 2 | tr '\n' ' ')" = "file movement " ] || fault "several movements are not told apart"

# One seating for a whole work: in the JSON beside the movements, in the CSV below them, on the page behind them.
work=$(ls corpus/brelisk-balconies-*)
run 0 seating --work $work
shows "One seating for all these movements"
run 0 seating --work --format csv $work
[ "$(grep -c 'all these movements' "$folder/out")" = 4 ] || fault "the seating of the work is not in the CSV"
run 0 seating --work --format json $work
shows '"work": {'
json_ok "$folder/out" || fault "spezzato seating --work --format json: no JSON"

# The settings can be read back and give the same.
run 0 settings --set stage.width=16.5 --set hall.sound=dry
cp "$folder/out" "$folder/house.ini"
run 0 settings --settings "$folder/house.ini"
same "$folder/house.ini" "$folder/out" "settings written and read back"
run 0 settings --format csv --settings "$folder/house.ini"
shows "stage.width,number,16.5,18"
# A compressed score has one name in every table, so that they can be joined, and none where nobody named the year.
if at_hand zip; then
    sed -e '/<work-title>/d' -e '/<movement-title>/d' -e '/<encoding-date>/d' -e '/miscellaneous-field/d' corpus/brelisk-balconies-1.musicxml > "$folder/inside.xml"
    mkdir -p "$folder/META-INF"
    printf '<container><rootfiles><rootfile full-path="inside.xml"/></rootfiles></container>' > "$folder/META-INF/container.xml"
    (cd "$folder" && zip -q packed.mxl META-INF/container.xml inside.xml)
    for report in page passages seating sections parts rehearsal notes; do
        run 0 "$report" --format csv "$folder/packed.mxl"
        [ "$(sed 1d "$folder/out" | cut -d, -f1 | sort -u)" = packed.mxl ] || fault "$report: the score is '$(sed -n 2p "$folder/out" | cut -d, -f1)'"
        run 0 "$report" --format json "$folder/packed.mxl"
        grep -q '"file": *"packed.mxl"' "$folder/out" || fault "$report: the file has another name in JSON"
        shows_not '"year": 0'
    done
fi
finish
