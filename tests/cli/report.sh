#!/bin/sh
# The conductor's pages as files: whole or not at all, one for each score and an index, with and without an engraver.
. tests/support/cli.sh
one=corpus/brelisk-balconies-2.musicxml
two=corpus/tolvesk-ecluses-2.mxl
XDG_CACHE_HOME=$folder/cache
export XDG_CACHE_HOME

run 1 report "$one"
says "where to?"
run 1 report -o "$folder/pages"
says "which score?"
[ -e "$folder/pages" ] && fault "a folder was made for nothing"

# Scores of one name in different folders: pages of their own, and every way leads to the right one.
mkdir "$folder/autumn" "$folder/spring"
cp "$one" "$folder/autumn/index.musicxml"
cp "$two" "$folder/autumn/score.mxl"
cp corpus/tolvesk-ecluses-1.musicxml "$folder/spring/score.mxl"
run 0 report --engraver none --work "$folder/autumn/index.musicxml" "$folder/autumn/score.mxl" "$folder/spring/score.mxl" -o "$folder/apart"
[ "$(ls "$folder/apart" | tr '\n' ' ')" = "autumn-score.html index-2.html index.html spring-score.html work.html " ] || fault "pages of scores of one name: $(ls "$folder/apart")"
for page in index work; do
    sed -n 's/.*<th scope="row"[^>]*><a href="\([^"#]*\)[^>]*>\([^<]*\)<.*/\1 \2/p' "$folder/apart/$page.html" > "$folder/ways"
    grep -q '^index-2.html .*Andante' "$folder/ways" && grep -q '^autumn-score.html .*Roues' "$folder/ways" && grep -q '^spring-score.html .*Vannes' "$folder/ways" ||
        fault "$page.html leads elsewhere: $(cat "$folder/ways")"
