// SPDX-License-Identifier: Apache-2.0
// The desk as a teacher meets it: by pointer, by keyboard alone, on every size of screen, after a reload and after a
// crash, and against hostile input. With CP_PICTURES=1 the pictures of docs/desk.md are taken on the way.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { after, before, it } from 'node:test';
import { gzipSync } from 'node:zlib';
import { axeViolations, launch } from '../browser.js';
import { openDesk, pageFiles, paste, proper, ring, serve } from './desk_page.js';

const patient = { timeout: 60_000 };
const pictures = process.env.CP_PICTURES ? new URL('../../../docs/pictures/desk/', import.meta.url).pathname : '';
let browser;
let server;

before(async () => {
  if (pictures) mkdirSync(pictures, { recursive: true });
  browser = await launch();
  server = await serve();
});
after(async () => { await browser?.close(); server?.close(); });

const open = (options) => openDesk(browser, server.url, options);
// Small enough for a repository: a palette is plenty for ink on paper.
async function picture(page, name) {
  if (!pictures) return;
  const path = `${pictures}${name}.png`;
  await page.screenshot({ path, animations: 'disabled' });
  execFileSync('pngquant', ['--force', '--nofs', '--output', path, '48', path]);
}

const text = (page, selector) => page.locator(selector).first().innerText();
const press = async (page, ...keys) => { for (const key of keys) await page.keyboard.press(key); };
const claimed = (page, verdict) => page.locator(`.trail .stamp.${verdict}`).last().waitFor(patient);

async function withPuzzle(page) {
  await paste(page, ring);
  await proper(page);
}

async function withRing(page) {
  await withPuzzle(page);
  await page.getByRole('button', { name: 'Do the basics' }).click();
  await page.fill('#pan-left', 'c1289');
  await page.fill('#pan-right', 'r37 b46');
  await page.getByText('1 candidate falls').first().waitFor(patient);
}

it('is whole in 400 kB, and the screens in 70', (t) => {
  const packed = Object.fromEntries(Object.entries(pageFiles).map(([name, { bytes }]) => [name, gzipSync(bytes, { level: 9 }).length]));
  const engine = /'([A-Za-z0-9+/=]{100000,})'|"([A-Za-z0-9+/=]{100000,})"|`([A-Za-z0-9+/=]{100000,})`/.exec(String(pageFiles['/desk.js'].bytes));
  assert.ok(engine, 'the engine is inside the script');
  const screens = gzipSync(String(pageFiles['/desk.js'].bytes).replace(engine[0], '')).length + packed['/desk.css'];
  const whole = packed['/index.html'] + packed['/desk.js'] + packed['/desk.css'];
  t.diagnostic(`whole page ${whole} bytes gzipped, screens ${screens}`);
  assert.ok(whole < 400_000, `${whole} bytes`);
  assert.ok(screens < 70_000, `${screens} bytes`);
});

it('by keyboard alone: from a pasted puzzle to a balance, a wrong claim caught and a right one proved', async (t) => {
  const { context, page, faults, reached } = await open();
  const began = Date.now();
  await page.keyboard.insertText(ring);          // the keyboard is in the field for puzzles from the start
  await press(page, 'Enter');
  await proper(page);
  await page.locator('.found .row').first().waitFor(patient);
  await press(page, 'o');
  await page.locator('.found .row:focus').waitFor(patient);
  await press(page, 'Enter');
  await page.getByText(/candidates? falls?/).first().waitFor(patient);
  assert.match(await page.evaluate(() => document.activeElement.getAttribute('role')), /gridcell/, 'the board has the keyboard again');
  assert.notEqual(await page.inputValue('#pan-left'), '');
  await press(page, 't');
  await page.keyboard.type('r6c9 = 9');
  await press(page, 'Enter');
  await claimed(page, 'refuted');
  await page.keyboard.type('r6c9 != 9');
  await press(page, 'Enter');
  await claimed(page, 'proved');
  assert.match(await text(page, '.trail li.first'), /first that does not follow/);
  t.diagnostic(`${Date.now() - began} ms from the empty desk to the second verdict`);
  await press(page, 'Escape', 'l', '4');
  assert.equal(await page.locator('.lens[aria-pressed=true]').innerText(), '4');
  await press(page, '?');
  await page.getByRole('dialog').waitFor();
  await press(page, 'Escape');
  await page.getByRole('dialog').waitFor({ state: 'hidden' });
  assert.deepEqual([faults, reached], [[], []]);
  await context.close();
});

