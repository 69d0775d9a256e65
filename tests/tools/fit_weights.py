#!/usr/bin/env python3
"""Fits the weights by which evidence.c turns the features of a match into its strength.

    fit_weights.py BUILD SHARED READINGS

BUILD holds the programs evidence-table and weights-table, SHARED the scores and the expert tables, READINGS further tables in the same
form. Only what Python brings along is used; it takes a few minutes. Prints the table of weights for evidence.c, then the figures of
score_passages.py: with the weights fitted to all movements, and for each movement with weights fitted to all the others (leave one out).

How: a table says where two sections answer each other, not which match is meant. So each passage is a vote over the matches of the
same pair that cover about the same bars, shared out by how good they look so far (expectation), and the weights are moved down the
gradient of the logistic loss (maximisation), in turn. Matches of which hardly a bar lies in a passage of the same pair are the counter-examples;
all movements weigh the same in them.
"""
import csv
import math
import operator
import os
import subprocess
import sys
import tempfile

SAME_BARS = 0.34        # bars shared over bars of either, from which on a match may be what a passage means; under it, it is none of it
MARGINAL = 0.5          # what a passage that its reader calls marginal counts
AGAINST = 3.0           # weight of all counter-examples over that of all passages: sets where 0.5 lies
PRIOR = 0.2             # spread of the normal prior on the weights: times the summed loss, against half their square
ROUNDS, STEPS = 5, 32   # expectations, and gradient steps after each
PACE, MOMENTUM = 0.4, 0.9
CLOSENESS = 2.0         # how much a like extent says for a match beside its odds

SECTIONS = {'vn i': 'Vn1', 'vn1': 'Vn1', 'vn ii': 'Vn2', 'vn2': 'Vn2', 'vn iii': 'Vn3', 'vn3': 'Vn3', 'violins': 'Vns', 'vns': 'Vns',
            'va': 'Va', 'vas': 'Va', 'va1': 'Va', 'va2': 'Va', 'va3': 'Va', 'vc': 'Vc', 'vcs': 'Vc', 'vc1': 'Vc', 'vc2': 'Vc',
            'vc3': 'Vc', 'vccb': 'Vc', 'db': 'Cb', 'cb': 'Cb'}
KINDS = ('exchange', 'hocket', 'splitline', 'split-line', 'imitation')


def pair(one, other):
    """Two sections in alphabetic order; None where one of them is no string section."""
    names = sorted(SECTIONS.get(name.strip().lower(), '') for name in (one, other))
    return tuple(names) if names[0] else None


def same_pair(a, b):
    """As score_passages.py has it: all violins stand for either section."""
    if a == b:
        return True
    if 'Vns' not in a + b:
        return False
    joined = [sorted('Vns' if name in ('Vn1', 'Vn2') else name for name in p) for p in (a, b)]
    return joined[0] == joined[1]


def bar(label):
    digits = ''.join(c for c in label if c.isdigit())
    return int(digits) if digits else 0


class Movement:
    """The matches of a score, and the passages that a reader marked in it."""

    def __init__(self, name, table, score, program):
        self.name, self.score = name, score
        text = subprocess.run([program, score], stdout=subprocess.PIPE, check=True, text=True).stdout
        rows = csv.reader(text.splitlines(), delimiter='\t')
        heads = next(rows)
        first, last = heads.index('same'), heads.index('strength')
        self.names = heads[first:last]
        self.pairs, self.bars, self.features = [], [], []
        for row in rows:
            sections = pair(row[0], row[1])
            if sections:
                self.pairs.append(sections)
                self.bars.append((bar(row[2]), bar(row[3])))
                self.features.append([float(x) for x in row[first:last]])
        self.passages = list(read_passages(table))
        self.votes = [v for v in map(self.vote, self.passages) if v[1]]
        self.against = self.counter_examples()

    def vote(self, passage):
        """(weight, [(match, likeness of extent)...]) of a passage."""
        sections, (start, end), strength = passage
        meant = []
        for i, (first, last) in enumerate(self.bars):
            shared = min(end, last) - max(start, first) + 1
            if shared > 0 and same_pair(sections, self.pairs[i]):
                likeness = shared / (max(end, last) - min(start, first) + 1)
                if likeness >= SAME_BARS:
                    meant.append((i, likeness))
        return (MARGINAL if strength == 1 else 1.0, meant)

    def counter_examples(self):
        found = []
        for i, (first, last) in enumerate(self.bars):
            told = set()
            for sections, (start, end), _ in self.passages:
                if same_pair(sections, self.pairs[i]):
                    told.update(range(max(start, first), min(end, last) + 1))
            if len(told) < SAME_BARS * (last - first + 1):
                found.append(i)
        return found


def read_passages(path):
    with open(path, encoding='utf-8') as file:
        for row in csv.DictReader(file, delimiter='\t'):
            sections = pair(row['caller'], row['responder'].strip(' -') or row['caller'])
            if row['kind'] in KINDS and sections:
                yield sections, (int(row['start']), int(row['end'])), int(row['strength'])


