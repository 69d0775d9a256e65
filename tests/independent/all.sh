#!/bin/sh
# Every score of corpus/ and of the shared folder by both readers; writes docs/accuracy-reader.md. Takes some minutes.
set -u
build=${BUILD:-build}
shared=${SPEZZATO_SHARED:-../shared}
command -v node >/dev/null 2>&1 && command -v npm >/dev/null 2>&1 || { echo "node and npm are needed" >&2; exit 1; }
[ -d tests/independent/node_modules/verovio ] || (cd tests/independent && npm ci --no-audit --no-fund --silent) || exit 1
set -- corpus/*.musicxml corpus/*.mxl
[ -d "$shared/scores" ] && set -- "$@" "$shared"/scores/*.mxl
table=$build/accuracy-reader.md
{
    cat <<'T'
# Accuracy of the notes, against a second reader

Made by `make accuracy-reader`; not written by hand. The second reader is the verovio package of npm, which reads MusicXML for engraving and shares no
code with this project. Compared is every note as written (tied notes apart, repeats not unfolded): staff, onset and duration in crotchets (to a
hundred-thousandth: the second reader counts in floating point), sounding pitch. Of grace notes staff, bar and pitch are compared, since their time is a
matter of taste. Where a score has repeats, so is the order of the bars.

T
    node tests/independent/compare.mjs "$build/written" "$@" 2>/dev/null
    cat <<'T'

The second reader takes the time of grace notes from the note before or after them and lets the notes of a broken chord begin one after the other; such notes
are counted apart. Where else the two differ, it takes a note's length from its printed value where that contradicts the duration, or counts a plain note
behind a triplet under the same beam into the triplet (looked up in the files: they give such notes their full duration and no time modification); it does
not follow a da capo or dal segno. What MusicXML defines as sounding, the duration, is what this library reads.
T
} > "$table"
cp "$table" docs/accuracy-reader.md
