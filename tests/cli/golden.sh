#!/bin/sh
# Every report is what it was when somebody last looked at it and accepted it (`make accept`).
. tests/support/cli.sh
mkdir "$folder/now"
SPEZZATO="$SPEZZATO" sh tests/support/golden.sh "$folder/now" || fault "a case could not be run"
grep -v '^#' tests/data/golden/cases | cut -d '|' -f 1 > "$folder/names"
[ "$(wc -l < "$folder/names")" -ge 15 ] || fault "cases are missing"
while read -r name; do
    same "tests/data/golden/$name" "$folder/now/$name" "$name has changed"
done < "$folder/names"
for file in tests/data/golden/*; do
    name=$(basename "$file")
    [ "$name" = cases ] || grep -qxF "$name" "$folder/names" || fault "$name belongs to no case"
done
finish
