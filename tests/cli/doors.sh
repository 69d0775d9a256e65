# What goes out is well formed whatever a score or its file is called: one door for JSON, one for CSV, one for markup, and nobody goes past them.
. tests/support/cli.sh
top=$(pwd)

# A score whose names turn the direction of writing, look like formulas and like elements; a path that is no UTF-8.
turn=$(printf '\342\200\256')
next=$(printf '\302\205')
odd=$folder/$(printf 'odd\377;=1+1.musicxml')
sed -e 's|<work-title>.*</work-title>||' -e "s|<movement-title>[^<]*|<movement-title>${turn}=1+1;-2+3+cmd\&lt;b\&gt;|" -e "s|<part-name>Violino I<|<part-name>${next}=Violino I<|" \
    corpus/brelisk-balconies-2.musicxml > "$folder/score"
grep -q "$turn=1+1" "$folder/score" && grep -q "$next=Violin" "$folder/score" || fault "the names did not get into the score"
if ! cp "$folder/score" "$odd" 2> "$folder/err"; then # a file system that takes UTF-8 only
    skip "no file of this system may have a name that is no UTF-8"
    odd=$folder/odd.musicxml
    cp "$folder/score" "$odd"
fi
mkdir "$folder/plan"
cp "$odd" "$folder/plan/odd.musicxml"
printf 'concert,work,score\n"=Opening, %snight",%s@March;=2+2,odd.musicxml\n' "$turn" "$next" > "$folder/plan/season.csv"

utf8() { [ "$(iconv -f UTF-8 -t UTF-8 "$1" 2>/dev/null | cksum)" = "$(cksum < "$1")" ]; }
turns() { grep -q -e "$turn" -e "$next" "$1"; }

for form in "" "passages" "seating" "sections" "streams" "check"; do
    run 0 $form --format json "$odd"
    json_ok "$folder/out" 2> "$folder/said" || fault "spezzato $form --format json is no JSON: $(tail -n 1 "$folder/said")"
    utf8 "$folder/out" || fault "spezzato $form --format json is no UTF-8"
    turns "$folder/out" && fault "spezzato $form --format json turns the direction of writing"
    "$SPEZZATO" $form "$odd" > "$folder/out" 2> "$folder/err"
    turns "$folder/out" && fault "spezzato $form turns the direction of writing"
done
run 0 season --no-cache --format json "$folder/plan/season.csv"
json_ok "$folder/out" 2> "$folder/said" || fault "the season is no JSON"
run 0 season --no-cache --format ndjson "$folder/plan/season.csv"
utf8 "$folder/out" || fault "the season's lines are no UTF-8"

# No cell begins with a sign that makes a formula, wherever a spreadsheet cuts the line: at commas, at semicolons, at quotation marks.
no_formula() {
    tail -n +2 "$folder/out" | tr ',;' '\n\n' | LC_ALL=C sed 's/^[^!#-~]*//' | grep '^[=+@-]' | grep -vE '^-?[0-9]+(\.[0-9]+)?"?$' | grep -vx -e '-' > "$folder/cells"
    [ -s "$folder/cells" ] && fault "$1: a spreadsheet may calculate '$(head -n 1 "$folder/cells")'"
    turns "$folder/out" && fault "$1 turns the direction of writing"
    utf8 "$folder/out" || fault "$1 is no UTF-8"
}
for form in "" "passages" "seating" "sections" "streams" "check" "parts" "notes"; do
    run 0 $form --format csv "$odd"
    no_formula "spezzato $form --format csv"
done
for form in csv calendar-csv; do
    run 0 season --no-cache --format $form "$folder/plan/season.csv"
    no_formula "spezzato season --format $form"
done
run 0 passages --format csv "$odd"
shows "'=1+1;'-2+3+cmd<b>"

