"""How true and how well chosen the programme notes are, against the settled tables of expert readers.

    notes_truth.py [--list] EXPERT_DIR USUAL_DIR MANY_DIR

USUAL_DIR and MANY_DIR hold NAME.json, what `spezzato notes --format json` and `... --many` print of each score that has a table. A citation of antiphony is

  true    where a row covers half of its bars or more, the first players it names are those of the row's first link, the next ones those of a later link,
          and all that it names come in the row's order of entry; a citation that leaves open which of two leads ('to and fro') is true of either order
  partly  where a row of two of its players covers half of its bars, but the order is another or one of them is not in it
  false   where no row does

Rows and citations of one player against itself, of divisions and of coupling are left out. A row counts as cited where citations that name two of its links, or
the returns that they tell, touch half of its bars. --list prints what is not true, for whoever works on the ear.
"""
import csv, json, os, sys

ANTIPHONY = {"exchange", "hocket", "splitline", "split-line", "imitation"}
TABLE = {"Vns": {"Vn1", "Vn2"}, "VcCb": {"Vc", "Cb"}, "Str": {"Vn1", "Vn2", "Va", "Vc", "Cb"}}
NOTES = {"Vn I": "Vn1", "Vn II": "Vn2", "Vn III": "Vn3", "Va": "Va", "Vc": "Vc", "Db": "Cb", "Winds": "Wind"}


def of_table(name):
    name = name.strip(" -")
    plain = name.rstrip("abc") if name[:2] in ("Vn", "Va") and name[-1:] in "abc" and name[-2:-1].isdigit() else name
    if plain in TABLE:
        return TABLE[plain]
    return {plain[:2]} if plain[:2] in ("Va", "Vc") else {plain}


def of_notes(names):
    out = set()
    for name in names:
        plain = name.split(" (")[0]
        if plain == "Violins":
            out |= {"Vn1", "Vn2", "Vn3"}
        elif plain == "Strings":
            out |= TABLE["Str"] | {"Vn3"}
        else:
            out.add(NOTES.get(plain, NOTES.get(plain.rstrip(" 0123456789"), plain)))
    return out


def rows_of(path):
    rows = []
    for row in csv.DictReader(open(path), delimiter="\t"):
        if row["kind"] not in ANTIPHONY:
            continue
        text = (row.get("links") or "").strip()
        links = [[n for n in link.split("+")] for link in text.split(">")] if ">" in text else [[row["caller"]], [row["responder"]]]
        sets = [set().union(*[of_table(n) for n in link]) for link in links]
        rows.append(dict(links=sets, bars=set(range(int(row["start"]), int(row["end"]) + 1)), strength=int(row["strength"]), row=row))
    return rows


def number(text):
    digits = "".join(c for c in str(text) if c.isdigit())
    return int(digits) if digits else 0


def citations_of(movement):
    out = []
    for c in movement["citations"]:
        if c["kind"] not in ANTIPHONY:
            continue
        links = [of_notes(link) for link in c["links"]] or [of_notes(c["calls"]), of_notes(c["answers"])]
        first, last = number(c["first_bar"]), number(c["last_bar"])
        out.append(dict(links=links, bars=set(range(first, last + 1)), first=first, strength=c["strength"], returns=[number(b) for b in c["returns"]], led=c["led"] or len(links) > 2, said=c))
    return out


def judge(citation, rows):
    """'true', 'partly' or 'false', and the row it was held against."""
    best = ("false", None)
    for row in rows:
        if 2 * len(citation["bars"] & row["bars"]) < len(citation["bars"]):
            continue
        places = [[i for i, link in enumerate(row["links"]) if link & named] for named in citation["links"]]
        met = [p for p in places if p]
        if len({i for p in met for i in p}) < 2 or len(met) < 2:
            continue
        order, at = True, -1
        for place in places:
            later = [i for i in place if i > at]
            order = order and bool(later)
            at = min(later) if later else at
        if order and 0 in places[0]:
            return "true", row
        if not citation["led"] and len(met) == len(places) and any(0 in p for p in places):
            return "true", row
        best = ("partly", row)
    return best


