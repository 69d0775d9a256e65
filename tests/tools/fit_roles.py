#!/usr/bin/env python3
"""Who has the line, held against published annotations of the main melody, and the weights of roles.c fitted to them.

    fit_roles.py ROLES-TABLE SCORES [--weights]

SCORES holds NAME.mxl and NAME_annotations.csv (OpenScore Orchestra, Hauptstimme annotations: qstamp, the moment in crotchets at which a part takes the
main melody, and part_num, its place in the score). Prints a Markdown table; with --weights the weights in force and how they are written in C. The
weights are fitted to the least loss of a choice among the voices that sound (conditional logit); whoever is in unison or octaves with the annotated part
is right as well. Asks for numpy.
"""
import csv
import glob
import os
import subprocess
import sys

import numpy as np

LEFT_OUT = {'recurs_bar', 'shuttles'}  # measured for the other roles; they tell nothing of the line in the annotated music
PASS = np.exp(-2.0)                 # as rule.pass of roles.c
TAKES = 0.1                         # as rule.takes
SOFT = 0.5                          # what a beat says counts half: neighbours say much the same
RIDGE = 10.0
MOVING = 0.3                        # share of notes at a new pitch


def work(name):
    """The movements of one work are left out together."""
    return name.rsplit('_', 1)[0] if name[-1].isdigit() else name


class Movement:
    def __init__(self, table, scores, name):
        lines = subprocess.run([table, os.path.join(scores, name + '.mxl')], capture_output=True, text=True, check=True).stdout.splitlines()
        rows = [line.split('\t') for line in lines]
        beats = [row[1:] for row in rows if row[0] == 'beat']
        voices = [row[1:] for row in rows if row[0] == 'voice']
        self.name, self.names = name, rows[0][1:]
        self.voice_of = {int(part): int(voice) for voice, part, _, _ in reversed(voices)}
        count = max(int(row[0]) for row in voices) + 1
        self.string = np.zeros(count, bool)
        self.first_violins = next((int(row[0]) for row in voices if row[2].startswith('Vn I')), 0)
        for row in voices:
            self.string[int(row[0])] = row[3] == '1'
        at = [[int(row[0]) for row in beats], [int(row[3]) for row in beats]]
        length = max(at[0]) + 1
        self.measures = np.zeros((length, count, len(self.names)))
        self.sounds = np.zeros((length, count), bool)
        self.led = np.zeros((length, count), bool)
        self.now = np.zeros((length, count), bool)
        self.onsets = np.zeros(length)
        unison = np.zeros((length, count), np.uint64)
        self.measures[tuple(at)] = [[float(x) for x in row[8:]] for row in beats]
        self.sounds[tuple(at)] = True
        self.now[tuple(at)] = [row[5] != '0' for row in beats]  # sounds in the beat itself, not only around it
        self.led[tuple(at)] = [row[6] == '1' for row in beats]
        unison[tuple(at)] = [int(row[4], 16) for row in beats]
        self.onsets[at[0]] = [float(row[2]) for row in beats]
        # [beat, a, b]: b plays in unison or octaves with a
        self.same = (unison[..., None] >> np.arange(count, dtype=np.uint64) & np.uint64(1)).astype(bool) & self.sounds[:, None]
        self.same[:, np.arange(count), np.arange(count)] = True
        self.read_annotations(os.path.join(scores, name + '_annotations.csv'))

    def read_annotations(self, path):
        """truth: the annotated voice of each beat in which it sounds, by its beginning (and a little, as it may have an upbeat of its own); -1: none."""
        with open(path, encoding='utf-8') as file:
            entries = [(float(row['qstamp']), self.voice_of.get(int(row['part_num']), -1)) for row in csv.DictReader(file)]
        place = np.searchsorted([when for when, _ in entries], self.onsets + 0.4, 'right') - 1
        self.truth = np.where(place >= 0, np.array([voice for _, voice in entries])[place], -1)
        known = np.nonzero(self.truth >= 0)[0]
        silent = known[~self.now[known, self.truth[known]]]
        self.truth[silent] = -1
        self.beats = np.nonzero((self.truth >= 0) & self.sounds.any(1))[0]


def fitted(movements, columns, spread):
    """Weights of the columns by L-BFGS; every movement weighs the same."""
    data = []
    for m in movements:
        i = m.beats
        data.append((m.measures[i][..., columns] / spread * m.sounds[i][..., None], m.sounds[i], m.same[i, m.truth[i]], 500.0 / len(i)))

    def loss(weights):
        value, slope = RIDGE * weights @ weights, 2 * RIDGE * weights
        for measures, sounds, right, share in data:
            odds = np.where(sounds, measures @ weights, -1e9)
            chance = np.exp(odds - odds.max(1, keepdims=True))
            hit = chance * right
            value -= share * np.log(hit.sum(1) / chance.sum(1)).sum()
            slope = slope - share * np.einsum('bv,bvf->f', hit / hit.sum(1, keepdims=True) - chance / chance.sum(1, keepdims=True), measures)
        return value, slope

    weights, pairs = np.zeros(len(columns)), []
    value, slope = loss(weights)
    for _ in range(150):
        step, used = slope.copy(), []
        for s, y in reversed(pairs):
            used.append(s @ step / (y @ s))
            step -= used[-1] * y
        step *= pairs[-1][0] @ pairs[-1][1] / (pairs[-1][1] @ pairs[-1][1]) if pairs else 1 / max(1, np.linalg.norm(slope))
        for (s, y), a in zip(pairs, reversed(used)):
            step += s * (a - y @ step / (y @ s))
        size = 1.0
        while True:
            next_value, next_slope = loss(weights - size * step)
            if next_value <= value - 1e-4 * size * (slope @ step) or size < 1e-6:
                break
            size /= 2
        if -(size * step) @ (next_slope - slope) > 1e-10:
            pairs = (pairs + [(-size * step, next_slope - slope)])[-8:]
        weights = weights - size * step
        done = abs(value - next_value) < 1e-6 * abs(value)
        value, slope = next_value, next_slope
        if done:
            break
    return weights / spread * SOFT


