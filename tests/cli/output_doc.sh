#!/bin/sh
# docs/output.md tells of every field of JSON and every column of CSV that the reports have, and of no other.
. tests/support/cli.sh
at_hand python3 || exit 0
python3 tests/support/output_doc.py "$SPEZZATO" corpus/*.musicxml > "$folder/out" || fault "$(sort -u "$folder/out" | head -n 8)"
grep -Eq '^[1-9][0-9]{2,} fields compared, 0 faults$' "$folder/out" || fault "$(tail -n 1 "$folder/out")"
finish
