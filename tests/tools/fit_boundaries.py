#!/usr/bin/env python3
"""Where groups of notes begin, held against published annotations of the main melody, and the weights of boundaries.c fitted to them.

    fit_boundaries.py BOUNDARIES-TABLE SCORES [--weights | READING.json...]

SCORES holds NAME.mxl and NAME_annotations.csv (OpenScore Orchestra, Hauptstimme annotations: qstamp, the moment in crotchets at which a part takes the
main melody, and part_num, its place in the score). Where a string part takes it, a group of its notes begins; elsewhere nothing is said, so an entry is held
against the notes of the same part within four bars on either side. Prints a Markdown table; with --weights the weights as they are written in C. They are
fitted to the least loss of a choice among these notes (conditional logit). With readings (`spezzato passages --format json`) prints where their passages'
entries begin beside the annotated ones of the same section. Asks for numpy.
"""
import collections
import csv
import fractions
import glob
import json
import os
import subprocess
import sys

import numpy as np

BARS = 4       # on either side of an entry
SHARE = 0.2    # of all notes: about as many as come after a rest or a note twice as long
RIDGE = 1.0
HALF = 50.0    # entries of a movement that count half: long movements say the same again
BESIDE = 2     # notes by which an entry is told beside where it begins
KINDS = {'exchange', 'hocket', 'imitation'}
CLEAR = 0.5
ONSET, END, NEXT, INTERVAL, BAR, STRENGTH, CUES = range(7)


def work(name):
    """The movements of one work are left out together."""
    return name.rsplit('_', 1)[0] if name[-1].isdigit() else name


class Movement:
    def __init__(self, table, scores, name):
        lines = subprocess.run([table, os.path.join(scores, name + '.mxl')], capture_output=True, text=True, check=True).stdout.splitlines()
        rows = [line.split('\t') for line in lines]
        self.name, self.cues = name, rows[0][1:]
        group_of = {int(row[2]): int(row[1]) for row in rows if row[0] == 'part'}
        self.group_named = {row[3]: int(row[1]) for row in rows if row[0] == 'part'}
        notes, self.place = {}, {}
        for row in rows:
            if row[0] == 'note':
                of = notes.setdefault(int(row[1]), [])
                self.place[int(row[1]), row[2], round(float(row[3]), 2)] = len(of)
                of.append([float(x) for x in row[4:]])
        self.notes = {group: np.array(of) for group, of in notes.items()}
        self.entries, self.annotated = self.read_entries(os.path.join(scores, name + '_annotations.csv'), group_of)

    def read_entries(self, path, group_of):
        """[(group, note)...] where an entry of a string part falls on a note of its section, first notes left out; and how many are annotated."""
        found, annotated = set(), 0
        with open(path, encoding='utf-8') as file:
            rows = [(float(row['qstamp']), group_of.get(int(row['part_num']))) for row in csv.DictReader(file)]
        for when, group in rows:
            if group not in self.notes:
                continue
            annotated += 1
            onsets = self.notes[group][:, ONSET]
            at = int(np.searchsorted(onsets, when - 0.01))
            if 0 < at < len(onsets) and abs(onsets[at] - when) < 0.01:
                found.add((group, at))
        return sorted(found), annotated

    def around(self, group, at):
        onsets, reach = self.notes[group][:, ONSET], BARS * self.notes[group][at, BAR]
        return slice(*np.searchsorted(onsets, [onsets[at] - reach, onsets[at] + reach]))


def fitted(movements):
    """Weights of the cues, by Newton's method."""
    choices = []
    for m in movements:
        for group, at in m.entries:
            near = m.around(group, at)
            choices.append((m.notes[group][near, CUES:], at - near.start, 2 * HALF / (HALF + len(m.entries))))
    weights = np.zeros(choices[0][0].shape[1])

    def loss(weights):
        odds = [cues @ weights for cues, _, _ in choices]
        return 0.5 * RIDGE * weights @ weights + sum(share * (np.log(np.exp(o - o.max()).sum()) + o.max() - o[at]) for o, (_, at, share) in zip(odds, choices))

    value = loss(weights)
    for _ in range(40):
        slope, bend = RIDGE * weights, RIDGE * np.eye(len(weights))
        for cues, at, share in choices:
            odds = cues @ weights
            chance = np.exp(odds - odds.max())
            chance /= chance.sum()
            mean = chance @ cues
            slope = slope - share * (cues[at] - mean)
            bend = bend + share * ((cues * chance[:, None]).T @ cues - np.outer(mean, mean))
        step, size = np.linalg.solve(bend, slope), 1.0
        while loss(weights - size * step) > value and size > 1e-3:
            size /= 2
        weights = weights - size * step
        before, value = value, loss(weights)
        if abs(before - value) < 1e-4 * value:
            break
    return weights