class Examples:
    """What the weights are fitted to: features by column, each with mean 0 and spread 1."""

    def __init__(self, movements):
        self.rows, self.votes, index = [], [], {}
        self.fixed = []  # weight of each row as a counter-example
        passages = sum(len(m.votes) for m in movements)
        for m in movements:
            for i in m.against:
                self.rows.append(m.features[i])
                self.fixed.append(AGAINST * passages / len(movements) / len(m.against))
            for weight, meant in m.votes:
                for i, _ in meant:
                    if (m.name, i) not in index:
                        index[m.name, i] = len(self.rows)
                        self.rows.append(m.features[i])
                        self.fixed.append(0.0)
                self.votes.append((weight, [(index[m.name, i], likeness) for i, likeness in meant]))
        self.columns, self.means, self.spreads = [], [], []
        for column in zip(*self.rows):
            mean = sum(column) / len(column)
            spread = math.sqrt(sum((x - mean) ** 2 for x in column) / len(column)) or 1.0
            self.means.append(mean)
            self.spreads.append(spread)
            self.columns.append([(x - mean) / spread for x in column])

    def expect(self, odds):
        """Weight of each row as an example, given how good the rows look."""
        weights = [0.0] * len(self.rows)
        for weight, meant in self.votes:
            looks = [CLOSENESS * likeness + odds[i] for i, likeness in meant]
            most = max(looks)
            shares = [math.exp(x - most) for x in looks]
            for (i, _), share in zip(meant, shares):
                weights[i] += weight * share / sum(shares)
        return weights


def log_odds(columns, weights, bias):
    odds = [bias] * len(columns[0])
    for column, weight in zip(columns, weights):
        odds = [o + weight * x for o, x in zip(odds, column)]
    return odds


def likely(odds):
    return 1 / (1 + math.exp(-odds)) if odds > -500 else 0.0


def fit(movements):
    """{feature: weight, 'bias': ...} for features as they come."""
    examples = Examples(movements)
    weights, bias = [0.0] * len(examples.columns), 0.0
    speed, bias_speed = list(weights), 0.0
    for _ in range(ROUNDS):
        wanted = examples.expect(log_odds(examples.columns, weights, bias))
        total = sum(wanted) + sum(examples.fixed)
        pull = 1 / (PRIOR * total)
        for _ in range(STEPS):
            odds = log_odds(examples.columns, weights, bias)
            slope = [((w + f) * likely(o) - w) / total for w, f, o in zip(wanted, examples.fixed, odds)]
            for k, column in enumerate(examples.columns):
                speed[k] = MOMENTUM * speed[k] - PACE * (sum(map(operator.mul, column, slope)) + pull * weights[k])
                weights[k] += speed[k]
            bias_speed = MOMENTUM * bias_speed - PACE * sum(slope)
            bias += bias_speed
    found = {name: weights[k] / examples.spreads[k] for k, name in enumerate(movements[0].names)}
    found['bias'] = bias - sum(weights[k] * examples.means[k] / examples.spreads[k] for k in range(len(weights)))
    return found


def hear(movement, weights, program, folder):
    """Writes the passages that the program finds with these weights; the file's path."""
    table, reading = os.path.join(folder, 'weights'), os.path.join(folder, movement.name + '.json')
    with open(table, 'w', encoding='utf-8') as file:
        file.writelines('%s %.6f\n' % item for item in weights.items())
    with open(reading, 'w', encoding='utf-8') as file:
        subprocess.run([program, table, movement.score], stdout=file, check=True)
    return reading


def figures(shared, tables, readings):
    """The lines about antiphony that score_passages.py prints."""
    command = [sys.executable, os.path.join(shared, 'bin', 'score_passages.py'), tables] + readings
    text = subprocess.run(command, stdout=subprocess.PIPE, check=True, text=True).stdout
    return [' '.join(line.split()) for line in text.splitlines() if ' antiphony' in line]


def gather(shared, readings, folder):
    """One folder with all tables; the names of the experts' ones."""
    experts = []
    for origin in (os.path.join(shared, 'expert'), readings):
        for name in sorted(os.listdir(origin)):
            if name.endswith('.tsv'):
                os.symlink(os.path.abspath(os.path.join(origin, name)), os.path.join(folder, name))
                if origin != readings:
                    experts.append(name[:-4])
    return experts


def report(title, shared, tables, readings, each):
    print('\n%s' % title)
    for line in figures(shared, tables, readings)[0 if each else -1:]:
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


def main():
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    build, shared, own = sys.argv[1:]
    if not os.path.isdir(os.path.join(shared, 'scores')):
        print('skipped: the shared scores are not at hand (%s)' % shared)
        return
    with tempfile.TemporaryDirectory() as folder:
        tables, together, apart = (os.path.join(folder, name) for name in ('tables', 'together', 'apart'))
        for name in (tables, together, apart):
            os.mkdir(name)
        experts = gather(shared, own, tables)
        program = os.path.join(build, 'evidence-table')
        movements = [Movement(name[:-4], os.path.join(tables, name), os.path.join(shared, 'scores', name[:-4] + '.mxl'), program)
                     for name in sorted(os.listdir(tables))]
        passages, met = sum(len(m.passages) for m in movements), sum(len(m.votes) for m in movements)
        print('%d movements, %d passages, %d of them with a match that may be meant, %d matches\n'
              % (len(movements), passages, met, sum(len(m.bars) for m in movements)))
        weights = fit(movements)
        print_weights(weights)
        listener = os.path.join(build, 'weights-table')
        seen = [hear(m, weights, listener, together) for m in movements]
        unseen = [hear(m, fit([o for o in movements if o is not m]), listener, apart) for m in movements]
        of_experts = [os.path.join(apart, name + '.json') for name in experts]
        report('Fitted to all movements, the experts\' tables:', shared, os.path.join(shared, 'expert'), seen, False)
        report('Fitted to all movements, all tables:', shared, tables, seen, False)
        report('Each movement with weights fitted to the others, the experts\' tables:', shared, os.path.join(shared, 'expert'), of_experts, False)
        report('Each movement with weights fitted to the others, all tables:', shared, tables, unseen, True)


main()
