"""One passage is one story wherever it is told: what the documents say of who, where and in which order, against the JSON.

    one_story.py SPEZZATO SCORE...

Reads the phrases of src/wording/languages to know how each language names a section, fills the short forms itself, and looks for
them in the text page, the page for a browser, the librarian's sheet, the marked score and the programme note. Prints each
contradiction and, last, how many tellings were compared; exit status 1 where there is a contradiction or nothing to compare.
"""
import csv, glob, html.parser, io, json, os, re, subprocess, sys, tempfile

LANGUAGES = {}
for path in sorted(glob.glob("src/wording/languages/*.phrases")):
    lines = open(path, encoding="utf-8").read().split("\n")
    code = lines[0].split()[2]
    LANGUAGES[code] = dict(line.split(" =", 1) for line in lines if " =" in line and not line.startswith("#"))
    LANGUAGES[code] = {key: text[1:] if text.startswith(" ") else text for key, text in LANGUAGES[code].items()}
    for line in lines:  # a blank before or after these marks is one at which no line breaks
        marks = line.split()[1:] if line.startswith("@unbroken-") else []
        for mark in marks:
            old, new = (" " + mark, "\u00a0" + mark) if line.startswith("@unbroken-before") else (mark + " ", mark + "\u00a0")
            LANGUAGES[code] = {key: text.replace(old, new) for key, text in LANGUAGES[code].items()}
SECTIONS = ["vn1", "vn2", "vn3", "va", "vc", "db", "violins", "strings", "winds"]
ENGLISH = {LANGUAGES["en"]["section.%s.short" % s]: s for s in SECTIONS}
faults, compared = [], 0


def told(score, what, saying):
    global compared
    compared += 1
    if saying:
        faults.append("%s: %s: %s" % (os.path.basename(score), what, saying))


def ask(program, *words):
    return subprocess.run([program, *words], capture_output=True, check=True).stdout.decode("utf-8")


def short(code, name):
    """'Va 2', 'Vn I (orchestra 2)', 'Vc (solo)' in the short form of a language."""
    phrases = LANGUAGES[code]
    match = re.fullmatch(r"(\S+(?: I+)?)(?: (\d+))?(?: \((?:(solo)(?:, )?)?(?:orchestra (\d+))?\))?(?: \(orchestra (\d+)\))?", name)
    section, number, solo, inner, outer = match.groups()
    text = phrases["section.%s.short" % ENGLISH[section]]
    if solo:
        text = phrases["solo.short"].replace("{section.short}", text).replace("{n}", number or "0")
    elif number:
        text = phrases["numbered.short"].replace("{section}", text).replace("{n}", number)
    orchestra = inner or outer
    return text + (phrases["players.orchestra.short"].replace("{n}", orchestra) if orchestra else "")


def bars(passage):
    return passage["first_bar"] if passage["first_bar"] == passage["last_bar"] else "%s-%s" % (passage["first_bar"], passage["last_bar"])


def who(code, passage):
    names = [short(code, name) for name in passage["groups"]]
    if len(names) == 1:
        return names[0]
    together = passage["kind"] in ("coupling", "split-line")
    phrase = LANGUAGES[code]["who.together" if together else "who.answered"]
    return phrase.replace("{first.short}", names[0]).replace("{second.short}", names[1])


def order(code, passage):
    """All links in order of entry; '' where there are fewer than three."""
    if len(passage["links"]) < 3:
        return ""
    joint, after = LANGUAGES[code]["list.short"], LANGUAGES[code]["link.next"]
    names = after.join(joint.join(short(code, name) for name in link["sections"]) for link in passage["links"])
    return LANGUAGES[code]["link.order"].replace("{links}", names)


def flat(text):
    return re.sub(r"\s+", " ", text)


def text_page(program, score, code, passages):
    """Rows come by family; within each in the order of the JSON, each with its sentence below it."""
    lines = ask(program, "passages", "--width", "200", "--language", code, score).split("\n")
    weight = LANGUAGES[code]
    for family in (("exchange", "hocket", "split-line", "imitation"), ("div2", "div3"), ("coupling",)):
        at = 0
        for passage in (p for p in passages if p["kind"] in family):
            ends = (who(code, passage), weight["weight." + passage["strength_word"]])
            while at < len(lines) and not (lines[at].startswith("  %s " % bars(passage)) and re.search(re.escape(ends[0]) + r"\s+" + ends[1] + "$", lines[at])):
                at += 1
            note = at + 1
            while note < len(lines) and lines[note].startswith("     "):
                note += 1
            said = flat(" ".join(lines[at + 1:note]))
            missing = at == len(lines) or flat(order(code, passage)) not in said
            told(score, "text page, " + code, missing and "no row '%s %s %s%s'" % (bars(passage), *ends, order(code, passage)))
            if at == len(lines):
                at = 0


