# From the phrases of every language to C: `awk -v make=header|tables|faults|seatings -f phrases.awk english.phrases others...`.
# The first file is the list of keys; a language that lacks one of them, or has one that is not in the list, stops the build.
# A line is `key = text`; # begins a comment line; `@language ENUM code name` names the language of a file; `@unbroken-before MARKS` and
# `@unbroken-after MARKS`: a blank before or after these is one at which no line breaks (U+00A0).
function fail(text) { print FILENAME ":" FNR ": " text > "/dev/stderr"; failed = 1; exit 1 }
function constant(key) { gsub(/[.-]/, "_", key); return "PHRASE_" toupper(key) }
function quoted(text) { gsub(/\\/, "\\\\", text); gsub(/"/, "\\\"", text); return "\"" text "\"" }
function replaced(text, old, new,    at, done) {
    while ((at = index(text, old)) > 0) {
        done = done substr(text, 1, at - 1) new
        text = substr(text, at + length(old))
    }
    return done text
}
BEGIN { NO_BREAK = "\302\240" }
FNR == 1 { file++; language = "" }
/^[ \t]*(#.*)?$/ { next }
/^@language / { language = $2; codes[++languages] = $3; enums[languages] = $2; names[languages] = $4; next }
/^@unbroken-before / { for (i = 2; i <= NF; i++) closers[language, ++closer_count[language]] = $i; next }
/^@unbroken-after / { for (i = 2; i <= NF; i++) openers[language, ++opener_count[language]] = $i; next }
language == "" { fail("the first line has to be '@language ENUM code name'") }
{
    at = index($0, " =")
    if (!at) fail("a line is 'key = text'")
    key = substr($0, 1, at - 1)
    text = substr($0, at + 2)
    sub(/^ /, "", text)
    if (key !~ /^[a-z][a-z0-9.-]*$/) fail("'" key "' is no key")
    if ((language, key) in texts) fail("'" key "' stands twice")
    if (file == 1) keys[++count] = key
    else if (!((enums[1], key) in texts)) fail("'" key "' is not in the first language")
    for (i = 1; i <= closer_count[language]; i++) text = replaced(text, " " closers[language, i], NO_BREAK closers[language, i])
    for (i = 1; i <= opener_count[language]; i++) text = replaced(text, openers[language, i] " ", openers[language, i] NO_BREAK)
    texts[language, key] = text
}
END {
    if (failed) exit 1
    if (make == "header") {
        print "/* Made from src/wording/languages; not written by hand. */\n#ifndef PHRASES_H\n#define PHRASES_H\n\ntypedef enum Phrase {"
        for (i = 1; i <= count; i++) print "    " constant(keys[i]) ","
        print "    PHRASE_COUNT\n} Phrase;\n#endif"
        exit 0
    }
    if (make == "faults") {
        print "/* Made from src/wording/languages; not written by hand. */\n#include \"support/message.h\"\n"
        print "const FaultText fault_texts[SPZ_FAULT_COUNT] = {"
        for (i = 1; i <= count; i++)
            if (sub(/^fault[.]/, "", keys[i])) {
                fault = toupper(keys[i])
                gsub(/-/, "_", fault)
                print "    [SPZ_FAULT_" fault "] = {" quoted(keys[i]) ", " quoted(texts[enums[1], "fault." keys[i]]) "},"
            }
        print "};"
        exit 0
    }
    if (make == "seatings") {
        print "/* Made from src/wording/languages; not written by hand. */\n#include \"seating/stage/seating_names.h\"\n"
        seatings = split("opposed-cellos opposed-violas together-cellos together-violas", seating, " ")
        split("left left outside outside", inner, " ")
        print "const char *const seating_texts[SEATING_LANGUAGES][SEATING_FORMS][STANDARD_ARRANGEMENTS] = {"
        for (l = 1; l <= languages; l++) {
            print "    {{"
            for (i = 1; i <= seatings; i++) print "        " quoted(texts[enums[l], "arrangement." seating[i] "-" inner[i]]) ","
            print "    }, {"
            for (i = 1; i <= seatings; i++) {
                side = seating[i]
                sub(/-.*/, "", side)
                print "        " quoted(texts[enums[l], "side." side] ", " texts[enums[l], "inner." seating[i]]) ","
            }
            print "    }},"
        }
        print "};"
        exit 0
    }
    print "/* Made from src/wording/languages; not written by hand. */\n#include \"wording/phrase.h\"\n"
    print "const LanguageText language_texts[SPZ_LANGUAGE_COUNT] = {"
    for (l = 1; l <= languages; l++) {
        print "    [" enums[l] "] = {.code = " quoted(codes[l]) ", .name = " quoted(names[l]) ", .phrases = {"
        for (i = 1; i <= count; i++) {
            if (!((enums[l], keys[i]) in texts)) { print "language " codes[l] " lacks '" keys[i] "'" > "/dev/stderr"; exit 1 }
            print "        [" constant(keys[i]) "] = " quoted(texts[enums[l], keys[i]]) ","
        }
        print "    }},"
    }
    print "};"
    print "const char *const phrase_keys[PHRASE_COUNT] = {"
    for (i = 1; i <= count; i++) print "    [" constant(keys[i]) "] = " quoted(keys[i]) ","
    print "};"
}
