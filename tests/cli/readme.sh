#!/bin/sh
# The README shows what the program prints, and its opening paragraph states the job before any command.
. tests/support/cli.sh
SPEZZATO="$SPEZZATO" sh tests/support/readme.sh README.md > "$folder/README.md" || fault "an example of the README fails"
same README.md "$folder/README.md" "the README shows something else than the program prints"
grep -q '^\$ build/spezzato ' README.md || fault "the README has no example"
for words in "make demo" "make test" "apt-get update && apt-get install -y make && make demo"; do
    grep -qF "$words" README.md || fault "the README has no '$words'"
done
finish
