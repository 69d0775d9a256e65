// The conductor's own ear in a real browser: a choice at a passage writes the line, and the program takes the line as it stands.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { after, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const program = resolve(process.env.SPEZZATO ?? 'build/spezzato');
const score = 'corpus/brelisk-balconies-1.musicxml';
let folder, browser, context;

const report = (name, ...settings) => {
  execFileSync(program, ['report', score, ...settings, '-o', join(folder, name)], { stdio: ['ignore', 'inherit', 'ignore'] });
  return pathToFileURL(join(folder, name, 'brelisk-balconies-1.html')).href;
};

before(async () => {
  folder = mkdtempSync(join(tmpdir(), 'spezzato-ear-'));
  browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
  context = await browser.newContext();
});

after(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

test('what is chosen at a passage is written as a line that the program takes', async () => {
  const page = await context.newPage(), faults = [];
  page.on('console', message => { if (['error', 'warning'].includes(message.type())) faults.push(message.text()); });
  page.on('pageerror', error => faults.push(String(error)));
  await page.goto(report('first'));
  assert.equal(await page.locator('.ear-lines').isVisible(), false);
  const line = await page.locator('[data-line$=" Vn I Vn II"]').first().getAttribute('data-line');
  const passage = page.locator(`[data-line="${line}"]`);
  await passage.evaluate(element => { element.open = true; });
  await passage.locator('.ear-choice select').selectOption('no');
  await passage.locator('.ear-choice input').fill('the horns cover it ;\n or nearly');
  const lines = await page.locator('.ear-lines').textContent();
  assert.equal(lines, `[passages brelisk-balconies-1.musicxml]\n${line} = no, the horns cover it, or nearly\n`);
  assert.deepEqual(faults, []);

  // The program, given the line, prints it where the passage stood; the page made anew has it chosen.
  writeFileSync(join(folder, 'ear.ini'), lines);
  await page.goto(report('second', '--settings', join(folder, 'ear.ini')));
  assert.match(await page.locator(`[data-line="${line}"]`).textContent(), /taken out by the conductor: the horns cover it, or nearly/);
  assert.equal(await page.locator(`[data-line="${line}"] .ear-choice select`).inputValue(), 'no');
  assert.equal(await page.locator('.ear-lines').textContent(), lines);
  assert.deepEqual(faults, []);
});

test('every line that a page can write is taken, and is about its passage', async () => {
  const page = await context.newPage();
  await page.goto(report('third'));
  const written = await page.locator('[data-line]').evaluateAll(all => all.map(passage => passage.dataset.line));
  assert.ok(written.length > 10);
  assert.equal(new Set(written).size, written.length);
  writeFileSync(join(folder, 'all.ini'), '[passages]\n' + written.map(line => line + ' = clear\n').join(''));
  await page.goto(report('fourth', '--settings', join(folder, 'all.ini')));
  assert.equal(await page.locator('[data-ruling="clear"]').count(), written.length);
});