class Page(html.parser.HTMLParser):
    """The passages of a page: the words of their bars, who, reason, and the rows of their entries."""
    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.passages, self.open, self.depth = [], [], 0
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        names = dict(attributes).get("class") or ""
        self.depth += tag == "details" and ("passage" in names.split() or self.depth > 0)
        if tag == "details" and "passage" in names.split():
            self.passages.append({"bars": "", "who": "", "reason": "", "rows": []})
        if tag == "tr" and self.depth:
            self.passages[-1]["rows"].append([])
        if tag == "td" and self.depth and self.passages[-1]["rows"]:
            self.passages[-1]["rows"][-1].append("")
        if tag in ("span", "td"):
            self.open.append("td" if tag == "td" else names)

    def handle_endtag(self, tag):
        if tag in ("span", "td") and self.open:
            self.open.pop()
        self.depth -= tag == "details" and self.depth > 0

    def handle_data(self, data):
        if not self.depth or not self.open:
            return
        if self.open[-1] == "td" and self.passages[-1]["rows"] and self.passages[-1]["rows"][-1]:
            self.passages[-1]["rows"][-1][-1] += data
        elif self.open[-1] in self.passages[-1]:
            self.passages[-1][self.open[-1]] += data


def web_page(program, score, code, movements, folder):
    ask(program, "report", "--engraver", "none", "--language", code, score, "-o", folder)
    shown = []
    for path in sorted(glob.glob(os.path.join(folder, "*.html"))):
        if os.path.basename(path) != "index.html":
            shown += Page(open(path, encoding="utf-8").read()).passages
    passages = [p for m in movements for p in m["passages"]]
    told(score, "page, " + code, len(shown) != len(passages) and "%d passages, not %d" % (len(shown), len(passages)))
    for found, passage in zip(shown, passages):
        right = found["bars"].endswith(bars(passage)) and found["who"] == who(code, passage) and order(code, passage) in found["reason"]
        told(score, "page, " + code, not right and "'%s' '%s' '%s', not '%s' '%s'" % (found["bars"], found["who"], found["reason"], bars(passage), who(code, passage)))
        rows = [row for row in found["rows"] if len(row) >= 3]
        entries = [] if passage["kind"] in ("div2", "div3", "coupling") else passage["entries"]
        wanted = [(e["bar"], LANGUAGES[code]["list.short"].join(short(code, name) for name in e["sections"])) for e in entries]
        told(score, "page, " + code, [(row[0], row[2]) for row in rows] != wanted and "entries of %s are not those of the JSON" % bars(passage))


def row_and_sentence(score, passages):
    """The sentence of an exchange names the two sides that its row names, in that order, and these are among its entries; where others enter before them,
    it goes on to tell the order."""
    for passage in (p for p in passages if p["kind"] in ("exchange", "hocket", "imitation") and len(p["groups"]) == 2):
        named = sections_named("en", passage["reason"].split(";")[0])
        row = [sorted(sections_of([name]))[0] for name in passage["groups"]]
        told(score, "sentence", named[:2] != row and "'%s' under %s" % (passage["reason"], passage["groups"]))
        players = {name for link in passage["links"] for name in link["sections"]}
        for name in passage["groups"]:
            inside = not players or name == "Strings" or "Strings" in players or any(same_players(name, player) or same_players(player, name) for player in players)
            told(score, "links", not inside and "%s is in no link of %s %s" % (name, passage["groups"], bars(passage)))


def parts_sheet(program, score, movements):
    """Each player is told to lead, answer or join in a bar in which the JSON lets him enter so, and by nobody who is not in the passage."""
    passages = [p for m in movements for p in m["passages"]]
    rows = list(csv.DictReader(io.StringIO(ask(program, "parts", "--format", "csv", score))))
    for row in rows:
        if row["kind"] not in ("lead", "answer", "share"):
            continue
        right = False
        for passage in passages:
            entries = [e for e in passage["entries"] if row["section"] in names_of(e["sections"], movements) and e["bar"] == row["bar"]]
            if passage["kind"] != row["passage"] or not entries:
                continue
            leads = row["kind"] == "lead"  # who also joins others in their turn enters in several links of one bar
            names = [name for e in passage["entries"] for name in e["sections"]] + [row["section"]]
            strangers = [n for n in re.findall(r"Vn I+|Va|Vc|Db|Violins|Winds", row["write"]) if not any(same_players(n, name) for name in names)]
            right = right or (not strangers and (row["kind"] == "share" or any((e["link"] == 1) == leads for e in entries)))
        told(score, "sheet", not right and "%s, bar %s: '%s' is in no passage" % (row["section"], row["bar"], row["write"]))
    for movement in movements:
        for passage in movement["passages"]:
            if passage["kind"] in ("exchange", "hocket", "split-line", "imitation") and passage["strength"] >= 0.5 and len(passage["links"]) > 1:
                for name in names_of([n for link in passage["links"] for n in link["sections"]], [movement]) & set(movement["groups"]):
                    told(score, "sheet", not has_role(rows, passage, name, movements) and "%s has nothing of the %s in bars %s" % (name, passage["kind"], bars(passage)))
    return {row["write"] for row in rows}


