// The conductor's pages in a real browser: they open, filter, print, ask nothing of anybody, and can be used without a mouse.
// SPEZZATO and SKETCH name the programs, CHROMIUM the browser. Run by `make test-web`.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { after, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const program = resolve(process.env.SPEZZATO ?? 'build/spezzato');
const sketch = resolve(process.env.SKETCH ?? 'build/sketch');
const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';
const widths = [360, 768, 1440];
let folder, browser;

const hostile = `title: <script>window.harmed = 1</script><img src=x onerror="window.harmed = 2">
work: "quoted" & 'more'
time: 4/4  tempo: q=120
Violin I:   c5:e d5 e5 f5 g5:h | R | a4:e b4 c5 d5 e5:h | R | c5:w |]
Violin II:  R | c5:e d5 e5 f5 g5:h | R | a4:e b4 c5 d5 e5:h | e4:w |]
Viola:      g4:w | g4:w | e4:w | e4:w | g4:w |]
Cello:      c3:w | c3:w | a2:w | a2:w | c3:w |]
`;

before(async () => {
  folder = mkdtempSync(join(tmpdir(), 'spezzato-web-'));
  writeFileSync(join(folder, 'hostile.txt'), hostile);
  execFileSync(sketch, [join(folder, 'hostile.txt'), join(folder, 'hostile <one> #2.musicxml')]);
  const scores = readdirSync('corpus').filter(name => /\.(musicxml|mxl)$/.test(name)).sort().map(name => join('corpus', name));
  execFileSync(program, ['report', ...scores, join(folder, 'hostile <one> #2.musicxml'), '-o', join(folder, 'pages')], { stdio: ['ignore', 'inherit', 'ignore'] });
  browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
});

after(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

const pages = () => readdirSync(join(folder, 'pages')).sort();
const address = name => pathToFileURL(join(folder, 'pages', name)).href;

// A page that remembers what went wrong on it, and what it asked for.
async function open(name, options = {}) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  page.faults = [];
  page.asked = [];
  page.on('console', message => { if (['error', 'warning'].includes(message.type())) page.faults.push(message.text()); });
  page.on('pageerror', error => page.faults.push(String(error)));
  page.on('dialog', dialog => { page.faults.push('a dialog'); dialog.dismiss(); });
  page.on('request', request => { if (!request.url().startsWith('data:')) page.asked.push(request.url()); });
  await page.goto(address(name));
  return page;
}

// The page with most passages: the season's richest.
const richest = () => pages().filter(name => name !== 'index.html')
  .map(name => [readFileSync(join(folder, 'pages', name), 'utf8').split('<details class="passage').length, name]).sort((a, b) => b[0] - a[0])[0][1];

test('every page opens without an error, asks for nothing but itself, and fits at every width', async () => {
  assert.ok(pages().length > 8, 'the pages of the season');
  for (const name of pages()) {
    const page = await open(name);
    for (const width of widths) {
      await page.setViewportSize({ width, height: 800 });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      assert.ok(over <= 0, `${name} is ${over} too wide at ${width}`);
    }
    assert.deepEqual(page.faults, [], name);
    assert.deepEqual(page.asked, [address(name)], name);
    await page.context().close();
  }
});

test('the librarian\'s sheets and the season\'s plan open, fit and print whole rows too', async () => {
  const parts = join(folder, 'parts.html'), season = join(folder, 'season.html');
  execFileSync(program, ['parts', '--format', 'html', join(folder, 'hostile <one> #2.musicxml'), join('corpus', richest().replace(/\.html$/, '.musicxml')), '-o', parts], { stdio: 'ignore' });
  execFileSync(program, ['season', '--no-cache', '--format', 'html', join('corpus', 'season.csv'), '-o', season], { stdio: 'ignore' });
  for (const file of [parts, season]) {
    const page = await open('index.html');
    page.asked.length = 0;
    await page.goto(pathToFileURL(file).href);
    for (const width of widths) {
      await page.setViewportSize({ width, height: 800 });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      assert.ok(over <= 0, `${file} is ${over} too wide at ${width}`);
    }
    await page.emulateMedia({ media: 'print' });
    const cut = await page.$$eval('tr', all => all.filter(e => getComputedStyle(e).breakInside !== 'avoid').length);
    assert.equal(cut, 0, `${file} has rows that paper may cut`);
    assert.equal(await page.evaluate(() => window.harmed), undefined);
    assert.deepEqual(page.faults, [], file);
    assert.deepEqual(page.asked, [pathToFileURL(file).href], file);
    await page.context().close();
  }
});