done
grep -q 'Roues' "$folder/apart/autumn-score.html" || fault "autumn's score is not on its page"
grep -q 'Vannes' "$folder/apart/spring-score.html" || fault "spring's score is not on its page"
[ "$(grep -o 'href="[a-z][^#"]*' "$folder/apart/autumn-score.html" | sort -u | tr '\n' ' ')" = 'href="index-2.html href="index.html href="spring-score.html ' ] || fault "autumn's page leads elsewhere"
printf 'concert,work,score\nA,one,autumn/score.mxl\nA,two,spring/score.mxl\n' > "$folder/one-name.csv"
run 0 report --engraver none "$folder/one-name.csv" -o "$folder/evening"
[ "$(grep -o 'href="[a-z]*-score.html' "$folder/evening/concert-1.html" | sort -u | wc -l)" = 2 ] || fault "a concert does not lead to both scores of one name"

# A season's table stands for its scores, each once; its plan becomes a page.
run 0 report --engraver none corpus/season.csv -o "$folder/season"
[ -e "$folder/season/season.html" ] || fault "the season's plan is not there"
grep -q 'href="season.html"' "$folder/season/index.html" || fault "the index does not lead to the season's plan"
[ "$(ls "$folder/season" | grep -c '^concert-[0-9]*\.html$')" = "$(sed 1d corpus/season.csv | cut -d, -f1 | sort -u | wc -l)" ] || fault "not a page for each concert"
grep -q 'href="concert-1.html"' "$folder/season/season.html" || fault "the season does not lead to the pages of its concerts"
grep -q 'One seating for the evening: ' "$folder/season/concert-1.html" || fault "a concert is not led by its one seating"
[ "$(grep -c '<th scope="row" ' "$folder/season/index.html")" = "$(($(ls "$folder/season" | grep -vc '^concert-') - 2))" ] || fault "the index and the pages of the season differ"
run 1 report corpus/season.csv corpus/season.csv -o "$folder/season"
says "one season at a time"

# A bad file among good ones: the others are done, the index leads to them alone.
: > "$folder/empty.musicxml"
run 2 report --engraver none "$one" "$folder/empty.musicxml" "$two" -o "$folder/pages"
[ "$(error_lines)" = 1 ] || fault "one bad file, $(error_lines) lines"
[ "$(ls "$folder/pages" | tr '\n' ' ')" = "brelisk-balconies-2.html index.html tolvesk-ecluses-2.html " ] || fault "the pages are not those of the good scores: $(ls "$folder/pages")"
[ "$(grep -o 'href="[a-z][^#"]*' "$folder/pages/index.html" | uniq | tr '\n' ' ')" = 'href="brelisk-balconies-2.html href="tolvesk-ecluses-2.html ' ] || fault "the index leads elsewhere"
# From page to page, over the bad one, and back to the index.
grep -o 'href="[a-z][^#"]*' "$folder/pages/brelisk-balconies-2.html" | tr '\n' ' ' > "$folder/ways"
[ "$(cat "$folder/ways")" = 'href="index.html href="tolvesk-ecluses-2.html ' ] || fault "the page leads to $(cat "$folder/ways")"
grep -o 'href="[a-z][^#"]*' "$folder/pages/tolvesk-ecluses-2.html" | tr '\n' ' ' > "$folder/ways"
[ "$(cat "$folder/ways")" = 'href="index.html href="brelisk-balconies-2.html ' ] || fault "the last page leads to $(cat "$folder/ways")"
run 2 report "$folder/empty.musicxml" -o "$folder/nothing"
[ -e "$folder/nothing/index.html" ] && fault "an index of nothing"
printf 'a file\n' > "$folder/taken"
run 2 report "$one" -o "$folder/taken"
[ "$(error_lines)" = 1 ] || fault "a file in place of the folder: $(error_lines) lines"

# A page asks for nothing: no address of another place in it, apart from the names of XML.
grep -o 'https\?://[^"<> ]*' "$folder"/pages/*.html | grep -v 'www\.w3\.org' > "$folder/addresses"
[ -s "$folder/addresses" ] && fault "an address in a page: $(head -n 1 "$folder/addresses")"
grep -q 'class="strip"' "$folder/pages/brelisk-balconies-2.html" || fault "no passage is drawn"
grep -q "exits and sight lines" "$folder/pages/brelisk-balconies-2.html" || fault "the cautions are missing"

# What the verdict names is in the list, whatever was asked for: every link to a passage leads to one.
run 0 report --engraver none --kind coupling "$one" -o "$folder/few"
grep -o 'href="#m1-p[0-9]*' "$folder/few/brelisk-balconies-2.html" | sed 's/href="#//' | sort -u > "$folder/links"
[ "$(wc -l < "$folder/links")" -gt 3 ] || fault "hardly a link to a passage: $(cat "$folder/links")"
while read -r id; do grep -q "id=\"$id\"" "$folder/few/brelisk-balconies-2.html" || fault "the link to $id leads nowhere"; done < "$folder/links"

# Every element is closed: the page is well-formed but for its document type.
if at_hand xmllint; then
    for page in "$folder"/pages/*.html; do
        tail -n +2 "$page" | sed 's/<style>/<style><![CDATA[/; s/<\/style>/]]><\/style>/; s/<script>/<script><![CDATA[/; s/<\/script>/]]><\/script>/' | xmllint --huge --noout - 2> "$folder/said" || fault "$page is not well formed: $(head -n 1 "$folder/said")"
    done
fi

run 0 report --engraver none "$one" -o "$folder/alone"
run 0 report --engraver none "$two" -o "$folder/later" && run 0 report --engraver none "$one" -o "$folder/later"
says "pages from before lie here too, to which these don't lead: $(basename "$two" .mxl).html"
run 0 report --engraver none "$one" "$two" -o "$folder/later"
[ ! -s "$folder/err" ] || fault "pages of this run are taken for old ones: $(cat "$folder/err")"

# Engravers that can't be trusted: one that fails, one that says nonsense, one that breaks off, none at all. The page is drawn instead.
mkdir -p "$folder/engraver/node_modules" "$folder/path"
printf '// not used by the stand-in\n' > "$folder/engraver/engrave.mjs"
stand_in() {
    printf '#!/bin/sh\n%s\n' "$1" > "$folder/path/node"
    chmod +x "$folder/path/node"
    PATH="$folder/path:$PATH" "$SPEZZATO" report --engraver "$folder/engraver" --no-cache "$one" -o "$folder/drawn" > "$folder/out" 2> "$folder/err" || fault "an engraver that does '$1' makes the report fail"
    same "$folder/alone/brelisk-balconies-2.html" "$folder/drawn/brelisk-balconies-2.html" "an engraver that does '$1' changes the page"
}
stand_in 'exit 1'
stand_in 'echo nonsense'
stand_in 'cat > /dev/null; printf "100000\n<svg>"'
stand_in 'cat > /dev/null; printf "5\n<svg>7\nhello!!"'
stand_in 'kill -9 $$'
PATH=$folder/nowhere "$SPEZZATO" report --engraver "$folder/engraver" --no-cache "$one" -o "$folder/drawn" > "$folder/out" 2> "$folder/err" || fault "a missing node makes the report fail"
same "$folder/alone/brelisk-balconies-2.html" "$folder/drawn/brelisk-balconies-2.html" "a missing node changes the page"

# One that answers: its drawings are on the page, and come from the cache the next time. No shell sees a name on the way.
cat > "$folder/path/node" << 'END'
#!/bin/sh
echo run >> "$COUNT"
count=$(grep -c '^<score-partwise')
i=0
while [ "$i" -lt "$count" ]; do
    printf '49\n<svg viewBox="0 0 300 90"><!-- stand-in --></svg>'
    i=$((i + 1))
done
END
chmod +x "$folder/path/node"
COUNT="$folder/count"
export COUNT
odd="$folder/\$(touch harmed); 'quoted'.musicxml"
cp "$one" "$odd"
for turn in 1 2; do
    PATH="$folder/path:$PATH" "$SPEZZATO" report --engraver "$folder/engraver" "$odd" -o "$folder/engraved" > "$folder/out" 2> "$folder/err" || fault "the stand-in's drawings make the report fail"
done
grep -q 'class="notation"' "$folder"/engraved/*quoted*.html || fault "the drawings are not on the page"
[ "$(wc -l < "$folder/count" | tr -d ' ')" = 1 ] || fault "the cache was not used: $(cat "$folder/count" | wc -l) runs"
[ -e harmed ] || [ -e "$folder/harmed" ] && fault "a shell has seen the name of a score"
# A torn file in the cache is made anew.
for kept in "$folder"/cache/spezzato/*.svg; do printf '<svg viewBox="0' > "$kept"; break; done
PATH="$folder/path:$PATH" "$SPEZZATO" report --engraver "$folder/engraver" "$odd" -o "$folder/again" > "$folder/out" 2> "$folder/err"
for page in "$folder"/engraved/*quoted*.html; do same "$page" "$folder/again/$(basename "$page")" "a torn file in the cache changes the page"; done
finish
