"""Marks of a marked score keep apart: in no part are two brackets or dashed lines of ours open at a time, each of them ends, and no two texts of ours stand at
one place of a staff.

    marks_apart.py MARKED.musicxml

Prints how many texts and lines were looked at; status 1 where two meet."""
import sys
import xml.etree.ElementTree as tree

root = tree.parse(sys.argv[1]).getroot()
faults, texts, lines = [], 0, 0
for part in root.iter("part"):
    opened, most = set(), 0
    for measure in part.iter("measure"):
        here, clock = {}, 0.0
        for item in measure:
            if item.tag == "note" and item.find("chord") is None and item.find("grace") is None:
                clock += float(item.findtext("duration", "0"))
            elif item.tag == "forward":
                clock += float(item.findtext("duration", "0"))
            elif item.tag == "backup":
                clock -= float(item.findtext("duration", "0"))
            elif item.tag == "direction" and item.get("id", "").startswith("spezzato-mark-"):
                place = (clock + float(item.findtext("offset", "0")), item.findtext("staff", "1"))
                for words in item.iter("words"):
                    texts += 1
                    if place in here:
                        faults.append("two texts at one place, bar %s: '%s', '%s'" % (measure.get("number"), here[place], words.text))
                    here[place] = words.text
                for sign in list(item.iter("bracket")) + list(item.iter("dashes")):
                    key = (sign.tag, sign.get("number"))
                    if sign.get("type") == "start":
                        lines += 1
                        opened.add(key)
                    else:
                        opened.discard(key)
                    most = max(most, len(opened))
    if most > 1:
        faults.append("part %s: %d lines open at once" % (part.get("id"), most))
    if opened:
        faults.append("part %s: a line never ends" % part.get("id"))
for fault in faults:
    print("  " + fault)
print("%d texts, %d lines" % (texts, lines))
sys.exit(1 if faults else 0)