# Every page has the same head: nothing may be fetched, nothing run but the script that is its own, by its digest.
run 0 report --engraver none "$odd" "$folder/plan/season.csv" -o "$folder/pages"
run 0 parts --format html "$odd" -o "$folder/pages/parts.html"
run 0 season --no-cache --format html "$folder/plan/season.csv" -o "$folder/pages/whole-season.html"
run 0 season --no-cache --sheet 1 --format html "$folder/plan/season.csv" -o "$folder/pages/sheet.html"
for language in de fr; do run 0 parts --language $language --format html "$odd" -o "$folder/pages/parts-$language.html"; done
pages=0
for page in "$folder"/pages/*.html; do
    pages=$((pages + 1))
    name=$(basename "$page")
    head -n 2 "$page" | tr -d '\n' | grep -q '^<!DOCTYPE html><html lang="[a-z][a-z]"><head><meta charset="utf-8"/><meta http-equiv="Content-Security-Policy" content="default-src '"'none'; img-src data:; style-src 'unsafe-inline'" ||
        fault "$name has another head"
    [ "$(grep -o 'Content-Security-Policy' "$page" | wc -l | tr -d ' ')" = 1 ] || fault "$name has more than one policy"
    turns "$page" && fault "$name turns the direction of writing"
    utf8 "$page" || fault "$name is no UTF-8"
    grep -q '<b>' "$page" && fault "$name takes a title for an element"
    if at_hand openssl base64; then
        scripts=$(grep -c '<script' "$page")
        sed -n '/<script>/,/<\/script>/p' "$page" | sed '1s/.*<script>//; $s/<\/script>.*//' > "$folder/script"
        awk 'NR > 1 { printf "\n" } { printf "%s", $0 }' "$folder/script" > "$folder/exact"
        [ "$scripts" = 0 ] || grep -q "script-src 'sha256-$(openssl dgst -sha256 -binary "$folder/exact" | base64)'" "$page" || fault "$name would not run its own script"
        [ "$scripts" != 0 ] || ! grep -q 'script-src' "$page" || fault "$name allows scripts and has none"
    fi
done
[ "$pages" -ge 8 ] || fault "only $pages pages were made"
grep -q '<html lang="fr">' "$folder/pages/parts-fr.html" || fault "the French sheet does not say that it is French"

# Nobody goes past the doors: what a new file might do is found, each by its name, and nothing in this tree is.
sh tests/support/check-includes.sh > "$folder/out" || fault "past the doors: $(head -n 3 "$folder/out")"
mkdir -p "$folder/tree/tests"
cp -R src include "$folder/tree"
plant() { printf '%s\n' "$2" > "$folder/tree/src/pages/data/planted_$1.c"; }
plant writer '#include <libxml/xmlwriter.h>'
plant tag 'void f(Buffer *out) { buffer_puts(out, "<td class=\"x\">"); }'
plant tag_end 'static const char *end = "</svg>"; /* "<ok>" */'
plant json 'void f(Buffer *out) { buffer_printf(out, "{\"bar\": %d}", 1); }'
plant json_key 'void f(Buffer *out, const char *k) { buffer_printf(out, "\"%s\":", k); }'
plant csv 'void f(Buffer *out) { buffer_printf(out, "%s,%d\n", "a", 1); }'
plant csv_heads 'void f(Buffer *out) { buffer_puts(out, "file,title,bar"); }'
plant sign "void f(Buffer *out) { buffer_putc(out, ','); }"
plant printed 'void f(char *out, double x) { snprintf(out, 9, "%d and %.1f", 1, x); }'
plant printed_below 'void f(char *out, double x) { snprintf(out, 9,
    "%g", x); }'
plant read 'double f(const char *text) { return strtod(text, NULL); }'
plant scanned 'int f(const char *text, double *x) { return sscanf(text, "%lf", x); }'
plant letters '#include <ctype.h>'
plant cause 'const char *f(void) { return strerror(errno); }'
plant fine '/* "<td>" {"a": 1} "%s,%d" */
void f(Buffer *out) { buffer_puts(out, "bars %d, %d: a < b, c"); snprintf(out, 9, "%d %% from", 1);
buffer_printf(out, "%.1f", x); csv_head(row, "file"); }'
CC=true CXX=true sh tests/support/check-includes.sh "$folder/tree" > "$folder/out" && fault "nothing was found in a tree that goes past the doors"
for kind in writer tag tag_end json json_key csv csv_heads sign printed printed_below read scanned letters cause; do
    grep -q "planted_$kind\.c" "$folder/out" || fault "'$kind' is not found: $(cat "$folder/tree/src/pages/data/planted_$kind.c")"
done
grep planted_fine "$folder/out" > "$folder/said" && fault "found where nothing is wrong: $(cat "$folder/said")"
[ "$(grep -vc planted_ "$folder/out")" = 0 ] || fault "found elsewhere: $(grep -v planted_ "$folder/out" | head -n 1)"
finish
