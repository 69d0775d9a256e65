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
says "there is no arrangement 'violins upstairs'; there are 'violins opposed, cellos inside left'"
[ "$(error_lines)" = 1 ] || fault "an unknown seating: $(error_lines) lines"
run 1 stage --format loud
says "--format loud: it is text or svg"
run 1 stage "$score" "$score"
says "one score at a time"
run 2 stage --set stage.width=9
says "would fit"
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
finish
