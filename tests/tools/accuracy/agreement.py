#!/usr/bin/env python3
"""How far readers agree: one table of a movement held against another as if the program had found it, by the measures of score_passages.py.

    agreement.py SCORER_DIR LABEL RULER[:RULER...] TABLES[:TABLES...] [LABEL RULER TABLES ...]

Folders of NAME.tsv; of several, the first that has the movement counts. Each triple becomes one row of a Markdown table, over all movements that both have:
recall, precision, F1, bar F1, striking, names.
"""
import csv
import os
import sys

STRENGTHS = {1: 0.3, 2: 0.6, 3: 0.9}  # as the program would tell them: marginal, clear, striking


def tables_in(folders):
    found = {}
    for folder in reversed(folders.split(':')):
        found.update({name: os.path.join(folder, name) for name in os.listdir(folder) if name.endswith('.tsv')})
    return found


def as_found(scorer, path):
    """The rows of a table as passages of the program: named by caller and responder."""
    out = []
    with open(path, encoding='utf-8') as file:
        for row in csv.DictReader(file, delimiter='\t'):
            pair = (scorer.section(row['caller']), scorer.section(row['responder']))
            if row['kind'] in scorer.ANTIPHONY:
                out.append({'kind': row['kind'], 'pair': pair, 'scored': all(pair), 'bars': set(range(int(row['start']), int(row['end']) + 1)),
                            'strength': STRENGTHS[int(row['strength'])]})
    return out


def agreement(scorer, rulers, tables):
    sums = [0] * 10
    for name in sorted(rulers.keys() & tables.keys()):
        rows = [row for row in scorer.expert_table(rulers[name]) if row['kind'] in scorer.ANTIPHONY]
        sums = [a + b for a, b in zip(sums, scorer.score(rows, as_found(scorer, tables[name])))]
    recall, precision = scorer.ratio(sums[0], sums[1]), scorer.ratio(sums[2], sums[3])
    return (recall, precision, 2 * recall * precision / (recall + precision), scorer.ratio(2 * sums[4], sums[5] + sums[6]),
            scorer.ratio(sums[7], sums[8]), scorer.ratio(sums[9], sums[2]))


def main():
    if len(sys.argv) < 5 or len(sys.argv) % 3 != 2:
        sys.exit(__doc__)
    sys.dont_write_bytecode = True
    sys.path.insert(0, sys.argv[1])
    import score_passages as scorer
    for at in range(2, len(sys.argv), 3):
        figures = agreement(scorer, tables_in(sys.argv[at + 1]), tables_in(sys.argv[at + 2]))
        print('| %s | %s |' % (sys.argv[at], ' | '.join('%.2f' % figure for figure in figures)))


main()
