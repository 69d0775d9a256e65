#!/bin/sh
# `spezzato parts`: one sheet for all scores of a call, in three forms; each row of the table points at a bar that the score has.
. tests/support/cli.sh
one=corpus/brelisk-balconies-1.musicxml
two=corpus/brelisk-balconies-2.musicxml
run 0 parts "$one"
shows "What to write into the string parts. Seating: "
shows "exits and sight lines"
awk 'length > 140 { exit 1 }' "$folder/out" || fault "lines that run off the page"
run 0 parts --format csv "$one" "$two"
[ "$(head -n 1 "$folder/out" | cut -d, -f1-6)" = "file,title,section,part_names,bar,bar_index" ] || fault "the table has other columns"
[ "$(cut -d, -f1 "$folder/out" | sort -u | wc -l | tr -d ' ')" = 3 ] || fault "two scores, other than two names"
[ "$(wc -l < "$folder/out")" -gt 10 ] || fault "an empty table"
cp "$folder/out" "$folder/table"
run 0 parts --format csv "$one" "$two" -o "$folder/again"
same "$folder/table" "$folder/again" "the same sheet twice"

# No more leaders than passages; who leads together with others is told with whom.
run 0 passages --kind exchange,imitation --strength clear --format csv "$one"
led=$(awk 'NR > 1' "$folder/out" | grep -vc ',Winds,')
run 0 parts --kind exchange,imitation --format csv "$one"
leaders=$(grep ',lead,' "$folder/out" | grep -vc ',lead,"with ')
jointly=$(grep -c ',lead,"with ' "$folder/out")
[ "$leaders" -gt 0 ] && [ "$jointly" -gt 0 ] && [ $((leaders + jointly / 2)) -le "$led" ] || fault "$leaders leaders and $jointly together for $led passages"

# Parallel motion is told but for where it is told together with a dialogue all the while.
run 0 passages --kind coupling --strength clear "$one"
grep -q '^ *17-25 .*Vn I with Vn II' "$folder/out" || fault "no parallel motion of the violins in bars 17-25"
run 0 parts --format csv "$one"
for violins in 'Vn I,Violino I' 'Vn II,Violino II'; do
    grep -q ",$violins,17,16,.*,25,with,with Vn I" "$folder/out" || fault "$violins: no word of the parallel motion in bars 17-25"
done

run 0 parts --format html "$one" "$two" -o "$folder/sheet.html"
if at_hand xmllint; then
    xmllint --html --noout "$folder/sheet.html" 2> "$folder/err"
    grep -v -e 'Tag section invalid' "$folder/err" | grep -q 'HTML parser error' && fault "the page is not well formed: $(head -n 1 "$folder/err")"
fi
grep -q -e 'src=' -e 'href=' -e '@import' -e 'url(' "$folder/sheet.html" && fault "the page asks for something from elsewhere"
grep -q '@page' "$folder/sheet.html" || fault "the page is not made for paper"

# A title can't become part of the page.
sed 's|<work-title>[^<]*|<work-title>\&lt;script\&gt;alert(1)\&lt;/script\&gt;|' "$one" > "$folder/title.musicxml"
run 0 parts --format html "$folder/title.musicxml"
shows_not "<script"
shows "&lt;script&gt;"
run 0 parts --format json "$one" "$two"
if at_hand python3; then
    python3 -c 'import json,sys; d=json.load(open(sys.argv[1])); assert len(d["movements"])==2 and d["cautions"]' "$folder/out" || fault "the data are no JSON"
fi

# The house's habits, and a warning with both numbers where there are too few players, in the sheet and while it is made.
cat > "$folder/house.ini" <<'END'
[players]
violas = 1
[divisi]
in two = by desk
END
violas=$folder/violas.musicxml
"${BUILD:-build}/sketch" tests/data/violas-divided.txt "$violas" 2> "$folder/err" || fault "the sketch could not be made: $(head -n 1 "$folder/err")"
run 0 parts "$violas"
shows "Open to dispute: a page ends before bar 3; where it is turned"
run 0 parts --settings "$folder/house.ini" "$violas"
shows "in two by desk"
shows "take at least 2 players, and there is 1"
says "divided among more players than there are"
run 3 check --settings "$folder/house.ini" "$violas"
shows "takes at least 2, and the players of the settings make 1"
run 1 parts --set 'divisi.in two=by chance' "$violas"
run 1 parts --format svg "$one"
run 0 parts --arrangement 'violins opposed, cellos inside left' "$one" && cp "$folder/out" "$folder/whole-name"
run 0 parts --arrangement 'Violins opposed, c' "$one"
same "$folder/whole-name" "$folder/out" "a seating by the beginning of its name"
run 1 parts --arrangement 'violins opposed' "$one" # that of two
run 1 parts --arrangement nowhere "$one"
says "there is no seating 'nowhere'"
run 1 parts
run 2 parts "$folder/none.musicxml"
finish
