// SPDX-License-Identifier: Apache-2.0
// Lessons as a teacher writes them: from a draft to the stage, saved by the program that serves the page, in two windows,
// by keyboard alone, on a phone, by night, and from disk. With CP_PICTURES=1 the pictures of docs/lessons.md are taken.
import assert from 'node:assert/strict';
import { execFileSync, spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, it } from 'node:test';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { axeViolations, launch } from '../browser.js';
import { openDesk, pageFiles, pageFolder, paste, proper, ring } from './desk_page.js';

const patient = { timeout: 90_000 };
const program = process.env.COUNTERPOISE_BIN;
const pictures = process.env.CP_PICTURES ? new URL('../../../docs/pictures/desk/', import.meta.url).pathname : '';
const fish = /^puzzle: (.*)$/m.exec(readFileSync(new URL('../../../data/series/fish_on_the_scales.lesson', import.meta.url), 'utf8'))[1];
const bundled = (name) => new URL(`../../../data/series/${name}.lesson`, import.meta.url);
let browser;
let served;
let folder;

// The real program serves the page and a folder of lessons.
async function serveFolder() {
  const child = spawn(program, ['desk', '--no-open', '--port', '0', '--folder', pageFolder, '--lessons', folder], { stdio: ['ignore', 'pipe', 'inherit'] });
  const line = await new Promise((resolve) => { child.stdout.once('data', (bytes) => resolve(String(bytes))); });
  return { url: /http:\S+\//.exec(line)[0], close: () => child.kill() };
}

before(async () => {
  assert.ok(program, 'COUNTERPOISE_BIN names the program');
  if (pictures) mkdirSync(pictures, { recursive: true });
  folder = mkdtempSync(join(tmpdir(), 'counterpoise-shelf-'));
  copyFileSync(bundled('fish_on_the_scales'), join(folder, 'fish.lesson'));
  [browser, served] = await Promise.all([launch(), serveFolder()]);
});
after(async () => { await browser?.close(); served?.close(); });

const openLessons = (options = {}) => openDesk(browser, `${served.url}lessons.html`, { origin: served.url, ...options });
const press = async (page, ...keys) => { for (const key of keys) await page.keyboard.press(key); };
const proved = (page) => page.getByText('Every step and every claim holds').waitFor(patient);
const strip = (page, number) => page.locator(`#scene-${number - 1}`);
const headings = (page) => page.locator('.fold .name').allInnerTexts();
const stored = (name) => readFileSync(join(folder, name), 'utf8');

async function picture(page, name) {
  if (!pictures) return;
  const path = `${pictures}${name}.png`;
  await page.screenshot({ path, animations: 'disabled' });
  execFileSync('pngquant', ['--force', '--nofs', '--output', path, '48', path]);
}

async function openFish(page) {
  await page.getByRole('button', { name: /fish\.lesson/ }).click();
  await proved(page);
}

it('is no burden to the desk: the page for lessons is whole in 600 kB of its own', (t) => {
  const sizes = ['html', 'js', 'css'].map((ending) => gzipSync(pageFiles[`/lessons.${ending}`].bytes, { level: 9 }).length);
  const whole = sizes.reduce((sum, size) => sum + size, 0);
  t.diagnostic(`page for lessons ${whole} bytes gzipped`);
  assert.ok(whole < 600_000, `${whole} bytes`);
});

it('the whole way: draft, edit, a claim broken and mended, reordered, rehearsed, saved, built', async (t) => {
  const { context, page, faults, reached } = await openDesk(browser, served.url, { viewport: { width: 1366, height: 820 } });
  await paste(page, fish);
  await proper(page);
  await page.fill('#pan-left', 'r689');
  await page.fill('#pan-right', 'c247');
  await page.getByRole('link', { name: 'Lessons' }).click();
  await page.locator('#puzzle').waitFor();
  assert.equal(await page.inputValue('#puzzle'), fish);
  const began = Date.now();
  await page.locator('#draft').press('Enter');
  await page.locator('.built').first().waitFor(patient);
  t.diagnostic(`${Date.now() - began} ms to the draft`);
  await proved(page);
  t.diagnostic(`${Date.now() - began} ms until every claim was proved`);

  // Words, with the scene beside them following.
  const words = page.getByRole('textbox', { name: 'scene 1, words' }).first();
  await words.fill('Good morning. Look at this grid before you reach for a pencil.');
  await strip(page, 1).locator('.built').getByText('Good morning.').waitFor(patient);

  // A claim broken: refuted, with its place; the way there; mended.
  const number = (await headings(page)).findIndex((heading) => /cancel|take off/i.test(heading) || /both pans/i.test(heading)) + 1;
  await strip(page, number).locator('.fold').click();
  const claim = strip(page, number).locator('textarea.code');
  const claims = await claim.evaluateAll((areas) => areas.map((area) => area.value));
  const at = claims.findIndex((value) => value.startsWith('claim'));
  assert.ok(at >= 0, claims.join('\n'));
  await claim.nth(at).fill('claim r2c2 = 2');
  await strip(page, number).locator('.piece.refuted .stamp.refuted').waitFor(patient);
  assert.match(await strip(page, number).locator('.headline').innerText(), /1 refuted/);
  await page.getByText('Some claims do not hold').waitFor(patient);
  await picture(page, 'lesson_refuted');
  await claim.nth(at).fill('claim {key.left} = {key.rihgt} footing key');
  const jump = page.getByRole('button', { name: /Go to line \d+/ });
  await jump.waitFor(patient);
  await strip(page, 1).locator('.fold').click();
  await jump.click();
  assert.match(await page.evaluate(() => document.activeElement.value), /rihgt/);
  await claim.nth(at).fill('claim {key.left} = {key.right} footing key');
  await proved(page);
  await picture(page, 'lesson');

  // Reordered by keyboard: what a scene needs comes too late then, and the lesson says where.
  const before = await headings(page);
  await strip(page, number).locator('.fold').focus();
  await press(page, 'Alt+ArrowUp', 'Alt+ArrowUp');
  assert.equal((await headings(page))[number - 3], before[number - 1]);
  await page.locator('.state .flaw').waitFor(patient);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  assert.deepEqual(await headings(page), before);
  const last = before.length;
  await strip(page, last).locator('.fold').focus();
  await press(page, 'Alt+ArrowUp');
  await proved(page);

  // Rehearsed: the clock runs, the times go into the lesson.
  await strip(page, 1).locator('.fold').click();
  await page.getByRole('button', { name: 'Rehearse' }).click();
  const rehearsal = page.getByRole('main', { name: 'Rehearsal' });
  await rehearsal.waitFor();
  assert.match(await rehearsal.innerText(), /\d+ words, \d:\d\d at 140 a minute/);
  await press(page, 'c');
  await page.waitForTimeout(2300);
  await press(page, 'ArrowRight');
  await rehearsal.getByText(`2 of ${last}`).waitFor();
  await picture(page, 'rehearsal');
  await page.getByRole('button', { name: 'Keep these times' }).click();
  await press(page, 'Escape');
  await proved(page);
  assert.equal(await strip(page, 1).locator('.headline .time').innerText(), '0:05', 'five seconds are the shortest');

  // Saved by the program, and built from what was saved.
  await press(page, 'Control+s');
  await page.getByText(/; saved$/).waitFor(patient);
  const name = await page.locator('.state .quiet, #file-name').first().evaluate(() => document.querySelector('.sheet .state').textContent);
  const text = stored(name);
  assert.match(text, /^counterpoise lesson 1\n/);
  assert.match(text, /Good morning\./);
  assert.match(text, /@time 5s/);
  const built = execFileSync(program, ['lesson', 'build', join(folder, name), '-o', join(folder, 'built')], { encoding: 'utf8' });
  assert.match(built, /index\.html/);
  assert.match(readFileSync(join(folder, 'built', 'index.html'), 'utf8'), /Good morning\./);
  assert.deepEqual([faults, reached], [[], []]);
  await context.close();
});

it('by keyboard alone: opens a lesson, writes a note, takes it back, and goes to the stage and through it', async () => {
  const { context, page, faults } = await openLessons();
  await page.getByRole('button', { name: /fish\.lesson/ }).focus();
  await press(page, 'Enter');
  await page.locator('#scene-0 .fold:focus').waitFor(patient);
  await proved(page);
  await strip(page, 2).locator('.fold').focus();
  await press(page, 'Enter');
  await page.getByRole('combobox', { name: 'add to scene 2' }).selectOption('Note for you');
  const chosen = await page.evaluate(() => document.activeElement.value.slice(document.activeElement.selectionStart, document.activeElement.selectionEnd));
  assert.equal(chosen, 'A likely slip, or what to wait for.', 'what is to be written over is chosen');
  await page.keyboard.type('Wait for the second hand.');
  assert.match(await page.locator('textarea.whole').inputValue(), /Wait for the second hand\./);
  await press(page, 'Shift+Tab', 'Control+z');
  const outline = await page.evaluate(() => getComputedStyle(document.activeElement).outlineWidth);
  assert.ok(parseFloat(outline) >= 2, 'the focus can be seen');
  await page.getByRole('button', { name: 'Present', exact: true }).focus();
  await press(page, 'Enter');
  const stage = page.getByRole('main', { name: 'Stage' });
  await stage.getByRole('heading', { level: 1 }).waitFor();
  const first = await stage.getByRole('heading', { level: 1 }).innerText();
  await press(page, 'ArrowRight', ' ');
  assert.notEqual(await stage.getByRole('heading', { level: 1 }).innerText(), first);
  await press(page, 'End');
  assert.equal(await stage.locator('details[open]').count(), 0, 'no answer before it is asked for');
  await press(page, 'Escape');
  await page.locator('.strip:last-child .fold:focus').waitFor();
  assert.deepEqual(faults, []);
  await context.close();
});

it('shows the audience what is on, and nothing of the notes, in a window of its own', async () => {
  const { context, page } = await openLessons({ viewport: { width: 1920, height: 1080 } });
  await openFish(page);
  await page.getByRole('button', { name: 'Rehearse' }).click();
  const note = await page.locator('.prompter .note').innerText();
  const [audience] = await Promise.all([context.waitForEvent('page'), page.getByRole('button', { name: 'A window for the audience' }).click()]);
  await audience.setViewportSize({ width: 1920, height: 1080 });
  const heading = audience.getByRole('heading', { level: 1 });
  await heading.waitFor(patient);
  assert.equal((await audience.locator('body').innerText()).includes(note.slice(0, 20)), false);
  await page.bringToFront();
  await press(page, 'ArrowRight', 'ArrowRight', 'ArrowRight');
  const third = await page.locator('.prompter h1').innerText();
  await audience.getByRole('heading', { level: 1, name: third }).waitFor();
  const fits = await audience.evaluate(() => {
    const board = document.querySelector('.figure.board').getBoundingClientRect();
    return board.top >= 0 && board.bottom <= innerHeight && board.height > 0.7 * innerHeight;
  });
  assert.ok(fits, 'the board is large and whole at 1080p');
  await picture(audience, 'lesson_stage');
  assert.deepEqual(await axeViolations(page), [], 'rehearsal');
  await press(page, 'n');
  assert.deepEqual(await axeViolations(page), [], 'stage');
  await press(page, 'n');
  await page.emulateMedia({ colorScheme: 'dark' });
  assert.deepEqual(await axeViolations(page, 'color-contrast'), [], 'rehearsal, dark');
  await context.close();
});

it('two windows never write over one another, neither a lesson nor the desk', async () => {
  const { context, page } = await openLessons();
  await openFish(page);
  await page.locator('details').filter({ hasText: 'Head of the lesson' }).locator('summary').first().click();
  await page.getByLabel('Title').fill('From the first window');
  await press(page, 'Tab');
  const { page: other } = await openDesk(browser, `${served.url}lessons.html`, { context, origin: served.url });
  await other.getByRole('button', { name: /^From the first window/ }).click();
  await other.getByText('that window keeps it').waitFor(patient);
  await other.getByRole('button', { name: 'Go on here' }).click();
  await page.getByText('that window keeps it').waitFor(patient);
  await other.getByText('kept in this browser').waitFor(patient);
  await page.getByLabel('Title').fill('Written where nothing is kept');
  await press(page, 'Tab');
  await other.locator('details').filter({ hasText: 'Head of the lesson' }).locator('summary').first().click();
  await other.getByLabel('Title').fill('From the second window');
  await press(other, 'Tab');
  const kept = () => other.evaluate(() => Object.entries(localStorage).filter(([key]) => key.startsWith('counterpoise.lesson.')).map(([, value]) => /title: (.*?)\\n/.exec(value)[1]));
  assert.deepEqual(await kept(), ['From the second window']);
  await page.getByRole('button', { name: 'Work on a copy' }).click();
  await page.getByText('kept in this browser').waitFor(patient);
  assert.deepEqual((await kept()).sort(), ['From the second window', 'Written where nothing is kept']);

  await page.goto(served.url);
  await paste(page, ring);
  await proper(page);
  await other.goto(served.url);
  await other.getByText('that window keeps it').waitFor(patient);
  await other.fill('#pan-left', 'r1');
  assert.equal(JSON.parse(await page.evaluate(() => localStorage.getItem('counterpoise.desk.1'))).state.pans.r1, undefined);
  await page.fill('#pan-left', 'c1');
  await other.getByRole('button', { name: 'Go on here' }).click();
  await page.getByText('that window keeps it').waitFor(patient);
  assert.equal(await other.inputValue('#pan-left'), 'r1', 'what was done here stays');
  await other.getByRole('button', { name: 'Undo' }).click();
  assert.equal(await other.inputValue('#pan-left'), 'c1', 'and what the other window kept is one step back');
  await context.close();
});

it('never writes over a file that has changed on disk meanwhile', async () => {
  writeFileSync(join(folder, 'shared.lesson'), readFileSync(bundled('fish_on_the_scales')));
  const { context, page } = await openLessons();
  await page.getByRole('button', { name: / shared\.lesson/ }).click();
  await proved(page);
  const theirs = stored('shared.lesson').replace(/^title: .*$/m, 'title: Theirs');
  writeFileSync(join(folder, 'shared.lesson'), theirs);
  await page.getByRole('combobox', { name: 'add to scene 1' }).selectOption('Remark for nobody');
  await press(page, 'Control+s');
  await page.getByText('has changed on disk').waitFor(patient);
  assert.equal(stored('shared.lesson'), theirs);
  await page.getByRole('button', { name: /Take what is on disk/ }).click();
  await page.getByText(/; saved$/).waitFor(patient);
  assert.equal(await page.locator('header .title').innerText(), 'Theirs');
  await page.getByRole('button', { name: 'Undo' }).click();
  await press(page, 'Control+s');
  await page.locator('.state').getByText(/; saved$/).waitFor(patient);
  assert.match(stored('shared.lesson'), /% A remark\./);
  await context.close();
});

it('passes axe and fits, by day, by night and on a phone; and opens from disk without a network', async () => {
  const { context, page } = await openLessons();
  assert.deepEqual(await axeViolations(page), [], 'opening');
  await page.emulateMedia({ colorScheme: 'dark' });
  await openFish(page);
  await page.getByRole('combobox', { name: 'add to scene 1' }).selectOption('Claim');
  await page.keyboard.type('claim r1c1 in 1 footing none');
  await page.locator('.piece .stamp.refuted, .piece .stamp.open, .piece .flaw').first().waitFor(patient);
  await page.evaluate(() => { for (const sheet of document.querySelectorAll('details.sheet')) sheet.open = true; });
  assert.deepEqual(await axeViolations(page, 'color-contrast'), [], 'roll, dark');
  await page.emulateMedia({ colorScheme: 'light' });
  assert.deepEqual(await axeViolations(page), [], 'roll');
  await page.setViewportSize({ width: 360, height: 740 });
  assert.deepEqual(await axeViolations(page, 'target-size', 'color-contrast'), [], 'phone');
  for (const width of [360, 768, 3840]) {
    await page.setViewportSize({ width, height: 900 });
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `${width} wide`);
  }
  await page.setViewportSize({ width: 360, height: 740 });
  await page.getByRole('button', { name: 'Rehearse' }).click();
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), 'rehearsal on a phone');
  await context.close();

  const disk = pathToFileURL(join(pageFolder, 'lessons.html')).href;
  const { context: offline, page: alone, faults, reached } = await openDesk(browser, disk, { origin: pathToFileURL(pageFolder).href });
  await alone.getByRole('button', { name: /fish_on_the_scales/ }).click();
  await proved(alone);
  const [download] = await Promise.all([alone.waitForEvent('download'), alone.getByRole('button', { name: 'Save' }).click()]);
  assert.equal(download.suggestedFilename(), 'fish_on_the_scales.lesson');
  assert.equal(readFileSync(await download.path(), 'utf8'), readFileSync(bundled('fish_on_the_scales'), 'utf8'));
  assert.deepEqual([faults, reached], [[], []]);
  await offline.close();
});
