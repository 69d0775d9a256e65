#!/bin/sh
# Holds the table of modules: who may include whom, where foreign libraries may appear, that nobody writes past the doors of src/writing, that a
# file's name stands once and on top of it the right one, that what the library hands out can be freed, and that each public header stands alone,
# in C++ too where there is a compiler for it. Of this tree, or of the one whose top is given.
set -u
here=$(cd "$(dirname "$0")" && pwd)
cd "${1:-.}" || exit 1
bad=0
say() { printf '%s\n' "$1"; bad=1; }
model="model support"
sections="sections sections/names settings $model"
melody="analysis/melody $sections"
passages="analysis/passages $melody"
analysis="analysis analysis/antiphony analysis/division $passages"
allowed() {
    case "$1" in
    about) echo "about" ;;
    support) echo "support" ;;
    model) echo "$model" ;;
    reader) echo "reader $model" ;;
    settings) echo "settings support" ;;
    sections/names) echo "sections/names support" ;;
    sections) echo "$sections" ;;
    analysis/melody) echo "$melody" ;;
    analysis/passages) echo "$passages" ;;
    analysis/antiphony) echo "analysis/antiphony $passages" ;;
    analysis/division) echo "analysis/division $passages" ;;
    analysis) echo "$analysis" ;;
    checking) echo "checking $analysis" ;;
    seating) echo "seating $analysis" ;;
    season/table) echo "season/table reader support" ;;
    season/results) echo "season/results store writing season/table engine seating $analysis" ;;
    season/planning) echo "season/planning library store season/results season/table engine seating $analysis" ;;
    store) echo "store support" ;;
    library) echo "library store season/results season/table citations engine reader seating $analysis" ;;
    sound) echo "sound writing seating $analysis" ;;
    sound/rendering) echo "sound/rendering sound support" ;;
    engine) echo "engine reader seating $analysis" ;;
    writing) echo "writing support" ;;
    citations) echo "citations engine seating $analysis" ;;
    advice) echo "advice engine seating $analysis" ;;
    editing) echo "editing wording advice citations writing engine reader seating $analysis" ;;
    wording) echo "wording writing advice citations engine season/planning library store season/results season/table seating $analysis" ;;
    pages) echo "pages wording writing advice citations editing engine seating $analysis" ;;
    pages/*) echo "$1 store library pages/drawings pages wording writing advice citations editing engine season/planning season/results season/table seating $analysis" ;;
    cli) echo "cli" ;;
    esac
}
belongs() { # a header, the modules that may see it
    header=$1; shift
    for seen in $(grep -rlE "#include <$header" src); do
        folder=$(dirname "${seen#src/}")
        case " $* " in *" $folder "*) ;; *) say "$seen: <$header...> belongs to $*" ;; esac
    done
}
for file in $(find src -name '*.[ch]'); do
    folder=$(dirname "${file#src/}")
    may=" $(allowed "$folder") spezzato "
    for used in $(sed -n 's/^#include "\(.*\)\/[^/]*"/\1/p' "$file" | sort -u); do
        case "$may" in *" $used "*) ;; *) say "$file: $folder may not include $used/" ;; esac
    done
done
belongs 'libxml/' reader season/table about
belongs zlib reader editing about
belongs ini.h settings
belongs '(fluidsynth|mysofa|sndfile|fftw3|ebur128)\.h' sound/rendering
belongs dlfcn sound
belongs csv.h season/table about
belongs sqlite3.h store about
for file in $(find src include tests -name node_modules -prune -o -name '*.[ch]' -print); do
    named=$(sed -n '1s/^\/\* \([a-z_]*\.[ch]\) - .*/\1/p' "$file")
    [ -z "$named" ] || [ "$named" = "$(basename "$file")" ] || say "$file calls itself $named"
done
# Read, not written: the scanner of scores to be marked, the head that names an encoding, the test whether an engraving is whole; messages of the reader
# name elements.
reads="src/editing/mark_xml.c src/editing/mark_encoding.c src/pages/drawings/engrave.c $(echo src/reader/*.c)"
past=$(find src -name '*.[ch]' ! -path 'src/writing/*' ! -path src/support/numbers.c ! -path src/cli/messages.c | sort | xargs awk -v reads="$reads" -f "$here/doors.awk")
[ -z "$past" ] || say "$past"
# Letters, digits and causes of errors do not hang on the host's language either; the command line, which chooses none, may ask the standard library.
belongs 'locale\.h' support
belongs 'w?ctype\.h' nowhere
belongs 'strings\.h' cli
for file in $(grep -lrE '(^|[^_a-z])strerror\(' src); do
    case "$file" in src/support/message.c | src/cli/*) ;; *) say "$file: a cause by strerror, not by message_cause" ;; esac
done
twice=$(find src -name '*.[ch]' -exec basename {} \; | sort | uniq -d)
[ -z "$twice" ] || say "these names stand more than once: $twice"
for header in include/spezzato/*.h; do
    ${CC:-cc} -std=c11 -Wall -Wextra -Wpedantic -Iinclude -x c -fsyntax-only "$header" || say "$header does not compile alone"
    if command -v "${CXX:-c++}" >/dev/null 2>&1; then
        ${CXX:-c++} -std=c++11 -Wall -Wextra -Wpedantic -Iinclude -x c++ -fsyntax-only "$header" || say "$header is no C++"
    fi
    for type in $(sed -n 's/.*[( ]spz_\([a-z_]*\) \*\*out.*/\1/p' "$header"); do
        grep -rqE "spz_${type}_free\(spz_${type} \*" include || say "$header hands out a spz_$type, and nothing frees it"
    done
done
[ "$bad" = 0 ]