def published(notes):
    """Local boundary detection (Cambouropoulos, ICMC 2001): intervals of pitch, onsets and rests times their degrees of change, 1/4, 1/2 and 1/4 of them."""
    def strength(intervals):
        def change(a, b):
            return np.abs(a - b) / np.where(a + b > 0, a + b, 1)
        before, behind = np.append(0, intervals[:-1]), np.append(intervals[1:], 0)
        found = intervals * (change(before, intervals) + change(intervals, behind))
        return found / found.max() if found.max() > 0 else found
    onsets, rests = np.append(0, np.diff(notes[:, ONSET])), np.append(0, notes[1:, ONSET] - notes[:-1, END])
    return 0.25 * strength(np.abs(notes[:, INTERVAL])) + 0.5 * strength(onsets) + 0.25 * strength(rests)


class Tally:
    """How many notes around an entry are weaker than it (equals by half), and how many entries are among the strongest fifth of a movement's notes."""

    def __init__(self):
        self.above, self.strong = [], []

    def add(self, movement, strength):
        every = np.concatenate(list(strength.values()))
        least = np.quantile(every, 1 - SHARE)
        ties = (SHARE * len(every) - (every > least).sum()) / max(1, (every == least).sum())
        for group, at in movement.entries:
            here, near = strength[group][at], strength[group][movement.around(group, at)]
            self.above.append(((near < here).sum() + 0.5 * (near == here).sum() - 0.5) / max(1, len(near) - 1))
            self.strong.append(1.0 if here > least else ties if here == least else 0.0)

    def row(self, name):
        return '| %s | %.3f | %.3f |' % (name, np.mean(self.above), np.mean(self.strong))


def measure(movements):
    cue = movements[0].cues.index
    tallies = {name: Tally() for name in ('chance', 'after a rest', 'after a rest or a note twice as long', 'local boundary detection as published',
                                          'boundary strength, each work left out', 'boundary strength, weights in force')}
    for name in sorted({work(m.name) for m in movements}):
        weights = fitted([m for m in movements if work(m.name) != name])
        for m in (m for m in movements if work(m.name) == name):
            ways = [lambda n: np.zeros(len(n)), lambda n: n[:, CUES + cue('rest')],
                    lambda n: ((n[:, CUES + cue('rest')] > 0) | (n[:, CUES + cue('longer')] >= 1)).astype(float), published,
                    lambda n: n[:, CUES:] @ weights, lambda n: n[:, STRENGTH]]
            for tally, way in zip(tallies.values(), ways):
                tally.add(m, {group: way(notes) for group, notes in m.notes.items()})
    print('Entries in string parts: %d annotated, of which %d fall on a note of their section that has another before it.\n'
          % (sum(m.annotated for m in movements), sum(len(m.entries) for m in movements)))
    print('| where a group of notes is said to begin | notes around an entry that are weaker | entries among the strongest fifth of the notes |\n|---|---|---|')
    print('\n'.join(tally.row(name) for name, tally in tallies.items()))


def listed(movement, passages):
    """{group: notes with which it begins an entry of a passage that is clear}."""
    found = collections.defaultdict(set)
    for entry in (entry for p in passages if p['kind'] in KINDS and p['strength'] >= CLEAR for entry in p['entries']):
        beat = round(float(sum(fractions.Fraction(word) for word in entry['beat'].split())), 2)
        group = movement.group_named.get(entry['section'])
        if (group, entry['bar'], beat) in movement.place:
            found[group].add(movement.place[group, entry['bar'], beat])
    return found


def measure_heads(movements, paths):
    """Of the annotated entries with an entry listed in the same section within a bar: how many notes off the nearest one begins."""
    off = collections.Counter()
    for path in paths:
        with open(path, encoding='utf-8') as file:
            reading = json.load(file)['movements'][0]
        for m in (m for m in movements if m.name == os.path.basename(reading['file']).rsplit('.', 1)[0]):
            entries = listed(m, reading['passages'])
            for group, at in m.entries:
                onsets = m.notes[group][:, ONSET]
                near = [abs(at - i) for i in entries[group] if abs(onsets[i] - onsets[at]) <= m.notes[group][at, BAR] + 0.01]
                if near:
                    off[min(min(near), BESIDE + 1)] += 1
    print('| annotated entries with one listed in a bar around | begins with the same note | one or two notes beside | farther off |\n|---|---|---|---|')
    print('| %d | %d | %d | %d |' % (sum(off.values()), off[0], off[1] + off[BESIDE], off[BESIDE + 1]))


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    names = sorted(os.path.basename(path)[:-16] for path in glob.glob(os.path.join(sys.argv[2], '*_annotations.csv')))
    movements = [Movement(sys.argv[1], sys.argv[2], name) for name in names]
    if '--weights' in sys.argv:
        print('   ' + ''.join(' [BC_%s] = %.2f,' % (cue.upper(), weight) for cue, weight in zip(movements[0].cues, fitted(movements))))
    elif len(sys.argv) > 3:
        measure_heads(movements, sys.argv[3:])
    else:
        measure(movements)


main()