def has_role(rows, passage, name, movements):
    """Whether the player finds the passage in his own part, basses who read the cellos' in that."""
    entered = {e["bar"] for e in passage["entries"] if name in names_of(e["sections"], movements)}
    return any(row["passage"] == passage["kind"] and row["section"] in (name, name.replace("Db", "Vc")) and row["bar"] in entered for row in rows)


def same_players(said, name):
    return said in name or (said.startswith("V") and "Violins" in (said, name[:7]) and said[:2] in ("Vn", "Vi") and name[:2] in ("Vn", "Vi"))


def names_of(names, movements):
    """The single bodies of players behind a list of names: 'Violins' are all violin sections."""
    found = set()
    groups = {name for m in movements for p in m["passages"] for e in p["entries"] for name in e["sections"]} | {m for movement in movements for m in movement.get("groups", [])}
    for name in names:
        found.add(name)
        plain = re.match(r"\S+(?: I+)?", name).group(0)
        orchestra = re.search(r"orchestra \d", name)
        for group in groups:
            same = not orchestra or orchestra.group(0) in group
            if same and (group.startswith("Vn ") and "solo" not in group if plain == "Violins" else name == plain and group.startswith(plain + " ") and "solo" not in group):
                found.add(group)
    return found


FORMS = ["plain", "the", "to", "from", "of", "by", "with", "in"]


def sections_named(code, text):
    """The sections that a sentence names, in its order, whatever their grammatical form; soloists, numbers and orchestras left aside."""
    forms = {LANGUAGES[code]["section.%s.%s" % (s, form)].lower(): s for s in SECTIONS for form in FORMS}
    forms.update({LANGUAGES[code]["player.%s.%s" % (s, form)].lower(): s for s in SECTIONS[:6] for form in FORMS})  # one player alone
    names = "|".join(re.escape(form) for form in sorted(forms, key=len, reverse=True))
    return [forms[name] for name in re.findall(r"(?<!\w)(%s)(?!\w)" % names, flat(text).lower())]


def sections_of(names):
    found = {ENGLISH[re.fullmatch(r"(\S+(?: I+)?).*", name).group(1)] for name in names}
    return found | {"strings"} if found >= {"violins", "va", "vc", "db"} or found >= {"vn1", "vn2", "va", "vc"} else found


def in_order(named, links):
    """Whether each name belongs to the link at hand or to a later one."""
    at = 0
    for section in named:
        while at < len(links) and section not in links[at]:
            at += 1
    return at < len(links)


def one_by_one(names):
    """The sections that are meant, all violins as firsts and seconds."""
    found = sections_of(names)
    return (found - {"violins", "strings"}) | ({"vn1", "vn2"} if "violins" in found else set())


def told_of(citation, passage):
    """The names of the citation's links, where each of them is one of the passage's entries, but for those named before, and all but the first answer (in
    imitation they may call as well: the subject goes on from them); of two who lead, the first
    is of those who call by the passage's own name. Single notes that fly to and fro between its two sides are told of the sides."""
    at, entries, before = 0, passage["entries"], set()
    for i, names in enumerate(citation["links"]):
        who = one_by_one(names)
        while at < len(entries) and not (who in (one_by_one(entries[at]["sections"]), one_by_one(entries[at]["sections"]) - before) and (i == 0 or entries[at]["part_in_it"] == "answer" or passage["kind"] == "imitation")):
            at += 1
        before = before | who
    callers, answerers = [sections_of([name]) for name in passage["groups"]] if len(passage["groups"]) == 2 else ({}, {})
    first = sections_of(citation["links"][0]) if citation["links"] else set()
    if len(citation["links"]) == 2 and citation["led"] and callers != answerers and first & answerers and not first & callers:
        return None
    enter = {name for e in passage["entries"] for name in e["sections"]}
    both = [sections_of(names) for names in citation["links"]]
    if passage["kind"] == "hocket" and (both in ([callers, answerers], [answerers, callers]) or (len(both) == 2 and not both[0] & both[1] and all(set(names) <= enter for names in citation["links"]))):
        return citation["links"]
    if at < len(entries) or citation["links"] == [link["sections"] for link in passage["links"]]:
        return citation["links"]
    return None


