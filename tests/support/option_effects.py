"""Every command with every option in every form: each changes what comes out, or is refused or told in a line; what rightly does neither stands in `quiet`.
option_effects.py PROGRAM: prints each option that is swallowed, then how many were tried. The options are read from each command's own help."""
import hashlib, os, re, shutil, subprocess, sys, tempfile

program, corpus = os.path.abspath(sys.argv[1]), os.path.abspath("corpus")
work = tempfile.mkdtemp()
env = dict(os.environ, XDG_CONFIG_HOME=work + "/c", XDG_DATA_HOME=work + "/d", XDG_CACHE_HOME=work + "/k", SOURCE_DATE_EPOCH="1893456000")
library, out = work + "/library.sqlite", work + "/out"
one, two = corpus + "/brelisk-balconies-1.musicxml", corpus + "/caldremi-grosso-2.musicxml"
decisive = ["--set", "weights.era=100"]  # so that the year decides the seating

def run(words):
    shutil.rmtree(out, ignore_errors=True)
    os.mkdir(out)
    done = subprocess.run([program] + words, capture_output=True, env=env, cwd=work, stdin=subprocess.DEVNULL)
    digest = hashlib.sha256(done.stdout)
    for folder, _, files in sorted(os.walk(out)):
        for name in sorted(files):
            digest.update(name.encode() + open(os.path.join(folder, name), "rb").read())
    return done.returncode, digest.hexdigest(), done.stderr.decode()

def file(name, text):
    with open(os.path.join(work, name), "w") as written:
        written.write(text)
    return os.path.join(work, name)

wrong = file("wrong.ini", "[stage]\nwidth = broad\n")  # whoever reads settings refuses these
taps = file("taps.csv", "bar,time\n9,0:30\n")
plan = file("plan.csv", "concert,date,work,score\nA,3/4/2027,Balconies in a title that is long enough for a line to be broken in it once,%s\nA,,Grosso,%s\nB,5/6/2027,Grosso,\n" % (one, two))
lines = os.path.join(work, "lines")
marked = os.path.join(work, "marked.musicxml")
run(["library", "add", corpus, "--library", library])
run(["mark", one, "-o", marked])
file("lines", subprocess.run([program, "season", plan, "--format", "ndjson", "--no-cache"], capture_output=True, env=env).stdout.decode().replace('"arrangement": "violins', '"arrangement": "fiddlers').replace('"bars": ', '"bars": 1'))

values = {  # of options that take one; of two commands different ones
    "year": "1990", "language": "de", "settings": wrong, "set": "stage.width=broad", "width": "70", "kind": "coupling", "strength": "striking", "explain": "9",
    "output": out + "/x", "arrangement": "violins together, violas outside", "write": out + "/w.ini", "for": "listeners", "lasts": "9:00", "at": "9=0:30", "taps": taps,
    "most": "1", "pictures": out + "/p", "picture-format": "pdf", "engraver": "none", "sheet": "2", "jobs": "2", "library": library, "scores": "library", "lines": lines,
    "share": "1/2", "dates": "month-first", "from": "1900", "before": "1800", "composer": "Brelisk", "titled": "Andante", "between": "Va, Vc", "players": "2-2-1-1-1",
    "recommended": "violins together", "seating": "violins opposed", "with": "Trois écluses", "bar": "9", "first": "1", "passages": "1"}
of_library = {"lasts": "..1", "at": "octave"}
quiet = {  # rightly no difference: why
    "jobs": "the result is the same", "no-cache": "the result is the same", "verbose": "only the doubts, where there are more than are shown",
    "season --library": "a place to keep results", "library --passages": "alike: one passage of a movement is like it"}

bases = []
for command in "page passages seating sections streams parts rehearsal notes bowings".split():
    help_text = subprocess.run([program, command, "--help"], capture_output=True, env=env).stdout.decode()
    forms = re.search(r"--format FORM +([^\n]*(?:\n {20,}[^\n]*)*)", help_text).group(1)
    for form in [f for f in "text json csv html svg markdown odt".split() if re.search(r"\b%s\b" % f, forms)]:
        if (command, form) != ("notes", "svg"):
            bases.append((command, [command, "--format", form, two, corpus + "/lindquarre-salt-road-2.musicxml" if command == "notes" else one] + decisive))
bases += [("stage", ["stage", "--format", form, two] + decisive) for form in "text svg html csv".split()] + [("stage", ["stage"])]
bases += [("notes", ["notes", "--for", "listeners", "--format", form, one]) for form in ("html", "svg")]
bases += [("check", ["check", "--format", form, one]) for form in ("text", "json", "csv")]
bases += [("settings", ["settings", "--format", form]) for form in ("text", "json", "csv")]
bases += [("season", ["season", "--no-cache", "--library", library, "--dates", "day-first", "--format", form, plan])
          for form in "text json csv html calendar calendar-csv ics ndjson".split()]
bases += [("library", ["library", "--library", library] + words) for words in (
    ["find"], ["find", "--format", "csv"], ["find", "--kind", "exchange"], ["find", "--format", "html"], ["show", "Trois écluses"], ["fits", "--seating", "violins together"],
    ["partners", "Trois écluses"], ["alike", "Rondo", "--bar", "1"], ["check"], ["forget", "Nobody's"], ["add", corpus])]
bases += [("page", ["page", "--brief", two, one] + decisive), ("passages", ["passages", "--explain", "9", one]), ("sections", ["sections", "--write", out + "/w.ini", one]),
          ("mark", ["mark", one, "-o", out + "/m.musicxml"] + decisive), ("mark", ["mark", "--unmark", marked, "-o", out + "/m.musicxml"]),
          ("report", ["report", two, one, "-o", out + "/pages", "--engraver", "none"] + decisive)]

tried = swallowed = 0
for command, words in bases:
    help_text = subprocess.run([program, command, "--help"], capture_output=True, env=env).stdout.decode()
    before = run(words)
    for name, value in re.findall(r"^ +(?:-.,)? +--([a-z-]+)(?: ([A-Z|=/.N-]+))?", help_text, re.M):
        if name in ("help", "format", "output") or "--" + name in words and name not in ("set", "settings"):
            continue
        given = ["--" + name] + ([of_library.get(name, values.get(name)) if command == "library" else values[name]] if value else [])
        after = run(words + given)
        tried += 1
        shown = " ".join(os.path.basename(w) for w in words + given)
        if after[1:] == before[1:] and after[0] == before[0] and not any(key in quiet for key in (name, command + " --" + name)):
            swallowed += 1
            print("swallowed: spezzato " + shown)
        if after[0] == 1 and not after[2].strip():
            print("refused without a word: spezzato " + shown)
            swallowed += 1
shutil.rmtree(work)
print("%d options tried, %d swallowed" % (tried, swallowed))
sys.exit(swallowed > 0)
