#!/bin/sh
# readme.sh README: prints it with every example brought up to date. An example is a fenced block whose first line is
# '$ build/spezzato ARGUMENTS'; what follows it is what the program prints.
set -eu
XDG_CONFIG_HOME=/nonexistent # no house of the one who builds this
export XDG_CONFIG_HOME
program=${SPEZZATO:-${BUILD:-build}/spezzato}
example=0
while IFS= read -r line || [ -n "$line" ]; do
    case $line in
    '$ build/spezzato '*)
        printf '%s\n' "$line"
        $program ${line#* build/spezzato } < /dev/null
        example=1 ;;
    '```'*)
        printf '%s\n' "$line"
        example=0 ;;
    *)
        [ "$example" = 1 ] || printf '%s\n' "$line" ;;
    esac
done < "$1"
