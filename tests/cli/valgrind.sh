#!/bin/sh
# The whole test suite of MusicXML, all hostile files, and one score to its page under valgrind, in `make test` all unit tests too: no wrong access, no
# leak. Where valgrind is missing, `make test` builds them with the compiler's sanitizers instead.
. tests/support/cli.sh
sanitizers="-O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer"
sanitized_tests() {
    printf 'int main(void){return 0;}\n' | ${CC:-cc} -x c $sanitizers -o "$folder/probe" - 2>/dev/null && "$folder/probe" || { skip "neither valgrind nor sanitizers are at hand"; exit 0; }
    make -s --no-print-directory BUILD="${BUILD:-build}-asan" CFLAGS="$sanitizers" "${BUILD:-build}-asan/unit-tests" > "$folder/out" 2>&1 || fault "no build with sanitizers: $(tail -n 1 "$folder/out")"
    "${BUILD:-build}-asan/unit-tests" > "$folder/out" 2> "$folder/err" || fault "the sanitizers found: $(grep -m 1 'ERROR\|runtime error' "$folder/err")"
    finish
    exit
}
if grep -q __asan_init "$SPEZZATO"; then
    skip "this build has the compiler's sanitizers in it, which look for the same"
    exit 0
fi
if ! command -v valgrind >/dev/null 2>&1; then
    [ "${SPEZZATO_WHOLE:-no}" = yes ] && sanitized_tests
    skip "valgrind is not at hand"
    exit 0
fi
set -- tests/data/hostile/*.xml tests/data/hostile/*.mxl
shared_has suite && set -- "$@" "$shared"/suite/*.xml "$shared"/suite/*.mxl
valgrind -q --leak-check=full --show-leak-kinds=definite,possible --errors-for-leak-kinds=definite,possible --error-exitcode=99 \
    --log-file="$folder/valgrind" "$SPEZZATO" check "$@" > "$folder/out" 2> "$folder/err"
[ $? = 99 ] && fault "valgrind found: $(head -n 6 "$folder/valgrind")"
[ "$(grep -c '^[^ ].*: [0-9n]* *[no ]*doubt' "$folder/out")" -ge 10 ] || fault "no file was read"
[ "$(grep -c '^spezzato: ' "$folder/err")" -ge "$(ls tests/data/hostile/*.xml tests/data/hostile/*.mxl | grep -vc '/fine')" ] || fault "the hostile files were not all refused"
valgrind -q --leak-check=full --error-exitcode=99 --log-file="$folder/valgrind" "$SPEZZATO" corpus/vercassine-barcarolle.musicxml > "$folder/out" 2> "$folder/err"
[ $? = 0 ] || fault "valgrind found: $(head -n 6 "$folder/valgrind")"
if [ "${SPEZZATO_WHOLE:-no}" = yes ]; then
    # The sound of halls and the trial of many stages take a quarter of an hour here; `make asan` watches them.
    SPEZZATO_LEFT_OUT="sound_ears,sound_rooms,sound_hall,stage: what fits" \
    valgrind -q --leak-check=full --show-leak-kinds=definite,possible --errors-for-leak-kinds=definite,possible --error-exitcode=99 \
        --log-file="$folder/valgrind" "${BUILD:-build}/unit-tests" > "$folder/out" 2>&1
    [ $? = 99 ] && fault "valgrind found in the unit tests: $(head -n 6 "$folder/valgrind")"
    grep -q '^ *tests  *[1-9]' "$folder/out" || fault "no unit test was run under valgrind"
fi
finish
