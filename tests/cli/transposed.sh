#!/bin/sh
# Hearing doesn't hang on the key: scores in six other keys have the same passages, one by one, in every field (tests/tools/transposed.py). Some of the shared ones go through
# keys in which notes need triple sharps.
. tests/support/cli.sh
if at_hand python3; then
    compare() {
        python3 tests/tools/transposed.py "$SPEZZATO" "$@" > "$folder/compared" 2>&1 || fault "$(head -n 3 "$folder/compared" | cut -c 1-200)"
        grep -q "passages compared, 0 differences" "$folder/compared" || fault "nothing was compared"
    }
    compare corpus/*.musicxml corpus/*.mxl
    if shared_has scores; then compare "$shared"/scores/Beach_Op.32_1.mxl "$shared"/scores/Brahms_Op.73_4.mxl; fi
    if shared_has quartets; then compare "$shared"/quartets/Krzyzanowska_quartet_2.mxl "$shared"/quartets/unread_Beach_StringQuartetOp8_1.mxl; fi

    # The notes are moved as a musician moves them.
    python3 - <<'EOT' || fault "moving notes by an interval leaves the names where they were"
import sys
sys.path.insert(0, "tests/tools")
from transposed import note_moved
assert [note_moved("B4", 1, 1), note_moved("F##5", 2, 1), note_moved("Cb4", -3, -2), note_moved("D##5", -1, -1)] == ["C5", "G##5", "Ab3", "D#5"], note_moved("D##5", -1, -1)
EOT
fi
finish
