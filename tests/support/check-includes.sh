#!/bin/sh
# Holds the table of modules: who may include whom, where foreign libraries may appear, and that each public header stands alone.
set -u
bad=0
say() { echo "$1"; bad=1; }
allowed() {
    case "$1" in
    support) echo "support" ;;
    model) echo "model support" ;;
    reader) echo "reader model support" ;;
    settings) echo "settings support" ;;
    sections) echo "sections settings model support" ;;
    analysis) echo "analysis sections settings model support" ;;
    checking) echo "checking analysis sections settings model support" ;;
    seating) echo "seating analysis sections settings model support" ;;
    season) echo "season seating analysis sections settings model support" ;;
    report) echo "report reader season seating analysis sections settings model support" ;;
    cli) echo "cli" ;;
    esac
}
for file in src/*/*.[ch]; do
    module=$(echo "$file" | cut -d/ -f2)
    may=" $(allowed "$module") spezzato "
    for used in $(sed -n 's/^#include "\([a-z]*\)\/.*/\1/p' "$file" | sort -u); do
        # spezzato.h of the library's top joins reader and seating: it lives in report's reach
        case "$may" in *" $used "*) ;; *) say "$file: $module may not include $used/" ;; esac
    done
    if grep -q '#include <libxml/xmlwriter' "$file" && [ "$module" != report ]; then say "$file: libxml2's writer belongs to report"; fi
    if grep '#include <libxml/' "$file" | grep -vq xmlwriter && [ "$module" != reader ]; then say "$file: libxml2's parser belongs to reader"; fi
    if grep -q '#include <zlib' "$file" && [ "$module" != reader ] && [ "$module" != report ]; then say "$file: zlib belongs to reader and report"; fi
    if grep -q '#include <ini.h' "$file" && [ "$module" != settings ]; then say "$file: libinih belongs to settings"; fi
    if grep -q "#include <csv.h" "$file" && [ "$module" != season ]; then say "$file: libcsv belongs to season"; fi
done
for header in include/spezzato/*.h; do
    ${CC:-cc} -std=c11 -Wall -Wextra -Wpedantic -Iinclude -x c -fsyntax-only "$header" || say "$header does not compile alone"
done
[ "$bad" = 0 ]
