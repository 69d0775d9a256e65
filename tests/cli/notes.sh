#!/bin/sh
# `spezzato notes`: in three languages and forms; and the times against real recordings, when they are at hand.
. tests/support/cli.sh
one=corpus/brelisk-balconies-1.musicxml
two=corpus/brelisk-balconies-2.musicxml
for language in en de fr; do
    run 0 notes --language $language "$one"
    cp "$folder/out" "$folder/$language"
    run 0 notes --language $language "$one"
    same "$folder/$language" "$folder/out" "the same notes twice"
done
grep -q 'Bars ' "$folder/en" && grep -q 'Takte ' "$folder/de" && grep -q 'Mesures ' "$folder/fr" || fault "a language is missing"
[ "$(grep -c '^  Bars\? ' "$folder/en")" = "$(grep -c '^  Takte\? ' "$folder/de")" ] || fault "other citations in another language"

# Twice as long a performance: all times are doubled.
run 0 notes --format csv --lasts 5:00 "$one" && cut -d, -f1-8 "$folder/out" > /dev/null
sed 's/"[^"]*"//g' "$folder/out" | awk -F, 'NR > 1 { print $9 }' > "$folder/short"
run 0 notes --format csv --lasts 10:00 "$one"
sed 's/"[^"]*"//g' "$folder/out" | awk -F, 'NR > 1 { print $9 }' > "$folder/long"
[ -s "$folder/short" ] || fault "no times"
paste "$folder/short" "$folder/long" | awk '{ d = $2 - 2 * $1; if (d > 0.02 || d < -0.02) bad = 1 } END { exit bad }' || fault "twice as long is not twice as late"
run 0 notes --lasts 5:00 --lasts 6:00 "$one" "$two"
shows "a performance of 5:00"
shows "a performance of 6:00"
run 0 notes --most 2 "$one"
[ "$(grep -c '^  Bars\? ' "$folder/out")" = 2 ] || fault "--most 2 gives another number"
for bad in 7.10.3 7:60 :10 7: 0 -5 soon 7 430; do
    run 1 notes --lasts "$bad" "$one"
done
run 1 notes --most 3 --many "$one"
run 1 notes --notation "$one"
run 1 notes --picture-format svg "$one"
run 1 notes --language it "$one"
run 0 notes --lasts 7.10 "$one"
shows "a performance of 7:10"
run 0 notes --lasts 10:00 --at 20=1:00 --at 30=2:00 "$one"
for bad in 20 =1:00 20=soon 999=1:00; do
    run 1 notes --at "$bad" "$one"
done
run 1 notes --at 30=2:00 --at 20=3:00 "$one"
# Tapped times as a table say the same as --at.
run 0 notes --format json --lasts 10:00 --at 20=1:00 --at 30=2:00 "$one" && cp "$folder/out" "$folder/at"
printf 'bar;time\r\n"20"; 1:00\r\n30;2:00\r\n\r\n' > "$folder/taps.csv"
run 0 notes --format json --lasts 10:00 --taps "$folder/taps.csv" "$one"
same "$folder/at" "$folder/out" "tapped times from a table"
printf '20,1:00\n30,soon\n' > "$folder/taps.csv"
run 1 notes --taps "$folder/taps.csv" "$one"
grep -q 'taps.csv:2: ' "$folder/err" || fault "the line of a wrong time is not named"
run 2 notes --taps "$folder/none.csv" "$one"
run 1 notes --at 20=1:00 --lasts 0:30 "$one"
says "--at 20: the bar would be heard when the movement is over"
run 1 notes --lasts 7:10 "$one" "$two"
says "there are 2, and it stands there 1 time"
run 1 notes --lasts 7:10 --lasts 6:00 "$one"
run 1 notes --at 30=2:00 "$one" "$two"
run 0 notes --many "$one"
[ "$(grep -c '^  Bars\? ' "$folder/out")" -gt 6 ] || fault "--many cites no more than usual"
run 0 notes --format html "$one" && grep -q '<dt>Bar' "$folder/out" || fault "no citation on the page"
run 0 notes --format json --year 1805 "$one"
grep -q '"year_judged": 1805' "$folder/out" || fault "the year given is not in the JSON"
! grep -q '"year": 1805' "$folder/out" || fault "the year given stands as the score's own"
run 0 notes --year 1805 "$one"
grep -q '(1805)' "$folder/out" || fault "the year given is not printed"
run 0 notes --format json --lasts 5:00 "$one"
! at_hand python3 || python3 - "$folder/out" <<'END' || fault "the JSON of the notes"
import json, sys
movement, = json.load(open(sys.argv[1]))["movements"]
assert movement["seconds"] == 300 and movement["citations"]
for one in movement["citations"]:
    assert one["calls"] and len(one["seconds"]) == len(one["share"]) and all(abs(s / 300 - r) < 0.001 for s, r in zip(one["seconds"], one["share"]))
    assert not one["links"] or one["links"][0] == one["calls"] and one["links"][1] == one["answers"]
