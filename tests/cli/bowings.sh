#!/bin/sh
# `spezzato bowings`: gestures that sections share, in four forms; slurs are held against those that the file itself has.
. tests/support/cli.sh
sketch=${BUILD:-build}/sketch
cat > "$folder/calls.txt" <<'END'
time: 4/4  tempo: q=96
Violin I:    c5 r:h. | R*2 | g5:e( a5 b5 c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | R | c5:w
Violin II:   R*3 | R | g5:e( a5) b5( c6) g5:q r | R | e5:e( f5 g5 a5) e5:q r | c5:w
Viola:       c4:w~ | c4~ | c4 | c4~ | c4 | c4~ | c4 | c4
Violoncello: c3:w~ | c3~ | c3 | c3~ | c3 | c3~ | c3 | c3
END
"$sketch" "$folder/calls.txt" "$folder/calls.musicxml" 2> "$folder/err" || fault "the sketch could not be made: $(head -n 1 "$folder/err")"
run 0 bowings "$folder/calls.musicxml"
shows "Bars 4, 5, slurs: Vn I 1-2 1/2; Vn II 1-1 1/2, 2-2 1/2."
run 0 bowings --language de "$folder/calls.musicxml"
shows "Takt 4, 5, Bögen: "
run 0 bowings --language fr "$folder/calls.musicxml"
shows "liaisons"
run 0 bowings --format csv "$folder/calls.musicxml"
[ "$(head -n 1 "$folder/out")" = "file,title,passage,kind,in_turn,section,bar,other,other_bar,sign,marks,other_marks" ] || fault "the table has other columns"
[ "$(grep -c ',slur,' "$folder/out")" = 1 ] || fault "not one difference"
run 0 bowings --format json "$folder/calls.musicxml"
if at_hand python3; then
    python3 -c 'import json,sys
g=json.load(open(sys.argv[1]))["movements"][0]["gestures"]
assert [len(x["differences"]) for x in g]==[1,0] and all(len(x["sections"])==2 for x in g)' "$folder/out" || fault "the data say something else"
fi
run 0 bowings --format html corpus/brelisk-balconies-1.musicxml -o "$folder/bowings.html"
if at_hand xmllint; then
    xmllint --html --noout "$folder/bowings.html" 2> "$folder/err"
    grep -v -e 'Tag section invalid' -e 'Tag svg invalid' -e 'Tag path invalid' -e 'Tag g invalid' -e 'Tag main invalid' -e 'invalid$' "$folder/err" | grep -q 'HTML parser error' && fault "the page is not well formed: $(head -n 1 "$folder/err")"
fi
grep -q -e 'src=' -e 'href=' -e '@import' -e 'url(' "$folder/bowings.html" && fault "the page asks for something from elsewhere"
grep -q '@page' "$folder/bowings.html" || fault "the page is not made for paper"
run 1 bowings --format svg "$folder/calls.musicxml"
run 1 bowings
run 2 bowings "$folder/none.musicxml"
finish
