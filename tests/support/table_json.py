#!/usr/bin/env python3
"""Writes tables of passages that readers marked in the form in which the program prints its own, so that the same script can score them.

    table_json.py TABLE.tsv... FOLDER

FOLDER gets one NAME.json for each NAME.tsv. A passage called marginal gets a strength below 0.5, as the program's own marginal ones have.
"""
import csv
import json
import os
import sys

STRENGTH = {'1': 0.3, '2': 0.6, '3': 0.9}


def passages(path):
    with open(path, encoding='utf-8') as file:
        for row in csv.DictReader(file, delimiter='\t'):
            responder = row['responder'].strip(' -') or row['caller']
            yield {'kind': row['kind'], 'sections': [row['caller'], responder], 'first_bar': row['start'], 'last_bar': row['end'],
                   'strength': STRENGTH[row['strength']]}


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    for path in sys.argv[1:-1]:
        name = os.path.basename(path)[:-4]
        with open(os.path.join(sys.argv[-1], name + '.json'), 'w', encoding='utf-8') as file:
            json.dump({'movements': [{'file': name + '.mxl', 'passages': list(passages(path))}]}, file)


main()
