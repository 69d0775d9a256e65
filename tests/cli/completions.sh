#!/bin/sh
# What a shell completes is what there is: every command, and each command's own options; the shells themselves take the scripts.
. tests/support/cli.sh
run 1 completions
says "bash, zsh or fish"
run 1 completions tcsh
for shell in bash zsh fish; do
    run 0 completions $shell
    cp "$folder/out" "$folder/script.$shell"
    if at_hand $shell; then $shell -n "$folder/script.$shell" || fault "$shell can't read what is meant for it"; fi
done
"$SPEZZATO" --help | sed -n '/^Commands:/,/^$/s/^  \([a-z]*\) .*/\1/p' > "$folder/commands"
asked=0
# ask WORDS...: what bash offers for the last word, sorted.
cat > "$folder/ask" <<'EOT'
source "$1"; shift
COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _spezzato
printf '%s\n' "${COMPREPLY[@]}" | sort
EOT
if at_hand bash; then
    (cd "$folder" && bash ask script.bash spezzato "") > "$folder/offered"
    while read -r command; do
        grep -qx "$command" "$folder/offered" || fault "no $command among the commands offered"
        "$SPEZZATO" "$command" --help | sed -n 's/^  .\{4\}\(--[a-z-]*\).*/\1/p' | sort > "$folder/expected"
        bash "$folder/ask" "$folder/script.bash" spezzato "$command" -- > "$folder/options"
        same "$folder/expected" "$folder/options" "options of $command"
        asked=$((asked + 1))
    done < "$folder/commands"
    [ "$asked" -gt 10 ] || fault "only $asked commands were asked for"
    [ "$(bash "$folder/ask" "$folder/script.bash" spezzato notes --format m)" = markdown ] || fault "--format m is not markdown"
    [ "$(bash "$folder/ask" "$folder/script.bash" spezzato passages --strength st)" = striking ] || fault "--strength st is not striking"
    [ "$(bash "$folder/ask" "$folder/script.bash" spezzato REA)" = README.md ] || fault "files are not offered"
fi
finish
