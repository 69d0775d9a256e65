#!/usr/bin/env python3
"""Share of the hand-overs of the main melody between the two violin sections that lie in, or touch, a reported passage of the violins.

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


def passages(movement, strength):
    for p in movement['passages']:
        if p['kind'] in KINDS and set(p['sections']) <= VIOLINS and p['strength'] >= strength:
            yield bar(p['first_bar']), bar(p['last_bar'])


def touched(spans, found):
    return [any(a <= last and b >= first for a, b in found) for first, last in spans]


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    print('| movement | hand-overs | in or at a passage of the violins | ... that is clear or striking | not touched, bars |\n|---|---|---|---|---|')
    sums = [0, 0, 0]
    for path in sys.argv[2:]:
        with open(path, encoding='utf-8') as file:
            movement = json.load(file)['movements'][0]
        name = os.path.basename(path)[:-5]
        table = os.path.join(sys.argv[1], name + '_annotations.csv')
        spans = list(handovers(table)) if os.path.exists(table) else []
        if not spans:
            continue
        any_one, clear = (touched(spans, list(passages(movement, least))) for least in (0.0, 0.5))
        missed = ', '.join('%d-%d' % span for span, met in zip(spans, any_one) if not met)
        print('| %s | %d | %d | %d | %s |' % (name, len(spans), sum(any_one), sum(clear), missed))
        sums = [s + x for s, x in zip(sums, (len(spans), sum(any_one), sum(clear)))]
    if sums[0]:
        print('| all | %d | %d (%.2f) | %d (%.2f) | |' % (sums[0], sums[1], sums[1] / sums[0], sums[2], sums[2] / sums[0]))


main()
