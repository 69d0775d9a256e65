#!/bin/sh
# Holds the table of modules: who may include whom, where foreign libraries may appear, that nobody writes past the doors of src/writing, that a
# file's name stands once and on top of it the right one, that what the library hands out can be freed, and that each public header stands alone,
# in C++ too where there is a compiler for it. Of this tree, or of the one whose top is given.
set -u
here=$(cd "$(dirname "$0")" && pwd)
cd "${1:-.}" || exit 1
bad=0
say() { printf '%s\n' "$1"; bad=1; }
texts="support/text support"
model="model $texts"
sections="sections sections/names settings $model"
melody="analysis/melody $sections"
passages="analysis/passages $melody"
chained="analysis/antiphony/chaining analysis/antiphony/matching $passages"
antiphony="analysis/antiphony analysis/antiphony/telling $chained"
analysis="analysis analysis/antiphony analysis/division $passages"
evidence="seating/evidence seating/stage $analysis"
seating="seating/verdict $evidence"
reading="engine reader $seating"
results="season/results store writing season/table season/dates engine $seating"
words="wording wording/papers"
told="writing advice citations engine $seating"
planned="season/planning library store season/results season/table season/dates"
spoken="wording/seasons wording/seatings $words"
drawn="pages/drawings pages/drawings/staves pages/drawings/stage"
allowed() {
    case "$1" in
    about) echo "about" ;;
    support) echo "support support/text" ;;
    support/text) echo "$texts" ;;
    model) echo "$model" ;;
    reader/files) echo "reader/files $model" ;;
    reader) echo "reader reader/files $model" ;;
    settings) echo "settings $texts" ;;
    sections/names) echo "sections/names $texts" ;;
    sections) echo "$sections" ;;
    analysis/melody) echo "$melody" ;;
    analysis/passages) echo "$passages" ;;
    analysis/antiphony/matching) echo "analysis/antiphony/matching $passages" ;;
    analysis/antiphony/chaining) echo "$chained" ;;
    analysis/antiphony/telling) echo "analysis/antiphony/telling $chained" ;;
    analysis/antiphony) echo "$antiphony" ;;
    analysis/division) echo "analysis/division $passages" ;;
    analysis) echo "$analysis" ;;
    checking) echo "checking $analysis" ;;
    seating/stage) echo "seating/stage $analysis" ;;
    seating/evidence) echo "$evidence" ;;
    seating/verdict) echo "$seating" ;;
    season/dates) echo "season/dates $texts" ;;
    season/table/spreadsheets) echo "season/table/spreadsheets season/dates reader/files $texts" ;;
    season/table) echo "season/table season/table/spreadsheets season/dates reader reader/files $texts" ;;
    season/results) echo "$results" ;;
    season/planning) echo "season/planning library store season/results season/table season/dates engine $seating" ;;
    store) echo "store $texts" ;;
    library) echo "library store season/results season/table season/dates citations $reading" ;;
    sound) echo "sound writing $seating" ;;
    sound/rendering) echo "sound/rendering sound $texts" ;;
    engine) echo "$reading" ;;
    writing) echo "writing $texts" ;;
    citations) echo "citations engine $seating" ;;
    advice) echo "advice engine $seating" ;;
    editing/bytes) echo "editing/bytes writing reader/files $model" ;;
    editing) echo "editing editing/bytes $words reader/files reader $told" ;;
    wording) echo "wording $told" ;;
    wording/papers) echo "$words $planned $told" ;;
    wording/seatings) echo "wording/seatings $words $planned $told" ;;
    wording/seasons) echo "$spoken $planned $told" ;;
    pages) echo "pages $spoken editing editing/bytes $told" ;;
    pages/drawings | pages/drawings/*) echo "$drawn pages $spoken editing editing/bytes $planned $told" ;;
    pages/*/*) echo "$1 ${1%/*} $drawn pages $spoken editing editing/bytes $planned $told" ;;
    pages/*) echo "$1 $1/notes $drawn pages $spoken editing editing/bytes $planned $told" ;;
    cli | cli/*) echo "cli cli/commands cli/options cli/places" ;;
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
belongs 'libxml/' reader reader/files season/table/spreadsheets about
belongs zlib reader/files editing/bytes about
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
reads="src/editing/bytes/mark_xml.c src/editing/bytes/mark_encoding.c src/pages/drawings/staves/engrave.c $(echo src/reader/*.c src/reader/files/*.c)"
past=$(find src -name '*.[ch]' ! -path 'src/writing/*' ! -path src/support/numbers.c ! -path src/cli/messages.c | sort | xargs awk -v reads="$reads" -f "$here/doors.awk")
[ -z "$past" ] || say "$past"
# Letters, digits and causes of errors do not hang on the host's language either; the command line, which chooses none, may ask the standard library.
belongs 'locale\.h' support
belongs 'w?ctype\.h' nowhere
belongs 'strings\.h' cli cli/options cli/commands cli/places
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
