// Passages heard from the conductor's page, out of a folder: both seatings in step, switched without a click, by mouse or keyboard.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { after, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const program = resolve(process.env.SPEZZATO ?? 'build/spezzato');
const score = 'corpus/brelisk-balconies-2.musicxml';
const folder = mkdtempSync(join(tmpdir(), 'spezzato-heard-'));
const made = spawnSync(program, ['report', score, '--listen', '--engraver', 'none', '-o', join(folder, 'heard')], { encoding: 'utf8' });
const skip = /no sound can be made|no SoundFont|measured head/.test(made.stderr) ? 'no sound can be made here' : false;
const address = pathToFileURL(join(folder, 'heard', 'brelisk-balconies-2.html')).href;
let browser, page, faults;

// What is asked of the loudspeakers is kept: what begins when, and every change of loudness with the moment of asking. A sound card on a busy
// machine may stumble, whatever the page asks for: so the same wishes are played again, as fast as can be counted, and that is listened to.
const spy = () => {
  const heard = window.heard = { contexts: 0, starts: [], late: [] };
  const Real = AudioContext, start = AudioBufferSourceNode.prototype.start, stop = AudioBufferSourceNode.prototype.stop, connect = AudioNode.prototype.connect;
  const wishes = new Map(), follows = new Map();
  window.AudioContext = class extends Real {
    constructor(...options) {
      super(...options);
      heard.contexts++;
      heard.clock = () => this.currentTime;
    }
  };
  for (const [name, moment] of [['setValueAtTime', 1], ['linearRampToValueAtTime', 1], ['exponentialRampToValueAtTime', 1], ['setTargetAtTime', 1], ['cancelScheduledValues', 0]]) {
    const real = AudioParam.prototype[name];
    AudioParam.prototype[name] = function (...what) {
      if (!heard.again) {
        if (what[moment] < heard.clock() + 0.02) heard.late.push(name);
        wishes.set(this, [...(wishes.get(this) ?? []), [name, what]]);
      }
      return real.apply(this, what);
    };
  }
  AudioNode.prototype.connect = function (to, ...rest) {
    if (!heard.again) follows.set(this, to);
    return connect.call(this, to, ...rest);
  };
  AudioBufferSourceNode.prototype.start = function (when, offset) {
    if (!heard.again) heard.starts.push({ when, offset, buffer: this.buffer, source: this });
    return start.call(this, when, offset);
  };
  AudioBufferSourceNode.prototype.stop = function (when) {
    if (!heard.again) heard.starts.find(one => one.source === this).end = when;
    return stop.call(this, when);
  };
  // The first channel of what reaches the loudspeakers from one moment to another.
  heard.played = async (from, to) => {
    heard.again = true;
    const rate = heard.starts[0].buffer.sampleRate, card = new OfflineAudioContext(1, Math.ceil(to * rate), rate);
    for (const one of heard.starts) {
      const gain = follows.get(one.source), alike = new GainNode(card, { gain: 0 }), source = new AudioBufferSourceNode(card, { buffer: one.buffer });
      const left = new ChannelSplitterNode(card, { numberOfOutputs: 2 });
      if (!(follows.get(gain) instanceof AudioDestinationNode)) throw new Error('a voice leads elsewhere');
      for (const [name, what] of wishes.get(gain.gain)) alike.gain[name](...what);
      source.connect(left);
      left.connect(alike, 0);
      alike.connect(card.destination);
      source.start(one.when, one.offset);
      if (one.end !== undefined) source.stop(one.end);
    }
    const sound = (await card.startRendering()).getChannelData(0).subarray(Math.floor(from * rate));
    heard.again = false;
    return sound;
  };
  // The sharpest corner of a row of samples.
  heard.corner = row => { let most = 0; for (let i = 2; i < row.length; i++) most = Math.max(most, Math.abs(row[i] - 2 * row[i - 1] + row[i - 2])); return most; };
};

before(async () => {
  if (skip) return;
  assert.equal(made.status, 0, made.stderr);
  browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
  page = await (await browser.newContext()).newPage();
  faults = [];
  page.on('console', message => { if (message.type() === 'error' || /Content.Security/.test(message.text())) faults.push(message.text()); });
  page.on('pageerror', error => faults.push(String(error)));
  await page.addInitScript(spy);
  await page.goto(address);
});

