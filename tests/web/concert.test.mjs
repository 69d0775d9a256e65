// The pages of the concerts in a real browser: nothing runs out of its page at any width, what they lead to is there, what is said stands in the order in
// which a conductor asks, and the movements stand in playing order.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const program = resolve(process.env.SPEZZATO ?? 'build/spezzato');
let folder, browser, plan;

before(async () => {
  folder = mkdtempSync(join(tmpdir(), 'spezzato-concert-'));
  execFileSync(program, ['report', 'corpus/season.csv', '-o', folder], { stdio: ['ignore', 'inherit', 'ignore'] });
  plan = JSON.parse(execFileSync(program, ['season', 'corpus/season.csv', '--no-cache', '--format', 'json']));
  browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
});

after(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

const concerts = () => readdirSync(folder).filter(name => /^concert-\d+\.html$/.test(name)).sort();
const open = async (name, options) => {
  const page = await (await browser.newContext(options)).newPage();
  page.faults = [];
  page.on('console', message => { if (['error', 'warning'].includes(message.type())) page.faults.push(message.text()); });
  page.on('pageerror', error => page.faults.push(String(error)));
  await page.goto(pathToFileURL(join(folder, name)).href);
  return page;
};

test('each concert of the season has its page, to which the season leads', async () => {
  assert.equal(concerts().length, plan.concerts.length);
  const page = await open('season.html');
  assert.deepEqual(await page.locator('section.plan h2 a').evaluateAll(all => all.map(a => a.getAttribute('href'))), concerts());
});

test('nothing runs out of a page at 390, 800 and 1400, light and dark, and nothing is complained of', async () => {
  for (const name of concerts())
    for (const width of [390, 800, 1400])
      for (const colorScheme of ['light', 'dark']) {
        const page = await open(name, { viewport: { width, height: 900 }, colorScheme });
        assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `${name} at ${width}`);
        const outside = await page.evaluate(() => [...document.querySelectorAll('main svg text')].filter(text => {
          const box = text.getBoundingClientRect(), sheet = text.ownerSVGElement.getBoundingClientRect();
          return box.left < sheet.left - 1 || box.right > sheet.right + 1 || box.top < sheet.top - 1;
        }).map(text => text.textContent));
        assert.deepEqual(outside, [], `${name} at ${width}: names outside their drawing`);
        assert.deepEqual(page.faults, []);
        await page.context().close();
      }
});

test('what a page leads to is there', async () => {
  for (const name of concerts()) {
    const page = await open(name);
    for (const address of await page.locator('a').evaluateAll(all => all.map(a => a.href)))
      assert.ok(existsSync(fileURLToPath(address.split('#')[0])), `${name}: ${address}`);
  }
});

test('one seating comes first, then the costs, the changes and the programme in playing order', async () => {
  for (const [index, name] of concerts().entries()) {
    const page = await open(name), concert = plan.concerts[index];
    assert.equal(await page.locator('h1').textContent(), concert.concert);
    const levels = await page.locator('h1, h2, h3').evaluateAll(all => all.map(h => Number(h.tagName[1])));
    levels.forEach((level, i) => assert.ok(i === 0 ? level === 1 : level <= levels[i - 1] + 1));
    if (concert.without_change)
      assert.equal((await page.locator('main h2').first().textContent()), `One seating for the evening: ${concert.without_change.seating}`);
    const movements = concert.works.flatMap(work => work.movements.map(movement => movement.title));
    const shown = await page.locator('.programme .which').allTextContents(); // under the work's own title, which it does without
    assert.equal(shown.length, movements.length);
    shown.forEach((title, i) => assert.ok(title.length > 3 && movements[i].endsWith(title), `${title}, not ${movements[i]}`));
    assert.deepEqual(await page.locator('.piece .unseen').allTextContents(), movements);
    // What one seating weakens is dashed at its bars: as many of them at least as are given up, and none where nothing is.
    const given = concert.without_change ? concert.without_change.movements : [];
    const shares = await page.locator('.piece').evaluateAll(all => all.map(piece => {
      const lane = piece.querySelector('.play').getBoundingClientRect(), lines = [...piece.querySelectorAll('.lost-bars line')];
      const dashed = lines.map(line => line.getBoundingClientRect()).sort((a, b) => a.left - b.left);
      let end = lane.left, sum = 0;
      for (const { left, right } of dashed) { sum += Math.max(0, right - Math.max(left, end)); end = Math.max(end, right); }
      return { share: sum / lane.width, inside: dashed.every(({ left, right }) => left >= lane.left - 1 && right <= lane.right + 1) };
    }));
    for (const [i, movement] of given.entries()) {
      assert.ok(shares[i].inside, `${name}: ${movement.title}`);
      assert.ok(shares[i].share >= movement.lost_bars / movement.bars - 0.02, `${name}: ${movement.title}, ${shares[i].share}`);
      if (movement.points === 0) assert.equal(shares[i].share, 0, `${name}: ${movement.title}`);
    }
    // Before and after each change.
    assert.equal(await page.locator('.before svg').count(), concert.changes.length + (concert.set_up ? 1 : 0));
    const moved = concert.changes.map(change => change.moves.length).reduce((a, b) => a + b, concert.set_up ? concert.set_up.moves.length : 0);
    assert.equal(await page.locator('.after .moved').count(), moved);
    assert.equal(await page.locator('.before .way').count(), moved);
  }
});

test('the evening shows the calls and answers of each movement, as the overview draws them', async () => {
  const overview = await open('index.html');
  const count = element => ['call', 'answer', 'divided'].map(kind => element.querySelectorAll('.' + kind).length);
  const drawn = new Map(await overview.locator('table.index tr[data-place]').evaluateAll((rows, how) => rows.map(row =>
    [row.querySelector('a').getAttribute('href'), new Function('return ' + how)()(row.querySelector('svg.thumb'))]), count.toString()));
  for (const name of concerts()) {
    const page = await open(name, { viewport: { width: 1400, height: 900 } });
    const pieces = await page.locator('.piece').evaluateAll((all, how) => all.map(piece =>
      [piece.querySelector('a').getAttribute('href'), new Function('return ' + how)()(piece)]), count.toString());
    assert.ok(pieces.some(([, [calls, answers]]) => calls > 3 && answers > 3), name);
    for (const [href, marks] of pieces) assert.deepEqual(marks, drawn.get(href), `${name}: ${href}`);
    // The rows are named, and their names stand beside them.
    const beside = await page.evaluate(() => [...document.querySelectorAll('.of-rows span')].map((span, row) => {
      const lane = document.querySelectorAll('.piece svg.thumb rect.lane')[row].getBoundingClientRect(), box = span.getBoundingClientRect();
      return Math.abs((lane.top + lane.bottom) / 2 - (box.top + box.bottom) / 2);
    }));
    assert.equal(beside.length, 3);
    beside.forEach(apart => assert.ok(apart < 5, `${name}: a row's name is ${apart} beside it`));
  }
});
