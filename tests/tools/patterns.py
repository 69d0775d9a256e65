"""Scores made to cost as much time as they can: nineteen patterns, each in three sizes, and the exponent by which time grows with size.

    patterns.py PROGRAM

1.0 is linear. What a limit refuses (docs/formats.md) is marked so. Processor time of the whole call, the least of three, less that of an
empty one."""
import math, os, resource, subprocess, sys, tempfile

HEAD = '<attributes><divisions>4</divisions><time><beats>4</beats><beat-type>4</beat-type></time></attributes>'


def score(parts):
    listed = ''.join('<score-part id="P%d"><part-name>%s</part-name></score-part>' % (i, name) for i, (name, _) in enumerate(parts))
    return ('<?xml version="1.0"?><score-partwise><part-list>%s</part-list>%s</score-partwise>'
            % (listed, ''.join('<part id="P%d">%s</part>' % (i, bars) for i, (_, bars) in enumerate(parts))))


def note(step='C', octave=4, length=16, more='', chord=False):
    return ('<note>%s<pitch><step>%s</step><octave>%d</octave></pitch><duration>%d</duration>%s</note>'
            % ('<chord/>' if chord else '', step, octave, length, more))


def bar(number, content):
    return '<measure number="%d">%s%s</measure>' % (number, HEAD if number == 1 else '', content)


def with_second(bars):
    return score([('Violin I', bars), ('Violin II', bar(1, note()))])


def one_bar(content):
    return with_second(bar(1, content))


def many_bars(count, content):
    return with_second(''.join(bar(i, content(i)) for i in range(1, count)))


def words(text):
    return '<direction><direction-type><words>%s</words></direction-type></direction>' % text


def two_parts(count, first, second):
    return score([(name, ''.join(bar(i, ''.join(music)) for i in range(1, count))) for name, music in (('Violin I', first), ('Violin II', second))])


PATTERNS = {
    'tied unisons in a bar': (64000, lambda n: one_bar(''.join(note(length=1, more='<tie type="stop"/><tie type="start"/>', chord=i > 0) for i in range(n)))),
    'grace notes in a bar': (32000, lambda n: one_bar('<note><grace/><pitch><step>D</step><octave>4</octave></pitch></note>' * n + note())),
    'voices that go back': (32000, lambda n: one_bar(''.join(note(length=1, more='<voice>%d</voice>' % (i % 199)) + '<backup><duration>1</duration></backup>' for i in range(n)))),
    'words in a bar': (32000, lambda n: one_bar(words('div.') * n + note())),
    'tempos in a bar': (32000, lambda n: one_bar('<sound tempo="90"/>' * n + note())),
    'a chord': (32000, lambda n: one_bar(''.join(note('CDEFGAB'[i % 7], i // 7 % 9, 1, chord=i > 0) for i in range(n)))),
    'names of elements': (80000, lambda n: one_bar(''.join('<x%d/>' % i for i in range(n)) + note())),
    'attributes of an element': (16000, lambda n: one_bar('<note %s/>' % ' '.join('a%d="1"' % i for i in range(n)) + note())),
    'repeats': (12000, lambda n: many_bars(n, lambda i: '<barline location="left"><repeat direction="forward"/></barline>%s<barline location="right"><repeat direction="backward"/></barline>' % note())),
    'endings': (12000, lambda n: many_bars(n, lambda i: '<barline location="left"><ending number="%d" type="start"/></barline>%s<barline location="right"><ending number="%d" type="stop"/></barline>%s'
                                           % (i % 2 + 1, note(), i % 2 + 1, '<direction><sound dacapo="yes"/></direction>' if i == n - 1 else ''))),
    'dal segno in every bar': (12000, lambda n: many_bars(n, lambda i: note() + '<direction><sound dalsegno="s%d"/></direction>' % (i % 7))),
    'signs to jump by in every bar': (12000, lambda n: many_bars(n, lambda i: '<direction><sound segno="s%d" coda="c%d"/></direction>%s<direction><sound dalsegno="s%d" tocoda="c%d"/></direction>' % (i, i, note(), i // 2, n - i))),
    'one ending over all bars': (12000, lambda n: many_bars(n, lambda i: ('<barline location="left"><ending number="1" type="start"/></barline>' if i == 2 else '') + note() + ('<direction><sound dacapo="yes"/></direction>' if i > 2 else ''))),
    'letters': (12000, lambda n: many_bars(n, lambda i: '<direction><direction-type><rehearsal>A</rehearsal></direction-type></direction>' + note())),
    'changing divisions': (12000, lambda n: many_bars(n, lambda i: '<attributes><divisions>%d</divisions></attributes>%s' % (i % 8 + 1, note(length=1)))),
    'long words': (1600, lambda n: many_bars(n, lambda i: words('div. a 3 ' * 300) + note())),
    'one figure throughout': (1600, lambda n: two_parts(n, [note('CDEF'[k % 4], 5, 1) for k in range(16)], [note('CDEF'[k % 4], 4, 1) for k in range(16)])),
    'one pitch throughout': (1600, lambda n: two_parts(n, [note(length=1)] * 16, [note(length=1)] * 16)),
    'a canon throughout': (1600, lambda n: two_parts(n, [note('CDEG'[k % 4], 5, 1) for k in range(16)], ['<forward><duration>4</duration></forward>'] + [note('CDEG'[k % 4], 5, 1) for k in range(12)])),
}


def seconds(program, path):
    least = math.inf
    for _ in range(3):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        status = subprocess.run([program, '--format', 'json', path], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL).returncode
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        least = min(least, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
    return least, status


def main(program):
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, 'pattern.musicxml')
        open(path, 'w').write(one_bar(note()))
        empty = seconds(program, path)[0]
        print('Scores made to cost time, CPU ms at one, two and four times the size, and the exponents (goal: 1.1 at most):')
        for name, (size, make) in PATTERNS.items():
            times, refused = [], False
            for factor in (1, 2, 4):
                open(path, 'w').write(make(factor * size))
                taken, status = seconds(program, path)
                refused = refused or status != 0
                times.append(max(taken - empty, 1e-6))
            exponents = 'refused by a limit' if refused else '%.2f %.2f' % (math.log2(times[1] / times[0]), math.log2(times[2] / times[1]))
            print('  %-26s %8d %9.1f %9.1f %9.1f   %s' % (name, size, *(1000 * t for t in times), exponents))


main(sys.argv[1])
