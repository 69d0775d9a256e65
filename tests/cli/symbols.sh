#!/bin/sh
# No two modules give the same name to two things: the linker would take either without a word. What the library shows to others
# begins with spz_; everything else is its own: neither the archive nor the shared library takes a name away from a program that uses it.
. tests/support/cli.sh
build=${BUILD:-build}
at_hand nm || exit 0
nm "$build/internal.a" | awk 'NF == 3 && $2 ~ /^[TDRBC]$/ { print $3 }' | sort > "$folder/names"
[ "$(wc -l < "$folder/names")" -gt 100 ] || fault "the library's names can't be read"
twice=$(uniq -d "$folder/names" | tr '\n' ' ')
[ -z "$twice" ] || fault "defined more than once: $twice"

# Public is what the headers declare: all of it is there in both libraries, and nothing else.
sed -n 's/^SPZ_API[^(]*[ *]\(spz_[a-z_0-9]*\)(.*/\1/p' include/spezzato/*.h | sort > "$folder/declared"
[ "$(wc -l < "$folder/declared")" -gt 100 ] || fault "the headers can't be read"
nm -g --defined-only "$build/libspezzato.a" | awk 'NF == 3 { print $3 }' | grep -v -e '^__asan_' -e '^__odr_asan' | sort > "$folder/archive"
nm -D --defined-only "$build/libspezzato.so" | awk 'NF == 3 { print $3 }' | sort > "$folder/shared"
same "$folder/declared" "$folder/archive" "what the archive shows is not what the headers declare"
same "$folder/declared" "$folder/shared" "what the shared library shows is not what the headers declare"

# A program that has every one of the other names for itself links and runs.
cc=${CC:-cc}
grep -v '^spz_' "$folder/names" > "$folder/own"
grep -qx buffer_init "$folder/own" || fault "the list of private names can't be right"
if nm "$build/libspezzato.a" | grep -q __asan_; then
    skip "clients can't use a library that has the compiler's sanitizers in it"
elif at_hand pkg-config; then
    { sed 's/.*/int &;/' "$folder/own" | grep -v '^int main;'; printf '#include <spezzato/version.h>\n#include <spezzato/settings.h>\n#include <stdio.h>
int main(void) { spz_settings *settings; int status = spz_settings_new(&settings) != SPZ_OK; spz_settings_free(settings); return status || puts(spz_version()) < 0; }\n'; } > "$folder/client.c"
    $cc -std=c11 -w -fno-builtin -Iinclude -o "$folder/client" "$folder/client.c" "$build/libspezzato.a" $(pkg-config --libs libxml-2.0) -lz -linih -lcsv -lsqlite3 -lm -lpthread 2> "$folder/err" &&
        "$folder/client" > "$folder/out" || fault "a program with names of its own can't use the archive: $(head -n 3 "$folder/err")"
    $cc -std=c11 -w -fno-builtin -Iinclude -o "$folder/client" "$folder/client.c" -L"$build" -lspezzato 2> "$folder/err" &&
        LD_LIBRARY_PATH=$build "$folder/client" > "$folder/out2" || fault "a program with names of its own can't use the shared library: $(head -n 3 "$folder/err")"
    same "$folder/out" "$folder/out2" "the two libraries differ"
fi
finish