it('over the edge of the board by arrow keys: rows, columns and boxes go into the pans', async () => {
  const { context, page } = await open();
  await withPuzzle(page);
  await press(page, 'ArrowUp', 'Enter');                      // column 1, left
  await press(page, 'ArrowDown', 'ArrowLeft', 'Enter', 'Enter');  // row 1, right
  await press(page, 'ArrowRight', 'End', 'ArrowRight', 'ArrowRight', 'Enter');  // box 2, left
  assert.equal(await page.inputValue('#pan-left'), 'c1, b2');
  assert.equal(await page.inputValue('#pan-right'), 'r1');
  assert.equal(await page.evaluate(() => document.activeElement.getAttribute('aria-label')), 'box 2, in the left pan');
  const outline = await page.evaluate(() => getComputedStyle(document.activeElement.querySelector('.here')).strokeWidth);
  assert.ok(parseFloat(outline) >= 2, 'the focus can be seen');
  await press(page, 'Control+z', 'Control+z', 'Control+z');
  assert.equal(await page.inputValue('#pan-left'), 'c1');
  await press(page, 'Control+y', 'Control+y');
  assert.equal(await page.inputValue('#pan-right'), 'r1');
  await context.close();
});

it('weighs the ring as the design says, takes equal digits off, and strikes out what falls', async () => {
  const { context, page } = await open();
  await withRing(page);
  // The tally of the ring on this puzzle: docs/formats/weigh.md.
  assert.deepEqual(await page.locator('.tally tbody td').allInnerTexts(), [-1, -1, 0, -2, -1, -2, -1, 0, -1].map((entry) => (entry < 0 ? `\u2212${-entry}` : String(entry))));
  assert.equal(await page.locator('.ground.left').count(), 16);
  assert.equal(await page.locator('.ground.right').count(), 16);
  assert.match(await page.locator('[data-cell="53"]').getAttribute('aria-label'), /r6c9/);
  await picture(page, 'ring');
  await page.getByRole('button', { name: 'Take equal digits off' }).click();
  assert.ok(await page.locator('.digit.off').count() > 4);
  await page.getByRole('button', { name: 'Strike out what falls' }).click();
  assert.match(await page.locator('[data-cell="53"]').getAttribute('aria-label'), /candidates 4/);
  await page.getByRole('button', { name: 'Empty the pans' }).click();
  assert.equal(await page.locator('.ground.left').count(), 0);
  await context.close();
});

it('says why nothing falls', async () => {
  const { context, page } = await open();
  await withPuzzle(page);
  await page.locator('[data-house=r1]').click();
  await page.getByText('Why nothing falls.').waitFor(patient);
  assert.equal(await page.inputValue('#pan-left'), 'r1');
  await context.close();
});

it('builds a claim by pointing, and lays a counter-grid over the board', async () => {
  const { context, page } = await open();
  await withRing(page);
  await page.fill('#footing', 'r6');
  await page.locator('#claim').focus();
  await page.locator('[data-cell="53"]').click();
  await page.keyboard.type('= 4');
  assert.equal(await page.inputValue('#claim'), 'r6c9 = 4');
  await press(page, 'Enter');
  await claimed(page, 'open');
  await page.getByRole('button', { name: 'Counter-grid on the board' }).click();
  assert.ok(await page.locator('.overground').count() > 0);
  await picture(page, 'claims');
  // No screen gives the solution away: of an open claim it is not the true digit that is laid over the cell.
  assert.notEqual(await page.locator('[data-cell="53"] .over').textContent(), '4');
  await context.close();
});

it('asks the catalogue: what fires, whether it is needed, what else, the path; and gives hints by strength', async () => {
  const { context, page } = await open();
  await withPuzzle(page);
  await page.getByRole('button', { name: 'Do the basics' }).click();
  await press(page, 's');
  await page.keyboard.type('x-wing, balance');
  await page.getByRole('button', { name: 'What fires here?' }).click();
  await page.getByRole('heading', { name: /x-wing: not here/i }).waitFor(patient);
  await page.getByRole('button', { name: 'Are these needed?' }).click();
  await page.getByRole('heading', { name: 'Needed?' }).waitFor(patient);
  await page.getByRole('textbox', { name: 'What else strikes out' }).fill('r6c9=9');
  await press(page, 'Enter');
  await page.getByRole('heading', { name: /r6c9 \u2260 9: \d+ way/ }).waitFor(patient);
  await press(page, 'Escape');
  await page.locator('#sheet-hint summary').click();
  await page.getByRole('button', { name: 'Where to look' }).click();
  const body = page.locator('#sheet-hint .body');
  await body.getByText(/Something can be said|Weigh houses/).waitFor(patient);
  assert.doesNotMatch(await body.innerText(), /It is a/);
  await page.getByRole('button', { name: 'What kind' }).click();
  await body.getByText(/It is a/).waitFor();
  await page.getByRole('button', { name: 'The whole step' }).click();
  await page.getByRole('button', { name: 'Do it' }).click();
  await context.close();
});

