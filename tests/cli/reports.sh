#!/bin/sh
# reports/ holds what the demo writes today, no more and no less.
. tests/support/cli.sh
REPORTS="$folder/reports" SPEZZATO="$SPEZZATO" sh tests/support/demo.sh > "$folder/said" || fault "the demo fails"
diff -rq reports "$folder/reports" > "$folder/difference" || fault "reports/ is not what the demo writes: $(head -n 3 "$folder/difference")"
[ "$(ls "$folder/reports" | wc -l)" -ge 3 ] || fault "the demo wrote almost nothing"
grep -q "Look at" "$folder/said" || fault "the demo does not say what to look at"
finish
