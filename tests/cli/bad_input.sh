#!/bin/sh
# Files that can't be used: one clear line each, exit status 2, the other files are done, no file under the name asked for.
. tests/support/cli.sh
good=corpus/brelisk-balconies-2.musicxml
: > "$folder/empty.musicxml"
head -c 3000 "$good" > "$folder/cut.musicxml"
printf 'not a score\n' > "$folder/words.xml"
printf '<?xml version="1.0"?>\n<html><body/></html>\n' > "$folder/page.xml"
printf 'PK\003\004 and then nothing\n' > "$folder/zip.mxl"
mkdir "$folder/folder.musicxml"

refused() {
    run 2 "$1"
    [ "$(error_lines)" = 1 ] || fault "$1: $(error_lines) lines on standard error, not one"
    grep -q "^spezzato: $1\(, line [0-9]*\)\?[:,]" "$folder/err" || fault "$1: the line does not begin with the file: $(cat "$folder/err")"
    [ -s "$folder/out" ] && fault "$1: a result"
    run 2 "$1" -o "$folder/result"
    [ -e "$folder/result" ] && fault "$1: something stands under the name asked for"
}
for name in missing.musicxml empty.musicxml cut.musicxml words.xml page.xml zip.mxl folder.musicxml; do
    refused "$folder/$name"
done

# The others of the same call are done.
run 0 --format json "$good"
mv "$folder/out" "$folder/alone"
run 2 --format json "$folder/empty.musicxml" "$good" "$folder/missing.musicxml" -o "$folder/result"
[ "$(error_lines)" = 2 ] || fault "two bad files, $(error_lines) lines"
same "$folder/alone" "$folder/result" "the good score among bad ones"
rm "$folder/result"
ls -A "$folder" | grep -q '^\.spezzato' && fault "a temporary file is left"

# Settings files.
printf '[stage]\nwidth = 16\nwdith = 18\n' > "$folder/house.ini"
run 2 --settings "$folder/house.ini" "$good"
says "house.ini, line 3"
[ "$(error_lines)" = 1 ] || fault "a wrong settings file: $(error_lines) lines"
run 2 --settings "$folder/none.ini" "$good"
[ "$(error_lines)" = 1 ] || fault "a missing settings file: $(error_lines) lines"
finish
