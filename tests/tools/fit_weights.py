#!/usr/bin/env python3
"""Fits the weights by which evidence.c turns the features of a match into its chance.

    fit_weights.py BUILD SHARED READINGS

BUILD holds the programs evidence-table and weights-table, SHARED the scores, their settled tables (expert/), quartet movements with first
readings (quartets/) and score_passages.py, READINGS the first readings of the other quartets (first/) and the settled tables of all of them
(settled/), by which quartets are scored. Needs numpy; takes a minute or two. Prints the table of weights for
evidence.c, then the figures of score_passages.py: with weights fitted to everything, and for each work with weights fitted to all the
others (quartets: a fifth of them left out at a time).

How: a row of a table says which sections answer each other, not which match is meant. So each row is a vote over the matches between two
of its links that cover about the same bars, shared out by how good they look so far (expectation), and the weights are moved to the least
logistic loss with a normal prior (maximisation, by Newton's method), in turn. Matches of which hardly a bar lies in a row of two of its
links are the counter-examples; all movements of a kind weigh the same in them. Quartets have a bias of their own, which is not used
afterwards: of four players fewer passages are marked than of sections.
"""
import csv
import importlib.util
import os
import subprocess
import sys
import tempfile

import numpy

SAME_BARS = 0.34   # bars shared over bars of either, from which on a match may be what a row means; under it, it is none of it
MARGINAL = 0.25    # what a row that its reader calls marginal counts
AGAINST = 3.0      # weight of all counter-examples over that of all rows
PRIOR = 5.0        # of the squared weights, half of it against the summed loss, for features with spread 1
LATER = 0.5        # spread of the features after the first 38: less is known about them
FIRST_FEATURES = 38
QUARTET_SPREAD = 2.0
CLOSENESS = 2.0    # how much a like extent says for a match beside its odds
ROUNDS, STEPS = 5, 12
FIFTHS = 5
KINDS = {'settled': 1.0, 'quartet': 0.25, 'own': 0.5}  # what the rows and counter-examples of a table weigh, chosen by works left out


def load_scorer(shared):
    path = os.path.join(shared, 'bin', 'score_passages.py')
    spec = importlib.util.spec_from_file_location('score_passages', path)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def work_of(name, kind):
    """Movements of one work are left out together: 'Brahms_Op.68_1' and 'Brahms_Op.68_4'; each quartet is a work."""
    head, _, last = name.rpartition('_')
    return head if kind == 'settled' and last.isdigit() else kind + name


class Movement:
    """The matches of a score, and the rows that a reader marked in it."""

    def __init__(self, scorer, kind, table, score, program):
        self.kind, self.score, self.name = kind, score, os.path.basename(table)[:-4]
        self.work = work_of(self.name, kind)
        text = subprocess.run([program, score], stdout=subprocess.PIPE, check=True, text=True).stdout
        matches = list(csv.DictReader(text.splitlines(), delimiter='\t'))
        heads = text.splitlines()[0].split('\t')
        self.names = heads[heads.index('same'):heads.index('strength')]
        self.features = numpy.array([[float(m[name]) for name in self.names] for m in matches]).reshape(len(matches), len(self.names))
        self.pairs = [(scorer.section(m['caller']), scorer.section(m['responder'])) for m in matches]
        self.bars = [(scorer.bar(m['start']), scorer.bar(m['end'])) for m in matches]
        self.rows = [row for row in scorer.expert_table(table) if row['kind'] in scorer.ANTIPHONY and row['scored']]
        self.told = [set() for _ in matches]
        self.votes = [vote for vote in (self.vote(scorer, row) for row in self.rows) if vote[1]]
        self.against = [i for i, (first, last) in enumerate(self.bars)
                        if all(self.pairs[i]) and len(self.told[i]) < SAME_BARS * (last - first + 1)]

    def vote(self, scorer, row):
        """(weight, [(match, likeness of extent)...]) of a row."""
        start, end, meant = min(row['bars']), max(row['bars']), []
        for i, (first, last) in enumerate(self.bars):
            shared = min(end, last) - max(start, first) + 1
            if shared > 0 and all(self.pairs[i]) and scorer.same(row, {'pair': self.pairs[i]}):
                self.told[i].update(range(max(start, first), min(end, last) + 1))
                likeness = shared / (max(end, last) - min(start, first) + 1)
                if likeness >= SAME_BARS:
                    meant.append((i, likeness))
        return (MARGINAL if row['strength'] == 1 else 1.0, meant)


class Examples:
    """What the weights are fitted to: features with mean 0 and spread 1, the quartets' own bias, and the votes."""

    def __init__(self, movements):
        votes = sum(KINDS[m.kind] * len(m.votes) for m in movements)
        weights = sum(KINDS[m.kind] for m in movements)
        rows, fixed, index, match, likeness, worth = [], [], [], [], [], []
        for m in movements:
            base = sum(map(len, rows))
            against = numpy.zeros(len(m.features))
            if m.against:
                against[m.against] = AGAINST * votes * KINDS[m.kind] / weights / len(m.against)
            for weight, meant in m.votes:
                for i, like in meant:
                    index.append(len(worth))
                    match.append(base + i)
                    likeness.append(like)
                worth.append(KINDS[m.kind] * weight)
            rows.append(numpy.hstack([m.features, numpy.full((len(m.features), 1), float(m.kind != 'settled'))]))
            fixed.append(against)
        features, self.fixed = numpy.vstack(rows), numpy.concatenate(fixed)
        self.index, self.match, self.likeness, self.worth = map(numpy.array, (index, match, likeness, worth))
        self.used = self.fixed > 0
        self.used[self.match] = True
        self.mean, spread = features[self.used].mean(0), features[self.used].std(0)
        spread[spread == 0] = 1
        scale = numpy.ones(features.shape[1])
        scale[FIRST_FEATURES:] = LATER
        scale[-1] = QUARTET_SPREAD
        self.unit = scale / spread
        self.columns = numpy.hstack([(features - self.mean) * self.unit, numpy.ones((len(features), 1))])

    def expect(self, odds):
        """Weight of each match as an example, given how good the matches look."""
        looks = numpy.exp(numpy.clip(CLOSENESS * self.likeness + odds[self.match], -500, 500))
        shares = looks / numpy.bincount(self.index, looks)[self.index]
        return numpy.bincount(self.match, self.worth[self.index] * shares, len(odds))


