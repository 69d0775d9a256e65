#!/bin/sh
# Runs every test: the unit suites, then each script of tests/cli. Prints what failed and one closing line.
set -u
build=${BUILD:-build}
failed=0
export LC_ALL=C
SPEZZATO_SHARED=${SPEZZATO_SHARED:-../shared}
export SPEZZATO_SHARED
[ -d "$SPEZZATO_SHARED/scores" ] || echo "skipped: the shared scores are not at hand ($SPEZZATO_SHARED); tests that read them say so"
echo "Unit tests ..."
"$build/unit-tests" || failed=$((failed + 1))
passed=0
said=$(mktemp "${TMPDIR:-/tmp}/spezzato-tests-XXXXXX")
trap 'rm -f "$said"' EXIT
printf 'Command-line tests:'
for script in tests/cli/*.sh; do
    [ -e "$script" ] || continue
    printf ' %s' "$(basename "$script" .sh)"
    if SPEZZATO="$build/spezzato" BUILD="$build" sh "$script" > "$said" 2>&1; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED: $script" >> "$said"; fi
    [ ! -s "$said" ] || { echo; cat "$said"; }
done
echo
echo "command-line scripts and unit run: $passed passed, $failed failed"
[ "$failed" = 0 ]
