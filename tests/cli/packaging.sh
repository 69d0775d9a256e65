#!/bin/sh
# What is installed is enough: clients in C and C++ are built with nothing but pkg-config's words, and run; a staging folder may hold blanks;
# what is uninstalled is gone. And what was built with other settings, or from sources that are gone, is built anew.
. tests/support/cli.sh
build=${BUILD:-build}
quiet_make() { make -s --no-print-directory BUILD="$build" "$@" > "$folder/said" 2>&1 || { fault "make $*: $(grep -v jobserver "$folder/said" | head -n 2)"; return 1; }; }
score=corpus/brelisk-balconies-2.musicxml
version=$(sed -n 's/^#define SPZ_VERSION_[MP][A-Z]* //p' include/spezzato/version.h | paste -sd . -)

# Staged for a package: only in the folders named, and gone again.
stage="$folder/a stage"
quiet_make install DESTDIR="$stage" PREFIX=/usr libdir=/usr/lib/machine
for file in usr/bin/spezzato usr/lib/machine/libspezzato.a "usr/lib/machine/libspezzato.so.$version" usr/lib/machine/libspezzato.so \
    usr/lib/machine/pkgconfig/spezzato.pc usr/include/spezzato/spezzato.h usr/share/man/man1/spezzato.1 usr/share/doc/spezzato/LICENSE \
    usr/share/spezzato/engraver/engrave.mjs; do
    [ -r "$stage/$file" ] || fault "not installed: $file"
done
find "$stage" ! -type d ! -perm -044 -print | grep . > "$folder/closed" && fault "installed, but not for all to read: $(head -n 1 "$folder/closed")"
grep -rlF "$folder" "$stage" > "$folder/leaks" && fault "knows the staging folder: $(head -n 1 "$folder/leaks")"
grep -q "^libdir=\${prefix}/lib/machine$" "$stage/usr/lib/machine/pkgconfig/spezzato.pc" || fault "spezzato.pc names another folder of libraries"
head -n 3 "$stage/usr/share/man/man1/spezzato.1" | grep -qF "$version" || fault "the manual page has no version"
quiet_make uninstall DESTDIR="$stage" PREFIX=/usr libdir=/usr/lib/machine
[ -z "$(find "$stage" ! -type d)" ] || fault "left behind: $(find "$stage" ! -type d | head -n 1)"

# client NAME COMPILER SOURCE WORDS...: builds tests/clients/SOURCE against the installed copy.
client() {
    name=$1; compiler=$2; source=$3; shift 3
    $compiler -Wall -Wextra -Wpedantic -Werror "tests/clients/$source" "$@" -o "$folder/$name" 2> "$folder/err" || fault "$source can't be built: $(head -n 2 "$folder/err")"
}
if nm "$build/libspezzato.a" 2>/dev/null | grep -q __asan_; then
    skip "clients can't use a library that has the compiler's sanitizers in it"
