#!/bin/sh
# What runs the tests counts right: a skip is neither passed nor failed, a failure is no skip, and each reason stands there once. Tried on small
# tests of its own, and on the unit tests without the shared folder.
. tests/support/cli.sh
runner=$PWD/tests/support/run-tests.sh
unit=${BUILD:-build}/unit-tests

# Stand-ins: statements that say what the unit tests would say; scripts that pass, skip and fail.
mkdir -p "$folder/top/tests/cli" "$folder/top/build"
cat > "$folder/top/build/unit-tests" <<'EOT'
#!/bin/sh
[ -e broken ] && exit 139
echo "  skipped: no harp (2 tests)"
echo "  skipped: no bells (1 test)"
echo "tests: 7 passed, 0 failed, 3 skipped"
EOT
chmod +x "$folder/top/build/unit-tests"
script() { printf '%s\n' "$2" > "$folder/top/tests/cli/$1.sh"; }
script a 'exit 0'
script b 'echo "  skipped: no harp"; echo "  skipped: no harp"; echo "  skipped: no mute"'
script c 'echo "  skipped: no harp"'
try() { (cd "$folder/top" && BUILD=build sh "$runner") > "$folder/out" 2> "$folder/err"; status=$?; }
line() { [ "$(grep -c -x -F -- "$1" "$folder/out")" = 1 ] || fault "not once on a line: $1"; }

try
[ "$status" = 0 ] || fault "skips make the run fail"
line "8 passed, 0 failed, 5 skipped"
line "skipped: no harp (2 statements and 2 scripts: b c)"
line "skipped: no bells (1 statement)"
line "skipped: no mute (1 script: b)"
[ "$(sed -n '/^8 passed/,$p' "$folder/out" | grep -vc '^skipped: ')" = 1 ] || fault "behind the count stand not reasons alone"

script c 'echo "  skipped: no harp"; echo "  a wrong note"; exit 1'
try
[ "$status" != 0 ] || fault "a failure is no failure"
line "8 passed, 1 failed, 4 skipped"
line "FAILED: tests/cli/c.sh"
line "  a wrong note"

rm "$folder/top/tests/cli/c.sh"
: > "$folder/top/broken"
try
[ "$status" != 0 ] || fault "unit tests that broke off are no failure"
line "1 passed, 1 failed, 1 skipped"

# Without the shared folder the statements that need it are skipped, and together they are all that there are.
SPEZZATO_SHARED=$folder/nowhere "$unit" > "$folder/out" 2> "$folder/err" ||
    fault "without the shared folder the unit tests fail: $(cat "$folder/out" "$folder/err" | grep -m 1 -E '^ +[0-9]+\. |^tests:' || tail -n 1 "$folder/out")"
all=$(sed -n 's/^ *tests  *\([0-9]*\)  *[0-9].*/\1/p' "$folder/out")
counts=$(sed -n 's/^tests: \([0-9]*\) passed, 0 failed, \([0-9]*\) skipped$/\1 \2/p' "$folder/out")
[ -n "$all" ] && [ -n "$counts" ] && [ "$((${counts% *} + ${counts#* }))" = "$all" ] || fault "of $all statements there are counted: $counts (passed, skipped)"
named=$(sed -n 's/^  skipped: the shared folder is not at hand (\([0-9]*\) tests)$/\1/p' "$folder/out")
[ "${named:-0}" -ge 10 ] && [ "$named" -le "${counts##* }" ] || fault "only ${named:-0} statements say that they need the shared folder, of ${counts#* } skipped"
finish
