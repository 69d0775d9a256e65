# What engraves passages is run as a program: it comes from the folder that the user names or from where the program was installed or built,
# never from the working folder, whatever lies there.
. tests/support/cli.sh
top=$(pwd)
case $SPEZZATO in /*) ;; *) SPEZZATO=$top/$SPEZZATO ;; esac
score=$top/corpus/brelisk-balconies-2.musicxml
XDG_CACHE_HOME=$folder/cache
TOLD=$folder/told
export XDG_CACHE_HOME TOLD

# A stand-in for node that tells which script it was given, and engraves nothing.
mkdir -p "$folder/path"
printf '#!/bin/sh\nprintf "%%s\\n" "$1" >> "$TOLD"\nexit 1\n' > "$folder/path/node"
chmod +x "$folder/path/node"

# A folder unpacked from somewhere: an engraver in every place that was or could be thought of, and a node of its own.
strange=$folder/strange
for place in . engraver src/pages/web/engraver src/report/engraver web/engraver pages/web/engraver share/spezzato/engraver spezzato/engraver \
    build/engraver build/share/spezzato/engraver .config/spezzato/engraver pages pages/engraver; do
    mkdir -p "$strange/$place/node_modules"
    printf 'throw 1\n' > "$strange/$place/engrave.mjs"
done
printf '#!/bin/sh\nprintf "%%s\\n" "hostile node" >> "$TOLD"\nexit 1\n' > "$strange/node"
chmod +x "$strange/node"

# never_there PROGRAM: the program, started in the strange folder, runs nothing of it; told what was run.
never_there() {
    : > "$TOLD"
    (cd "$strange" && PATH="$folder/path:$PATH" "$1" report "$score" --no-cache -o "$folder/pages") > "$folder/out" 2> "$folder/err" || fault "the report of a strange folder fails: $(head -n 1 "$folder/err")"
    grep -e "$strange" -e '^[^/]' "$TOLD" > "$folder/run" && fault "run out of the working folder: $(head -n 1 "$folder/run")"
    [ -e "$folder/pages/brelisk-balconies-2.html" ] || fault "no page was written"
}
never_there "$SPEZZATO"
(cd "$strange" && PATH="$folder/path:$PATH" SPEZZATO_ENGRAVER=engraver "$SPEZZATO" report "$score" --no-cache -o "$folder/pages") > "$folder/out" 2> "$folder/err"
says "SPEZZATO_ENGRAVER is not followed"
grep -q "$strange" "$TOLD" && fault "the variable leads into the working folder"
for path in ":/nowhere" ".:/nowhere" "/nowhere:" "/nowhere::/nowhere" ""; do
    : > "$TOLD"
    (cd "$strange" && PATH=$path "$SPEZZATO" report "$score" --engraver "$strange/engraver" --no-cache -o "$folder/pages") > "$folder/out" 2> "$folder/err"
    grep -q "hostile node" "$TOLD" && fault "with PATH '$path' the working folder's node was run"
    says "the engraver needs node"
done
# Named by the user, a folder is followed wherever it lies.
: > "$TOLD"
(cd "$strange" && PATH="$folder/path:$PATH" "$SPEZZATO" report "$score" --engraver engraver --no-cache -o "$folder/pages") > "$folder/out" 2> "$folder/err"
grep -qx "engraver/engrave.mjs" "$TOLD" || fault "--engraver is not followed"

# The installed program: one line that no engraver is there, and the page drawn; what is installed with it is run, the tree it was built in is not.
if command -v make >/dev/null 2>&1 && make -s --no-print-directory install BUILD="${BUILD:-build}" PREFIX="$folder/prefix" > "$folder/out" 2> "$folder/err"; then
    installed=$folder/prefix/bin/spezzato
    place=$folder/prefix/share/spezzato/engraver
    [ -r "$place/engrave.mjs" ] || fault "the engraver is not installed"
    mv "$place/node_modules" "$folder/kept" 2> "$folder/said"
    never_there "$installed"
    says "$place: note: no engraver is installed there" 
    [ "$(error_lines)" = 1 ] || fault "$(error_lines) lines about a missing engraver"
    [ -s "$TOLD" ] && fault "something was run where no engraver is installed: $(cat "$TOLD")"
    (cd "$strange" && "$installed" report "$score" --engraver none -o "$folder/drawn") > "$folder/out" 2> "$folder/err"
    [ -s "$folder/err" ] && fault "a word where drawing was asked for: $(head -n 1 "$folder/err")"
    same "$folder/drawn/brelisk-balconies-2.html" "$folder/pages/brelisk-balconies-2.html" "a missing engraver changes the page"
    mkdir "$place/node_modules"
    never_there "$installed"
    [ "$(cat "$TOLD")" = "$place/engrave.mjs" ] || fault "what is installed is not what is run: $(cat "$TOLD")"
    grep -qF "$top/" "$installed" && fault "the installed program knows the tree it was built in"
else
    fault "it can't be installed: $(tail -n 1 "$folder/err")"
fi
finish