it('keeps the work over a reload and over a crash, with the way back', async () => {
  const { context, page } = await open();
  await withRing(page);
  await page.waitForTimeout(1500);               // the way back is written a moment later
  await page.reload();
  await page.getByText('1 candidate falls').first().waitFor(patient);
  assert.equal(await page.inputValue('#pan-left'), 'c1, c2, c8, c9');
  await page.fill('#pan-right', 'r37');
  const crash = await context.newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  crash.send('Page.crash').catch(() => {});      // a page that is gone gives no answer
  await crashed;
  const { page: next } = await openDesk(browser, server.url, { context });
  await next.locator('.ground.left').first().waitFor();
  assert.equal(await next.inputValue('#pan-right'), 'r3, r7');
  for (let i = 0; i < 4; i += 1) await next.getByRole('button', { name: 'Undo' }).click();
  assert.equal(await next.inputValue('#pan-left'), '');
  await context.close();
});

it('takes hostile input without hanging, and runs none of it', async () => {
  const { context, page, faults, reached } = await open();
  await withPuzzle(page);
  const nasty = ['x'.repeat(10_000_000), '1'.repeat(81), '<img src=//example.org/x onerror=window.bad=1>', '\u0000\u202e\ud800'.repeat(30), 'counterpoise desk 1\n{"shape":"9x9","givens":[1e99]}',
    `counterpoise desk 1\n${'['.repeat(100_000)}`, '9'.repeat(256), `${ring}5`];
  for (const words of nasty) {
    await paste(page, words);
    await page.locator('.fault, .verdict.none').first().waitFor(patient);
  }
  await paste(page, ring);
  await proper(page);
  await page.fill('#claim', `${'('.repeat(900)}r1c1 = 1${')'.repeat(900)}`);
  await press(page, 'Enter');
  await page.locator('.trail .fault, .trail .stamp').first().waitFor(patient);
  await page.fill('#pan-left', '99*r1 99*r2');
  await page.fill('#pan-right', 'r1; drop');
  assert.match(await text(page, '.pan.right .fault'), /drop is no house|r1 is no house|no house here/);
  assert.equal(await page.evaluate(() => window.bad), undefined);
  assert.deepEqual(reached, []);
  assert.deepEqual(faults, []);
  await context.close();
});

it('has a policy that keeps foreign scripts out', async () => {
  const { context, page } = await open();
  const ran = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.intruder = true';
    document.body.append(script);
    return window.intruder === true;
  });
  assert.equal(ran, false);
  await context.close();
});

it('saves a file that opens as the same desk', async () => {
  const { context, page } = await open();
  await withRing(page);
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save' }).click()]);
  const path = await download.path();
  await page.getByRole('button', { name: 'Back to the givens' }).click();
  await page.fill('#pan-left', '');
  await page.locator('input[type=file]').setInputFiles({ name: 'desk.txt', mimeType: 'text/plain', buffer: readFileSync(path) });
  await page.getByText('1 candidate falls').first().waitFor(patient);
  assert.equal(await page.inputValue('#pan-left'), 'c1, c2, c8, c9');
  await context.close();
});

it('goes to the stage, forward and back, with notes in a second window and nothing before its time', async () => {
  const { context, page, faults } = await open({ viewport: { width: 1920, height: 1080 } });
  await withRing(page);
  await page.locator('#sheet-lesson summary').first().click();
  await page.getByRole('button', { name: 'Scenes from the path' }).click();
  await page.locator('.scenes li').nth(3).waitFor(patient);
  await page.getByRole('button', { name: 'Keep the board as a scene' }).click();
  await press(page, 'Escape', 'p');
  const stage = page.getByRole('main', { name: 'Stage' });
  await stage.waitFor();
  assert.equal(await stage.locator('.strike, .proposed').count(), 0);
  const asks = await page.evaluate(() => document.body.innerText);
  assert.doesNotMatch(asks, /solution/i);
  const [notes] = await Promise.all([context.waitForEvent('page'), press(page, 'n')]);
  await notes.getByText(/Scene 1 of/).waitFor(patient);
  await page.bringToFront();
  const at = () => text(notes, 'main .quiet');
  await press(page, 'ArrowRight', 'ArrowRight');
  await notes.getByText(/Scene 3 of/).waitFor();
  await press(page, 'ArrowLeft');
  await notes.getByText(/Scene 2 of/).waitFor();
  assert.match(await at(), /Scene 2/);
  await notes.getByRole('button', { name: 'On' }).click();
  await notes.getByText(/Scene 3 of/).waitFor();
  await press(page, 'End');                       // the scene that was kept: the ring
  await stage.locator('.tally').waitFor(patient);
  await page.mouse.move(600, 500);
  assert.equal(await page.locator('.spot').count(), 1);
  assert.equal(await stage.locator('.strike').count(), 1);
  await picture(page, 'stage');
  const smallest = await page.evaluate(() => Math.min(...[...document.querySelectorAll('.stage .mark, .stage h1, .stage p, .stage td')].map((element) => element.getBoundingClientRect().height)));
  assert.ok(smallest >= 18, `the smallest type is ${smallest} pixels high at 1080p`);
  assert.deepEqual(await axeViolations(page), [], 'stage, light');
  assert.deepEqual(await axeViolations(notes), [], 'notes');
  await page.emulateMedia({ colorScheme: 'dark' });
  assert.deepEqual(await axeViolations(page, 'color-contrast'), [], 'stage, dark');
  await press(page, 'Escape');
  await page.locator('.ledger').waitFor();
  assert.deepEqual(faults, []);
  await context.close();
});

