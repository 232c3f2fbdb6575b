// SPDX-License-Identifier: Apache-2.0
// The shelf in the browser, served by the real program: look, tag, note, open on the desk; by keyboard, by night, on a phone.
// With CP_PICTURES=1 its picture for the documents is taken.
import assert from 'node:assert/strict';
import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, it } from 'node:test';
import { axeViolations, launch } from '../browser.js';
import { openDesk, pageFolder, ring } from './desk_page.js';

const program = process.env.COUNTERPOISE_BIN;
const four = '..3.1......4.1..', many = '...3..1....2....';
let browser;
let served;
let folder;
let shelf;

async function serveShelf(...words) {
  const child = spawn(program, ['desk', '--no-open', '--port', '0', '--folder', pageFolder, ...words], { stdio: ['ignore', 'pipe', 'inherit'] });
  const line = await new Promise((resolve) => { child.stdout.once('data', (bytes) => resolve(String(bytes))); });
  return { url: /http:\S+\//.exec(line)[0], close: () => child.kill() };
}

before(async () => {
  assert.ok(program, 'COUNTERPOISE_BIN names the program');
  folder = mkdtempSync(join(tmpdir(), 'counterpoise-shelf-'));
  shelf = join(folder, 'evening.shelf');
  writeFileSync(join(folder, 'lines.txt'), `ring\t${ring}\n${four}\n${many}\n`);
  execFileSync(program, ['shelf', 'import', shelf, join(folder, 'lines.txt'), '--source', 'our own', '--quiet']);
  execFileSync(program, ['shelf', 'survey', shelf, '--depth', 'basics']);
  [browser, served] = await Promise.all([launch(), serveShelf('--shelf', shelf)]);
});
after(async () => {
  await browser?.close();
  served?.close();
  rmSync(folder, { recursive: true, force: true });
});

const openShelf = (options = {}) => openDesk(browser, `${served.url}shelf.html`, { origin: served.url, ...options });
const numbers = (page) => page.locator('.entry').evaluateAll((entries) => entries.map((entry) => Number(entry.dataset.number)));
const said = (page, words) => page.locator('#said', { hasText: words }).waitFor();

it('shows what fits, and what is asked', async () => {
  const { context, page, faults, reached } = await openShelf();
  await said(page, '2 fit');
  assert.deepEqual(await numbers(page), [1, 2]);
  await page.getByLabel('one solution').uncheck();
  await page.fill('#query', 'givens <= 5 or not proper');
  await page.getByRole('button', { name: 'Look' }).click();
  await said(page, '2 fit');
  assert.deepEqual(await numbers(page), [2, 3]);
  await page.getByLabel('singles after the hardest step').check();
  assert.equal(await page.locator('#asked').innerText(), 'Asks: (givens <= 5 or not proper) and tail singles');
  await page.keyboard.press('Tab');
  await page.locator('#query').press('Enter');
  await page.waitForFunction(() => document.querySelectorAll('.entry').length === 1);
  assert.deepEqual([faults, reached], [[], []]);
  await context.close();
});

it('points at what is wrong with a query', async () => {
  const { context, page } = await openShelf();
  await page.fill('#query', 'givens < few');
  await page.locator('#query').press('Enter');
  await page.locator('#fault', { hasText: "'few' stands where" }).waitFor();
  assert.equal(await page.locator('#query').evaluate((input) => input.value.slice(input.selectionStart, input.selectionEnd)), 'few');
  assert.equal(await page.locator('#query').getAttribute('aria-invalid'), 'true');
  assert.deepEqual(await axeViolations(page), []);
  await context.close();
});

it('points at it behind leading blanks and the bracket of the choices, too', async () => {
  const { context, page } = await openShelf();
  await page.fill('#query', '   givens < few');
  for (const is of [true, false]) {
    await page.getByLabel('one solution').setChecked(is);
    await page.locator('#query').evaluate((input) => input.setSelectionRange(0, 0));
    await page.locator('#query').press('Enter');
    await page.waitForFunction(() => document.getElementById('query').selectionEnd > 0);
    assert.equal(await page.locator('#query').evaluate((input) => input.value.slice(input.selectionStart, input.selectionEnd)), 'few');
  }
  await context.close();
});

it('passes over the answer to an earlier question', async () => {
  const { context, page } = await openShelf();
  await said(page, '2 fit');
  let letGo;
  const held = new Promise((go) => { letGo = go; }), isEarlier = (url) => new URL(url).searchParams.get('query') === '(givens <= 5) and proper';
  await page.route((url) => isEarlier(url), async (route) => {
    const response = await route.fetch();
    await held;
    await route.fulfill({ response });
  });
  const late = page.waitForResponse((response) => isEarlier(response.url()));
  for (const query of ['givens <= 5', 'givens >= 6']) {
    await page.fill('#query', query);
    await page.locator('#query').press('Enter');
  }
  await said(page, '1 fits');
  letGo();
  await (await late).finished();
  await page.waitForTimeout(100);
  assert.deepEqual(await numbers(page), [1]);
  await context.close();
});

it('goes on with the list in the order it was asked for, once at a time', async () => {
  const { context, page } = await openShelf();
  await said(page, '2 fit');
  await page.route((url) => url.pathname === '/shelf/find', async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, json: { ...await response.json(), has_more: true } });
  });
  await page.getByRole('button', { name: 'Look' }).click();
  await said(page, '2 and more fit');
  await page.locator('#by').selectOption('effort');
  const wishes = [];
  page.on('request', (request) => wishes.push(new URL(request.url()).searchParams));
  await page.evaluate(() => {
    document.getElementById('more').click();
    document.getElementById('more').click();
  });
  await page.waitForFunction(() => !document.getElementById('more').disabled);
  assert.deepEqual(wishes.map((wish) => [wish.get('by'), wish.get('skip')]), [['number', '2']]);
  await context.close();
});

