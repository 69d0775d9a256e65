// The library's table in a real browser: a click on a heading puts the works in its order and back, words filter them, nothing runs out of the page, and nothing is fetched.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { after, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const program = resolve(process.env.SPEZZATO ?? 'build/spezzato');
let folder, browser, answer;

before(async () => {
  folder = mkdtempSync(join(tmpdir(), 'spezzato-library-'));
  const ask = (...words) => execFileSync(program, ['library', ...words, '--library', join(folder, 'library')]);
  ask('add', 'corpus');
  ask('find', '--strength', 'clear', '--format', 'html', '-o', join(folder, 'shelf.html'));
  answer = JSON.parse(ask('find', '--strength', 'clear', '--format', 'json'));
  browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
});

after(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

const open = async options => {
  const page = await (await browser.newContext(options)).newPage();
  page.faults = [];
  page.on('console', message => { if (['error', 'warning'].includes(message.type())) page.faults.push(message.text()); });
  page.on('pageerror', error => page.faults.push(String(error)));
  page.on('request', request => { if (!request.url().startsWith('file:')) page.faults.push(request.url()); });
  await page.goto(pathToFileURL(join(folder, 'shelf.html')).href);
  return page;
};
const names = page => page.locator('tbody:not([hidden]) tr.work td:first-child').allTextContents();

test('without a script all works stand there in the order of the answer', async () => {
  const page = await open({ javaScriptEnabled: false });
  assert.deepEqual(await names(page), answer.works.map(work => work.composer));
  assert.ok(!await page.locator('form.filters').isVisible());
});

test('a click on a heading sorts by it, the next one the other way', async () => {
  const page = await open();
  const by = (a, b) => a - b;
  const years = answer.works.map(work => work.composed).sort(by);
  const shown = () => page.locator('tbody tr.work td:nth-of-type(2)').allTextContents();
  const head = page.locator('thead th').nth(2);
  await head.locator('button').click();
  assert.deepEqual((await shown()).map(Number), years);
  assert.equal(await head.getAttribute('aria-sort'), 'ascending');
  await head.locator('button').click();
  assert.deepEqual((await shown()).map(Number), years.reverse());
  await page.locator('thead th').nth(3).locator('button').click();
  assert.equal(await head.getAttribute('aria-sort'), null);
  assert.deepEqual(await names(page), [...answer.works].sort((a, b) => a.work_seconds - b.work_seconds).map(work => work.composer));
  assert.deepEqual(page.faults, []);
});

test('words filter the works and say how many are left', async () => {
  const page = await open();
  await page.locator('input[name=words]').fill('split line');
  const left = answer.works.filter(work => work.movements.some(m => m.passages.some(p => p.kind === 'split-line')));
  assert.ok(left.length > 0 && left.length < answer.works.length);
  assert.deepEqual(await names(page), left.map(work => work.composer));
  assert.match(await page.locator('output').textContent(), new RegExp(`^${left.length} of ${answer.works.length} `));
  await page.locator('input[name=words]').fill('');
  assert.equal((await names(page)).length, answer.works.length);
});

test('nothing runs out of the page at 390, 800 and 1400', async () => {
  for (const width of [390, 800, 1400]) {
    const page = await open({ viewport: { width, height: 900 } });
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `at ${width}`);
    if (width === 1400) await page.screenshot({ path: process.env.LIBRARY_SHOT ?? join(folder, 'shot.png') });
  }
});