def names_in_order(named, citation, passage):
    told_links = told_of(citation, passage)
    if told_links is None:
        return False
    links = [sections_of(names) for names in told_links]
    if len(links) < 2:  # a division, a coupling, or all with some of their own
        links = [sections_of([name]) for name in passage["groups"]]
    return in_order(named, links) or (len(links) == 2 and in_order(named, links[::-1]))  # of two, 'these reply to those' will do


def put_together(pieces):
    """Several passages that are told as one: theirs are its bars and all its entries, of which all but the first answer."""
    pieces = sorted(pieces, key=lambda p: p["first_index"])
    entries = {}
    for passage in pieces:
        for e in passage["entries"]:
            there = (number_of(e["bar"]), e["beat"], tuple(e["sections"]))
            entries.setdefault(there, dict(e, part_in_it="answer" if entries else e["part_in_it"]))
    return dict(pieces[0], kind="imitation" if any(p["kind"] == "imitation" for p in pieces) else pieces[0]["kind"], groups=[], links=[],
                strength=max(p["strength"] for p in pieces), last_index=max(p["last_index"] for p in pieces),
                entries=[entries[k] for k in sorted(entries, key=lambda k: (k[0], fraction(k[1])))])


def fraction(beat):
    over, _, under = str(beat).partition("/")
    return int(over) / int(under or 1)


def number_of(bar):
    digits = re.match(r"\d+", str(bar))
    return int(digits.group()) if digits else 0


def programme_notes(program, score, code, movements):
    """Bars, names and order of entry of each citation, as its sentence gives them."""
    passages = [p for m in movements for p in m["passages"]]
    noted = json.loads(ask(program, "notes", "--all", "--format", "json", "--language", code, score))["movements"]
    for citation, listed in ((c, m["passages"]) for n, m in zip(noted, movements) for c in n["citations"]):
        same = [p for p in passages if all(p[key] == citation[key] for key in ("kind", "first_bar", "strength")) and p["last_index"] >= citation["last_index"]]
        if citation["pieces"]:
            same = [put_together([listed[i] for i in citation["pieces"]])]
        bars_told = re.search(r"\S+ (\S+?)(?:\u2013(\S+?))?(?:,|$)", citation["place"])
        printed = bars_told and (bars_told.group(1), bars_told.group(2) or bars_told.group(1)) == (citation["upbeat_to"] or citation["first_bar"], citation["last_bar"])
        told(score, "notes, " + code, (not same or not printed) and "'%s' is of no passage" % citation["place"])
        named = sections_named(code, citation["text"].split(".")[0])
        right = named and any(names_in_order(named, citation, passage) for passage in same)
        told(score, "notes, " + code, same and not right and "'%s' names others than %s" % (citation["text"], [p["links"] or p["groups"] for p in same]))


def marked_score(program, score, written, folder):
    marked = os.path.join(folder, "marked.musicxml")
    if subprocess.run([program, "mark", score, "-o", marked], capture_output=True).returncode:
        return  # a collection that goes into a compressed file only
    text = open(marked, encoding="utf-8", errors="replace").read()
    for direction in re.findall(r'<direction placement="above" id="spezzato-mark-.*?</direction>', text, re.S):
        for words in re.findall(r"<words[^>]*>(.*?)</words>", direction, re.S):
            plain = words.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
            for item in plain.split("; "):  # what begins at one moment stands in one text
                desks = re.match(r"(desks?|outside|inside) ", item)
                told(score, "marks", item not in written and not desks and "'%s' is not in the sheet" % item)


def main(program, scores):
    for score in scores:
        movements = json.loads(ask(program, "passages", "--format", "json", score))["movements"]
        page = json.loads(ask(program, "--format", "json", score))["movements"]
        for movement, whole in zip(movements, page):
            movement["groups"] = whole["groups"]
        passages = [p for m in movements for p in m["passages"]]
        for code in LANGUAGES:
            if len(movements) == 1:
                text_page(program, score, code, passages)
            with tempfile.TemporaryDirectory() as folder:
                web_page(program, score, code, movements, folder)
            programme_notes(program, score, code, movements)
        row_and_sentence(score, passages)
        written = parts_sheet(program, score, movements)
        with tempfile.TemporaryDirectory() as folder:
            marked_score(program, score, written, folder)
    for fault in faults[:20]:
        print(fault)
    print("%d tellings compared, %d contradict the JSON" % (compared, len(faults)))
    return 1 if faults or not compared else 0


sys.exit(main(sys.argv[1], sys.argv[2:]))