END

# Of a fugato or a cascade every entry stands below the sentence: as many lines as the JSON has entries, in every form.
listed=corpus/tolvesk-ecluses-2.mxl
run 0 notes --many --format json "$listed" && cp "$folder/out" "$folder/cited"
for form in text markdown html; do
    run 0 notes --many --format $form "$listed" && cp "$folder/out" "$folder/$form"
done
! at_hand python3 || python3 - "$folder/cited" "$folder/text" "$folder/markdown" "$folder/html" <<'END' || fault "the list of entries"
import json, re, sys
cited = json.load(open(sys.argv[1]))["movements"][0]["citations"]
text, markdown, html = [open(path, encoding="utf-8").read() for path in sys.argv[2:]]
long = [c for c in cited if len(c["links"]) > 2 and len(c["entries"]) > len(c["links"])]
assert long and all(c["entries"][0]["interval"] is None and c["entries"][0]["bar"] >= c["first_bar"] for c in long)
wanted = [e["bar"] for c in long for e in c["entries"]]
assert re.findall(r"^          bar (\d+)[:,]", text, re.M) == re.findall(r"^  - bar (\d+)[:,]", markdown, re.M) == re.findall(r"<li>bar (\d+)[:,]", html) == wanted
END

# For listeners: a picture in which each passage that is cited stands at its time.
run 0 notes --format json --lasts 5:00 "$one" && cp "$folder/out" "$folder/cited"
run 0 notes --for listeners --format svg --lasts 5:00 "$one"
! at_hand python3 || python3 - "$folder/cited" "$folder/out" <<'END' || fault "the time line"
import json, sys, xml.dom.minidom
cited = json.load(open(sys.argv[1]))["movements"][0]["citations"]
svg = xml.dom.minidom.parse(sys.argv[2])
of = lambda tag, kind: [e for e in svg.getElementsByTagName(tag) if e.getAttribute("class").split(" ")[0] == kind]
lane = of("rect", "lane")[0]
left, wide = float(lane.getAttribute("x")), float(lane.getAttribute("width"))
moments = sorted(float(e.getAttribute("x1")) for e in of("line", "leader") if e.getAttribute("x1") == e.getAttribute("x2") and float(e.getAttribute("y2")) > float(lane.getAttribute("y")))
assert len(moments) == len(of("text", "when")) == len(cited) and len(of("text", "minutes")) == 6
assert all(abs(x - (left + wide * c["share"][0])) < 0.2 for x, c in zip(moments, cited))
assert of("rect", "call") and of("rect", "answer")
END
run 0 notes --for listeners "$one" "$two" && [ "$(grep -c '<svg' "$folder/out")" = 2 ] || fault "not a picture for each movement"
run 1 notes --for listeners --format svg "$one" "$two"
run 1 notes --for listeners --format json "$one"
run 1 notes --for children "$one"

