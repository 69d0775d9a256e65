#!/bin/sh
# The manual page speaks of every command and every option there is, and of no other option.
. tests/support/cli.sh
"$SPEZZATO" --help | sed -n '/^Commands:/,/^$/s/^  \([a-z]*\) .*/\1/p' > "$folder/commands"
[ -s "$folder/commands" ] || fault "no commands in the help"
sed 's/\\-/-/g' docs/spezzato.1 > "$folder/page"
: > "$folder/options"
while read -r command; do
    grep -Eq "^\.BR? (\"?)$command\b" "$folder/page" || fault "the manual page has no command $command"
    "$SPEZZATO" "$command" --help | grep -o -- '--[a-z][a-z-]*' >> "$folder/options"
done < "$folder/commands"
for option in $(sort -u "$folder/options"); do
    grep -q -- "$option" "$folder/page" || fault "the manual page has no option $option"
done
for option in $(grep -o -- '--[a-z][a-z-]*' "$folder/page" | sort -u); do
    [ "$option" = --version ] || grep -qx -- "$option" "$folder/options" || fault "the manual page has an option $option that no command takes"
done
finish