after(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

// The page's policy lets no text be run as a script: so it is asked again and again.
const until = async (where, question) => {
  for (let i = 0; i < 200; i++) {
    if (await where.evaluate(question)) return;
    await where.waitForTimeout(100);
  }
  assert.fail(`waited in vain for ${question}`);
};
const player = index => page.locator('.player').nth(index ?? 0);
const plays = async index => {
  await player(index).locator('button').click();
  await until(page, () => document.querySelector('.player button').textContent !== 'Listen');
};

test('each decisive passage has its player; nothing sounds before it is asked for', { skip }, async () => {
  assert.equal(await page.locator('.player').count(), await page.locator('.decide > li').count());
  assert.equal(await page.locator('.player:visible').count(), await page.locator('.player').count());
  await page.waitForTimeout(300);
  assert.equal(await page.evaluate(() => heard.contexts), 0);
  assert.equal(await page.locator('.proof .sounds-about:visible').count(), 1); // what they are worth is told once, beside them
  assert.match(await page.locator('.sounds-about').textContent(), /not a forecast of how a hall will sound/);
});

test('both seatings begin in step and are equally long', { skip }, async () => {
  await plays();
  const starts = await page.evaluate(() => heard.starts.map(one => ({ when: one.when, offset: one.offset ?? 0, seconds: one.buffer.duration, rate: one.buffer.sampleRate })));
  assert.equal(starts.length, 2);
  assert.ok(Math.abs(starts[0].when - starts[1].when) <= 0.005 && Math.abs(starts[0].offset - starts[1].offset) <= 0.005);
  assert.ok(Math.abs(starts[0].seconds - starts[1].seconds) <= 1 / starts[0].rate);
  assert.ok(starts[0].seconds > 3);
  // The same notes in both: their loudness rises and falls together, best without any shift.
  const shift = await page.evaluate(() => {
    const hop = 96, row = buffer => { const x = buffer.getChannelData(0), out = []; for (let i = 0; i + hop <= x.length && out.length < 3000; i += hop) { let sum = 0; for (let k = 0; k < hop; k++) sum += x[i + k] ** 2; out.push(Math.log10(sum / hop + 1e-9)); } return out; };
    const [one, other] = heard.starts.map(start => row(start.buffer)), rising = x => x.map((v, i) => i > 9 ? Math.max(0, v - x[i - 10]) : 0), a = rising(one), b = rising(other);
    let best = -1, at = 0;
    for (let lag = -25; lag <= 25; lag++) { let sum = 0; for (let i = 50; i < a.length - 50; i++) sum += a[i] * b[i + lag]; if (sum > best) { best = sum; at = lag; } }
    return at * hop / heard.starts[0].buffer.sampleRate;
  });
  assert.ok(Math.abs(shift) <= 0.005, `the versions are ${shift} s apart`);
  assert.deepEqual(faults, []);
});

test('the switch goes on without a gap and without a click', { skip }, async () => {
  await page.waitForTimeout(500);
  const began = await page.evaluate(() => heard.clock());
  for (let i = 0; i < 12; i++) {
    await player().locator('input').nth((i + 1) % 2).check();
    await page.waitForTimeout(90);
  }
  const after = await page.evaluate(async from => {
    const [one, other] = heard.starts.map(start => start.buffer.getChannelData(0)), switched = await heard.played(from, heard.clock() + 0.2);
    return { corner: heard.corner(switched), silent: switched.filter(x => x === 0).length / switched.length,
      plain: Math.max(heard.corner(one), heard.corner(other)),
      // What a switch from one sample to the next would do, at its worst.
      cut: (() => { let most = 0; for (let i = 1; i < Math.min(one.length, other.length); i++) most = Math.max(most, Math.abs(other[i] - one[i - 1])); return most; })() };
  }, began);
  assert.ok(after.corner > 0);
  assert.ok(after.corner <= 1.05 * after.plain, `corner ${after.corner} against ${after.plain} in the sounds themselves`);
  assert.ok(after.cut > 2 * after.plain, 'a hard cut would not have been noticed');
  assert.ok(after.silent < 0.05, `${after.silent} of it was silent`);
  // No fade is asked for at the last moment: the sound card would be late for it, and begin it with a leap.
  assert.deepEqual(await page.evaluate(() => heard.late), []);
  assert.equal(await page.evaluate(() => heard.starts.length), 2);
});

test('another seat goes on from the same moment; a second press stops', { skip }, async () => {
  await player().locator('select').selectOption('podium');
  await until(page, () => heard.starts.length === 4);
  const offsets = await page.evaluate(() => heard.starts.slice(2).map(one => one.offset));
  assert.ok(offsets[0] > 1 && offsets[0] === offsets[1]);
  await player().locator('button').click();
  assert.equal(await player().locator('button').textContent(), 'Listen');
});

test('the keyboard is enough', { skip }, async () => {
  await player(1).locator('button').focus();
  await page.keyboard.press('Enter');
  await until(page, () => heard.starts.length === 6);
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowRight');
  assert.equal(await player(1).locator('input').nth(1).isChecked(), true);
  await player(1).locator('button').focus();
  await page.keyboard.press('Space');
  assert.equal(await player(1).locator('button').textContent(), 'Listen');
  assert.deepEqual(faults, []);
});

test('a sound that is missing is told; pages without sound have no player', { skip }, async () => {
  const other = await (await browser.newContext()).newPage();
  for (const file of readdirSync(join(folder, 'heard'))) if (file.endsWith('-left.js')) rmSync(join(folder, 'heard', file));
  await other.goto(address);
  await other.locator('.player select').first().selectOption('left');
  await other.locator('.player button').first().click();
  await until(other, () => document.querySelector('.player output').textContent !== '');
  assert.match(await other.locator('.player output').first().textContent(), /is missing/);
  execFileSync(program, ['report', score, '--engraver', 'none', '-o', join(folder, 'mute')], { stdio: 'ignore' });
  const mute = readFileSync(join(folder, 'mute', 'brelisk-balconies-2.html'), 'utf8');
  assert.doesNotMatch(mute, /class="player"|nonce|spezzatoSound/);
});
