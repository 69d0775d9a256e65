# Finds what is written past the doors of src/writing: markup, JSON and CSV put together by hand in string literals. Prints FILE:LINE: what.
# `reads` names files that read markup, or speak of it to the user, and may have tags in their literals.
BEGIN { count = split(reads, names, " "); for (i = 1; i <= count; i++) reader[names[i]] = 1 }
FNR == 1 { comment = heads = 0 }
{
    line = $0
    gsub(/'\\?"'/, "", line)
    if (comment && !sub(/^.*\*\//, "", line)) next
    comment = 0
    gsub(/\/\*([^*]|\*+[^*\/])*\*+\//, "", line)
    if (sub(/\/\*.*$/, "", line)) comment = 1
    if (line ~ /^#include/) next
    if (line ~ /csv_header\(/) heads = 1 # the names of columns, to the end of the statement
    rest = line
    while (match(rest, /"([^"\\]|\\.)*"/)) {
        text = substr(rest, RSTART + 1, RLENGTH - 2)
        rest = substr(rest, RSTART + RLENGTH)
        if (text ~ /<[A-Za-z\/!?]/ && !(FILENAME in reader)) print FILENAME ":" FNR ": markup by hand, not by writing/markup.h: \"" text "\""
        if (text ~ /\{ *\\"/ || text ~ /\\" *:/) print FILENAME ":" FNR ": JSON by hand, not by writing/json.h: \"" text "\""
        if (!heads && (text ~ /%[^ ,%]*,(%|\\"|\\n)/ || text ~ /[a-z_],[a-z_ ]+,[a-z_]/)) print FILENAME ":" FNR ": CSV by hand, not by writing/csv_text.h: \"" text "\""
    }
    if (line ~ /putc\([^;]*'[<,]'/) print FILENAME ":" FNR ": a sign of markup or CSV by hand, not by src/writing"
    if (line ~ /;/) heads = 0
}
