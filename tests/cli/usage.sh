#!/bin/sh
# Mistakes in the command: one line, exit status 1. Help and version: exit status 0.
. tests/support/cli.sh
score=corpus/brelisk-balconies-2.musicxml

mistake() { # what the line says, then the arguments
    words=$1
    shift
    run 1 "$@"
    says "$words"
    [ "$(error_lines)" = 1 ] || fault "spezzato $*: $(error_lines) lines on standard error, not one"
    [ -s "$folder/out" ] && fault "spezzato $*: a result in spite of the mistake"
}
mistake "which score?"
mistake "which score?" passages
mistake "there is no option '--colour'" --colour "$score"
mistake "there is no option '-x'" seating -x "$score"
mistake "there is no option '--played'" passages --played "$score"
mistake "--format loud" --format loud "$score"
mistake "--format needs FORM" "$score" --format
mistake "--all takes no value" --all=yes "$score"
mistake "--year 3000" --year 3000 "$score"
mistake "--year 18x" --year 18x "$score"
mistake "--kind fugue" passages --kind exchange,fugue "$score"
mistake "--strength loud" passages --strength loud "$score"
mistake "--width 20" --width 20 "$score"
mistake "--set stage" --set stage "$score"
mistake "one word too many" settings "$score"
run 1 --set stage.wdith=18 "$score"
[ "$(error_lines)" = 1 ] || fault "an unknown setting: $(error_lines) lines"
run 1 --set stage.width=wide "$score"
[ "$(error_lines)" = 1 ] || fault "a wrong value: $(error_lines) lines"

cp "$score" "$folder/own.musicxml"
mistake "would overwrite it" "$folder/own.musicxml" -o "$folder/own.musicxml"
same "$score" "$folder/own.musicxml" "the score that was named as output"

run 0 --version
shows "spezzato $(sed -n "s/^#define SPZ_VERSION_[MP][A-Z]* //p" include/spezzato/version.h | paste -sd . -)"
shows "libxml2 "
shows "Licence: MIT"
run 0 --help
for command in page seating passages sections streams settings; do
    shows "  $command "
    "$SPEZZATO" "$command" --help > "$folder/help" 2>&1 || fault "$command --help fails"
    for words in "Usage: spezzato" "Options:" "Exit status:"; do
        grep -q "$words" "$folder/help" || fault "$command --help has no '$words'"
    done
done

# Options may stand anywhere, in all their forms.
run 0 passages "$score" --format csv
mv "$folder/out" "$folder/first"
run 0 passages --format=csv -- "$score"
same "$folder/first" "$folder/out" "options before and behind the score"
run 0 passages -o"$folder/third" --format csv "$score"
same "$folder/first" "$folder/third" "a file as -oFILE"
# A file's name asks for its form, where --format doesn't; a form that the command hasn't is a mistake.
run 0 passages "$score" -o "$folder/fourth.csv"
same "$folder/first" "$folder/fourth.csv" "a form by the file's name"
run 0 passages "$score" --format json -o "$folder/fifth.csv"
grep -q '"movements"' "$folder/fifth.csv" || fault "--format gives way to the file's name"
run 0 stage "$score" -o "$folder/drawing.svg"
grep -q '<svg' "$folder/drawing.svg" || fault "a drawing by its name is none"
mistake "page is not written as html; \`spezzato report\` makes pages" "$score" -o "$folder/page.html"
mistake "passages is not written as odt" passages "$score" -o "$folder/passages.odt"
[ -e "$folder/page.html" ] && fault "a mistake leaves a file"
# What is wrong in settings is told at once, with its line, and led to what was meant.
printf 'langauge = de\n[stage]\nwidht = 3\n' > "$folder/a.ini"
run 2 seating --settings "$folder/a.ini" "$score"
says "line 1: 'langauge' stands before the first [section]; is 'language' meant?"
says "is 'stage.width' meant?"
printf '[sections]\nViola = Xx\n[passages]\n5 Vn I = soso\n6 Vn I = soso\n[bars]\nfoo = 1\nbaz = 2\n' > "$folder/a.ini"
run 2 seating --settings "$folder/a.ini" "$score"
for line in 2 4 5 7 8; do says "a.ini, line $line: "; done
printf '\nlanguage = klingon\n' > "$folder/a.ini"
run 2 seating --settings "$folder/a.ini" "$score"
says "a.ini, line 2: language = klingon"
printf '[bars]\n900 = 12\n' > "$folder/a.ini"
run 0 seating --settings "$folder/a.ini" "$score"
says "a.ini, line 2: note: [bars] '900 = 12'"
printf '[house]\nforbidden = violins opposed, cellos inside left|violins opposed, violas inside left|violins together, cellos outside|violins together, violas outside\n' > "$folder/a.ini"
run 2 seating --settings "$folder/a.ini" "$score"
says "a.ini, line 2: [house] forbids every arrangement"
run 1 seating --set bars.first=0 "$score"
says "below '[bars]'"
run 1 seating --set players.cellos=7.5 "$score"
says "a whole number of players"
for name in German allemand Deutsch DE; do
    run 0 seating --language "$name" "$score"
    shows "AUFSTELLUNG"
done

# What a name promises and nothing is written as; tables where scores are read.
for name in a.docx a.pdf; do
    run 1 notes "$score" -o "$folder/$name"
    [ ! -e "$folder/$name" ] || fault "$name was written"
done
says "a.pdf: notes is not written as pdf; .html is a page that a browser prints, as PDF too"
run 1 stage -o "$folder/a.png"
says "; .svg is a drawing to any scale"
run 1 mark "$score" -o "$folder/a.pdf"
says "a score is written as .mxl (compressed), .musicxml or .xml"
for command in page parts check; do
    run 2 "$command" corpus/season.csv
    says "corpus/season.csv: this is a table, not a score"
done
run 0 settings
shows "; [bars]: the numbers of the printed edition."
"$SPEZZATO" settings > "$folder/all.ini"
run 0 settings --settings "$folder/all.ini"
same "$folder/all.ini" "$folder/out" "the settings as printed are not a settings file that says the same"

finish
