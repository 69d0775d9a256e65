#!/bin/sh
# Takes what the program prints today for right: the golden files, the page in the README, the pages in reports/, the lists of
# fields in docs/. Look at the
# differences (`git diff`) before they are committed.
set -eu
build=${BUILD:-build}
SPEZZATO=${SPEZZATO:-$build/spezzato}
export SPEZZATO
sh tests/support/golden.sh tests/data/golden
BUILD=$build sh tests/support/demo.sh > /dev/null
sh tests/support/readme.sh README.md > README.new
mv README.new README.md
for page in docs/output.md docs/season.md; do
    "$build/fields" < $page > $page.new && mv $page.new $page
done
git --no-pager diff --stat -- tests/data/golden reports README.md docs 2> /dev/null || true
echo "Accepted. Read the differences before you commit them."
