#!/bin/sh
# passages --explain BAR: every match that is said to be reported is in the list of passages, with its kind, bars and strength; what is left out
# says what stood in its way; a bar that isn't there is one line.
. tests/support/cli.sh
score=corpus/brelisk-balconies-1.musicxml

# Bars 9-14 are an exchange of the violins by design (corpus/composed.csv).
run 0 passages --explain 10 "$score"
shows "REPORTED IN BAR 10"

# The seconds answer there while the firsts rest, over held chords.
shows "FIGURE AND GROUND IN BAR 10"
shows "First violins: rest."
shows "Second violins: the line."
shows "Violas, cellos and basses: held notes."
shows "First violins, answered a bar later by the second violins"
shows "Left out: "
[ "$(grep -c '^  - Bar' "$folder/out")" -ge 3 ] || fault "fewer than three matches compared in bar 10"

# The strengths fall from match to match.
tr '\n' ' ' < "$folder/out" | tr -s ' ' | grep -oE 'strength [01]\.[0-9]+' | cut -d' ' -f2 > "$folder/strengths"
sort -rn "$folder/strengths" > "$folder/sorted"
same "$folder/strengths" "$folder/sorted" "the strongest match should stand first"

# Whatever is said to be reported is a row of the list; every fifth bar is asked.
"$SPEZZATO" passages --format csv "$score" | sed 's/"[^"]*"//g' > "$folder/list.csv"
awk -F, 'NR == 1 { for (i = 1; i <= NF; i++) at[$i] = i; next } { print $at["kind"] "," $at["first_bar"] "," $at["last_bar"] }' "$folder/list.csv" | sort -u > "$folder/rows"
[ -s "$folder/rows" ] || fault "the list of passages has no rows"
bar=1
while [ "$bar" -le 136 ]; do
    "$SPEZZATO" passages --explain "$bar" --width 200 "$score"
    bar=$((bar + 5))
done > "$folder/told" 2> "$folder/err"
tr '\n' ' ' < "$folder/told" | tr -s ' ' | grep -oE 'Reported (with others )?as [a-z-]+, [^,]+, bars? [0-9]+(-[0-9]+)?' |
    sed -E 's/^.* as ([a-z-]+), .*, bars? ([0-9]+)$/\1,\2,\2/; s/^.* as ([a-z-]+), .*, bars? ([0-9]+)-([0-9]+)$/\1,\2,\3/' | sort -u > "$folder/said"
[ "$(wc -l < "$folder/said")" -ge 8 ] || fault "only $(wc -l < "$folder/said") passages are spoken of"
comm -23 "$folder/said" "$folder/rows" > "$folder/strangers"
[ -s "$folder/strangers" ] && fault "said to be reported, but not in the list: $(head -n 3 "$folder/strangers" | tr '\n' ' ')"

# Both ways a movement can have nothing to compare.
run 0 passages --explain 1 corpus/lindquarre-salt-road-2.musicxml
shows "CALLS AND ANSWERS"

run 2 passages --explain 999 "$score"
says "there is no bar 999; the first is 1"
[ "$(error_lines)" = 1 ] || fault "a bar that isn't there: $(error_lines) lines"
[ -s "$folder/out" ] && fault "a result for a bar that isn't there"
run 1 passages --explain 10 --format json "$score"
says "as text only"
run 1 passages --explain 10 --kind hocket "$score"
says "--kind does nothing with --explain; leave one of them out"
run 1 passages "$score" --explain
says "--explain needs BAR"
finish