it('passes axe on every screen, light and dark', async () => {
  const { context, page } = await open();
  assert.deepEqual(await axeViolations(page), [], 'the empty desk');
  await picture(page, 'start');
  await withRing(page);
  await page.fill('#claim', 'r6c9 = 9');
  await press(page, 'Enter');
  await claimed(page, 'refuted');
  await page.fill('#claim', 'r6c9 != 9');
  await press(page, 'Enter');
  await claimed(page, 'proved');
  await page.evaluate(() => { for (const sheet of document.querySelectorAll('details')) sheet.open = true; });
  await page.getByRole('button', { name: 'Keep the board as a scene' }).click();
  await page.getByRole('button', { name: 'What fires here?' }).click();
  await page.getByRole('heading', { name: 'Fires here' }).waitFor(patient);
  await page.locator('.lens').nth(6).click();
  assert.deepEqual(await axeViolations(page), [], 'everything open, light');
  await page.emulateMedia({ colorScheme: 'dark' });
  assert.deepEqual(await axeViolations(page, 'color-contrast'), [], 'everything open, dark');
  await page.locator('.lens').nth(6).click();
  await page.evaluate(() => { for (const name of ['fires', 'hint', 'lesson']) document.getElementById(`sheet-${name}`).open = false; document.querySelector('.ledger').scrollTo(0, 0); });
  await picture(page, 'dark');
  await page.getByRole('button', { name: /Keys/ }).click();
  assert.deepEqual(await axeViolations(page), [], 'keys, dark');
  await context.close();
});

it('fits from phone width to 4K, and on paper', async () => {
  const { context, page } = await open({ viewport: { width: 360, height: 740 } });
  await withRing(page);
  await page.evaluate(() => scrollTo(0, 0));
  assert.deepEqual(await axeViolations(page), [], 'phone');
  await picture(page, 'phone');
  for (const [width, height] of [[360, 740], [768, 1024], [1280, 800], [3840, 2160]]) {
    await page.setViewportSize({ width, height });
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `${width} wide`);
    const board = await page.locator('#desk-0').evaluate((cell) => cell.closest('svg').getBoundingClientRect().toJSON());
    assert.ok(board.width > 0.4 * Math.min(width, height) && board.left >= 0 && board.right <= width, `the board at ${width}: ${board.width}`);
  }
  await page.emulateMedia({ media: 'print' });
  assert.equal(await page.getByRole('button', { name: 'Undo' }).isVisible(), false);
  assert.equal(await page.locator('#desk-0').isVisible(), true);
  await context.close();
});

it('answers every press on an edge with the right remainders, and says how long it took', async (t) => {
  const { context, page } = await open();
  await withPuzzle(page);
  await page.waitForTimeout(1500);
  const times = await page.evaluate(async () => {
    const painted = () => new Promise((done) => { requestAnimationFrame(() => { const { port1, port2 } = new MessageChannel(); port1.onmessage = done; port2.postMessage(0); }); });
    const list = [];
    for (const name of ['r1', 'c5', 'b5', 'r8', 'c7', 'b9', 'r4', 'c2', 'b3', 'r6']) {
      const began = performance.now();
      document.querySelector(`[data-house=${name}] .tab`).dispatchEvent(new PointerEvent('pointerdown', { bubbles: true, button: 0, cancelable: true }));
      await painted();
      list.push(performance.now() - began);
      await new Promise((done) => { setTimeout(done, 150); });
    }
    return list.sort((a, b) => a - b);
  });
  t.diagnostic(`press to paint: median ${times[5].toFixed(1)} ms, worst ${times[9].toFixed(1)} ms (whatever else this machine was doing)`);
  // Four rows, three columns and three boxes on one side hold 9 * 10 units.
  const units = await page.evaluate(() => [...document.querySelectorAll('[data-cell]')].reduce((sum, cell) => sum + (cell.querySelector('.ground.left') ? parseInt(cell.querySelector('.times')?.textContent ?? '1', 10) : 0), 0));
  assert.equal(units, 90);
  await context.close();
});
