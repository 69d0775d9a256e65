// Compares every written note of the scores given with what the verovio package (npm) reads in them: onset, duration, sounding pitch, staff by
// staff, and the order in which the bars sound.
//
//     node compare.mjs PROGRAM SCORE...
//
// PROGRAM is the `written` helper of tests/tools/accuracy. Prints one row of Markdown a score and, below, every kind of difference with its
// bars. Exit status 1 when a note differs.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import createModule from 'verovio/wasm';
import { VerovioToolkit } from 'verovio/esm';

const toolkit = new VerovioToolkit(await createModule());
const tolerance = 1e-5; // crotchets: the other reader counts in floating point

function ours(program, path) {
  const result = { per: 1, bars: [], order: [], notes: [] };
  for (const line of execFileSync(program, [path], { maxBuffer: 1 << 30 }).toString('utf8').split('\n')) {
    const fields = line.split(' ');
    if (fields[0] === 'per') result.per = Number(fields[1]);
    else if (fields[0] === 'bar') result.bars.push({ number: fields[1], onset: Number(fields[2]) / result.per, length: Number(fields[3]) / result.per });
    else if (fields[0] === 'order') result.order = fields.slice(1).map(Number);
    else if (fields[0] === 'note')
      result.notes.push({ staff: Number(fields[1]), onset: Number(fields[2]) / result.per, duration: Number(fields[3]) / result.per, midi: Number(fields[4]), bar: Number(fields[5]), kind: fields[6] });
  }
  return result;
}

const attribute = (text, name) => new RegExp(`(?:^|\\s)${name.replace('.', '\\.')}="([^"]*)"`).exec(text)?.[1];
const naturals = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11 };
const alterations = { s: 1, f: -1, ss: 2, x: 2, ff: -2, xs: 3, sx: 3, ts: 3, tf: -3, n: 0, nf: -1, ns: 1 };

// Staff, bar, sounding pitch, grace and cue of every note of the other reader's own encoding (MEI), by identifier. What is written sounds with
// accid.ges (else accid) and trans.semi of the staff.
function noteFacts(mei) {
  const facts = new Map();
  const measures = [], transposed = new Map(), broken = new Set();
  let staff = 0, bar = -1, graceAround = false, cueAround = false, chordStaff;
  let note = null;
  const alter = (text) => {
    const sign = attribute(text, 'accid.ges') ?? attribute(text, 'accid');
    if (sign !== undefined) note.midi += (alterations[sign] ?? NaN) - note.alter, (note.alter = alterations[sign] ?? NaN);
  };
  for (const [, closes, name, text] of mei.matchAll(/<(\/?)(measure|staffDef|staff|chord|note|accid|graceGrp|arpeg)\b([^>]*)>/g)) {
    if (name === 'measure' && !closes) measures.push(attribute(text, 'xml:id')), bar++;
    else if (name === 'arpeg') broken.add(bar);
    else if (name === 'staffDef' && attribute(text, 'trans.semi') !== undefined) transposed.set(Number(attribute(text, 'n')), Number(attribute(text, 'trans.semi')));
    else if (name === 'staff' && !closes) staff = Number(attribute(text, 'n'));
    else if (name === 'chord' || name === 'graceGrp') {
      chordStaff = closes ? undefined : attribute(text, 'staff');
      graceAround = !closes && attribute(text, 'grace') !== undefined;
      cueAround = !closes && attribute(text, 'cue') === 'true';
    } else if (name === 'accid' && note) alter(text);
    else if (name === 'note' && !closes) {
      const pitch = attribute(text, 'pname');
      note = { staff: Number(attribute(text, 'staff') ?? chordStaff ?? staff), bar, alter: 0, pitched: pitch !== undefined, grace: graceAround || attribute(text, 'grace') !== undefined, cue: cueAround || attribute(text, 'cue') === 'true' };
      note.midi = pitch === undefined ? -1 : naturals[pitch] + 12 * (Number(attribute(text, 'oct.ges') ?? attribute(text, 'oct')) + 1) + (transposed.get(staff) ?? 0);
      if (note.pitched) alter(text);
      facts.set(attribute(text, 'xml:id'), note);
    }
    if (name === 'note' && (closes || text.endsWith('/'))) note = null;
  }
  return { facts, measures, broken };
}

function load(path) {
  const bytes = readFileSync(path);
  return bytes[0] === 0x50 && bytes[1] === 0x4b
    ? toolkit.loadZipDataBuffer(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length))
    : toolkit.loadData(bytes.toString('utf8'));
}

function theirs(path) {
  toolkit.setOptions({ breaks: 'none', expandNever: true, expandAlways: false, xmlIdSeed: 1 });
  if (!load(path)) throw new Error('the other reader refuses it');
  const { facts, measures, broken } = noteFacts(toolkit.getMEI());
  const notes = [], open = new Map();
  for (const moment of toolkit.renderToTimemap({ includeMeasures: true })) {
    for (const id of moment.off ?? []) if (open.has(id)) open.get(id).duration = moment.qstamp - open.get(id).onset;
    for (const id of moment.on ?? []) {
      const fact = facts.get(id);
      if (!fact || !fact.pitched) continue;
      const note = { ...fact, onset: moment.qstamp, duration: 0 };
      open.set(id, note);
      notes.push(note);
    }
  }
  return { notes, measures, broken };
}

