#!/bin/sh
# Results appear whole or not at all: full disks, limits, interrupts, names that can't be written.
. tests/support/cli.sh
score=corpus/brelisk-balconies-1.musicxml
leftovers() { ls -A "$folder" | grep -c '^\.spezzato'; }

run 0 "$score"
cp "$folder/out" "$folder/whole"
[ -s "$folder/whole" ] || fault "no page"
run 0 "$score" -o "$folder/page"
same "$folder/whole" "$folder/page" "the page in a file"
[ -s "$folder/out" ] && fault "the page also went to standard output"

run 2 "$score" -o "$folder/none/page"
[ "$(error_lines)" = 1 ] || fault "a missing folder: $(error_lines) lines"
run 2 "$score" -o "$folder"
[ "$(error_lines)" = 1 ] || fault "a folder as output: $(error_lines) lines"

if [ -c /dev/full ]; then
    "$SPEZZATO" "$score" > /dev/full 2> "$folder/err"
    [ $? = 2 ] || fault "a full standard output is not noticed"
    says "can't be written"
    "$SPEZZATO" --help > /dev/full 2> "$folder/err"
    [ $? = 2 ] || fault "a full standard output is not noticed by --help"
fi

# A file that may not grow past 512 bytes: the older one stays.
printf 'older\n' > "$folder/page"
(ulimit -f 1; "$SPEZZATO" streams "$score" -o "$folder/page" 2> "$folder/err"); status=$?
[ "$status" = 2 ] || fault "a file that can't grow: exit status $status"
[ "$(cat "$folder/page")" = older ] || fault "a file that could not be written whole has replaced the older one"
[ "$(leftovers)" = 0 ] || fault "a temporary file is left"

# Interrupts at twenty moments: the older file or the whole new one, nothing else.
"$SPEZZATO" streams "$score" -o "$folder/complete" 2> /dev/null
for moment in 01 02 03 04 05 06 07 08 09 10 11 12 13 14 15 16 18 20 25 30; do
    printf 'older\n' > "$folder/page"
    "$SPEZZATO" streams "$score" -o "$folder/page" 2> /dev/null &
    runner=$!
    sleep "0.0$moment"
    kill -TERM "$runner" 2> /dev/null
    wait "$runner" 2> /dev/null
    [ "$(head -c 6 "$folder/page")" = older ] || cmp -s "$folder/page" "$folder/complete" || fault "half a file after an interrupt"
done
[ "$(leftovers)" = 0 ] || fault "an interrupt left a temporary file"
# What a killed run left beside the file is swept by the next; what a living one is writing there is not.
cd_folder=$(cd "$folder" && pwd -P)
sum=2166136261
for letter in $(printf '%s' "$cd_folder/swept.txt" | od -An -v -tu1); do sum=$((((sum ^ letter) * 16777619) & 0xffffffff)); done
dead=$(sh -c 'echo $$')
left=$(printf '%s/.spezzato-%s-%08x' "$folder" "$dead" "$sum"); living=$(printf '%s/.spezzato-%s-%08x' "$folder" $$ "$sum")
: > "$folder/swept.txt"; : > "$left"; : > "$living"
run 0 corpus/vercassine-barcarolle.musicxml -o "$folder/swept.txt"
[ -e "$left" ] && fault "what a killed run left is still there"
[ -e "$living" ] || fault "what another run is writing was taken away"
finish