elif at_hand pkg-config; then
    quiet_make install PREFIX="$folder/prefix"
    PKG_CONFIG_PATH=$folder/prefix/lib/pkgconfig LD_LIBRARY_PATH=$folder/prefix/lib
    export PKG_CONFIG_PATH LD_LIBRARY_PATH
    [ "$(pkg-config --modversion spezzato)" = "$version" ] || fault "pkg-config tells version '$(pkg-config --modversion spezzato)'"
    client compass "${CC:-cc} -std=c11" compass.c $(pkg-config --cflags --libs spezzato)
    client together "${CC:-cc} -std=c11" together.c -pthread $(pkg-config --cflags --libs spezzato)
    # The same numbers by another way: the table of notes, searched by awk.
    "$SPEZZATO" streams --format csv "$score" | awk -F, 'NR > 1 && $11 >= 0 { p = $1; if (!(p in low)) { order[++n] = p; low[p] = high[p] = $11; lowest[p] = highest[p] = $10 }
        if ($11 < low[p]) { low[p] = $11; lowest[p] = $10 } if ($11 > high[p]) { high[p] = $11; highest[p] = $10 } }
        END { for (i = 1; i <= n; i++) print order[i] "\t" lowest[order[i]] "\t" highest[order[i]] }' > "$folder/expected"
    [ "$(wc -l < "$folder/expected")" -gt 4 ] || fault "the table of notes can't be read"
    "$folder/compass" "$score" | sed 1d > "$folder/out"
    same "$folder/expected" "$folder/out" "compass"
    "$folder/compass" "$folder/nothing.xml" 2> "$folder/err" && fault "compass takes a score that is not there"
    says "nothing.xml: the file can't be opened"
    "$folder/together" corpus/tolvesk-ecluses-1.musicxml > "$folder/out" || fault "threads at the same time come to other results"
    shows " passages"
    if at_hand "${CXX:-c++}"; then
        client advice "${CXX:-c++} -std=c++11" advice.cpp $(pkg-config --cflags --libs spezzato)
        "$folder/advice" corpus/*.musicxml > "$folder/out" || fault "advice fails"
        "$SPEZZATO" seating --format json corpus/*.musicxml > "$folder/seating.json"
        cut -f 2 "$folder/out" | grep -v '^any$' | sort | uniq -c > "$folder/advised"
        sed -n 's/.*"recommended": "\(.*\)",*$/\1/p' "$folder/seating.json" | sort | uniq -c > "$folder/recommended"
        same "$folder/recommended" "$folder/advised" "advice"
    fi
    # Without the shared library: the archive and what it needs.
    rm -f "$folder"/prefix/lib/*.so*
    client compass "${CC:-cc} -std=c11" compass.c $(pkg-config --static --cflags --libs spezzato)
    "$folder/compass" "$score" | sed 1d > "$folder/out"
    same "$folder/expected" "$folder/out" "compass with the archive"
fi

# A small part of the sources, to be built again and again.
copy=$folder/copy
mkdir -p "$copy/src/wording" "$copy/tests/support"
cp -R Makefile include "$copy"
cp -R src/about src/support "$copy/src"
cp -R src/wording/languages "$copy/src/wording"
find src -name '*.h' | tar -cf - -T - | tar -xf - -C "$copy"
cp tests/support/packages.sh "$copy/tests/support"
again() { MAKEFLAGS= make -C "$copy" --no-print-directory BUILD=parts parts/internal.a "$@" > "$folder/said" 2>&1; }
compiled() { grep -c -e ' -c -o parts/src/' "$folder/said"; }
all_of_it=$(find "$copy/src" -name '*.c' | wc -l)
again CFLAGS=-O0 || fault "a part of the sources can't be built: $(tail -n 1 "$folder/said")"
[ "$(compiled)" -eq "$all_of_it" ] || fault "$(compiled) of $all_of_it sources were compiled"
again CFLAGS=-O0
[ "$(compiled)" = 0 ] || fault "compiled again for nothing: $(compiled)"
again CFLAGS=-O1 CPPFLAGS=-DHARDENED
[ "$(compiled)" -eq "$all_of_it" ] || fault "other CFLAGS: $(compiled) of $all_of_it sources were compiled"
grep -q -e '-DHARDENED.*-O1' "$folder/said" || fault "CPPFLAGS are not honoured"
again CC="${CC:-cc} -DOTHER" CFLAGS=-O1 CPPFLAGS=-DHARDENED
[ "$(compiled)" -eq "$all_of_it" ] || fault "another compiler: $(compiled) of $all_of_it sources were compiled"
ar t "$copy/parts/internal.a" | grep -qx arena.o || fault "a source is not in the archive"
rm "$copy/src/support/arena.c"
again CC="${CC:-cc} -DOTHER" CFLAGS=-O1 CPPFLAGS=-DHARDENED
[ "$(compiled)" = 0 ] || fault "compiled again because a source is gone: $(compiled)"
ar t "$copy/parts/internal.a" | grep -qx arena.o && fault "a source that is gone stays in the archive"

# A compiler that finds no libxml2: one word about what to install, before anything is compiled.
cat > "$folder/poor" <<'EOT'
#!/bin/sh
for word do case $word in *libxml2) ;; *) set -- "$@" "$word" ;; esac; shift; done
exec cc "$@"
EOT
chmod +x "$folder/poor"
again CC="$folder/poor" && fault "built without libxml2"
[ "$(compiled)" = 0 ] || fault "compiled although a library is missing"
grep -q "apt-get install libxml2-dev$" "$folder/said" || fault "nobody says that libxml2-dev is missing: $(tail -n 3 "$folder/said")"
finish
