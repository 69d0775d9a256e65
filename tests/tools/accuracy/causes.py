"""Why each row of the readers is missed, and each passage that nobody marked is found: one line each, by bar.

    causes.py SHARED EVIDENCE_TABLE READ READING.json [READING.json ...]

Definitions are those of SHARED/bin/score_passages.py. EVIDENCE_TABLE is the program that prints the matches of a score; a match is meant by a row when it lies
between two of its links and both have a third of their bars in common (as for the fit, see fit_weights.py). Figures in brackets are strengths, as told.

Missed:  never met (no match of these links and bars), too weak (the best match of these links stays below 0.5), told by others (a listed passage of other
sections covers half of it), half told (passages of its links cover less than half of its bars), lost (a match is clear, and no passage came of it)
READ is a table of such places read beside the score (tests/data/readings/causes.tsv): what a musician hears there. A line that it knows, by movement, verdict and
most of its bars, is told with it; the others are counted as not yet read.
False:   runs on (part of it lies in a row of its sections), others' row (the readers have other sections there), nothing marked
"""
import csv, json, os, subprocess, sys

LIKE = 0.34         # bars in common over bars of either, from which on a match may be meant by a row
CLEAR = 0.5         # strength from which a passage is called clear
CLEAR_ODDS = 2.0    # odds of being marked at which it is (evidence.c)


def told(chance):
    return chance / (chance + CLEAR_ODDS * (1 - chance))


def place(item):
    return "%d-%d" % (min(item["bars"]), max(item["bars"]))


def matches_of(scorer, program, score):
    text = subprocess.run([program, score], stdout=subprocess.PIPE, check=True, text=True).stdout
    return [{"pair": (scorer.section(m["caller"]), scorer.section(m["responder"])), "strength": told(float(m["strength"])),
             "bars": set(range(scorer.bar(m["start"]), scorer.bar(m["end"]) + 1))} for m in csv.DictReader(text.splitlines(), delimiter="\t")]


def meant_by(scorer, row, matches):
    return [m for m in matches if all(m["pair"]) and scorer.same(row, m) and len(m["bars"] & row["bars"]) >= LIKE * len(m["bars"] | row["bars"])]


def why_missed(scorer, row, matches, listed):
    best = max((m["strength"] for m in meant_by(scorer, row, matches)), default=None)
    own = [g for g in listed if scorer.same(row, g) and g["bars"] & row["bars"]]
    others = [g for g in listed if not scorer.same(row, g) and 2 * len(g["bars"] & row["bars"]) >= len(row["bars"])]
    if own:
        return "half told (%s)" % ", ".join(place(g) for g in own)
    if others:
        return "told by others (%s)" % ", ".join("%s and %s %s" % (*g["passage"]["sections"], place(g)) for g in others)
    if best is None:
        return "never met"
    return "too weak (%.2f)" % best if best < CLEAR else "lost (%.2f)" % best


def why_false(scorer, found, rows):
    own = [r for r in rows if scorer.same(r, found) and r["bars"] & found["bars"]]
    others = [r for r in rows if 2 * len(r["bars"] & found["bars"]) >= len(found["bars"])]
    if own:
        return "runs on (the readers' row: %s)" % ", ".join(place(r) for r in own)
    if others:
        return "others' row (%s)" % ", ".join("%s %s" % (r["row"]["links"], place(r)) for r in others)
    return "nothing marked"


def read_places(path):
    with open(path, encoding="utf-8") as file:
        return [dict(row, bars=set(range(int(row["first"]), int(row["last"]) + 1))) for row in csv.DictReader(file, delimiter="\t")]


def read_there(places, name, verdict, bars):
    """The place read that shares the most bars with these, more than half of them all; None where there is none."""
    def likeness(row):
        return len(row["bars"] & bars) / len(row["bars"] | bars)
    fitting = [row for row in places if row["movement"] == name and row["verdict"] == verdict and likeness(row) > 0.5]
    return max(fitting, key=likeness, default=None)


def causes(scorer, shared, program, movement, name):
    """[(line, verdict, bars, cause)...] of one movement."""
    expert = scorer.expert_table(os.path.join(shared, "expert", name + ".tsv"))
    rows = [r for r in expert if r["kind"] in scorer.ANTIPHONY and r["scored"]]
    listed = [g for g in scorer.found(movement) if g["kind"] in scorer.ANTIPHONY and g["scored"] and g["strength"] >= CLEAR]
    matches = matches_of(scorer, program, os.path.join(shared, "scores", name + ".mxl"))
    out = []
    for row in rows:
        if row["strength"] >= 2 and not scorer.covered(row, [g for g in listed if scorer.same(row, g)]):
            out.append(("%s: %s of %s and %s" % (place(row), row["kind"], row["row"]["caller"], row["row"]["responder"]),
                        "missed", row["bars"], why_missed(scorer, row, matches, listed)))
    for found in listed:
        if not scorer.covered(found, [r for r in rows if scorer.same(r, found)]):
            out.append(("%s: %s of %s and %s (%.2f)" % (place(found), found["kind"], *found["passage"]["sections"], found["strength"]),
                        "false", found["bars"], why_false(scorer, found, rows)))
    return out


def all_causes(scorer, shared, program, paths):
    for path in paths:
        name = os.path.basename(path)[:-5]
        if os.path.exists(os.path.join(shared, "expert", name + ".tsv")):
            for movement in json.load(open(path, encoding="utf-8"))["movements"]:
                for cause in causes(scorer, shared, program, movement, name):
                    yield name, *cause


def count(counts, key):
    counts[key] = counts.get(key, 0) + 1


def tally(counts, verdict):
    return ", ".join("%d %s" % (n, cause) for (v, cause), n in sorted(counts.items(), key=lambda item: -item[1]) if v == verdict)


def main():
    if len(sys.argv) < 5:
        sys.exit(__doc__)
    shared, program, read = sys.argv[1:4]
    sys.path.insert(0, os.path.join(shared, "bin"))
    import score_passages as scorer
    places, lines, technical, musical, debatable = read_places(read), [], {}, {}, {"missed": 0, "false": 0}
    for name, line, verdict, bars, cause in all_causes(scorer, shared, program, sys.argv[4:]):
        there = read_there(places, name, verdict, bars)
        count(technical, (verdict, cause.split(" (")[0]))
        count(musical, (verdict, there["cause"] if there else "not yet read"))
        debatable[verdict] += there is not None and there["whose"] == "debatable"
        lines.append("- %s, %s, %s: %s%s" % (name, line, verdict, cause, ". " + there["text"] if there else ""))
    for verdict in debatable:
        print("%s: %s.\n" % (verdict.capitalize(), tally(technical, verdict)))
        print("%s, as read beside the score: %s. Of these, %d are debatable: a third reader might well have judged as the program does.\n"
              % (verdict.capitalize(), tally(musical, verdict), debatable[verdict]))
    print("\n".join(lines))


main()
