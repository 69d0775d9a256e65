#!/bin/sh
# golden.sh FOLDER: writes what the program prints today for each case of tests/data/golden/cases into FOLDER.
set -eu
XDG_CONFIG_HOME=/nonexistent # no house of the one who builds this
export XDG_CONFIG_HOME
build=${BUILD:-build}
program=${SPEZZATO:-$build/spezzato}
scores=$(mktemp -d "${TMPDIR:-/tmp}/spezzato-golden-XXXXXX")
trap 'rm -rf "$scores"' EXIT
grep -v '^#' tests/data/golden/cases | while IFS='|' read -r name score command; do
    case $score in
    *.txt)
        made=$scores/$(basename "$score" .txt).musicxml
        [ -e "$made" ] || "$build/sketch" "$score" "$made" < /dev/null
        score=$made ;;
    esac
    case $command in
    settings*) "$program" $command < /dev/null > "$1/$name" ;;
    *) "$program" $command "$score" < /dev/null > "$1/$name" ;;
    esac
done
