#!/bin/sh
# What goes wrong with a library loses nothing: a killed run, two runs at once, a full disk, a read-only file, a damaged or foreign one, one of another edition.
. tests/support/cli.sh
library="$folder/library"
mkdir "$folder/shelf"
number=0
while [ $number -lt 12 ]; do
    number=$((number + 1))
    sed "s/<movement-title>/<movement-title>$number /" corpus/brelisk-balconies-1.musicxml > "$folder/shelf/piece-$number.musicxml"
done
add() { "$SPEZZATO" library add --library "$library" "$@"; }
whole() { # the answers of this library, without the order in which it was filled
    "$SPEZZATO" library find --library "$1" --strength clear --passages 1000 --format json > "$2"
}
add "$folder/shelf" > "$folder/out" || fault "adding"
whole "$library" "$folder/expected"
cp "$library" "$folder/full"

# Killed at any moment, as by a loss of power for the process: what is there is whole, and the next run goes on to the same library.
killed=0
for moment in 0.02 0.05 0.08 0.11 0.15 0.2; do
    rm -f "$library" "$library-journal"
    add --jobs 2 "$folder/shelf" > "$folder/out" 2>&1 &
    running=$!
    sleep $moment
    kill -9 "$running" 2> /dev/null && killed=$((killed + 1))
    wait "$running" 2> /dev/null
    run 0 library add --library "$library" "$folder/shelf"
    whole "$library" "$folder/again"
    same "$folder/expected" "$folder/again" "killed after $moment s"
    run 0 library check --library "$library"
done
[ "$killed" -ge 2 ] || fault "only $killed runs were killed in time"

# Two at once, from nothing: each waits for the other, nothing is there twice.
rm -f "$library"
add "$folder/shelf" > "$folder/one" 2>&1 &
first=$!
add "$folder/shelf" > "$folder/two" 2>&1 || fault "the second of two: $(cat "$folder/two")"
wait "$first" || fault "the first of two: $(cat "$folder/one")"
whole "$library" "$folder/again"
same "$folder/expected" "$folder/again" "two at once"

# No room on the disk: told once, what was kept before is whole, and more room lets it go on.
rm -f "$library"
add "$folder/shelf/piece-1.musicxml" > "$folder/out" || fault "one score"
blocks=$(($(wc -c < "$library") / 512 + 60))
(ulimit -f "$blocks"; trap '' XFSZ; exec "$SPEZZATO" library add --library "$library" "$folder/shelf") > "$folder/out" 2> "$folder/err"
status=$?
[ "$status" = 2 ] || fault "a full disk: exit status $status"
grep -q "what was kept before is whole" "$folder/err" || fault "a full disk is not told: $(cat "$folder/err")"
[ "$(error_lines)" = 1 ] || fault "a full disk: $(error_lines) lines"
run 0 library show --library "$library" Balconies
run 0 library add --library "$library" "$folder/shelf"
whole "$library" "$folder/again"
same "$folder/expected" "$folder/again" "after a full disk"

# Read-only: asked as ever; a change is refused, and a season is planned all the same. (The administrator may write everywhere.)
if [ "$(id -u)" != 0 ]; then
    chmod 400 "$library"
    whole "$library" "$folder/again"
    same "$folder/expected" "$folder/again" "a read-only library"
    cp corpus/caldremi-grosso-1.musicxml "$folder/shelf/"
    run 2 library add --library "$library" "$folder/shelf"
    says "it can't be written"
    rm "$folder/shelf/caldremi-grosso-1.musicxml"
    chmod 600 "$library"
elif at_hand setpriv; then
    chmod 444 "$library"
    chmod 755 "$folder"
    cp corpus/caldremi-grosso-1.musicxml "$folder/shelf/"
    as_nobody() { setpriv --reuid 65534 --regid 65534 --clear-groups "$SPEZZATO" "$@"; }
    if as_nobody --version > /dev/null 2>&1; then
        as_nobody library find --library "$library" --strength clear --passages 1000 --format json > "$folder/again" || fault "asking a read-only library"
        same "$folder/expected" "$folder/again" "a read-only library"
        as_nobody library add --library "$library" "$folder/shelf" > "$folder/out" 2> "$folder/err"
        [ "$?" = 2 ] || fault "adding to a read-only library"
        says "it can't be written"
    else
        skip "another user can't run the program here"
    fi
    rm "$folder/shelf/caldremi-grosso-1.musicxml"
    chmod 644 "$library"
fi

# No library at all, a damaged one, another program's, a newer edition's: told in one line, and not a byte is changed.
refused() { # file, words
    cp "$1" "$folder/before"
    for command in "find" "check" "add $folder/shelf" "forget x"; do
        # shellcheck disable=SC2086
        run 2 library $command --library "$1"
        says "$2"
        [ "$(error_lines)" = 1 ] || fault "library $command: $(cat "$folder/err")"
        cmp -s "$folder/before" "$1" || fault "$1 was changed by $command"
    done
}
printf 'a letter to the librarian, longer than a few words' > "$folder/letter"
refused "$folder/letter" "it is no library; it is left as it is"
head -c 3000 "$folder/full" > "$folder/cut"
printf '%s' "$(head -c 40 "$folder/letter")" | dd of="$folder/cut" bs=1 seek=40 conv=notrunc 2> /dev/null
refused "$folder/cut" "left as it is"
if at_hand sqlite3; then
    sqlite3 "$folder/other" 'CREATE TABLE players (name TEXT)'
    refused "$folder/other" "it belongs to another program; it is left as it is"
    cp "$folder/full" "$folder/newer"
    sqlite3 "$folder/newer" 'PRAGMA user_version = 1000'
    refused "$folder/newer" "it was made by a newer edition of this program; it is left as it is"

    # An older edition's is brought up to date, with all that it has.
    cp "$folder/full" "$folder/older"
    sqlite3 "$folder/older" 'DROP TABLE result; PRAGMA user_version = 1'
    whole "$folder/older" "$folder/again"
    same "$folder/expected" "$folder/again" "an older edition"
    [ "$(sqlite3 -readonly "$folder/older" 'SELECT count(*) FROM result; PRAGMA user_version')" = "0
3" ] || fault "an older edition was not brought up to date"

    # A page of it overwritten: the check says so.
    size=$(wc -c < "$folder/full")
    cp "$folder/full" "$folder/damaged"
    dd if=/dev/urandom of="$folder/damaged" bs=4096 seek=$((size / 4096 / 2)) count=2 conv=notrunc 2> /dev/null
    run 2 library check --library "$folder/damaged"
    says "damaged"
fi
finish
