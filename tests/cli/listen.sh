#!/bin/sh
# A passage made audible: names, forms, levels and refusals; the same bytes each time; what is said where the library of sound is missing.
. tests/support/cli.sh
score=corpus/brelisk-balconies-1.musicxml
run 1 listen
says "which score?"
run 1 listen "$score"
says "where to? Give a folder with -o"
run 1 listen "$score" "$score" -o "$folder/none"
says "one score at a time"
run 1 listen "$score" -o "$folder/none" --seat balcony
says "--seat balcony: it is middle, left, right, front, back or podium"
run 1 listen "$score" -o "$folder/none" --for radio
says "--for radio: it is headphones or loudspeakers"
run 1 listen "$score" -o "$folder/none" --tempo presto
says "--tempo presto: it is a whole number from 10 to 400"
run 1 listen "$score" -o "$folder/none" --bars 1 --passage 1
says "either --bars or --passage"

# Built without its library of sound, nothing asks for it.
if at_hand make; then
    make -n SOUND=no BUILD="$folder/without" all > "$folder/steps" 2> "$folder/err" || fault "SOUND=no: $(head -n 1 "$folder/err")"
    grep -q 'src/sound/listen' "$folder/steps" || fault "SOUND=no builds nothing"
    grep -nE 'src/sound/rendering|fluidsynth|SPEZZATO_SOUND_PLACE|spezzato-sound' "$folder/steps" > "$folder/found" && fault "SOUND=no: $(head -n 1 "$folder/found" | cut -c 1-120)"
fi

sound=no
if "$SPEZZATO" listen "$score" --bars 29-30 -o "$folder/a" > "$folder/out" 2> "$folder/err"; then sound=yes; fi
if [ $sound = no ]; then
    # Without the library of sound, or the packages it needs, one line says what to install, and nothing is made.
    grep -qE "apt(-get)? install" "$folder/err" || fault "nothing says what to install: $(head -n 1 "$folder/err")"
    [ "$(error_lines)" = 1 ] || fault "without sound: $(error_lines) lines"
    [ -e "$folder/a" ] && fault "a folder was made for nothing"
    skip "the library of sound, or a SoundFont, is not at hand"
    finish
    exit
fi
for seating in violins-opposed-cellos-inside-left violins-together-violas-outside; do
    file=$folder/a/29-30-$seating.wav
    shows "$file"
    [ "$(head -c 4 "$file")" = RIFF ] || fault "$file is no WAV"
    # Bytes 22 to 35 of the header: channels, frames a second, bits of a sample.
    [ "$(od -An -tu2 -j22 -N2 "$file" | tr -d ' ')" = 2 ] || fault "$file has not two channels"
    [ "$(od -An -tu4 -j24 -N4 "$file" | tr -d ' ')" = 48000 ] || fault "$file is not of 48 kHz"
    [ "$(od -An -tu2 -j34 -N2 "$file" | tr -d ' ')" = 24 ] || fault "$file is not of 24 bits"
done
[ "$(wc -c < "$folder/a/29-30-violins-opposed-cellos-inside-left.wav")" = "$(wc -c < "$folder/a/29-30-violins-together-violas-outside.wav")" ] || fault "the two versions are not equally long"
cmp -s "$folder/a/29-30-violins-opposed-cellos-inside-left.wav" "$folder/a/29-30-violins-together-violas-outside.wav" && fault "both seatings sound the same"
[ "$(grep -c -- '-23.0 LUFS' "$folder/out")" = 2 ] || fault "the versions are not equally loud: $(grep LUFS "$folder/out")"
shows "not a forecast of how a hall"
shows "With headphones begin softly"
run 0 listen "$score" --bars 29-30 -o "$folder/b"
for file in "$folder"/a/*; do same "$file" "$folder/b/$(basename "$file")" "the same passage twice"; done
one=$folder/a/29-30-violins-opposed-cellos-inside-left
if [ -e "$one.flac" ] && at_hand sox; then
    if sox -m -v 1 "$one.wav" -v -1 "$one.flac" -n stat 2> "$folder/stat"; then
        # Both are rounded to 24 bits, each in its own way: a step of the last bit apart at most.
        awk '/^Maximum amplitude/ { exit !($3 < 0.000001) }' "$folder/stat" || fault "FLAC and WAV differ: $(grep 'Maximum amplitude' "$folder/stat")"
    else
        skip "this sox reads no FLAC"
    fi
fi

# Other wishes.
run 0 listen "$score" --passage 2 -o "$folder/a" --solo "Vn I, Va" --seat podium --for loudspeakers --seating "violins together" --against "violins opposed" --tempo 100
shows "Bars 25-26"
shows "heard from the podium, for loudspeakers"
[ "$(grep -n 'violins together' "$folder/out" | head -n 1 | cut -d: -f1)" -lt "$(grep -n 'violins opposed' "$folder/out" | head -n 1 | cut -d: -f1)" ] || fault "the seatings are not in the order asked for"
run 2 listen "$score" --bars 400-410 -o "$folder/a"
says "there are no bars 400-410; the first is"
run 2 listen "$score" --passage 99 -o "$folder/a"
says "there is no passage 99"
run 2 listen "$score" --bars 29 --solo "Tuba" -o "$folder/a"
says "no section of that name"
run 1 listen "$score" --bars 29 --seating "violins upstairs" -o "$folder/a"
says "there is no seating 'violins upstairs'"
run 2 listen "$score" --bars 29 --sounds "$score" -o "$folder/a"
says "it can't be used as a SoundFont"
run 2 listen corpus/aldersquay-lock-keepers-march.musicxml --bars 1-2 -o "$folder/a"
says "No string sections"
[ "$(error_lines)" = 1 ] || fault "a march of winds: $(error_lines) lines"

# Beside the conductor's page: a script for each seat, which the page may fetch by its key alone; pages without sound stay as they are.
"${BUILD:-build}/sketch" tests/data/small-answer.txt "$folder/small's answer.musicxml" 2> "$folder/err" || fault "the sketch could not be made: $(head -n 1 "$folder/err")"
run 0 report "$folder/small's answer.musicxml" --listen --engraver none -o "$folder/pages"
run 0 report "$folder/small's answer.musicxml" --engraver none -o "$folder/mute"
page="$folder/pages/small's answer.html"
players=$(grep -o 'class="player"' "$page" | wc -l)
files=$(ls "$folder/pages" | grep -c '\.js$')
[ "$players" -gt 0 ] || fault "the page has no player"
[ "$files" = $((4 * players)) ] || fault "$files sounds lie beside $players players"
for file in "$folder"/pages/*.js; do
    grep -q "^spezzatoSound('small.x20*.*', \[\"data:audio/.*;base64,.*\", \"data:audio/.*;base64,.*\"\]);$" "$file" || fault "$file is no pair of sounds"
done
grep -q "'nonce-[0-9a-f]*'" "$page" || fault "the page may not fetch its sounds"
grep -qE 'class="player"|nonce' "$folder/mute/small's answer.html" && fault "a page without sound is not as it was"
finish
