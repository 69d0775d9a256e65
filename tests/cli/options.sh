#!/bin/sh
# No option is passed over in silence: it changes what comes out, or one line refuses it or says that it does nothing here.
. tests/support/cli.sh
score=corpus/brelisk-balconies-3.musicxml
refused() { run 1 "$@"; [ "$(error_lines)" = 1 ] && grep -q 'does nothing' "$folder/err" || fault "spezzato $*: $(cat "$folder/err")"; }
refused page --all --brief "$score"
says "--all does nothing with --brief; leave one of them out"
refused page --work --format csv "$score"
says "--work does nothing with --format csv; it goes with text or json"
refused notes --picture-format pdf "$score"
says "--picture-format does nothing without --pictures"
refused stage --year 1990
refused library fits --kind exchange
says "--kind does nothing with 'library fits'; it goes with find"
refused library add --first 3 corpus
refused season --share 1/2 corpus/season.csv
run 2 season --sheet Spring corpus/season.csv
says "the file is one table without sheets; there is none called 'Spring'"
run 0 page --language de --format json "$score"
says "--language does nothing with --format json: data stay as they are in every language"
at_hand python3 || { finish; exit; }
python3 tests/support/option_effects.py "$SPEZZATO" > "$folder/tried" || fault "$(head -n 5 "$folder/tried")"
grep -Eq '^[5-9][0-9]{2} options tried, 0 swallowed$' "$folder/tried" || fault "$(tail -n 1 "$folder/tried")"
finish
