"""The fields that reports have and those that docs/output.md names are the same.

    output_doc.py PROGRAM SCORE...

Each heading of docs/output.md is a command (season: docs/season.md). A field of its JSON has to stand there in code type, a head of its
CSV after 'CSV'; a field in the table of a command that no score gives is one too many.
"""
import csv, io, json, os, re, shutil, subprocess, sys, tempfile

COMMANDS = ["passages", "seating", "page", "sections", "streams", "settings", "check", "notes", "rehearsal", "library"]


def ask(*words):
    return subprocess.run(words, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL).stdout.decode("utf-8")


def keys(value, found):
    if isinstance(value, dict):
        for key, inner in value.items():
            found.add(key)
            keys(inner, found)
    elif isinstance(value, list):
        for inner in value:
            keys(inner, found)
    return found


def main(program, scores):
    shelf = os.path.join(tempfile.mkdtemp(), "library")
    ask(program, "library", "add", "--library", shelf, *scores)
    text = open("docs/output.md", encoding="utf-8").read()
    parts = re.split(r"^## (.*)$", text, flags=re.M)
    sections = {"": parts[0], **dict(zip(parts[1::2], parts[2::2]))}
    faults, compared = 0, 0
    for command in COMMANDS:
        told = sections.get(command, "")
        shared = told + sections[""] + (sections["passages"] + sections["seating"] if command == "page" else "")
        words = set(re.findall(r"`([a-z_0-9]+)`|\"([a-z_0-9]+)\":", shared))
        documented = {a or b for a, b in words}
        name = [] if command == "page" else [command]
        if command == "library":
            name = ["library", "find", "--library", shelf, "--strength", "clear"]
        given, columns = set(), set()
        for score in [[]] if command in ("settings", "library") else [[score] for score in scores]:
            given |= keys(json.loads(ask(program, *name, "--format", "json", *score)), set())
            heads = next(csv.reader(io.StringIO(ask(program, *name, "--format", "csv", *score))))
            columns |= set(heads)
            for head in heads:
                compared += 1
                if not re.search(r"(?<![a-z_])%s(?![a-z_])" % head, shared):
                    faults += 1
                    print("%s: the column %s is not told in docs/output.md" % (command, head))
        for key in sorted(given - documented):
            faults += 1
            print("%s: the field %s is not told in docs/output.md" % (command, key))
        compared += len(given)
        for row in re.findall(r"^\| (`[^|]*) \|(?!.*only where there is one)", told, flags=re.M):
            for key in re.findall(r"`([a-z_0-9]+)`", row):
                compared += 1
                if key not in given | columns:
                    faults += 1
                    print("%s: docs/output.md tells of %s, which no report has" % (command, key))
    shutil.rmtree(os.path.dirname(shelf))
    print("%d fields compared, %d faults" % (compared, faults))
    return 1 if faults or not compared else 0


sys.exit(main(sys.argv[1], sys.argv[2:]))
