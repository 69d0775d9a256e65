#!/bin/sh
# The library and the program keep to what every C library has: each source is taken by the compiler with the headers of another one (musl), without a word. Its
# threads have stacks of 128 KiB (musl 1.2, DEFAULT_STACK_SIZE): enough for every score, as a limit of that size on ours shows. `make test-musl` builds all libraries for it
# and runs the program there.
. tests/support/cli.sh
run 0 season corpus/season.csv --no-cache
mv "$folder/out" "$folder/plan"
(ulimit -s 128; exec "$SPEZZATO" season corpus/season.csv --no-cache --jobs 2) > "$folder/out" 2> "$folder/err" || fault "with stacks of 128 KiB: exit status $?"
same "$folder/plan" "$folder/out" "with stacks of 128 KiB"

# Nothing hangs on the order in which a C library leaves what is equal when it sorts.
if at_hand cc && cc -O2 -shared -fPIC -o "$folder/other_sort.so" tests/host/other_sort.c 2> "$folder/err" && [ -z "$(LD_PRELOAD=$folder/other_sort.so "$SPEZZATO" --version 2>&1 > /dev/null)" ]; then
    for score in corpus/*.musicxml corpus/*.mxl; do
        for command in "" notes parts bowings rehearsal; do
            "$SPEZZATO" $command --format json "$score" > "$folder/plan" 2>&1
            LD_PRELOAD=$folder/other_sort.so "$SPEZZATO" $command --format json "$score" > "$folder/out" 2>&1
            same "$folder/plan" "$folder/out" "$command $score where equals are sorted the other way"
        done
    done
else
    skip "another sort can't be loaded before the program here"
fi

at_hand musl-gcc cc || { finish; exit; }
mkdir "$folder/include"
for header in zlib.h zconf.h ini.h csv.h sqlite3.h; do
    place=$(echo "#include <$header>" | cc -E -x c - 2> /dev/null | sed -n "s|^# [0-9]* \"\(/[^\"]*/$header\)\".*|\1|p" | head -n 1)
    if [ -n "$place" ]; then ln -s "$place" "$folder/include/$header"; fi
done
[ -d /usr/include/libxml2 ] && [ -e "$folder/include/sqlite3.h" ] || { skip "the headers of the libraries are elsewhere"; finish; exit; }
ln -s /usr/include/libxml2/libxml "$folder/include/libxml"
[ -d /usr/include/unicode ] && ln -s /usr/include/unicode "$folder/include/unicode" # libxml2's, where it is built with it
tried=0
for source in $(find src -name '*.c' -not -path 'src/sound/rendering/*'); do
    tried=$((tried + 1))
    musl-gcc -std=c11 -D_POSIX_C_SOURCE=200809L -DSPEZZATO_DATADIR='"/"' -fsyntax-only -Wall -Wextra -Iinclude -Isrc -I"${BUILD:-build}/made" -isystem "$folder/include" "$source" > "$folder/out" 2>&1 && [ ! -s "$folder/out" ] ||
        fault "$source: $(head -n 1 "$folder/out")"
done
[ "$tried" -gt 100 ] || fault "only $tried sources were tried"
finish
