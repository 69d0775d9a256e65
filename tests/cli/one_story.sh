#!/bin/sh
# One passage is one story: names, bars and order of entry said by the text page, the page for a browser, the programme notes (in every language), the
# librarian's sheet and the marked score are those of the JSON. `make test` compares all scores of the shared folder too.
. tests/support/cli.sh
at_hand python3 || exit 0
set -- corpus/*.musicxml corpus/*.mxl
if [ "${SPEZZATO_WHOLE:-no}" = yes ] && shared_has scores; then set -- "$@" "$shared"/scores/*.mxl; fi
python3 tests/support/one_story.py "$SPEZZATO" "$@" > "$folder/out" 2>&1 || fault "$(head -n 5 "$folder/out" | cut -c 1-200)"
grep -Eq '^[1-9][0-9]{3,} tellings compared, 0 contradict the JSON$' "$folder/out" || fault "$(tail -n 1 "$folder/out")"
finish
