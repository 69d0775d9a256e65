#!/bin/sh
# Makes the scores of corpus/ from their sketches: plain, or compressed where the score there is a compressed one.
set -eu
sketch=${BUILD:-build}/sketch
for text in corpus/sketches/*.txt; do
    name=$(basename "$text" .txt)
    score=corpus/$name.musicxml
    [ -e "corpus/$name.mxl" ] && score=corpus/$name.mxl
    "$sketch" "$text" "$score"
done
