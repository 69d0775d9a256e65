#!/bin/sh
# What a stranger types first: words spelt wrong are answered with the word that was meant, before any work; help and version by every usual name;
# folders and pipes for scores; the house's own rules; and what is no score is told by what it seems to be.
. tests/support/cli.sh
score=corpus/vercassine-barcarolle.musicxml

# meant STATUS WORD ARGUMENTS...: one line that names the word.
meant() {
    status=$1; word=$2; shift 2
    run "$status" "$@"
    says "$word"
    [ "$(error_lines)" = 1 ] || fault "spezzato $*: $(error_lines) lines"
    [ -s "$folder/out" ] && fault "spezzato $*: something was done all the same"
}
meant 1 "is 'seating' meant?" seatng "$score"
meant 1 "is 'passages' meant?" passges "$score"
meant 1 "neither a command nor a file" quite-another-thing
meant 1 "is --format meant?" seating --fromat json "$score"
meant 1 "is exchange meant?" passages --kind exchnge "$score"
meant 1 "is 'stage.width' meant?" stage --set stage.widht=12
meant 1 "is 'notes' meant?" help note
meant 2 "no settings file" stage --settings "$score"
printf '[stage]\nwitdh = 12\n' > "$folder/wrong.ini"
meant 2 "is 'stage.width' meant?" stage --settings "$folder/wrong.ini"
meant 2 "can't be opened" not-there.musicxml

run 0 --help; cp "$folder/out" "$folder/help"
for word in -h help; do run 0 $word; same "$folder/help" "$folder/out" "$word"; done
run 0 notes --help; cp "$folder/out" "$folder/help"
run 0 help notes; same "$folder/help" "$folder/out" "help notes"
run 0 notes -h; same "$folder/help" "$folder/out" "notes -h"
run 0 --version; cp "$folder/out" "$folder/version"
for word in -V version; do run 0 $word; same "$folder/version" "$folder/out" "$word"; done

# An option may be shortened as long as only one begins so.
run 0 passages --format json "$score"; cp "$folder/out" "$folder/passages"
run 0 passages --form=json "$score"; same "$folder/passages" "$folder/out" "--form"
meant 1 "--s" passages --s clear "$score"

# A folder stands for its scores, by name; standard input for one, packed or not.
mkdir "$folder/shelf" "$folder/empty"
cp "$score" "$folder/shelf/b.musicxml"; cp corpus/tolvesk-ecluses-2.mxl "$folder/shelf/a.mxl"; echo x > "$folder/shelf/notes.txt"; echo x > "$folder/shelf/.hidden.xml"
run 0 passages --format csv "$folder/shelf/a.mxl" "$folder/shelf/b.musicxml"; cp "$folder/out" "$folder/two"
run 0 passages --format csv "$folder/shelf"; same "$folder/two" "$folder/out" "a folder"
run 0 passages --format csv "$folder/shelf/"; same "$folder/two" "$folder/out" "a folder with its stroke"
run 2 passages "$folder/empty"
says "there is no score in this folder"
for piped in "$score" corpus/tolvesk-ecluses-2.mxl; do
    run 0 passages --format json "$piped"; grep -v '"file"' "$folder/out" > "$folder/read"
    "$SPEZZATO" passages --format json - < "$piped" | grep -v '"file"' > "$folder/piped"
    same "$folder/read" "$folder/piped" "$piped from standard input"
    mkfifo "$folder/pipe"
    cat "$piped" > "$folder/pipe" &
    "$SPEZZATO" passages --format json "$folder/pipe" | grep -v '"file"' > "$folder/piped"
    same "$folder/read" "$folder/piped" "$piped from a pipe"
    rm "$folder/pipe"
done

# foreign BYTES WORDS: a file that begins so is told to be that, in one line.
foreign() {
    printf "$1" > "$folder/foreign"
    meant 2 "$2" "$folder/foreign"
    says MusicXML
}
foreign '%%PDF-1.7\n1 0 obj' "this is a PDF"
foreign 'MThd\000\000\000\006' "this is a MIDI file"
foreign '\211PNG\r\n\032\n' "this is a picture"
foreign '\377\330\377\340' "this is a picture"
foreign 'RIFF\044\000\000\000WAVE' "this is a sound recording"
foreign '\001\002score\000\000' "a notation program's own file"
foreign 'Violin I: c d e f' "it does not begin as XML does"

# The house's rules hold where nothing else is said, and the page says so.
mkdir -p "$folder/config/spezzato"
printf '[stage]\nwidth = 17.5\n' > "$folder/config/spezzato/house.ini"
XDG_CONFIG_HOME=$folder/config
run 0 settings --format csv; grep -q '^stage.width,number,17.5,' "$folder/out" || fault "the house's rules are not in force"
run 0 settings --format csv --set stage.width=16; grep -q '^stage.width,number,16,' "$folder/out" || fault "--set does not go before the house's rules"
run 0 "$score"; shows "House rules: "
run 0 report "$score" -o "$folder/pages" --engraver none
shows "Open $folder/pages/index.html in a browser."
grep -q 'House rules: ' "$folder/pages/vercassine-barcarolle.html" || fault "the web page does not tell of the house's rules"
printf '[stage]\nwidth = wide\n' > "$folder/config/spezzato/house.ini"
meant 2 "house.ini, line 2" "$score"
XDG_CONFIG_HOME=$folder/no-house
run 0 "$score"; shows_not "House rules"
: > "$folder/file"
meant 2 "the folder can't be made: " report "$score" -o "$folder/file/pages" --engraver none
finish
