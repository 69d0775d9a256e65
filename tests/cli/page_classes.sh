# Every class that a style of the pages names is written by what draws them: no dead style stays behind. A style that nothing writes is found.
. tests/support/cli.sh
at_hand python3 || exit 0
here=$PWD
python3 tests/support/page_classes.py > "$folder/out" || fault "styles for classes that nothing writes: $(cat "$folder/out")"
[ "$(tail -n 1 "$folder/out")" -gt 500 ] || fault "few classes were looked at"
cp -R src "$folder/src"
echo '.nobody-writes-this { color: red; }' >> "$folder/src/pages/base.css"
(cd "$folder" && python3 "$here/tests/support/page_classes.py") > "$folder/out" && fault "a dead style was not found"
grep -q 'base.css: .nobody-writes-this' "$folder/out" || fault "a dead style was not named"
finish
