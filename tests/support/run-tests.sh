#!/bin/sh
# Runs every test: the unit suites, then each script of tests/cli. Prints what failed, each reason for which something was skipped, once,
# and a closing line. A script that says 'skipped: ...' and does not fail counts as skipped, in full or in part.
set -u
build=${BUILD:-build}
export LC_ALL=C
SPEZZATO_SHARED=${SPEZZATO_SHARED:-../shared}
export SPEZZATO_SHARED
work=$(mktemp -d "${TMPDIR:-/tmp}/spezzato-tests-XXXXXX")
trap 'rm -rf "$work"' EXIT
: > "$work/reasons"
failed=0 passed=0 skipped=0
said=$work/said

# reasons: from what was said to the list of reasons, without what tells how many tests they touch.
reasons() { sed -n 's/^.*skipped\( in part\)\{0,1\}: //p' "$1" | sed 's/ ([0-9]* tests*)$//' >> "$work/reasons"; }

echo "Unit tests ..."
"$build/unit-tests" > "$said" 2>&1
unit=$?
grep -vE '^ *$|CUnit|http|^tests: |^  skipped: ' "$said"
counts=$(sed -n 's/^tests: //p' "$said")
[ "$unit" = 0 ] || failed=1
reasons "$said"

printf 'Command-line tests:'
for script in tests/cli/*.sh; do
    [ -e "$script" ] || continue
    printf ' %s' "$(basename "$script" .sh)"
    SPEZZATO="$build/spezzato" BUILD="$build" sh "$script" > "$said" 2>&1
    status=$?
    reasons "$said"
    if [ "$status" != 0 ]; then
        failed=$((failed + 1))
        echo "FAILED: $script" >> "$said"
        echo
        cat "$said"
    elif grep -q 'skipped' "$said"; then
        skipped=$((skipped + 1))
    else
        passed=$((passed + 1))
        [ ! -s "$said" ] || { echo; cat "$said"; }
    fi
done
echo
sort "$work/reasons" | uniq -c | while read -r times reason; do echo "skipped: $reason$([ "$times" = 1 ] || echo " ($times times)")"; done
echo "unit tests: ${counts:-none was run}; scripts: $passed passed, $((failed - (unit != 0))) failed, $skipped skipped"
[ "$failed" = 0 ]