def covers(row, citations):
    bars = set()
    for c in citations:
        where = [[i for i, link in enumerate(row["links"]) if link & named] for named in c["links"]]
        if len({i for p in where for i in p}) >= 2:
            bars |= c["bars"]
            for start in c["returns"]:
                bars |= set(range(start, start + len(c["bars"])))
    return 2 * len(bars & row["bars"]) >= len(row["bars"])


def main(arguments):
    listed = "--list" in arguments
    folder, usual, many = [a for a in arguments if a != "--list"]
    by_strength = {}
    tally, weak, strong = {"true": 0, "partly": 0, "false": 0}, [0, 0], [0, 0]
    print("| movement | citations | true | partly | false | strength 3 cited with `--many` | usual ones of strength 2 or 3 |")
    print("|---|---|---|---|---|---|---|")
    for name in sorted(n[:-5] for n in os.listdir(usual) if n.endswith(".json")):
        rows = rows_of(os.path.join(folder, name + ".tsv"))
        chosen = citations_of(json.load(open(os.path.join(usual, name + ".json")))["movements"][0])
        every = citations_of(json.load(open(os.path.join(many, name + ".json")))["movements"][0])
        here = {"true": 0, "partly": 0, "false": 0}
        good = 0
        for c in every:
            if not any("Wind" in link for link in c["links"]):
                step = min(int(10 * c["strength"] + 1e-9), 9) if c["strength"] >= 0.8 else 5
                by_strength.setdefault(step, {"true": 0, "partly": 0, "false": 0})[judge(c, rows)[0]] += 1
        for c in chosen:
            verdict, row = judge(c, rows)
            here[verdict] += 1
            good += row is not None and row["strength"] >= 2
            if listed and verdict != "true":
                print("  %s %s: %s %s" % (verdict, name, c["said"]["place"].split(",")[0], " > ".join("+".join(l) for l in (c["said"]["links"] or [c["said"]["calls"], c["said"]["answers"]])))
                      + (" | %(links)s %(start)s-%(end)s (%(strength)s)" % row["row"] if row else ""))
        wanted = [r for r in rows if r["strength"] == 3 and len(r["links"]) > 1 and not any("Solo" in l for l in r["links"])]
        cited = sum(covers(r, every) for r in wanted)
        if listed:
            for r in wanted:
                if not covers(r, every):
                    print("  not cited %s: %s-%s %s" % (name, r["row"]["start"], r["row"]["end"], r["row"]["links"] or r["row"]["caller"] + ">" + r["row"]["responder"]))
        tally = {k: tally[k] + here[k] for k in tally}
        weak = [weak[0] + good, weak[1] + len(chosen)]
        strong = [strong[0] + cited, strong[1] + len(wanted)]
        print("| %s | %d | %d | %d | %d | %d of %d | %d of %d |" % (name, len(chosen), here["true"], here["partly"], here["false"], cited, len(wanted), good, len(chosen)))
    total = sum(tally.values())
    print("| all | %d | %d | %d | %d | %d of %d | %d of %d |" % (total, tally["true"], tally["partly"], tally["false"], *strong, *weak))
    share = lambda a, b: 100.0 * a / b if b else 0.0
    print("\nTrue: %.0f %% (goal 95 %%), false: %.0f %% (goal none); rows of strength 3 cited with `--many`: %.0f %% (goal 95 %%); usual citations below strength 2: %d (goal none)."
          % (share(tally["true"], total), share(tally["false"], total), share(*strong), weak[1] - weak[0]))

    words = {9: "0.90 and more", 8: "0.80 to 0.89", 5: "0.50 to 0.79"}
    print("\nOf all dialogues between strings that `--many` cites, by strength (the usual ones are of 0.90 and more where there are such):")
    for step in sorted(by_strength, reverse=True):
        found = by_strength[step]
        print("%s: %d, true %.0f %%, false %.0f %%." % (words[step], sum(found.values()), share(found["true"], sum(found.values())), share(found["false"], sum(found.values()))))


main(sys.argv[1:])
