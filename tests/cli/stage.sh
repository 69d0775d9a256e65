#!/bin/sh
# The plan of the stage: desks, podium, distances, refusals; the drawing is well formed and to scale.
. tests/support/cli.sh
score=corpus/brelisk-balconies-1.musicxml
run 0 stage
shows "Violins together, cellos outside"
shows "podium"
shows "house left"
shows "I.1"
shows "first violins to second violins: front desks"
shows "As heard from"
shows "A seating is a musical proposal"
run 0 stage --arrangement "violins opposed, violas inside left"
shows "Violins opposed, violas inside left"
run 1 stage --arrangement "violins upstairs"
says "there is no seating 'violins upstairs'; there are 'violins opposed, cellos inside left'"
[ "$(error_lines)" = 1 ] || fault "an unknown seating: $(error_lines) lines"
run 1 stage --arrangement "violins opposed"
says "'violins opposed' may be several seatings: 'violins opposed, cellos inside left'; 'violins opposed, violas inside left'"
run 0 stage --arrangement "violins opposed, violas inside left" && cp "$folder/out" "$folder/whole"
for words in "Opposed, violas" "Violinen gegenüber, Bratschen innen links" "violons face à face, altos"; do
    run 0 stage --arrangement "$words"
    same "$folder/whole" "$folder/out" "the seating '$words'"
    run 0 stage --set "house.usual=$words"
    same "$folder/whole" "$folder/out" "the house's usual seating '$words'"
done
run 2 stage --set "house.usual=violins upstairs"
says "[house] usual: there is no seating 'violins upstairs'"
run 1 stage --format loud
says "--format loud: it is text, svg, html or csv"
run 1 stage "$score" "$score"
says "one score at a time"
run 0 stage --set stage.width=9.5
shows "the rows end at the walls of the stage"
shows "These players would still fit on"
run 2 stage --set stage.width=8
says "14-12-10-8-6 players do not fit on a stage of 8.00 m by 11.00 m, not even with the basses along the back"
says "players would fit; so would a stage"
says "m wide, or one"
[ "$(error_lines)" = 1 ] || fault "a stage too small: $(error_lines) lines"
run 2 stage corpus/aldersquay-lock-keepers-march.musicxml
says "No string sections"
[ -s "$folder/out" ] && fault "a plan for a march of winds"

# With a score: the seating that the score asks for, the same that `seating` names first.
run 0 seating --format json "$score"
wanted=$(sed -n 's/.*"recommended": *"\([^"]*\)".*/\1/p' "$folder/out" | head -n 1)
run 0 stage "$score"
first=$(printf '%s' "$wanted" | cut -c1 | tr '[:lower:]' '[:upper:]')$(printf '%s' "$wanted" | cut -c2-)
[ "$(head -n 1 "$folder/out")" = "$first" ] || fault "stage draws '$(head -n 1 "$folder/out")', seating says '$wanted'"

# Two orchestras: both are drawn.
run 0 stage corpus/scarrowmere-fell-and-mere.musicxml
shows "two orchestras, the first at house left"
shows "first violins of the first to first violins of the second orchestra"

# Settings: a hall, and an order of one's own.
printf '[hall]\nname = Long Gallery\n[arrangement basses left]\norder = Vn I, Db, Vc, Va, Vn II\n' > "$folder/house.ini"
run 0 stage --settings "$folder/house.ini" --arrangement "basses left"
shows "Long Gallery: stage 18 m wide"
shows "Basses left"

# A season never drops the house's usual seating silently.
printf 'concert,work,score\nA,Two,%s\n' "$PWD/$score" > "$folder/season.csv"
run 0 season --no-cache --set "house.usual=violins opposed, cellos inside left" --set stage.width=8.4 "$folder/season.csv"
says "the house's usual seating 'violins opposed, cellos inside left' is not used here: too large for the stage"
tr -s '\n ' '  ' < "$folder/out" | grep -q "usual seating, violins opposed, cellos inside left, is not used: it does not fit on this stage; 8\.[0-9][0-9] m of width" ||
    fault "the plan drops the usual seating without a word"
run 0 season --no-cache --set "house.usual=violins opposed, cellos inside left" --set stage.width=8.4 --format json "$folder/season.csv"
shows '"usual_not_used": "too large for the stage"'

# The drawing.
run 0 stage --format svg -o "$folder/plan.svg"
[ -s "$folder/out" ] && fault "the drawing went to the terminal too"
if at_hand xmllint; then
    xmllint --noout "$folder/plan.svg" 2> "$folder/err" || fault "the drawing is not well formed: $(head -n 1 "$folder/err")"
fi
[ "$(grep -c 'class="seat"' "$folder/plan.svg")" = 50 ] || fault "the drawing has $(grep -c 'class="seat"' "$folder/plan.svg") chairs, not the 50 of the players"
[ "$(grep -c 'class="bar"' "$folder/plan.svg")" = 7 ] || fault "the scale bar lacks marks"
grep -q 'metres' "$folder/plan.svg" || fault "the scale bar has no unit"
cp "$folder/plan.svg" "$folder/again.svg"
run 0 stage --format svg -o "$folder/plan.svg"
same "$folder/plan.svg" "$folder/again.svg" "the same plan twice"

# The laying table: its sums are those of its places and those told on the page; winds as the score asks for them.
run 0 stage --format csv "$score"
awk -F, 'NR > 1 { c += $18; s += $19; t += $20; l += $21; if ($1 == "player") p[$2]++ }
    END { exit !(c == 49 && s == 7 && t == 32 && l == 32 && p["oboes"] == 2 && p["bassoons"] == 1 && p["horns"] == 2 && p["timpani"] == 1) }' "$folder/out" ||
    fault "the laying table's sums are $(awk -F, 'NR > 1 { c += $18; s += $19; t += $20; l += $21 } END { print c, s, t, l }' "$folder/out")"
# Its aisles lie between the desks that stand next to each other, as wide as the drawing says, and at least as wide as was asked for.
cp "$folder/out" "$folder/laying.csv"
run 0 stage --format svg "$score"
for way in $(awk -F, '$1 == "aisle" { gsub(/ \/ /, "/", $2); gsub(/ /, "_", $2); print $2 ":" $24 }' "$folder/laying.csv"); do
    pair=$(echo "${way%%:*}" | tr _ ' ')
    grep -qF "${pair%%/*}" "$folder/out" && grep -qF "${way#*:} m" "$folder/out" || fault "the drawing does not tell the aisle $way"
done
[ "$(awk -F, '$1 == "aisle"' "$folder/laying.csv" | wc -l)" = 3 ] || fault "four sections side by side have three aisles"
run 0 stage --format csv --set stage.aisle=1 "$score"
awk -F, '$1 == "aisle" && $24 < 0.99 { exit 1 }' "$folder/out" || fault "an aisle is narrower than was asked for"
run 0 stage --format html --set stage.riser=0.2 "$score"
shows "56 players; to be laid out: 49 chairs, 7 stools, 32 stands, 32 lights."
shows "Riser 0.20 m high: front edge"
shows "A seating is a musical proposal"
# Whoever reads only the page is told that the stage is too small, however many grounds weigh more.
run 0 --set 'players.first violins=40' --set stage.width=6 --set stage.depth=5 corpus/brelisk-balconies-2.musicxml
shows "The stage of 6.00 m by 5.00 m is too small"
shows "left out (--all shows them)"
finish
