#!/bin/sh
# Built for another C library (musl) and run on it: every unit test, and the whole job of the demo, whose pages have to be the same byte for byte as those of this
# system's build. `make test-musl`; takes about two minutes, most of it once (what is fetched and built stays in $BUILD-musl). The libraries are built from Debian's own
# sources, in folders of their own; nothing is installed but the compiler's part (musl-tools, where that may be). Without `listen`'s library of sound.
. tests/support/cli.sh
build=${BUILD:-build}
mkdir -p "$build-musl"
there=$(cd "$build-musl" && pwd) || exit 1
unset PKG_CONFIG_PATH
if ! command -v musl-gcc > /dev/null 2>&1 && [ "$(id -u)" = 0 ] && command -v apt-get > /dev/null 2>&1; then
    echo "Installing musl-tools"
    { apt-get update -qq && env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends musl-tools; } > "$there/said" 2>&1
fi
at_hand musl-gcc apt-get dpkg-source make tclsh pkg-config || { finish; exit; }

# Sources of this system's release, as its own lists name it; of a package that has left it, of the present stable one.
lists_of() {
    apt-get indextargets --format '$(REPO_URI) $(RELEASE) $(COMPONENT) $(CREATED_BY)' 2> /dev/null | grep ' main Packages$' | grep -v -e -updates -e security | head -n 1 |
        while read -r place release rest; do echo "deb-src $place $release main"; echo "deb-src $place stable main"; done
}
own_lists="-o Dir::Etc::sourcelist=$there/sources.list -o Dir::Etc::sourceparts=- -o Dir::State::lists=$there/lists -o Dir::Cache=$there/cache -o APT::Sandbox::User=$(id -un)"
source_of() { # PACKAGE
    [ -d "$there/$1" ] && return
    for release in $(awk '{ print $3 }' "$there/sources.list"); do
        rm -rf "$there/fetched" "$there/$1"
        mkdir "$there/fetched"
        (cd "$there/fetched" && apt-get $own_lists source --download-only "$1/$release" && dpkg-source --no-check --no-copy -x "$1"_*.dsc "$there/$1") > "$there/said" 2>&1 && return
    done
    skip "Debian's sources of $1 can't be had"
    return 1
}
# library NAME: builds lib/libNAME.a where it is not there yet, by the function build_NAME; its words go to NAME.log.
library() {
    [ -e "$there/lib/lib$1.a" ] && return
    "build_$1" > "$there/$1.log" 2>&1 && [ -e "$there/lib/lib$1.a" ] && return
    fault "$1 can't be built for musl: $(tail -n 1 "$there/$1.log")"
    return 1
}
cc="musl-gcc -O2 -w -fPIC"
objects() { rm -f ./*.o; for source in "$@"; do $cc $flags -c "$source" || return 1; done; } # one of each, here
build_z() { cd "$there/zlib" && CC="$cc" ./configure --static --prefix="$there" && make libz.a && make install; }
build_csv() { cd "$there/libcsv" && flags="" objects libcsv.c && cp csv.h "$there/include" && ar rcs "$there/lib/libcsv.a" ./*.o; }
build_inih() { cd "$there/libinih" && flags="" objects ini.c && cp ini.h "$there/include" && ar rcs "$there/lib/libinih.a" ./*.o; }
build_sqlite3() {
    cd "$there/sqlite3" && CC="$cc" ./configure --disable-shared --disable-tcl --disable-readline && make sqlite3.c && flags="-DSQLITE_THREADSAFE=1" objects sqlite3.c &&
        cp sqlite3.h "$there/include" && ar rcs "$there/lib/libsqlite3.a" sqlite3.o
}
build_cunit() {
    cd "$there/cunit/CUnit" && flags='-IHeaders -DVERSION="2.1-3"' objects Sources/Framework/*.c Sources/Basic/Basic.c Sources/Automated/Automated.c && mkdir -p "$there/include/CUnit" &&
        cp Headers/*.h "$there/include/CUnit" && ar rcs "$there/lib/libcunit.a" ./*.o
}
build_xml2() { # what is generated is taken as it comes, however the times of the files stand to each other
    settled="AUTOMAKE=: ACLOCAL=: AUTOCONF=: AUTOHEADER=:"
    cd "$there/libxml2" && find . -name Makefile.in -exec touch {} + && touch aclocal.m4 && touch configure config.h.in &&
        CC="$cc" ./configure --prefix="$there" --disable-shared --without-python --without-lzma --without-zlib --without-http --without-ftp --without-debug --without-modules \
            --without-docbook --without-legacy && make $settled libxml2.la && make $settled install-libLTLIBRARIES install-pkgconfigDATA && make $settled -C include install
}

if [ ! -e "$there/lib/libxml2.a" ]; then
    mkdir -p "$there/lists/partial" "$there/cache/archives/partial" "$there/lib" "$there/include"
    lists_of > "$there/sources.list"
    [ -s "$there/sources.list" ] && apt-get $own_lists update -qq > "$there/said" 2>&1 || { skip "Debian's lists of sources can't be had"; finish; exit; }
    echo "Building the libraries for musl"
    for package in zlib libcsv libinih sqlite3 cunit libxml2; do source_of $package || { finish; exit; }; done
    for name in z csv inih sqlite3 cunit xml2; do (library $name; [ "$faults" = 0 ]) || { faults=1; finish; exit; }; done
fi

# Its own libraries and no others are found there; so it is built without the library of sound.
PKG_CONFIG_LIBDIR=$there/lib/pkgconfig
export PKG_CONFIG_LIBDIR
echo "Building the program and its tests for musl"
make -s --no-print-directory BUILD="$there/own" CC=musl-gcc CPPFLAGS="-isystem $there/include" LDFLAGS="-L$there/lib" "$there/own/spezzato" "$there/own/unit-tests" > "$folder/said" 2>&1 ||
    { fault "not built: $(tail -n 1 "$folder/said")"; finish; exit; }
[ ! -s "$folder/said" ] || fault "the compiler has something to say: $(head -n 1 "$folder/said")"
grep -q ld-musl "$there/own/spezzato" || fault "the program does not run on musl"
"$there/own/unit-tests" > "$folder/units" 2>&1 || fault "unit tests: $(grep -m 1 -A 1 FAILED "$folder/units")"
grep '^tests: ' "$folder/units" || fault "the unit tests broke off"

pages() { mkdir "$folder/$2" && SPEZZATO=$1 REPORTS=$folder/$2 sh tests/support/demo.sh > "$folder/$2.said" 2>&1 || fault "the demo with $2: $(tail -n 1 "$folder/$2.said")"; }
pages "$there/own/spezzato" musl
pages "$SPEZZATO" here
diff -r "$folder/musl" "$folder/here" > "$folder/apart" 2>&1 || fault "pages differ: $(head -n 1 "$folder/apart" | cut -c 1-160)"
forms=0
for score in corpus/*.musicxml corpus/*.mxl; do
    for form in json csv; do
        for command in "" notes check parts; do
            "$there/own/spezzato" $command --format $form "$score" > "$folder/a" 2>&1; a=$?
            "$SPEZZATO" $command --format $form "$score" > "$folder/b" 2>&1; b=$?
            [ $a = $b ] || fault "$command $form $score: exit status $a on musl, $b here"
            same "$folder/a" "$folder/b" "$command $form $score"
            forms=$((forms + 1))
        done
    done
done
files=$(find "$folder/musl" -type f | wc -l)
[ "$files" -gt 30 ] && [ "$forms" -gt 80 ] || fault "only $files pages and $forms tables were compared"
echo "on musl and here the same: $files pages of the demo, $forms tables"
finish