def leaders(movement, columns, weights, among):
    """The voice that most likely has the line in each beat, as follow_line of roles.c; `among`: the voices to choose from."""
    sounds = movement.sounds & among
    odds = np.where(sounds, movement.measures[..., columns] @ weights, -1e9)
    looks = np.where(sounds, np.exp(odds - odds.max(1, keepdims=True)), 1e-6)
    looks[~sounds.any(1)] = 1
    seen = np.zeros_like(looks)
    before = np.full(looks.shape[1], 1 / looks.shape[1])
    for b in range(len(looks)):
        before = (before + PASS) * looks[b]
        before /= before.sum()
        seen[b] = before
    after = np.full(looks.shape[1], 1 / looks.shape[1])
    for b in reversed(range(len(looks))):
        seen[b] *= after + PASS
        after = (after + PASS) * looks[b]
        after /= after.sum()
    seen = np.where(among, seen / seen.sum(1, keepdims=True), -1)
    return np.where(movement.now & (seen >= TAKES), seen + 1, seen).argmax(1)


def highest(movement, among):
    """The highest of the voices that move; of those that sound where none moves."""
    height = movement.measures[..., movement.names.index('top')] + 0.01 * movement.measures[..., movement.names.index('above')]
    sounds = movement.now & among
    moves = sounds & (movement.measures[..., movement.names.index('moves')] >= MOVING)
    return np.where(moves, height + 10, np.where(sounds, height, -10)).argmax(1)


class Tally:
    """Of the beats in which the annotation names a string part, and of all: how many are right, and how many voices are called the line."""

    def __init__(self):
        self.strings, self.winds, self.voices = np.zeros(2), np.zeros(2), np.zeros(2)

    def add(self, m, leader):
        right = m.same[m.beats, leader[m.beats], m.truth[m.beats]]
        string = m.string[m.truth[m.beats]]
        self.strings += right[string].sum(), string.sum()
        self.winds += right[~string].sum(), (~string).sum()
        self.voices += m.same[m.beats, leader[m.beats]].sum(), len(m.beats)

    def row(self, name):
        everything = self.strings + self.winds
        return '| %s | %s | %s | %s | %.2f |' % (name, share(self.strings), share(self.winds), share(everything), self.voices[0] / self.voices[1])


def share(part):
    return '%.3f' % (part[0] / part[1]) if part[1] else '-'


def measure(movements, columns, spread):
    methods = ['first violins always', 'highest moving string', 'highest moving part', 'the line among the strings, each work left out',
               'the line, each work left out', 'the line, weights in force']
    tallies = {name: Tally() for name in methods}
    by_movement = []
    for name in sorted({work(m.name) for m in movements}):
        weights = fitted([m for m in movements if work(m.name) != name], columns, spread)
        for m in (m for m in movements if work(m.name) == name):
            anybody = np.ones(len(m.string), bool)
            found = [np.full(len(m.truth), m.first_violins), highest(m, m.string), highest(m, anybody), leaders(m, columns, weights, m.string),
                     leaders(m, columns, weights, anybody), m.led.argmax(1)]
            own = [Tally() for _ in methods]
            for tally, method, leader in zip(own, methods, found):
                tally.add(m, leader)
                tallies[method].add(m, leader)
            by_movement.append('| %s | %d | %s | %s | %s | %s |' % (m.name, len(m.beats), share(own[1].strings), share(own[3].strings),
                                                                  share(own[2].strings + own[2].winds), share(own[4].strings + own[4].winds)))
    total = tallies[methods[0]]
    print('Beats: %d, in %d of which the annotation names a string part.\n' % (total.voices[1], total.strings[1]))
    print('| who is said to have the line | right where a string part has it | where a wind part has it | of all | parts called the line |\n|---|---|---|---|---|')
    for method in methods:
        print(tallies[method].row(method))
    print('\nBy movement; where a string part has it, among the strings; then of all beats, among all parts (each work left out):\n')
    print('| movement | beats | highest moving string | the line | highest moving part | the line |\n|---|---|---|---|---|---|')
    print('\n'.join(sorted(by_movement)))


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    names = sorted(os.path.basename(path)[:-16] for path in glob.glob(os.path.join(sys.argv[2], '*_annotations.csv')))
    movements = [Movement(sys.argv[1], sys.argv[2], name) for name in names]
    columns = [i for i, name in enumerate(movements[0].names) if name not in LEFT_OUT]
    spread = np.concatenate([m.measures[m.sounds][:, columns] for m in movements]).std(0) + 1e-9
    if '--weights' in sys.argv:
        for column, weight in zip(columns, fitted(movements, columns, spread)):
            print('    [RM_%s] = %.3fF,' % (movements[0].names[column].upper(), weight))
    else:
        measure(movements, columns, spread)


main()
