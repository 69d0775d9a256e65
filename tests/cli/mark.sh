#!/bin/sh
# `spezzato mark`: the marked score is valid MusicXML 4.0 (W3C Community Group; the schema of the shared folder) where the score was,
# its notes are the same, and --unmark gives back the very bytes. The corpus, then the real scores when they are at hand.
. tests/support/cli.sh
schema=$shared/schema
XML_CATALOG_FILES=$schema/catalog.xml
export XML_CATALOG_FILES
valid() { xmllint --nonet --noout --schema "$schema/musicxml.xsd" "$1" > "$folder/verdict" 2>&1; }
validity=no
shared_has schema/musicxml.xsd && at_hand xmllint && validity=yes
apart=""
at_hand python3 && apart=yes
checked=0
total=0

member() { unzip -Z1 "$1" 2>/dev/null | grep -v -e '^META-INF/' -e '^mimetype$' | head -n 1; }

# trip SCORE: marks it, plain and compressed, compares, and takes the marks out again.
trip() {
    score=$1
    case $score in
    *.mxl) unzip -p "$score" "$(member "$score")" > "$folder/before.musicxml" ;;
    *) cp "$score" "$folder/before.musicxml" ;;
    esac
    run 0 mark --all "$score" -o "$folder/after.musicxml"
    marks=$(sed -n 's/^.*: \([0-9]*\) mark.* added$/\1/p' "$folder/out")
    [ "$marks" = "$(grep -o ' id="spezzato-mark-[0-9]*"' "$folder/after.musicxml" | sort -u | wc -l | tr -d ' ')" ] || fault "$score: $marks marks counted, others found"
    total=$((total + ${marks:-0}))
    if [ -n "$apart" ]; then
        python3 tests/support/marks_apart.py "$folder/after.musicxml" > "$folder/apart" || fault "$score: marks meet: $(head -n 3 "$folder/apart")"
    fi
    run 0 mark --all "$score" -o "$folder/after.mxl"
    run 0 mark --unmark "$folder/after.mxl" -o "$folder/back.musicxml"
    same "$folder/before.musicxml" "$folder/back.musicxml" "$score: marked and unmarked"
    # Our own pencil is not the composer's: what is found in the marked score is what was found before.
    run 0 --format json "$folder/before.musicxml" && grep -v '"file"' "$folder/out" > "$folder/found"
    run 0 --format json "$folder/after.musicxml" && grep -v '"file"' "$folder/out" > "$folder/found-again"
    same "$folder/found" "$folder/found-again" "$score: found in the marked score"
    run 0 streams "$folder/before.musicxml" && mv "$folder/out" "$folder/notes"
    run 0 streams "$folder/after.mxl"
    [ -s "$folder/notes" ] && same "$folder/notes" "$folder/out" "$score: notes before and after"
    if [ "$validity" = yes ] && valid "$folder/before.musicxml"; then
        valid "$folder/after.musicxml" || fault "$score: no longer valid: $(head -n 1 "$folder/verdict")"
        checked=$((checked + 1))
    fi
}

at_hand unzip || exit 0
for score in corpus/*.musicxml corpus/*.mxl; do
    [ -e "$score" ] && trip "$score"
done
[ "$total" -gt 20 ] || fault "only $total marks in the whole corpus"
if shared_has scores; then
    for score in Bach_BWV.1048_1 Beach_Op.32_2 Brahms_Op.73_3 Brahms_Op.98_2 Schubert_D.485_1; do
        trip "$shared/scores/$score.mxl"
    done
    [ "$validity" = no ] || [ "$checked" -ge 10 ] || fault "only $checked scores were valid to begin with"
fi

# A score that comes in by a pipe is marked like a file.
run 0 mark corpus/brelisk-balconies-1.musicxml -o "$folder/of-file.musicxml"
"$SPEZZATO" mark - -o "$folder/of-pipe.musicxml" < corpus/brelisk-balconies-1.musicxml > /dev/null 2>&1 || fault "a piped score is not marked"
same "$folder/of-file.musicxml" "$folder/of-pipe.musicxml" "a piped score marked"
"$SPEZZATO" report --engraver none - -o "$folder/piped" < corpus/brelisk-balconies-1.musicxml > /dev/null 2>&1
[ -s "$folder/piped/standard-input.html" ] || fault "the page of a piped score has no name"

# The archive is a compressed score: the media type first and stored (MusicXML 4.0, compressed files).
run 0 mark corpus/brelisk-balconies-1.musicxml -o "$folder/a.mxl"
[ "$(head -c 72 "$folder/a.mxl" | tail -c 42)" = "mimetypeapplication/vnd.recordare.musicxml" ] || fault "the media type does not come first"
unzip -tq "$folder/a.mxl" > /dev/null || fault "the archive is damaged"
run 0 mark corpus/brelisk-balconies-1.musicxml -o "$folder/b.mxl"
cmp -s "$folder/a.mxl" "$folder/b.mxl" || fault "the same score is packed in two ways"

# The score itself is never overwritten, under whatever name.
cp corpus/brelisk-balconies-1.musicxml "$folder/own.musicxml"
ln "$folder/own.musicxml" "$folder/hard.musicxml"
ln -s own.musicxml "$folder/soft.musicxml"
for name in own hard soft; do
    run 1 mark "$folder/own.musicxml" -o "$folder/$name.musicxml"
    says "never overwritten"
done
same corpus/brelisk-balconies-1.musicxml "$folder/own.musicxml" "the score named as output"
run 1 mark "$folder/own.musicxml"
says "where to?"
run 1 mark "$folder/own.musicxml" "$folder/hard.musicxml" -o "$folder/c.mxl"
run 1 mark --arrangement "in a heap" "$folder/own.musicxml" -o "$folder/c.mxl"
says "there is no seating 'in a heap'; there are"
[ -e "$folder/c.mxl" ] && fault "a file in spite of the mistake"
printf '<?xml version="1.0"?>\n<html/>\n' > "$folder/page.xml"
for name in page.xml none.xml; do
    run 2 mark "$folder/$name" -o "$folder/c.mxl"
    [ "$(error_lines)" = 1 ] || fault "$name: $(error_lines) lines on standard error, not one"
    [ -e "$folder/c.mxl" ] && fault "$name: a file all the same"
done
finish