# The notes of each citation, drawn: as many pictures as citations, each with the staves of those who play and marks over call and answer.
run 0 notes --format json "$one" && cp "$folder/out" "$folder/cited"
run 0 notes --engraver none --pictures "$folder/pictures" "$one"
! at_hand python3 || python3 - "$folder/cited" "$folder/pictures" <<'END' || fault "the pictures of notes"
import json, os, sys, xml.dom.minidom
cited = json.load(open(sys.argv[1]))["movements"][0]["citations"]
for one in cited:
    name = "brelisk-balconies-1-%s-%s-%s.svg" % (one["kind"], one["first_bar"], one["last_bar"])
    svg = xml.dom.minidom.parse(os.path.join(sys.argv[2], name)).documentElement
    texts = [(t.getAttribute("class"), t.firstChild.data) for t in svg.getElementsByTagName("text")]
    staves = [text for kind, text in texts if kind == "staff-name"]
    assert one["kind"] not in ("exchange", "imitation", "hocket") or len(staves) >= 2
    bars = [int(text) for kind, text in texts if kind == "number"]
    assert int(one["first_bar"]) <= bars[0] <= int(one["last_bar"]) and float(svg.getAttribute("width")) > 0
assert len(os.listdir(sys.argv[2])) == len(cited)
END
run 0 notes --engraver none --format html --notation "$one"
[ "$(grep -c 'src="data:image/svg' "$folder/out")" = "$(grep -c '<dt>' "$folder/out")" ] || fault "a citation without its notes on the page"
run 1 notes --picture-format gif "$one"

# What the engraver gets: the notes of calls and answers have a colour, the others none. (A stand-in for node that keeps what it is given.)
mkdir -p "$folder/stand-in" "$folder/engraver/node_modules"
printf '#!/bin/sh\ncat > "$KEPT"\nexit 1\n' > "$folder/stand-in/node"
chmod +x "$folder/stand-in/node"
: > "$folder/engraver/engrave.mjs"
(PATH="$folder/stand-in:$PATH" KEPT="$folder/kept" XDG_CACHE_HOME="$folder/cache" "$SPEZZATO" notes --engraver "$folder/engraver" --pictures "$folder/unengraved" "$one") > /dev/null 2>&1
! at_hand python3 || python3 - "$folder/cited" "$folder/kept" <<'END' || fault "the colours of engraved notes"
import json, sys, xml.etree.ElementTree as tree
data, excerpts = open(sys.argv[2], "rb").read(), []
while data:
    length, data = data.split(b"\n", 1)
    excerpts.append(data[:int(length)])
    data = data[int(length):]
cited = [c for c in json.load(open(sys.argv[1]))["movements"][0]["citations"] if len(c["links"]) > 1 and not any("Winds" in link for link in c["links"])]
seen = 0
for xml in filter(None, excerpts):
    score = tree.fromstring(xml)
    bars = [m.get("number") for m in score.find("part").findall("measure")]
    one = next(c for c in cited if c["entries"] and c["entries"][0]["bar"] == bars[0])
    for part in score.findall("part"):
        notes = part.findall(".//note")
        coloured = [n for n in notes if n.get("color")]
        assert coloured and all(n.find("rest") is None for n in coloured)
        assert all(m.find("note[@color]") is None for m in part.findall("measure") if not any(e["bar"] <= m.get("number") for e in one["entries"]))
        seen += len(coloured) < len(notes)
assert seen
END
if command -v rsvg-convert > /dev/null 2>&1; then
    for form in pdf eps; do
        run 0 notes --engraver none --most 1 --pictures "$folder/$form" --picture-format $form "$one"
        for picture in "$folder/$form"/*; do
            case $(head -c 5 "$picture") in %PDF-|%!PS-) ;; *) fault "$picture is no $form" ;; esac
        done
    done
else
    skip "rsvg-convert is not at hand (Debian package librsvg2-bin)"
    run 1 notes --pictures "$folder/pdf" --picture-format pdf "$one"
fi

# For a word processor: opened by one, where it is at hand, its words are those of the text.
run 0 notes --format odt -o "$folder/notes.odt" "$one"
! at_hand python3 || python3 - "$folder/notes.odt" <<'END' || fault "the package is none of OpenDocument"
import sys, zipfile, xml.dom.minidom
package = zipfile.ZipFile(sys.argv[1])
first = package.infolist()[0]
assert package.testzip() is None and first.filename == "mimetype" and first.compress_type == zipfile.ZIP_STORED
assert package.read("mimetype") == b"application/vnd.oasis.opendocument.text"
for name in ("content.xml", "styles.xml", "META-INF/manifest.xml"):
    xml.dom.minidom.parseString(package.read(name))
END
if command -v soffice > /dev/null 2>&1; then
    run 0 notes --format text "$one"
    HOME="$folder" timeout 120 soffice --headless --convert-to "txt:Text (encoded):UTF8" --outdir "$folder" "$folder/notes.odt" > /dev/null 2>&1
    flat() { tr -s ' \n\r\t=' ' ' | sed 's/^[^A-Za-z]*//; s/ *$//'; }
    [ -s "$folder/notes.txt" ] && [ "$(flat < "$folder/notes.txt")" = "$(flat < "$folder/out")" ] || fault "a word processor reads other words"
    HOME="$folder" timeout 120 soffice --headless --convert-to pdf --outdir "$folder" "$folder/notes.odt" > /dev/null 2>&1
    [ "$(head -c 5 "$folder/notes.pdf" 2>/dev/null)" = "%PDF-" ] || fault "a word processor makes no PDF of it"
else
    skip "soffice is not at hand (Debian package libreoffice-writer-nogui)"
fi

# The printed numbers: every page uses them.
printf '[bars]\nfirst = 101\n' > "$folder/bars.ini"
run 0 notes --format json "$one" && cp "$folder/out" "$folder/file"
run 0 notes --format json --settings "$folder/bars.ini" "$one"
! at_hand python3 || python3 - "$folder/file" "$folder/out" <<'END' || fault "the numbers are not those of the edition"
import json, sys
one, two = [json.load(open(path))["movements"][0]["citations"] for path in sys.argv[1:]]
assert one and all(int(b["first_bar"]) == int(a["first_bar"]) + 100 and "bar %s" % a["first_bar"] not in b["text"] for a, b in zip(one, two))
END
printf '[bars other.mxl]\nfirst = 101\n' > "$folder/bars.ini"
run 0 notes --format json --settings "$folder/bars.ini" "$one"
same "$folder/file" "$folder/out" "numbers of another score"
printf '[bars]\njoined = 5 7\n' > "$folder/bars.ini"
run 2 notes --settings "$folder/bars.ini" "$one"

# Times as predicted against recordings (OpenScore Orchestra's alignments in the shared scores): within 5 % of the duration for
# 90 % of the passages; docs/citation-times.md shows the table.
if shared_has scores; then
    SPEZZATO="$SPEZZATO" sh tests/tools/citation-times.sh > "$folder/times" || fault "$(tail -n 1 "$folder/times")"
    [ "$(grep -c '^| [A-Z][a-z]*_' "$folder/times")" -ge 10 ] || fault "recordings are missing from the comparison"
fi
# Pictures of scores that are called the same lie side by side.
mkdir -p "$folder/spring" "$folder/autumn"
cp corpus/brelisk-balconies-1.musicxml "$folder/spring/score.musicxml"
cp corpus/brelisk-balconies-1.musicxml "$folder/autumn/score.musicxml"
run 0 notes --engraver none --pictures "$folder/of-one" "$folder/spring/score.musicxml"
run 0 notes --engraver none --pictures "$folder/of-both" "$folder/spring/score.musicxml" "$folder/autumn/score.musicxml"
one=$(ls "$folder/of-one" | wc -l) both=$(ls "$folder/of-both" | wc -l)
[ "$one" -gt 2 ] && [ "$both" = $((2 * one)) ] || fault "$both pictures of two scores with $one each"
finish
