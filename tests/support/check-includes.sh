#!/bin/sh
# Holds the table of modules: who may include whom, where foreign libraries may appear, that a file's name stands once, and that each
# public header stands alone.
set -u
bad=0
say() { echo "$1"; bad=1; }
model="model support"
sections="sections settings $model"
melody="analysis/melody $sections"
passages="analysis/passages $melody"
analysis="analysis analysis/antiphony analysis/division $passages"
allowed() {
    case "$1" in
    support) echo "support" ;;
    model) echo "$model" ;;
    reader) echo "reader $model" ;;
    settings) echo "settings support" ;;
    sections) echo "$sections" ;;
    analysis/melody) echo "$melody" ;;
    analysis/passages) echo "$passages" ;;
    analysis/antiphony) echo "analysis/antiphony $passages" ;;
    analysis/division) echo "analysis/division $passages" ;;
    analysis) echo "$analysis" ;;
    checking) echo "checking $analysis" ;;
    seating) echo "seating $analysis" ;;
    season/table) echo "season/table support" ;;
    season/results) echo "season/results season/table seating $analysis" ;;
    season/planning) echo "season/planning season/results season/table seating $analysis" ;;
    engine) echo "engine reader seating $analysis" ;;
    writing) echo "writing support" ;;
    citations) echo "citations engine seating $analysis" ;;
    advice) echo "advice engine seating $analysis" ;;
    editing) echo "editing wording advice citations writing engine reader seating $analysis" ;;
    wording) echo "wording writing advice citations engine season/planning season/results season/table seating $analysis" ;;
    pages) echo "pages wording writing advice citations editing engine seating $analysis" ;;
    pages/*) echo "$1 pages/drawings pages wording writing advice citations editing engine season/planning season/results season/table seating $analysis" ;;
    cli) echo "cli" ;;
    esac
}
belongs() { # a header, the modules that may see it
    header=$1; shift
    for seen in $(grep -rlE "#include <$header" src); do
        folder=$(dirname "${seen#src/}")
        case " $* " in *" $folder "*) ;; *) say "$seen: <$header> belongs to $*" ;; esac
    done
}
for file in $(find src -name '*.[ch]'); do
    folder=$(dirname "${file#src/}")
    may=" $(allowed "$folder") spezzato "
    for used in $(sed -n 's/^#include "\(.*\)\/[^/]*"/\1/p' "$file" | sort -u); do
        case "$may" in *" $used "*) ;; *) say "$file: $folder may not include $used/" ;; esac
    done
done
belongs 'libxml/xmlwriter' writing pages/drawings
belongs 'libxml/[^x]' reader
belongs 'libxml/x[^m]' reader
belongs zlib reader editing
belongs ini.h settings
belongs csv.h season/table
twice=$(find src -name '*.[ch]' -exec basename {} \; | sort | uniq -d)
[ -z "$twice" ] || say "these names stand more than once: $twice"
for header in include/spezzato/*.h; do
    ${CC:-cc} -std=c11 -Wall -Wextra -Wpedantic -Iinclude -x c -fsyntax-only "$header" || say "$header does not compile alone"
done
[ "$bad" = 0 ]