test('the index leads to every movement', async () => {
  const page = await open('index.html');
  const links = await page.$$eval('table.index th a', all => all.map(a => a.href));
  assert.equal(links.length, pages().length - 1);
  for (const link of links) {
    await page.goto(link);
    assert.ok(await page.$('section.movement h1'), link);
    assert.ok(await page.evaluate(() => document.getElementById(location.hash.slice(1)) !== null), link);
  }
  await page.context().close();
});

test('filters by kind, strength and sections change list, map and count alike', async () => {
  const page = await open(richest());
  const shown = () => page.$$eval('details.passage', all => all.filter(p => !p.hidden).map(p => ({ ...p.dataset, id: p.id })));
  const drawn = () => page.$$eval('a.mark', all => [...new Set(all.filter(a => !a.hasAttribute('hidden')).map(a => a.getAttribute('href').slice(1)))].sort());
  const count = () => page.textContent('form.filters output');
  const total = (await page.$$('details.passage')).length;
  assert.ok(total > 5);
  assert.ok((await shown()).every(p => Number(p.strength) >= 1 || 'cited' in p), 'marginal ones are put away at first, but for those that the verdict names');
  await page.check('form.filters input[type=radio][value="2"]');
  let now = await shown();
  assert.ok(now.length > 0 && now.every(p => p.strength === '2'));
  assert.deepEqual(await drawn(), now.map(p => p.id).sort());
  assert.equal(await count(), `${now.length} of ${total} passages shown`);
  await page.check('form.filters input[type=radio][value="0"]');
  assert.equal((await shown()).length, total);
  const pairs = (await shown()).map(p => p.pair).filter(pair => pair.includes(' / '));
  const times = one => pairs.filter(pair => pair === one).length;
  const pair = pairs.sort((a, b) => times(a) - times(b))[0]; // the rarest: others remain to be put away
  await page.selectOption('select[name=pair]', pair);
  now = await shown();
  assert.ok(now.length > 0 && now.length < total && now.every(p => p.pair === pair || pair.split(' / ').every(body => p.bodies.split('|').includes(body))));
  assert.deepEqual(await drawn(), now.map(p => p.id).sort());
  await page.selectOption('select[name=pair]', '');
  for (const box of await page.$$('input[name=kind]')) await box.uncheck();
  assert.equal((await shown()).length, 0);
  await page.check('input[name=kind][value=exchange]');
  now = await shown();
  assert.ok(now.length > 0 && now.every(p => p.kind === 'exchange'));
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('a mark on the map opens its passage, by mouse and by keyboard', async () => {
  const page = await open(richest(), { viewport: { width: 1440, height: 900 } });
  const target = await page.$eval('a.mark:not([hidden])', a => a.getAttribute('href').slice(1));
  await page.focus(`a.mark[href="#${target}"]`);
  await page.keyboard.press('Enter');
  await page.locator(`#${target}[open]`).waitFor();
  assert.equal(await page.evaluate(() => document.activeElement.closest('details')?.id), target);
  assert.ok(await page.isVisible(`#${target} .pitch, #${target} .notation, #${target} .notes`), 'the passage itself is drawn');
  // The last one drawn lies on top of all others.
  const other = await page.$$eval('a.mark.k-exchange:not([hidden])', all => all.at(-1).getAttribute('href').slice(1));
  await page.locator(`a.mark[href="#${other}"] .call`).last().click();
  await page.locator(`#${other}[open]`).waitFor();
  await page.context().close();
});

test('every passage is listed, and every mark leads to one, without a script too', async () => {
  const page = await open(richest(), { javaScriptEnabled: false });
  const list = await page.locator('details.passage').all();
  assert.ok(list.length > 5);
  for (const passage of list) assert.ok(await passage.isVisible());
  const marks = await page.locator('a.mark').evaluateAll(all => all.map(a => a.getAttribute('href').slice(1))).catch(() => null);
  if (marks) for (const id of new Set(marks)) assert.equal(await page.locator(`details[id="${id}"]`).count(), 1);
  await page.context().close();
});

test('everything that can be used has a name for a screen reader', async () => {
  for (const name of ['index.html', richest()]) {
    const page = await open(name);
    const nameless = await page.$$eval('a, input, select, summary, svg[role], img, [role=region]', all => all.filter(element => {
      const label = element.getAttribute('aria-label') ?? element.getAttribute('alt') ?? element.closest('label')?.textContent ?? element.textContent;
      return !label || !label.trim();
    }).map(element => element.outerHTML.slice(0, 80)));
    assert.deepEqual(nameless, [], name);
    assert.equal(await page.$eval('html', html => html.lang), 'en');
    assert.equal((await page.$$('h1')).length, 1, name);
    await page.context().close();
  }
});

test('text and sections stand out from the paper by 4.5 to 1 or more, light and dark (WCAG 2.1, 1.4.3)', async () => {
  for (const colorScheme of ['light', 'dark']) {
    const page = await open(richest(), { colorScheme });
    const poor = await page.evaluate(() => {
      const channel = value => value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4; // IEC 61966-2-1
      const luminance = color => {
        const probe = document.body.appendChild(document.createElement('span'));
        probe.style.color = color;
        const [r, g, b] = getComputedStyle(probe).color.match(/[\d.]+/g).map(Number).map(value => channel(value / 255));
        probe.remove();
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      const style = getComputedStyle(document.documentElement);
      const value = name => style.getPropertyValue(name).trim();
      const paper = luminance(value('--paper'));
      return ['--ink', '--soft', '--blue', '--ochre'].map(name => {
        const [high, low] = [luminance(value(name)), paper].sort((a, b) => b - a);
        return [name, (high + 0.05) / (low + 0.05)];
      }).filter(([, ratio]) => ratio < 4.5);
    });
    assert.deepEqual(poor, [], colorScheme);
    await page.context().close();
  }
});

// How the colour-blind see a colour: Machado, Oliveira, Fernandes, A Physiologically-based Model for Simulation of Color Vision Deficiency (2009),
// severity 1 (the figures from memory); in linear sRGB. Difference of colours: CIE 1976 L*a*b*, white D65. From 20 on two colours are plainly two
// (common practice).
const eyes = {
  usual: [[1, 0, 0], [0, 1, 0], [0, 0, 1]],
  protanopia: [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
  deuteranopia: [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.01182, 0.04294, 0.968881]],
  tritanopia: [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.3039]],
};

function lab([r, g, b]) {
  const f = t => t > 216 / 24389 ? Math.cbrt(t) : (24389 / 27 * t + 16) / 116;
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505), y = f(0.2126 * r + 0.7152 * g + 0.0722 * b), z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

test('the colour-blind tell first from second violins, and both from all others, light and dark', async () => {
  const linear = value => value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4; // IEC 61966-2-1
  for (const colorScheme of ['light', 'dark']) {
    const page = await open(richest(), { colorScheme });
    const colors = await page.evaluate(() => ['blue', 'ochre', 'soft'].map(
      name => [name, getComputedStyle(document.documentElement).getPropertyValue('--' + name).trim()]));
    for (const [eye, matrix] of Object.entries(eyes)) {
      const seen = colors.map(([name, color]) => {
        const rgb = [1, 3, 5].map(at => linear(parseInt(color.slice(at, at + 2), 16) / 255));
        return [name, lab(matrix.map(row => Math.min(1, Math.max(0, row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2]))))];
      });
      for (const [i, [one, a]] of seen.entries())
        for (const [other, b] of seen.slice(0, i)) {
          const apart = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
          assert.ok(apart >= 20, `${colorScheme}, ${eye}: ${one} and ${other} are ${apart.toFixed(1)} apart`);
        }
    }
    await page.context().close();
  }
});

test('a hostile title is shown as text and does nothing', async () => {
  const name = pages().find(page => page.startsWith('hostile'));
  const page = await open(name);
  assert.deepEqual(page.faults, []);
  assert.match(await page.textContent('h1'), /<script>window\.harmed = 1<\/script><img src=x onerror="window\.harmed = 2">/);
  assert.equal(await page.evaluate(() => window.harmed), undefined);
  assert.equal((await page.$$('img[src=x], h1 script')).length, 0);
  await page.context().close();
});

test('passages are engraved where the engraver is installed, and drawn where it is not', async t => {
  const drawn = join(folder, 'drawn');
  const score = join('corpus', richest().replace(/\.html$/, '.musicxml'));
  execFileSync(program, ['report', existsSync(score) ? score : score.replace('.musicxml', '.mxl'), '--engraver', 'none', '-o', drawn], { stdio: 'ignore' });
  assert.doesNotMatch(readFileSync(join(drawn, richest()), 'utf8'), /<img class="notation"/);
  if (!existsSync('src/pages/web/engraver/node_modules')) {
    t.diagnostic('skipped: the engraver is not installed (make engraver)');
    return;
  }
  const page = await open(richest());
  const images = await page.$$('img.notation');
  assert.ok(images.length > 3);
  await page.$$eval('details.passage', all => all.forEach(p => { p.hidden = false; p.open = true; }));
  for (const image of images.slice(0, 5)) {
    await image.scrollIntoViewIfNeeded();
    await page.waitForTimeout(50);
    assert.ok(await image.evaluate(i => i.decode().then(() => i.naturalWidth > 100 && i.naturalHeight > 50)));
    assert.match(await image.getAttribute('alt'), /^Notes of bars .*: ./);
  }
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.ok(over <= 0);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('what is engraved without the cache is what the cache keeps', t => {
  if (!existsSync('src/pages/web/engraver/node_modules')) {
    t.diagnostic('skipped: the engraver is not installed (make engraver)');
    return;
  }
  const score = readdirSync('corpus').filter(name => name.endsWith('.musicxml')).sort()[0];
  const name = score.replace(/\.musicxml$/, '.html');
  const [fresh, kept] = [['fresh', '--no-cache'], ['kept']].map(([place, ...how]) => {
    execFileSync(program, ['report', join('corpus', score), ...how, '-o', join(folder, place)], { stdio: 'ignore' });
    return readFileSync(join(folder, place, name));
  });
  assert.ok(fresh.equals(kept));
});

// Rows of a printed page: each passage's line is found whole on one page, or on none.
test('print on A4 and Letter cuts no row', async t => {
  const page = await open(richest());
  const rows = await page.$$eval('details.passage:not([hidden]) > summary', all => all.map(s => s.querySelector('.bars').textContent));
  const cells = await page.$$eval('table.arrangements td.points', all => all.map(cell => cell.textContent));
  await page.emulateMedia({ media: 'print' });
  const breakable = await page.$$eval('tr, .system, .passage:not([open]), .reasons li, img.stage', all => all.filter(e => getComputedStyle(e).breakInside !== 'avoid').map(e => e.tagName));
  assert.deepEqual(breakable, []);
  const over = await page.evaluate(() => [...document.querySelectorAll('.scroll')].filter(e => getComputedStyle(e).overflowX !== 'visible').length);
  assert.equal(over, 0, 'nothing on paper has to be scrolled');
  for (const format of ['A4', 'Letter']) {
    const file = join(folder, `${format}.pdf`);
    await page.pdf({ path: file, format, printBackground: true });
    if (!existsSync('/usr/bin/pdftotext')) {
      t.diagnostic('skipped: pdftotext is not at hand to look into the printed page');
      break;
    }
    const sheets = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).split('\f');
    assert.ok(sheets.length > 1);
    for (const words of [...rows, ...cells])
      assert.ok(sheets.some(sheet => sheet.toLowerCase().includes(words.toLowerCase())), `${format}: '${words}' is not whole on any page`);
  }
  await page.context().close();
});

test('the same score gives the same page, byte for byte', () => {
  const score = readdirSync('corpus').filter(name => name.endsWith('.musicxml')).sort()[0];
  const name = score.replace(/\.musicxml$/, '.html');
  const [one, other] = ['once', 'again'].map(place => {
    execFileSync(program, ['report', join('corpus', score), '-o', join(folder, place)], { stdio: 'ignore' });
    return readFileSync(join(folder, place, name));
  });
  assert.ok(one.equals(other));
});
