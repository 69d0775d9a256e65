// What is seen: every kind of page at three widths, light and dark. The first screen of a movement holds what decides; axe finds nothing serious; on
// paper every figure can be read. SPEZZATO and CHROMIUM as in pages.test.mjs.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { after, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { flaws } from './flaws.mjs';

const program = resolve(process.env.SPEZZATO ?? 'build/spezzato');
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const shared = process.env.SPEZZATO_SHARED ?? '../shared';
const screens = [[1400, 900], [800, 1100], [390, 844]];
let folder, browser, pages;

const run = (...words) => execFileSync(program, words, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'], maxBuffer: 1 << 28 });

before(async () => {
  folder = mkdtempSync(join(tmpdir(), 'spezzato-look-'));
  run('report', '--engraver', 'none', 'corpus/season.csv', '-o', join(folder, 'pages'));
  // Movements of real length, where the folder of open scores is at hand.
  const real = existsSync(join(shared, 'scores')) ? readdirSync(join(shared, 'scores')).filter(name => name.endsWith('.mxl')).sort() : [];
  const some = [...new Set(['_1.mxl', '_2.mxl'].flatMap(end => real.filter(name => name.endsWith(end)).slice(0, 1)))];
  if (some.length) run('report', '--engraver', 'none', ...some.map(name => join(shared, 'scores', name)), '-o', join(folder, 'real'));
  run('parts', '--format', 'html', 'corpus/brelisk-balconies-2.musicxml', '-o', join(folder, 'parts.html'));
  run('notes', '--format', 'html', 'corpus/brelisk-balconies-2.musicxml', '-o', join(folder, 'notes.html'));
  run('rehearsal', '--format', 'html', 'corpus/brelisk-balconies-2.musicxml', '-o', join(folder, 'rehearsal.html'));
  for (const kind of ['bowings', 'stage']) run(kind, '--format', 'html', 'corpus/brelisk-balconies-2.musicxml', '-o', join(folder, kind + '.html'));
  run('library', '--library', join(folder, 'library.sqlite'), 'add', 'corpus');
  run('library', '--library', join(folder, 'library.sqlite'), 'find', '--format', 'html', '-o', join(folder, 'library.html'));
  run('report', '--work', '--engraver', 'none', 'corpus/brelisk-balconies-1.musicxml', 'corpus/brelisk-balconies-2.musicxml', '-o', join(folder, 'work'));
  for (const language of ['de', 'fr']) run('report', '--engraver', 'none', '--language', language, 'corpus/season.csv', '-o', join(folder, language));
  const inside = place => readdirSync(join(folder, place)).filter(name => name.endsWith('.html')).sort().map(name => join(place, name));
  pages = [...inside('pages'), ...(some.length ? inside('real') : []), 'parts.html', 'notes.html', 'rehearsal.html'];
  browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
});

after(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

const address = name => pathToFileURL(join(folder, name)).href;
async function open(name, options) {
  const context = await browser.newContext({ bypassCSP: true, ...options }); // axe is put into the page from outside
  const page = await context.newPage();
  page.faults = [];
  page.on('console', message => { if (['error', 'warning'].includes(message.type())) page.faults.push(message.text()); });
  page.on('pageerror', error => page.faults.push(String(error)));
  await page.goto(address(name));
  return page;
}
const movements = () => pages.filter(name => /^(pages|real)/.test(name) && !/(index|season|concert-\d+)\.html$/.test(name));

test('every kind of page opens at three widths, light and dark, without a fault and no wider than the screen', async () => {
  for (const name of pages)
    for (const colorScheme of ['light', 'dark']) {
      const page = await open(name, { colorScheme });
      for (const [width, height] of screens) {
        await page.setViewportSize({ width, height });
        const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
        assert.ok(over <= 0, `${name} is ${over} too wide at ${width}`);
      }
      assert.deepEqual(page.faults, [], name);
      await page.context().close();
    }
});

test('stage, verdict, the passages that weigh most and the whole strip are seen at once at 1400 x 900', async () => {
  let full = 0;
  for (const name of movements()) {
    const page = await open(name, { viewport: { width: 1400, height: 900 } });
    const seen = await page.evaluate(() => {
      const inside = element => {
        const box = element.getBoundingClientRect();
        return box.width > 20 && box.height > 5 && box.left >= 0 && box.top >= 0 && box.right <= innerWidth + 1 && box.bottom <= innerHeight;
      };
      const first = document.querySelector('.first');
      const all = selector => [...first.querySelectorAll(selector)];
      return { judged: !first.classList.contains('undecided'), strings: Boolean(document.querySelector('.whole')), verdict: all('.verdict h2').every(inside), stage: all('svg.stage').map(inside), sure: all('.sure strong').map(inside),
        three: all('.decide > li').map(inside), notes: all('.decide svg.notes').map(inside), strips: all('.whole .bars-drawn').map(inside) };
    });
    assert.ok(seen.verdict, `${name}: the verdict`);
    if (seen.judged) {
      assert.deepEqual(seen.stage, [true], `${name}: the stage`);
      assert.deepEqual(seen.sure, [true], `${name}: how sure`);
    }
    assert.ok(seen.three.every(Boolean), `${name}: the passages ${seen.three}`);
    assert.equal(seen.notes.length, seen.three.length, `${name}: each has its notes`);
    if (seen.strings) assert.ok(seen.strips.length && seen.strips.every(Boolean), `${name}: the strip ${seen.strips}`);
    full += seen.judged && seen.three.length === 3;
    await page.context().close();
  }
  assert.ok(full >= 10, `${full} pages with three passages`);
});

// Every kind of page and sheet, the pages of movements in three languages.
const sheets = ['parts.html', 'notes.html', 'rehearsal.html', 'bowings.html', 'stage.html', 'library.html', 'work/work.html'];
const everyKind = () => [...pages.filter(name => /^(pages|real)/.test(name)), ...sheets,
  ...['de', 'fr'].flatMap(language => pages.filter(name => /^pages/.test(name)).map(name => name.replace('pages', language)))];

test('no words lie on others, none are cut, none are too small: every kind of page at four widths, on A4 and on Letter, in three languages', async () => {
  for (const name of everyKind()) {
    const page = await open(name, {});
    for (const [width, media] of [[1400, 'screen'], [1024, 'screen'], [800, 'screen'], [390, 'screen'], [794, 'print'], [816, 'print']]) {
      await page.setViewportSize({ width, height: 900 });
      await page.emulateMedia({ media });
      assert.deepEqual(await page.evaluate(flaws), [], `${name} at ${width}, ${media}`);
    }
    await page.context().close();
  }
  // And what is wrong is seen.
  const page = await open('pages/index.html', { viewport: { width: 1400, height: 900 } });
  await page.evaluate(() => {
    document.querySelector('h1').style.marginBottom = '-1.5rem';
    document.querySelector('.composer-cell').style.cssText = 'display: block; width: 2rem; min-width: 0; overflow: hidden; white-space: nowrap';
    document.querySelector('.year-cell').style.fontSize = '8px';
  });
  const found = await page.evaluate(flaws);
  for (const kind of ['on each other', 'cut', 'small']) assert.ok(found.some(one => one.startsWith(kind)), `${kind} was not found: ${found}`);
  await page.context().close();
});

test('a verdict takes one line at 1400, in three languages', async () => {
  for (const name of ['pages', 'de', 'fr'].flatMap(place => pages.filter(name => /^pages/.test(name) && movements().includes(name)).map(name => name.replace('pages', place)))) {
    const page = await open(name, { viewport: { width: 1400, height: 900 } });
    const lines = await page.$$eval('.first:not(.undecided) .verdict h2', ([heading]) => {
      if (!heading) return 1; // nothing to decide: a sentence says why
      const range = document.createRange(); range.selectNodeContents(heading); return new Set([...range.getClientRects()].map(box => box.top)).size; });
    assert.equal(lines, 1, name);
    await page.context().close();
  }
});

test('words stand out from what they lie on by 4.5 to 1 on every kind of page, light and dark (axe-core; WCAG 2.1, 1.4.3)', async () => {
  for (const name of [...sheets, 'pages/index.html', 'pages/season.html', 'pages/concert-1.html', 'pages/tolvesk-ecluses-2.html'])
    for (const colorScheme of ['light', 'dark']) {
      const page = await open(name, { viewport: { width: 1400, height: 900 }, colorScheme });
      await page.evaluate(axe);
      const poor = await page.evaluate(async () => (await window.axe.run(document, { runOnly: ['color-contrast'] })).violations.flatMap(rule => rule.nodes.map(node => node.html.slice(0, 90))));
      assert.deepEqual(poor, [], `${name}, ${colorScheme}`);
      await page.context().close();
    }
});

test('axe finds nothing serious on any kind of page, light and dark (axe-core)', async () => {
  const kinds = [...pages.filter(name => /brelisk-balconies-2|scarrowmere|aldersquay|ecluses-2|index|season/.test(name) && !/^real/.test(name)), 'parts.html', 'notes.html', 'rehearsal.html',
    ...movements().filter(name => /^real/.test(name)).slice(0, 1)];
  for (const name of kinds)
    for (const colorScheme of ['light', 'dark']) {
      const page = await open(name, { viewport: { width: 1400, height: 900 }, colorScheme });
      await page.evaluate(axe);
      const found = await page.evaluate(async () => (await window.axe.run(document, { resultTypes: ['violations'] })).violations
        .filter(rule => ['serious', 'critical'].includes(rule.impact)).map(rule => `${rule.id}: ${rule.nodes[0].html.slice(0, 120)}`));
      assert.deepEqual(found, [], `${name}, ${colorScheme}`);
      await page.context().close();
    }
});

test('headings come in order, there is one main part, and what scrolls can be reached by keyboard', async () => {
  for (const name of pages.filter(page => /^(pages|real)/.test(page))) {
    const page = await open(name, { viewport: { width: 390, height: 844 } });
    const found = await page.evaluate(() => ({
      levels: [...document.querySelectorAll('h1, h2, h3, h4')].map(heading => Number(heading.tagName[1])),
      mains: document.querySelectorAll('main').length,
      stuck: [...document.querySelectorAll('*')].filter(element => /auto|scroll/.test(getComputedStyle(element).overflowX) && element.scrollWidth > element.clientWidth && element.tabIndex < 0).map(element => element.className),
    }));
    assert.equal(found.levels[0], 1, name);
    found.levels.forEach((level, at) => assert.ok(at === 0 || level <= found.levels[at - 1] + 1, `${name}: h${level} after h${found.levels[at - 1]}`));
    assert.equal(found.mains, 1, name);
    assert.deepEqual(found.stuck, [], name);
    await page.context().close();
  }
});

test('a page leads to those before and after it by their titles, and the overview to the bars that decide', async () => {
  const page = await open('pages/brelisk-balconies-2.html', {});
  assert.deepEqual(await page.$$eval('.ways .before a, .ways .after a', all => all.map(a => a.textContent)), ['I. Allegro con spirito', 'III. Menuetto']); // of the same work: without its name
  await page.goto(address('pages/tolvesk-ecluses-1.html'));
  assert.equal(await page.locator('.ways .before a').textContent(), 'Sinfonia in D, The Two Balconies: IV. Rondo. Presto');
  await page.goto(address('pages/index.html'));
  const bars = await page.$$eval('.decisive-cell a', all => all.map(a => [a.textContent, a.href]));
  assert.ok(bars.length > 20);
  for (const [range, href] of bars) {
    await page.goto(href);
    const named = await page.evaluate(() => document.getElementById(location.hash.slice(1)).querySelector('.bars').textContent);
    assert.equal(named.replace(/^bars? /i, ''), range, href);
  }
  await page.context().close();
});

test('every range of bars is a link to a passage of the page', async () => {
  for (const name of movements()) {
    const page = await open(name, {});
    const loose = await page.$$eval('a.bars-link, a.mark', all => all.map(a => a.getAttribute('href')).filter(href => !document.getElementById(href.slice(1))?.matches('details.passage')));
    assert.deepEqual(loose, [], name);
    await page.context().close();
  }
});

test('the bars of each passage that is named stand over the strip, and none runs into another at any width', async () => {
  for (const name of movements())
    for (const [width, height] of screens) {
      const page = await open(name, { viewport: { width, height } });
      const seen = await page.evaluate(() => {
        const boxes = strip => [...strip.querySelectorAll('text.range, text.number')].filter(text => !text.closest('.tight')).map(text => ({ words: text.textContent, box: text.getBoundingClientRect() }));
        const meet = (a, b) => a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 4 && b.top < a.bottom - 4;
        const all = [...document.querySelectorAll('.strip')].map(boxes);
        const named = [...document.querySelectorAll('.decide .bars-link')].map(link => link.getAttribute('href'));
        return { clash: all.flatMap(strip => strip.flatMap((a, i) => strip.slice(0, i).filter(b => meet(a.box, b.box)).map(b => `${b.words} and ${a.words}`))),
          outside: all.flat().filter(({ box }) => box.left < 0 || box.right > innerWidth).map(({ words }) => words),
          written: document.querySelectorAll('.strip text.range').length,
          missing: named.filter(href => ![...document.querySelectorAll('.whole a.mark')].some(mark => mark.getAttribute('href') === href && mark.querySelector('text.range'))) };
      });
      assert.deepEqual([seen.clash, seen.outside, seen.missing], [[], [], []], `${name} at ${width}`);
      if (!/aldersquay/.test(name)) assert.ok(seen.written > 0, `${name} at ${width} names no bars`);
      await page.context().close();
    }
});

// Bar numbers that the engraver has drawn lie in pictures: their size there, as large as the picture stands on the paper.
const engravedNumbers = async page => page.$$eval('img.notation', images => Promise.all(images.map(async image => {
  const picture = new DOMParser().parseFromString(await (await fetch(image.src)).text(), 'image/svg+xml').documentElement;
  const shown = document.body.appendChild(document.importNode(picture, true));
  const box = image.getBoundingClientRect(), sheet = shown.getBoundingClientRect();
  const sizes = [...shown.querySelectorAll('.mNum tspan')].filter(text => text.childElementCount === 0 && /\d/.test(text.textContent))
    .map(text => parseFloat(getComputedStyle(text).fontSize) * Math.abs(text.closest('text').getScreenCTM().a) * 0.75 * box.width / sheet.width);
  shown.remove();
  return box.width > 0 ? sizes : [];
}))).then(all => all.flat());

test('on paper engraved bar numbers are 7 points or more', async t => {
  if (!existsSync('src/pages/web/engraver/node_modules')) {
    t.skip('the engraver is not installed (make engraver)');
    return;
  }
  run('report', 'corpus/brelisk-balconies-1.musicxml', 'corpus/brelisk-balconies-2.musicxml', '-o', join(folder, 'engraved'));
  let measured = 0;
  for (const name of ['engraved/brelisk-balconies-1.html', 'engraved/brelisk-balconies-2.html']) {
    const page = await open(name, { viewport: { width: 794, height: 1123 } });
    await page.emulateMedia({ media: 'print' });
    await page.$$eval('details.passage', all => all.forEach(one => { one.hidden = false; one.open = true; }));
    const sizes = await engravedNumbers(page);
    assert.deepEqual(sizes.filter(size => size < 6.99).map(size => size.toFixed(1)), [], name);
    measured += sizes.length;
    await page.context().close();
  }
  assert.ok(measured > 10, `${measured} engraved bar numbers`);
});

test('dark and printed pages of real scores can be read: words stand out, nothing is cut', async t => {
  const real = movements().filter(name => /^real/.test(name));
  if (!real.length) {
    t.skip('the open scores are not at hand');
    return;
  }
  for (const name of real) {
    const page = await open(name, { viewport: { width: 1400, height: 900 }, colorScheme: 'dark' });
    await page.evaluate(axe);
    const poor = await page.evaluate(async () => (await window.axe.run(document, { runOnly: ['color-contrast'] })).violations.flatMap(rule => rule.nodes.map(node => node.html.slice(0, 90))));
    assert.deepEqual(poor, [], `${name}, dark`);
    await page.setViewportSize({ width: 794, height: 1123 });
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const printed = await page.evaluate(() => ({
      paper: getComputedStyle(document.body).backgroundColor,
      over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      ranges: [...document.querySelectorAll('.whole text.range')].filter(text => text.getBoundingClientRect().right > innerWidth).length,
    }));
    assert.deepEqual(printed, { paper: 'rgb(255, 255, 255)', over: 0, ranges: 0 }, `${name}, printed`);
    await page.context().close();
  }
});

test('on paper no bar number is smaller than 7 points', async () => {
  for (const name of movements()) {
    const page = await open(name, { viewport: { width: 794, height: 1123 } }); // A4 at 96 to the inch
    await page.emulateMedia({ media: 'print' });
    const small = await page.$$eval('svg text', all => all.filter(text => text.getBoundingClientRect().height > 0).map(text => {
      const scale = Math.abs(text.getScreenCTM()?.a ?? 1);
      return [text.textContent, parseFloat(getComputedStyle(text).fontSize) * scale * 0.75];
    }).filter(([words, points]) => /\d/.test(words) && points < 6.99).map(([words, points]) => `${words}: ${points.toFixed(1)}`));
    assert.deepEqual(small.slice(0, 5), [], name);
    await page.context().close();
  }
});

test('pages and sheets speak one visual language: one family of type, and the same paper and ink', async () => {
  const kinds = ['pages/index.html', 'pages/season.html', 'pages/concert-1.html', 'pages/brelisk-balconies-2.html', 'parts.html', 'notes.html', 'rehearsal.html'];
  for (const colorScheme of ['light', 'dark']) {
    const seen = [];
    for (const name of kinds) {
      const page = await open(name, { viewport: { width: 1400, height: 900 }, colorScheme });
      seen.push(await page.evaluate(() => {
        const body = getComputedStyle(document.body);
        const families = new Set([...document.querySelectorAll('body *')].filter(e => e.textContent.trim() && e.getClientRects().length).map(e => getComputedStyle(e).fontFamily));
        return [body.backgroundColor, body.color, body.fontFamily, [...families].map(family => family.split(',')[0]).sort()];
      }));
      await page.context().close();
    }
    for (const [i, look] of seen.entries()) {
      assert.deepEqual(look, seen[0], `${kinds[i]}, ${colorScheme}`);
      assert.equal(look[3].length, 1, `${kinds[i]}: ${look[3]}`);
    }
  }
});

test('a second seating and another seat change what is shown, to the figures of the stage', async () => {
  const page = await open('pages/brelisk-balconies-1.html', { viewport: { width: 1400, height: 900 } });
  const places = ['front', 'middle', 'back', 'left side', 'right side'];
  const names = await page.$$eval('[data-chooses=second]', all => all.map(input => input.dataset.name));
  assert.ok(names.length >= 3);
  for (const second of names) {
    await page.check(`[data-chooses=second][data-name="${second}"]`);
    assert.equal(await page.locator('.second:not([hidden])').count(), 1);
    const table = run('stage', '--arrangement', second);
    for (const [at, place] of places.entries()) {
      await page.check(`[data-chooses=seat][value="${at}"]`);
      const said = await page.locator('.second:not([hidden]) .side >> nth=1').locator('.heard:not([hidden])').textContent();
      const degrees = Number(said.match(/violins (\d+)°/)[1]), wanted = Number(table.match(new RegExp(`^${place} +(\\d+) deg`, 'm'))[1]);
      assert.ok(Math.abs(degrees - wanted) <= 1, `${second}, ${place}: ${degrees} and ${wanted}`);
    }
  }
  // What the second seating loses is framed in the strip, and no more.
  const lost = await page.$$eval('a.mark.lost', all => [...new Set(all.map(a => a.getAttribute('href')))].sort());
  const listed = await page.$$eval('.second:not([hidden]) .lost-and-gained > div:first-child a', all => all.map(a => a.getAttribute('href')).sort());
  assert.deepEqual(lost.filter(href => listed.includes(href)), listed);
  await page.context().close();
});

test('the overview stands work by work, sorts by each of its headings, back, and into works again', async () => {
  const page = await open('pages/index.html', { viewport: { width: 1400, height: 900 } });
  const works = () => page.$$eval('table.index tbody tr', rows => rows.map(row => row.classList.contains('of-movements') ? '# ' + row.cells[0].textContent : row.cells[0].querySelector('a').textContent));
  const placed = await works();
  assert.deepEqual(placed.slice(0, 6), ['# Concerto grosso in G minor', 'I. Allegro', 'II. Grave', 'III. Giga. Allegro', '# Sinfonia in D, The Two Balconies', 'I. Allegro con spirito']);
  const heads = await page.$$eval('table.index thead th', all => all.map(head => head.textContent));
  for (const [at, head] of heads.entries()) {
    const column = () => page.$$eval('table.index tbody tr', (rows, cell) => rows.map(row => row.cells[cell].dataset.sort ?? row.cells[cell].textContent), at);
    await page.click(`table.index thead th >> nth=${at} >> button`);
    const up = await column();
    await page.click(`table.index thead th >> nth=${at} >> button`);
    const order = new Intl.Collator('en', { numeric: true }).compare;
    assert.deepEqual(up, [...up].sort(order), head);
    assert.deepEqual(await column(), [...up].sort((a, b) => order(b, a)), head);
    await page.click(`table.index thead th >> nth=${at} >> button`);
    assert.deepEqual(await works(), placed, head);
  }
  await page.context().close();
});