// The bars in the order in which they sound, by index; null when the score has no repeats for the other reader.
function theirOrder(path, measures) {
  toolkit.setOptions({ breaks: 'none', expandNever: false, expandAlways: true, xmlIdSeed: 1 });
  if (!load(path)) return null;
  const index = new Map(measures.map((id, at) => [id, at]));
  const order = [];
  for (const moment of toolkit.renderToTimemap({ includeMeasures: true })) {
    if (!moment.measureOn) continue;
    const at = index.get(moment.measureOn.replace(/-rend\d+$/, ''));
    if (at === undefined) return null;
    order.push(at);
  }
  return order;
}

const near = (a, b) => Math.abs(a - b) < tolerance;
const key = (note) => `${note.staff} ${Math.round(note.onset * 10000)} ${note.midi}`;

// Takes from both lists what they have in common; the rest is what differs.
function match(mine, other) {
  const waiting = new Map();
  for (const note of other) {
    if (!waiting.has(key(note))) waiting.set(key(note), []);
    waiting.get(key(note)).push(note);
  }
  const onlyMine = [];
  let agree = 0;
  for (const note of mine) {
    const candidates = waiting.get(key(note)) ?? [];
    const at = candidates.findIndex((candidate) => near(candidate.onset, note.onset) && near(candidate.duration, note.duration));
    if (at < 0) onlyMine.push(note);
    else candidates.splice(at, 1), agree++;
  }
  return { agree, onlyMine, onlyOther: [...waiting.values()].flat() };
}

// The other reader takes the time of grace notes from the note before them, which then ends early, or from the note after, which begins late: the
// same note but for one of its ends, and a grace note of its staff there. The notes of a broken chord it lets begin one after the other.
function shortened(result, graces, broken) {
  const grace = (staff, from, to) => graces.some((note) => note.staff === staff && note.onset > from - 1e-3 && note.onset < to + 1e-3);
  const same = (note, other) => note.staff === other.staff && note.midi === other.midi && other.duration < note.duration;
  const early = (note, other) => near(note.onset, other.onset) && grace(note.staff, other.onset + other.duration, note.onset + note.duration);
  const late = (note, other) => near(note.onset + note.duration, other.onset + other.duration) && (broken.has(note.bar) || grace(note.staff, note.onset, other.onset));
  const list = result.onlyMine.filter((note) => {
    const at = result.onlyOther.findIndex((other) => same(note, other) && (early(note, other) || late(note, other)));
    if (at >= 0) result.onlyOther.splice(at, 1);
    return at >= 0;
  });
  result.onlyMine = result.onlyMine.filter((note) => !list.includes(note));
  return list.length;
}

const countBy = (notes, bars) => [...new Set(notes.map((note) => bars[note.bar]?.number ?? '?'))].slice(0, 40).join(', ');
const pitches = (notes) => notes.map((note) => `${note.staff}:${note.bar}:${note.midi}`).sort();

const total = { mine: 0, other: 0, agree: 0, before: 0, differ: 0 };
const remarks = [];
console.log('| score | notes | other reader | onset, duration and pitch agree | shortened for grace notes and broken chords | differ | grace notes | bars in playing order |\n|---|---|---|---|---|---|---|---|');
const [program, ...paths] = process.argv.slice(2);
for (const path of paths) {
  const name = basename(path);
  try {
    const mine = ours(program, path), other = theirs(path);
    const result = match(mine.notes.filter((note) => note.kind === 'main'), other.notes.filter((note) => !note.grace && !note.cue));
    const before = shortened(result, other.notes.filter((note) => note.grace), other.broken);
    const graceMine = pitches(mine.notes.filter((note) => note.kind === 'grace')), graceOther = pitches(other.notes.filter((note) => note.grace));
    const graces = JSON.stringify(graceMine) === JSON.stringify(graceOther) ? `${graceMine.length} agree` : `${graceMine.length} / ${graceOther.length} differ`;
    const order = mine.order.length !== mine.bars.length ? theirOrder(path, other.measures) : null;
    const played = order === null ? (mine.order.length === mine.bars.length ? 'no repeats' : 'not told') : JSON.stringify(order) === JSON.stringify(mine.order) ? `${order.length} agree` : `${mine.order.length} / ${order.length} differ`;
    const differ = Math.max(result.onlyMine.length, result.onlyOther.length);
    console.log(`| ${name} | ${result.agree + before + result.onlyMine.length} | ${result.agree + before + result.onlyOther.length} | ${result.agree} | ${before} | ${differ} | ${graces} | ${played} |`);
    if (differ) remarks.push(`- ${name}: ${result.onlyMine.length} notes only here, in bars ${countBy(result.onlyMine, mine.bars)}; ${result.onlyOther.length} only there, in bars ${countBy(result.onlyOther, mine.bars)}.`);
    if (process.env.SHOW) for (const [side, list] of [['mine', result.onlyMine], ['other', result.onlyOther]]) for (const note of list.slice(0, Number(process.env.SHOW))) console.error(name, side, JSON.stringify(note));
    for (const [name, count] of Object.entries({ mine: result.agree + before + result.onlyMine.length, other: result.agree + before + result.onlyOther.length, agree: result.agree, before, differ })) total[name] += count;
  } catch (error) {
    console.log(`| ${name} | - | - | - | - | - | - | ${error.message.split('\n')[0]} |`);
  }
}
console.log(`| all | ${total.mine} | ${total.other} | ${total.agree} | ${total.before} | ${total.differ} | | |\n`);
console.log(remarks.join('\n'));
process.exit(total.differ ? 1 : 0);
