#!/bin/sh
# docs/output.md and docs/season.md have the lists of the program's own tables; docs/output.md tells of every field of JSON and every column of CSV that the reports have, and of no other.
. tests/support/cli.sh
for page in docs/output.md docs/season.md; do
    "$BUILD/fields" < $page > "$folder/page" || fault "$page asks for a list that there is none of"
    cmp -s $page "$folder/page" || fault "$page is not what the tables say: make accept"
done
at_hand python3 || exit 0
python3 tests/support/output_doc.py "$SPEZZATO" corpus/*.musicxml > "$folder/out" || fault "$(sort -u "$folder/out" | head -n 8)"
grep -Eq '^[1-9][0-9]{2,} fields compared, 0 faults$' "$folder/out" || fault "$(tail -n 1 "$folder/out")"
finish
