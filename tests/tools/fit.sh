#!/bin/sh
# Fits the weights of antiphony anew and writes what they give, on movements left out too, to docs/accuracy-fit.md.
set -eu
build=${BUILD:-build}
shared=${SPEZZATO_SHARED:-../shared}
if [ ! -d "$shared/expert" ]; then echo "skipped: the expert tables are not at hand ($shared)"; exit 0; fi
command -v python3 > /dev/null 2>&1 || { echo "skipped: python3 is missing"; exit 0; }
python=python3
"$python" -c 'import numpy' 2> /dev/null || python=/usr/bin/python3
"$python" -c 'import numpy' 2> /dev/null || { echo "skipped: numpy is missing (Debian package python3-numpy)"; exit 0; }
"$python" tests/tools/fit_weights.py "$build" "$shared" tests/data/readings > "$build/fit.txt"
{
    echo "# Weights of antiphony fitted, and what they give"
    echo
    echo "Made by \`make fit\`; not written by hand. The weights that are in force stand in \`src/analysis/antiphony/chaining/evidence.c\`; docs/method.md (section 5) says what they are,"
    echo "how they are fitted, and why those in force are of an earlier fit. Figures by the shared script score_passages.py (its definitions: recall, precision, F1, bar F1, striking, names)."
    echo
    echo '```'
    cat "$build/fit.txt"
    echo '```'
} > "$build/accuracy-fit.md"
cp "$build/accuracy-fit.md" docs/accuracy-fit.md
cat "$build/fit.txt"
