# The language of the host program changes no byte: not where it writes decimals with a comma, not where its letters are single bytes.
. tests/support/cli.sh
host=${BUILD:-build}/host-spezzato
[ -x "$host" ] || { echo "  locale.sh: $host is not built"; exit 1; }

# localedef makes the languages out of the system's sources (Debian: locales), or, without them, one that differs in its decimals alone.
mkdir "$folder/locales"
LOCPATH=$folder/locales
export LOCPATH
own_language() {
    printf 'comment_char %%\nescape_char /\nLC_NUMERIC\ndecimal_point ","\nthousands_sep "."\ngrouping 3;3\nEND LC_NUMERIC\n' > "$folder/comma"
    { printf '<code_set_name> ASCII\n<comment_char> %%\n<escape_char> /\nCHARMAP\n'
      awk 'BEGIN { for (i = 0; i < 128; i++) printf "<U%04X> /x%02x c\n", i, i }'
      echo 'END CHARMAP'; } > "$folder/letters"
    localedef -c -f "$folder/letters" -i "$folder/comma" "$LOCPATH/$1" > /dev/null 2>&1 # it warns of what is left out
    [ -e "$LOCPATH/$1/LC_NUMERIC" ]
}
have() { SPEZZATO_HOST_LOCALE=$1 "$host" --version > /dev/null 2> "$folder/err"; }
language=""
if command -v localedef > /dev/null 2>&1; then
    localedef -f UTF-8 -i de_DE "$LOCPATH/de_DE.UTF-8" > /dev/null 2>&1
    localedef -f ISO-8859-9 -i tr_TR "$LOCPATH/tr_TR.ISO-8859-9" > /dev/null 2>&1
    if have de_DE.UTF-8; then language=de_DE.UTF-8; elif own_language xx_XX && have xx_XX; then language=xx_XX; fi
fi
if [ -z "$language" ]; then
    skip "no language with decimal commas can be had here (glibc's localedef makes one)"
    exit 0
fi

# in_language LANGUAGE ARGUMENTS...: the program under that language.
in_language() { spoken=$1; shift; SPEZZATO_HOST_LOCALE=$spoken "$host" "$@"; }
SPEZZATO_HOST_LOCALE=$language
export SPEZZATO_HOST_LOCALE

# The whole demo.
REPORTS=$folder/plain sh tests/support/demo.sh > "$folder/plain.out" 2> "$folder/plain.err" || fault "the demo fails"
REPORTS=$folder/spoken SPEZZATO=$host sh tests/support/demo.sh > "$folder/spoken.out" 2> "$folder/spoken.err" || fault "the demo fails under $language: $(head -n 1 "$folder/spoken.err")"
[ "$(ls "$folder/plain" | wc -l)" -gt 20 ] || fault "the demo wrote little"
diff -r "$folder/plain" "$folder/spoken" > "$folder/said" 2>&1 || fault "the demo differs under $language: $(head -n 3 "$folder/said" | cut -c 1-300)"
sed "s|$folder/plain|X|g" "$folder/plain.out" > "$folder/a"
sed "s|$folder/spoken|X|g" "$folder/spoken.out" > "$folder/b"
same "$folder/a" "$folder/b" "what the demo says under $language"

# Durations in decimals, as MusicXML allows them (4.0, type divisions): a quarter of those of the corpus.
awk '{ while (match($0, /<(divisions|duration)>[0-9]+</)) {
           tag = substr($0, RSTART, RLENGTH); number = tag; gsub(/[^0-9]/, "", number); sub(/[0-9]+</, "", tag)
           printf "%s%s%.2f", substr($0, 1, RSTART - 1), tag, number / 4; $0 = substr($0, RSTART + RLENGTH - 1) }
       print }' corpus/brelisk-balconies-1.musicxml > "$folder/decimal.musicxml"
grep -q '<duration>[0-9]*\.[1-9]' "$folder/decimal.musicxml" || fault "no duration has decimals"
mkdir "$folder/season"
cp "$folder/decimal.musicxml" "$folder/season/decimal.musicxml"
cp corpus/vercassine-barcarolle.musicxml "$folder/season/"
printf 'concert,date,order,work,score\nOne,2027-03-04,1.5,Zwei,decimal.musicxml\nOne,2027-03-04,1.25,\303\211ine,vercassine-barcarolle.musicxml\n' > "$folder/season/plan.csv"
printf '[stage]\nwidth = 17.5\ndepth = 11,25\n' > "$folder/house.ini"
score=$folder/decimal.musicxml

# both LANGUAGE STATUS ARGUMENTS...: the same on standard output and standard error in both.
both() {
    spoken=$1 expected=$2
    shift 2
    "$SPEZZATO" "$@" > "$folder/a.out" 2> "$folder/a.err"
    status=$?
    [ "$status" = "$expected" ] || fault "spezzato $*: exit status $status, not $expected: $(head -n 1 "$folder/a.err")"
    in_language "$spoken" "$@" > "$folder/b.out" 2> "$folder/b.err"
    [ $? = "$status" ] || fault "$spoken: spezzato $*: another exit status"
    same "$folder/a.out" "$folder/b.out" "$spoken: spezzato $*"
    same "$folder/a.err" "$folder/b.err" "$spoken: the messages of spezzato $*"
}
all_commands() {
    for form in text json csv; do
        for command in "" seating passages sections streams; do both "$1" 0 $command --verbose --format $form "$score"; done
        both "$1" 0 check --format $form "$score"
        both "$1" 0 settings --settings "$folder/house.ini" --format $form
        both "$1" 0 season --no-cache --format $form "$folder/season/plan.csv"
    done
    both "$1" 0 passages --explain 12 "$score"
    both "$1" 0 stage --settings "$folder/house.ini" --format svg "$score"
    both "$1" 0 parts --format html "$score"
    for language_of in en de fr; do both "$1" 0 notes --language $language_of --lasts 7:10.5 "$score"; done
    both "$1" 0 mark -o "$folder/marked.musicxml" "$score"
    cp "$folder/marked.musicxml" "$folder/b.marked"
    "$SPEZZATO" mark -o "$folder/marked.musicxml" "$score" > "$folder/out" 2> "$folder/err"
    same "$folder/marked.musicxml" "$folder/b.marked" "$1: the marked score"
    both "$1" 2 passages "$folder/nowhere.musicxml"
    both "$1" 1 passages --set stage.width=2.5 "$score"
    # Lines written in one language are read in the other.
    "$SPEZZATO" season --no-cache --format ndjson "$folder/season/plan.csv" > "$folder/lines"
    both "$1" 0 season --no-cache --lines "$folder/lines" "$folder/season/plan.csv"
}
all_commands "$language"
if [ -d "$LOCPATH/tr_TR.ISO-8859-9" ] && have tr_TR.ISO-8859-9; then all_commands tr_TR.ISO-8859-9; else skip "Turkish in single bytes can't be had here (Debian: locales)"; fi
finish
