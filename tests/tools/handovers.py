#!/usr/bin/env python3
"""Share of the hand-overs of the main melody between the two violin sections that lie in, or touch, a reported antiphonal passage.

    handovers.py SCORES READING.json...

SCORES holds NAME_annotations.csv (where an expert hears the main melody enter). A hand-over is two entries that follow each other, with the
same label, less than eight bars apart, one in the first violins and one in the second. It is the bars from the one entry to the other. Prints
a Markdown table. A reading is what `spezzato passages --format json` prints.
"""
import csv
import json
import os
import sys

VIOLINS = {'Vn I', 'Vn II', 'Vn III', 'Violins'}
KINDS = {'exchange', 'hocket', 'split-line', 'imitation'}
PARTS = {'Vln 1', 'Vln 2'}


def bar(label):
    digits = ''.join(c for c in str(label) if c.isdigit())
    return int(digits) if digits else 0


def handovers(path):
    with open(path, encoding='utf-8') as file:
        entries = list(csv.DictReader(file))
    for one, next_one in zip(entries, entries[1:]):
        first, last = bar(one['measure']), bar(next_one['measure'])
        if one['label'] == next_one['label'] and {one['part'], next_one['part']} == PARTS and 0 <= last - first < 8:
            yield first, last


def any_passage(passage):
    return True


def both_speak(passage):
    """Both violin sections have entries in it, alone or with others, or it is named after violins alone."""
    speak = {name for entry in passage['entries'] for name in [entry['section']] + entry['sections']}
    return of_violins(passage) or {'Vn I', 'Vn II'} <= speak


def of_violins(passage):
    return set(passage['sections']) <= VIOLINS


def clear_of_violins(passage):
    return of_violins(passage) and passage['strength'] >= 0.5


COLUMNS = (('any reported passage', any_passage), ('one in which both sections speak', both_speak),
           ('one named after violins alone', of_violins), ('... that is clear or striking', clear_of_violins))


def passages(movement, wanted):
    for p in movement['passages']:
        if p['kind'] in KINDS and wanted(p):
            yield bar(p['first_bar']), bar(p['last_bar'])


def touched(spans, found):
    return [any(a <= last and b >= first for a, b in found) for first, last in spans]


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    print('| movement | hand-overs | %s | no passage of violins alone, bars |\n|%s' % (' | '.join(name for name, _ in COLUMNS), '---|' * (len(COLUMNS) + 3)))
    sums = [0] * (len(COLUMNS) + 1)
    for path in sys.argv[2:]:
        with open(path, encoding='utf-8') as file:
            movement = json.load(file)['movements'][0]
        name = os.path.basename(path)[:-5]
        table = os.path.join(sys.argv[1], name + '_annotations.csv')
        spans = list(handovers(table)) if os.path.exists(table) else []
        if not spans:
            continue
        met = [touched(spans, list(passages(movement, wanted))) for _, wanted in COLUMNS]
        strict = touched(spans, list(passages(movement, of_violins)))
        missed = ', '.join('%d-%d' % span for span, touches in zip(spans, strict) if not touches)
        print('| %s | %d | %s | %s |' % (name, len(spans), ' | '.join('%d' % sum(m) for m in met), missed))
        sums = [s + x for s, x in zip(sums, [len(spans)] + [sum(m) for m in met])]
    if sums[0]:
        print('| all | %d | %s | |' % (sums[0], ' | '.join('%d (%.2f)' % (s, s / sums[0]) for s in sums[1:])))


main()
