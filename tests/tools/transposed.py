"""Whether hearing hangs on the key: scores and their copies in six other keys (transpose.py), passage by passage.

    transposed.py PROGRAM SCORE...

Each copy must have the same passages as its original, one by one, in every field that `passages --format json` gives: bars, beats, names, strengths, intervals, entries; the notes named in them
moved by the interval of the key. Divisi are counted apart: whether one player can stop a chord hangs on the open strings. Prints how many passages were compared and what differs. Exit status 1 where something does.
"""
import json, os, re, subprocess, sys, tempfile
from transpose import NATURAL, STEPS, WAYS, moved, text_of

OF_THE_HAND = ("div2", "div3", "div4")  # what one player can stop hangs on the open strings, and so on the key


def note_moved(name, semitones, steps):
    step, alter, octave = re.fullmatch(r"([A-G])(#{1,3}|x|b{1,3}|)(-?\d+)", name).groups()
    place = STEPS.index(step) + steps
    wanted = NATURAL[step] + (alter.count("#") + 2 * alter.count("x") - alter.count("b")) + semitones - 12 * (place // 7)
    off = wanted - NATURAL[STEPS[place % 7]]
    if abs(off) > 2:  # named anew, as it leans
        midi = wanted + 12 * (int(octave) + place // 7)
        names = "C C# D D# E F F# G G# A A# B" if off > 0 else "C Db D Eb E F Gb G Ab A Bb B"
        return names.split()[midi % 12] + str(midi // 12)
    return STEPS[place % 7] + ("#" * off if off > 0 else "b" * -off) + str(int(octave) + place // 7)


def passages(program, path, file):
    """A passage as a line, its notes moved where `way` says; the file's name is not compared."""
    run = subprocess.run([program, "passages", "--format", "json", path], capture_output=True, text=True)
    if run.returncode:
        sys.exit("transposed: %s: %s" % (file, run.stderr))
    return [passage for movement in json.loads(run.stdout)["movements"] for passage in movement["passages"]]


def as_line(passage, way):
    copy = json.loads(json.dumps(passage))
    for entry in copy.get("entries", []):
        for end in ("first", "last"):
            if entry.get(end):
                entry[end] = note_moved(entry[end], way[0], way[1])
    return json.dumps(copy, sort_keys=True)


def main(program, scores):
    compared, faults, by_hand = 0, 0, 0
    with tempfile.TemporaryDirectory() as folder:
        for score in scores:
            text, original = text_of(score), None
            for way in WAYS:
                path = os.path.join(folder, "score.musicxml")
                with open(path, "w", encoding="utf-8") as out:
                    out.write(moved(text, *way))
                found = passages(program, path, score)
                if original is None:
                    original = found
                    continue
                expected, there = [as_line(p, way) for p in original], [as_line(p, (0, 0)) for p in found]
                compared += len(expected)
                for line in sorted(set(expected) ^ set(there)):
                    if json.loads(line)["kind"] in OF_THE_HAND:
                        by_hand += 1
                        continue
                    faults += 1
                    print("%s, %+d semitones: %s %s" % (os.path.basename(score), way[0], "lost" if line in expected else "new", line[:200]))
    print("%d passages compared, %d differences; %d divisi differ by the open strings" % (compared, faults, by_hand))
    return faults > 0 or compared == 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2:]))
