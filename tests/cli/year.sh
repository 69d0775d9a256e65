#!/bin/sh
# The year of composition: asked for where it isn't known, with the verdict both ways, and each of them is what --year then gives; taken from the
# season's table; never told as the score's decision.
. tests/support/cli.sh
score=corpus/caldremi-grosso-2.musicxml
sed 's/>1712</></' "$score" > "$folder/undated.musicxml"

run 0 --width 200 "$folder/undated.musicxml"
shows "Year of composition not known. With --year 1800, when facing violins were the rule, this would be: violins opposed, cellos inside left (leaning, margin 8 of 100); with --year 1980"
cp "$folder/out" "$folder/page"
later=$(sed -n 's/.*side by side: .*margin \([0-9]*\) of 100).*/\1/p' "$folder/page")
run 0 --width 200 --year 1800 "$folder/undated.musicxml"
shows "composed 1800"
shows "Margin over the best seating with the violins together: 8 of 100"
shows "it is the year of composition that points this way; the score alone does not decide"
shows "Without the year of composition, 1800, this would be: open"
shows_not "Year of composition not known"
run 0 --width 200 --year 1980 "$folder/undated.musicxml"
shows "Margin over the best seating with the violins opposed: $later of 100"

# The page for the browser asks likewise; with a season's table it has the year from there.
run 0 report "$folder/undated.musicxml" -o "$folder/pages"
grep -q "In which year was it composed?" "$folder/pages/undated.html" || fault "the page doesn't ask for the year"
# Both answers are those that the years then give.
for when in "before about 1930" "later, when"; do
    year=1800; [ "$when" = "before about 1930" ] || year=1980
    said=$(tr '\n' ' ' < "$folder/pages/undated.html" | grep -o "$when[^<]*</span><span class=\"then\">[^<]*</span><[a-z]*>[^<]*<" | sed 's/.*"then">//; s/<[^>]*>/ /g; s/ *<$//; s/  */ /g')
    "$SPEZZATO" seating --format json --year $year "$folder/undated.musicxml" > "$folder/judged"
    wanted=$(sed -n 's/^ *"recommended": "\(.*\)",/\1/p; s/^ *"confidence": "\(.*\)",*/\1/p' "$folder/judged" | head -n 2 | tr '\n' ' ' | sed 's/ $//')
    [ -n "$said" ] && [ "$said" = "$wanted" ] || fault "the page says of $year: $said, not $wanted"
done
printf 'concert,work,score,composed\nEvening,Concerto,undated.musicxml,1712\n' > "$folder/plan.csv"
run 0 report "$folder/plan.csv" -o "$folder/pages"
grep -q "Without the year of composition, 1712" "$folder/pages/undated.html" || fault "the page hasn't the year of the season's table"
grep -q 'year-cell" data-sort="1712"' "$folder/pages/index.html" || fault "the overview hasn't the year of the season's table"
grep -q '<dd>1712</dd>' "$folder/pages/undated.html" || fault "the page doesn't stand under the year of the season's table"
run 0 report "$folder/plan.csv" --year 1980 -o "$folder/pages"
grep -q "Without the year of composition, 1712" "$folder/pages/undated.html" && fault "--year doesn't come before the table's"

# The season asks for it too.
run 0 season --no-cache "$folder/plan.csv"
shows_not "Year of composition not known"
printf 'concert,work,score\nEvening,Concerto,undated.musicxml\n' > "$folder/undated.csv"
run 0 season --no-cache --width 200 "$folder/undated.csv"
shows "Year of composition not known: the column composed asks for it."

# As facts.
run 0 seating --format json "$folder/undated.musicxml"
grep -q '"year_judged": null' "$folder/out" || fault "the JSON gives a year that nobody knows"
grep -q '{"year": 1800, "recommended": "violins opposed, cellos inside left", "confidence": "leaning", "margin": 0.08}' "$folder/out" || fault "the JSON hasn't the verdict of an early year"
run 0 seating --format json --year 1712 "$folder/undated.musicxml"
grep -q '"by_year": true' "$folder/out" || fault "the JSON doesn't say that it is the year's verdict"
finish
