# What the scripts of tests/cli share; to be read in with `.`. Runs from the top of the project.
# $SPEZZATO is the program. Each script works in $folder, which goes when it ends.
set -u
[ -x "${SPEZZATO:-${BUILD:-build}/spezzato}" ] || { echo "  the program is not built"; exit 1; }
SPEZZATO=${SPEZZATO:-${BUILD:-build}/spezzato}
folder=$(mktemp -d "${TMPDIR:-/tmp}/spezzato-cli-XXXXXX")
trap 'rm -rf "$folder"' EXIT
trap 'exit 1' INT TERM
# No house of the one who tries it out.
XDG_CONFIG_HOME=$folder/no-house
export XDG_CONFIG_HOME
XDG_DATA_HOME=$folder/data # nobody's own library
export XDG_DATA_HOME
faults=0
script=$(basename "$0")
shared=${SPEZZATO_SHARED:-../shared}

fault() { echo "  $script: $1"; faults=$((faults + 1)); }

# skip REASON: something of this script can't be tried here. The runner counts the script apart, never as passed, and names each reason once.
skip() { echo "  skipped: $1"; }

# at_hand COMMAND...: the programs are there; what is missing is told.
at_hand() {
    for tool in "$@"; do command -v "$tool" > /dev/null 2>&1 || { skip "$tool is not at hand"; return 1; }; done
}

# shared_has PATH: it is there in the shared folder; what is missing is told (in the words of tests/support/suite.c).
shared_has() {
    [ -e "$shared/$1" ] && return
    if [ -d "$shared" ]; then skip "a file of the shared folder is not at hand"; else skip "the shared folder is not at hand"; fi
    return 1
}

# run STATUS ARGUMENTS...: runs the program, keeps what it says in $folder/out and $folder/err, and checks its exit status.
run() {
    expected=$1
    shift
    "$SPEZZATO" "$@" > "$folder/out" 2> "$folder/err"
    status=$?
    [ "$status" = "$expected" ] || fault "spezzato $*: exit status $status, not $expected: $(head -n 1 "$folder/err")"
}

# How many lines the last run put on standard error.
error_lines() { wc -l < "$folder/err" | tr -d ' '; }

# says TEXT: standard error of the last run holds the text. shows TEXT: standard output does.
says() { grep -qF -- "$1" "$folder/err" || fault "no word of '$1' on standard error: $(head -n 1 "$folder/err")"; }
shows() { grep -qF -- "$1" "$folder/out" || fault "no word of '$1' in the result"; }
shows_not() { if grep -qF -- "$1" "$folder/out"; then fault "'$1' should not be in the result"; fi; }

# same FILE FILE WHAT
same() { cmp -s "$1" "$2" || fault "$3: $(diff "$1" "$2" | cut -c 1-160 | head -n 5)"; }

# An independent reader of JSON, when there is one. json_ok FILE; json_reader says which.
json_reader=""
if command -v python3 >/dev/null 2>&1; then json_reader=python3
elif command -v node >/dev/null 2>&1; then json_reader=node; fi
json_ok() {
    case $json_reader in
    python3) python3 -c 'import json, sys; json.loads(open(sys.argv[1], encoding="utf-8").read(), parse_constant=lambda c: sys.exit(1))' "$1" ;;
    "") skip "neither python3 nor node is at hand to read JSON" ;;
    node) node -e 'JSON.parse(new TextDecoder("utf-8", {fatal: true}).decode(require("fs").readFileSync(process.argv[1])))' "$1" ;;
    esac
}

finish() {
    [ "$faults" = 0 ] || echo "  $script: $faults faults"
    [ "$faults" = 0 ]
}