def least_loss(columns, wanted, fixed, weights):
    pull = numpy.full(len(weights), PRIOR)
    pull[-1] = 0
    total = wanted + fixed
    for _ in range(STEPS):
        likely = 1 / (1 + numpy.exp(-numpy.clip(columns @ weights, -30, 30)))
        slope = columns.T @ (total * likely - wanted) + pull * weights
        bend = (columns * (total * likely * (1 - likely))[:, None]).T @ columns + numpy.diag(pull)
        step = numpy.linalg.solve(bend, slope)
        weights = weights - step
        if abs(step).max() < 1e-3:
            break
    return weights


def fit(movements):
    """{feature: weight, 'bias': ...} for features as they come."""
    examples = Examples(movements)
    columns, fixed = examples.columns[examples.used], examples.fixed[examples.used]
    weights = numpy.zeros(columns.shape[1])
    for _ in range(ROUNDS):
        wanted = examples.expect(examples.columns @ weights)[examples.used]
        weights = least_loss(columns, wanted, fixed, weights)
    raw = weights[:-1] * examples.unit
    raw[-1] *= 0  # the bias of the quartets
    bias = weights[-1] - (raw[:-1] * examples.mean[:-1]).sum() - weights[-2] * examples.unit[-1] * examples.mean[-1]
    return dict(zip(movements[0].names, raw[:-1])) | {'bias': bias}


def hear(movement, weights, program, folder):
    """Writes the passages that the program finds with these weights; the file's path."""
    table, reading = os.path.join(folder, 'weights'), os.path.join(folder, movement.name + '.json')
    with open(table, 'w', encoding='utf-8') as file:
        file.writelines('%s %.6f\n' % item for item in weights.items())
    with open(reading, 'w', encoding='utf-8') as file:
        subprocess.run([program, table, movement.score], stdout=file, check=True)
    return reading


def report(title, shared, tables, readings, each):
    command = [sys.executable, os.path.join(shared, 'bin', 'score_passages.py'), tables] + readings
    text = subprocess.run(command, stdout=subprocess.PIPE, check=True, text=True).stdout
    lines = [' '.join(line.split()) for line in text.splitlines() if ' antiphony' in line]
    print('\n%s' % title)
    for line in lines[0 if each else -1:]:
        print('  ' + line)


def print_weights(weights):
    print('Weights for evidence.c:')
    line = '   '
    for name, value in weights.items():
        item = ' bias = %.3f;' % value if name == 'bias' else ' [F_%s] = %.3f,' % (name.upper(), value)
        if len(line) + len(item) > 126:
            print(line)
            line = '   '
        line += item
    print(line)


def gather(scorer, shared, own, program):
    found = []
    for kind, tables, scores in (('settled', os.path.join(shared, 'expert'), 'scores'), ('quartet', os.path.join(shared, 'quartets'), 'quartets'),
                                 ('own', os.path.join(own, 'first'), 'quartets')):
        for name in sorted(os.listdir(tables)):
            score = os.path.join(shared, scores, name[:-4] + '.mxl')
            if name.endswith('.tsv') and os.path.exists(score):
                found.append(Movement(scorer, kind, os.path.join(tables, name), score, program))
    return found


def hear_left_out(movements, left_out, listener, folder):
    """Each of the lists of works in turn heard with weights fitted to all the others."""
    readings = []
    for works in left_out:
        others = fit([m for m in movements if m.work not in works])
        readings += [hear(m, others, listener, folder) for m in movements if m.work in works]
    return sorted(readings)


def main():
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    build, shared, own = sys.argv[1:]
    expert = os.path.join(shared, 'expert')
    movements = gather(load_scorer(shared), shared, own, os.path.join(build, 'evidence-table'))
    for kind in KINDS:
        of_kind = [m for m in movements if m.kind == kind]
        print('%s: %d movements of %d works, %d rows, %d of them with a match that may be meant, %d matches'
              % (kind, len(of_kind), len({m.work for m in of_kind}), sum(len(m.rows) for m in of_kind),
                 sum(len(m.votes) for m in of_kind), sum(len(m.bars) for m in of_kind)))
    weights = fit(movements)
    print_weights(weights)
    listener = os.path.join(build, 'weights-table')
    works = sorted({m.work for m in movements if m.kind == 'settled'})
    quartet_works = sorted({m.work for m in movements if m.kind != 'settled'})
    with tempfile.TemporaryDirectory() as together, tempfile.TemporaryDirectory() as apart, tempfile.TemporaryDirectory() as quartets:
        seen = [hear(m, weights, listener, together) for m in movements if m.kind == 'settled']
        report('Fitted to everything, the settled tables:', shared, expert, seen, False)
        unseen = hear_left_out(movements, [[work] for work in works], listener, apart)
        report('Each work with weights fitted to all the others, the settled tables:', shared, expert, unseen, True)
        fifths = [quartet_works[i::FIFTHS] for i in range(FIFTHS)]
        report('Quartets, a fifth of them left out at a time, their settled tables:', shared, os.path.join(own, 'settled'), hear_left_out(movements, fifths, listener, quartets), False)


main()