it('keeps tags, notes and lessons in the file, by keyboard alone', async () => {
  const { context, page, faults } = await openShelf();
  await said(page, '2 fit');
  const entry = page.locator('[data-number="1"]'), words = entry.getByLabel('Words on puzzle 1', { exact: true });
  await words.focus();
  await page.keyboard.type('first fish');
  await page.keyboard.press('Enter');
  await entry.locator('.word', { hasText: 'first fish' }).waitFor();
  await page.keyboard.type('ask slowly');
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await entry.locator('.note', { hasText: 'ask slowly' }).waitFor();
  const kept = JSON.parse(execFileSync(program, ['shelf', 'export', shelf, 'tag "first fish"', '--as', 'json']));
  assert.deepEqual([kept.number, kept.tags, kept.notes], [1, ['first fish'], ['ask slowly']]);
  await page.locator('#tags').selectOption('first fish');
  await page.getByRole('button', { name: 'Look' }).click();
  await said(page, '1 fits');
  await entry.getByRole('button', { name: 'Take away tag first fish' }).click();
  await page.waitForFunction(() => !document.querySelector('.word'));
  assert.deepEqual(faults, []);
  await context.close();
});

for (const [name, options] of Object.entries({ day: { colorScheme: 'light' }, 'night phone': { colorScheme: 'dark', viewport: { width: 360, height: 740 } } })) {
  it(`draws how the puzzles found are spread: ${name}`, async () => {
    const { context, page, faults, reached } = await openShelf(options);
    await said(page, '2 fit');
    assert.equal(await page.locator('.found').evaluate((list) => getComputedStyle(list).maxHeight), 'none'); // no box that scrolls inside the page
    await page.getByText('How they are spread').click();
    await page.locator('#counted', { hasText: '2 puzzles, 2 of them proper.' }).waitFor();
    for (const label of await page.locator('.charts svg text').all()) assert.ok(await label.evaluate((text) => text.getBBox().x >= 0), await label.textContent());
    const givens = [ring, four].map((text) => [...text].filter((letter) => /[1-9]/.test(letter)).length);
    const bars = page.locator('.charts section').filter({ has: page.getByRole('heading', { name: 'Givens', exact: true }) });
    const description = await bars.locator('svg desc').textContent();
    for (const count of givens) assert.match(description, new RegExp(`[ ;]${count} 1(;|\\.)`));
    await bars.getByText('Givens in numbers').click();
    const rows = await bars.locator('tr').allInnerTexts();
    assert.equal(rows.filter((row) => /\s1$/.test(row)).length, 2);
    assert.ok(await page.locator('.charts svg .lt').first().evaluate((bar) => getComputedStyle(bar).fill !== 'rgb(0, 0, 0)'));
    assert.deepEqual(await axeViolations(page), []);
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth));
    await page.fill('#query', 'givens <= 5');
    await page.getByRole('button', { name: 'Look' }).click();
    await page.locator('#counted', { hasText: '1 puzzle, 1 of them proper.' }).waitFor();
    assert.deepEqual([faults, reached], [[], []]);
    await context.close();
  });
}

it('opens a puzzle on the desk', async () => {
  const { context, page, faults } = await openShelf();
  await page.getByRole('link', { name: 'Open puzzle 1 on the desk' }).click();
  await page.getByText(/exactly one solution/).first().waitFor();
  assert.equal(await page.getByRole('link', { name: 'Shelf' }).getAttribute('href'), 'shelf.html');
  assert.ok(!page.url().includes('#'));
  assert.deepEqual(faults, []);
  await context.close();
});

it('says what to do when no shelf is served', async () => {
  const bare = await serveShelf();
  const { context, page } = await openDesk(browser, `${bare.url}shelf.html`, { origin: bare.url });
  await page.locator('#fault', { hasText: 'No shelf is served here. Start counterpoise desk --shelf FILE.' }).waitFor();
  await context.close();
  bare.close();
});

for (const [name, options] of Object.entries({ day: { colorScheme: 'light' }, night: { colorScheme: 'dark' }, phone: { viewport: { width: 360, height: 740 } } })) {
  it(`holds its shape and has no faults for axe: ${name}`, async () => {
    const { context, page } = await openShelf(options);
    await said(page, '2 fit');
    assert.deepEqual(await axeViolations(page), []);
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth));
    if (process.env.CP_PICTURES) await page.screenshot({ path: new URL(`../../../docs/pictures/desk/shelf_${name}.png`, import.meta.url).pathname, animations: 'disabled' });
    await context.close();
  });
}
