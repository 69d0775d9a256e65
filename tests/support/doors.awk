# Finds what is written past the doors of src/writing: markup, JSON and CSV put together by hand in string literals; and numbers with decimals past
# support/numbers.h, which would follow the language of the host program. Prints FILE:LINE: what.
# `reads` names files that read markup, or speak of it to the user, and may have tags in their literals.
BEGIN { count = split(reads, names, " "); for (i = 1; i <= count; i++) reader[names[i]] = 1 }
FNR == 1 { comment = printed = 0 }
{
    line = $0
    gsub(/'\\?"'/, "", line)
    if (comment && !sub(/^.*\*\//, "", line)) next
    comment = 0
    gsub(/\/\*([^*]|\*+[^*\/])*\*+\//, "", line)
    if (sub(/\/\*.*$/, "", line)) comment = 1
    if (line ~ /^#include/) next
    if (line ~ /(^|[^A-Za-z_])v?[fs]?n?printf\(/) printed = 1 # by the standard library, to the end of the statement
    if (line ~ /(^|[^A-Za-z_])(strto(d|f|ld)|ato(f|ff)|[fs]?scanf|setlocale|localeconv|vs?n?printf)\(/ && line !~ /"%(lu|d\/%d%c)"/)
        print FILENAME ":" FNR ": a number past support/numbers.h"
    rest = line
    while (match(rest, /"([^"\\]|\\.)*"/)) {
        text = substr(rest, RSTART + 1, RLENGTH - 2)
        rest = substr(rest, RSTART + RLENGTH)
        gsub(/%%/, "", text)
        if (text ~ /<[A-Za-z\/!?]/ && !(FILENAME in reader)) print FILENAME ":" FNR ": markup by hand, not by writing/markup.h: \"" text "\""
        if (text ~ /\{ *\\"/ || text ~ /\\" *:/) print FILENAME ":" FNR ": JSON by hand, not by writing/json.h: \"" text "\""
        if (printed && text ~ /%[-+ #0-9.*]*L?[aAeEfFgG]/) print FILENAME ":" FNR ": decimals past support/numbers.h: \"" text "\""
        if ((text ~ /%[^ ,%]*,(%|\\"|\\n)/ || text ~ /[a-z_],[a-z_ ]+,[a-z_]/)) print FILENAME ":" FNR ": CSV by hand, not by writing/csv_text.h: \"" text "\""
    }
    if (line ~ /putc\([^;]*'[<,]'/) print FILENAME ":" FNR ": a sign of markup or CSV by hand, not by src/writing"
    if (line ~ /;/) printed = 0
}
