#!/bin/sh
# Runs every test: the unit suites, then each script of tests/cli. Prints what failed, then how many passed, failed and were skipped, then each
# reason for which something was skipped, once. What says 'skipped: REASON' and does not fail counts as skipped, whether in full or in part.
set -u
build=${BUILD:-build}
export LC_ALL=C
SPEZZATO_SHARED=${SPEZZATO_SHARED:-../shared}
export SPEZZATO_SHARED
work=$(mktemp -d "${TMPDIR:-/tmp}/spezzato-tests-XXXXXX")
trap 'rm -rf "$work"' EXIT
said=$work/said
: > "$work/reasons" # how many, of what, and why

# Statements of the unit suites: the program counts them itself and says why it skipped some.
echo "Unit tests ..."
"$build/unit-tests" > "$said" 2>&1
status=$?
# CUnit's own summary is left out: it takes what was skipped for passed.
grep -vE '^ *$|CUnit|http|^tests: |^  skipped: |^Run Summary:|^ *(suites|tests|asserts) |^Elapsed time' "$said"
counts=$(sed -n 's/^tests: //p' "$said" | tr -dc '0-9 ')
[ -n "$counts" ] || { echo "FAILED: the unit tests broke off (status $status)"; counts="0 1 0"; }
set -- $counts
passed=$1 failed=$2 skipped=$3
if [ "$status" != 0 ] && [ "$failed" = 0 ]; then failed=1; fi
sed -n 's/^  skipped: \(.*\) (\([0-9]*\) tests\{0,1\})$/\2|statements|\1/p' "$said" >> "$work/reasons"
units="statements: $passed passed, $failed failed, $skipped skipped"

printf 'Command-line tests:'
scripts_passed=0 scripts_failed=0 scripts_skipped=0
for script in tests/cli/*.sh; do
    [ -e "$script" ] || continue
    name=$(basename "$script" .sh)
    printf ' %s' "$name"
    SPEZZATO="$build/spezzato" BUILD="$build" sh "$script" > "$said" 2>&1
    if [ $? != 0 ]; then
        scripts_failed=$((scripts_failed + 1))
        echo "FAILED: $script" >> "$said"
    elif grep -q '^ *skipped: ' "$said"; then
        scripts_skipped=$((scripts_skipped + 1))
        sed -n 's/^ *skipped: //p' "$said" | sort -u | sed "s/^/1|$name|/" >> "$work/reasons"
        grep -v '^ *skipped: ' "$said" > "$work/rest"
        mv "$work/rest" "$said"
    else
        scripts_passed=$((scripts_passed + 1))
    fi
    [ ! -s "$said" ] || { echo; cat "$said"; }
done

echo
echo "$units; scripts: $scripts_passed passed, $scripts_failed failed, $scripts_skipped skipped"
failed=$((failed + scripts_failed))
echo "$((passed + scripts_passed)) passed, $failed failed, $((skipped + scripts_skipped)) skipped"
awk -F'|' '
    !($3 in statements) { order[++count] = $3; statements[$3] = 0; scripts[$3] = "" }
    $2 == "statements" { statements[$3] += $1; next }
    { scripts[$3] = scripts[$3] " " $2; number[$3]++ }
    END {
        for (i = 1; i <= count; i++) {
            r = order[i]
            text = statements[r] ? statements[r] (statements[r] == 1 ? " statement" : " statements") : ""
            if (scripts[r]) text = text (text ? " and " : "") number[r] (number[r] == 1 ? " script:" : " scripts:") scripts[r]
            print "skipped: " r " (" text ")"
        }
    }' "$work/reasons"
[ "$failed" = 0 ]
