"""Scores copied and transposed, to try a library at scale.

    transpose.py COUNT FOLDER SCORE...

Writes COUNT compressed scores into FOLDER, a hundred to a folder: the scores given, in turn, each time in another key (up to three semitones up or down), with the work's
title numbered, so that no two files have the same bytes and no two works the same name. Every pitch is moved by the interval of its key along the staff: what answers
what stays as it was. Prints how many bytes of XML there are.
"""
import os, re, struct, sys, zipfile, zlib

# Semitones to steps of the staff and of the circle of fifths.
WAYS = [(0, 0, 0), (1, 1, -5), (2, 1, 2), (3, 2, -3), (-1, -1, 5), (-2, -1, -2), (-3, -2, 3)]
NATURAL = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
STEPS = "CDEFGAB"


def text_of(path):
    if not zipfile.is_zipfile(path):
        return open(path, encoding="utf-8").read()
    with zipfile.ZipFile(path) as archive:
        root = re.search(r'full-path="([^"]*)"', archive.read("META-INF/container.xml").decode()).group(1)
        return archive.read(root).decode("utf-8")


def moved(text, semitones, steps, fifths):
    def pitch(match):
        step, alter, octave = match.group(1), float(match.group(3) or 0), int(match.group(4))
        place = STEPS.index(step) + steps
        new = STEPS[place % 7]
        shift = place // 7
        wanted = NATURAL[step] + alter + semitones
        return "<pitch><step>%s</step><alter>%g</alter><octave>%d</octave></pitch>" % (new, wanted - NATURAL[new] - 12 * shift, octave + shift)

    def key(match):
        return "<fifths>%d</fifths>" % (int(match.group(1)) + fifths)

    text = re.sub(r"<pitch>\s*<step>(.)</step>\s*(<alter>([^<]*)</alter>\s*)?<octave>(\d+)</octave>\s*</pitch>", pitch, text)
    return re.sub(r"<fifths>(-?\d+)</fifths>", key, text)


CONTAINER = b'<?xml version="1.0"?><container><rootfiles><rootfile full-path="score.musicxml"/></rootfiles></container>'


def archive(members):
    """A zip archive (PKWARE's application note, 4.3) of members that are packed already: name, packed bytes, their length and sum unpacked."""
    body, directory = b"", b""
    for name, packed, size, crc in members:
        head = struct.pack("<5H3L2H", 20, 0, 8, 0, 33, crc, len(packed), size, len(name), 0)
        directory += struct.pack("<LH", 0x02014B50, 20) + head + struct.pack("<3H2L", 0, 0, 0, 0, len(body)) + name
        body += struct.pack("<L", 0x04034B50) + head + name + packed
    return body + directory + struct.pack("<L4H2LH", 0x06054B50, 0, 0, len(members), len(members), len(directory), len(body), 0)


def packed(data, last):
    deflate = zlib.compressobj(1, zlib.DEFLATED, -15)
    return deflate.compress(data) + deflate.flush(zlib.Z_FINISH if last else zlib.Z_FULL_FLUSH)


def halves(text):
    """Where the number goes, and what follows, packed once for all copies."""
    at = text.find("<work-title>")
    if at >= 0:
        head, tail = text[:at + 12] + "No. %d, ", text[at + 12:]
    else:
        at = re.search(r"<score-partwise[^>]*>", text).end()
        head, tail = text[:at] + "<work><work-title>No. %d</work-title></work>", text[at:]
    tail = tail.encode("utf-8")
    return head, tail, packed(tail, True)


def main(count, folder, scores):
    texts = [text_of(score) for score in scores]
    xml, done = 0, 0
    container = (b"META-INF/container.xml", packed(CONTAINER, True), len(CONTAINER), zlib.crc32(CONTAINER))
    for way in WAYS:  # one key after the other, so that only one copy is in memory
        for which, text in enumerate(texts):
            head, tail, tail_packed = halves(moved(text, *way))
            for number in range(which + len(texts) * WAYS.index(way), count, len(texts) * len(WAYS)):
                first = (head % (number + 1)).encode("utf-8")
                score = (b"score.musicxml", packed(first, False) + tail_packed, len(first) + len(tail), zlib.crc32(tail, zlib.crc32(first)))
                place = os.path.join(folder, "%04d" % (number // 100))
                os.makedirs(place, exist_ok=True)
                with open(os.path.join(place, "%06d.mxl" % number), "wb") as out:
                    out.write(archive([container, score]))
                xml += len(first) + len(tail)
                done += 1
    print("%d scores, %.1f MB of XML" % (done, xml / 1e6))


if __name__ == "__main__":
    main(int(sys.argv[1]), sys.argv[2], sys.argv[3:])
