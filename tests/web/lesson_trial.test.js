// SPDX-License-Identifier: Apache-2.0
// Trying steps on a lesson page: opened from disk, without a network, with the engine inside.
import assert from 'node:assert/strict';
import { readFileSync, statSync } from 'node:fs';
import { after, before, describe, it } from 'node:test';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { AxeBuilder } from '@axe-core/playwright';
import { launch, lessonPages, open } from './browser.js';

const pages = lessonPages();
const has = pages.length > 0 && readFileSync(fileURLToPath(pages[0].url), 'utf8').includes('id="trial"');
let browser;

before(async () => { browser = await launch(); });
after(async () => { await browser?.close(); });

const facts = (page) => page.evaluate(() => JSON.parse(document.getElementById('trial').textContent));

// The first scene in which something falls, opened at its place to try.
async function tryScene(page) {
  const { scenes } = await facts(page);
  const [id, scene] = Object.entries(scenes).find(([, each]) => each.out.length > 0);
  await page.evaluate((hash) => { location.hash = hash; }, id);
  const section = page.locator(`#${id}`);
  await section.locator('details.try > summary').click();
  return { section, scene, said: section.locator('.try-said') };
}

it('has a page with an engine', () => assert.ok(has, './test builds the script with the engine first (build/lesson/pupil.js)'));

describe('a lesson page with an engine', { skip: !has }, () => {
  let context, page, reached, faults;
  before(async () => { ({ context, page, reached, faults } = await open(browser, pages[0].url)); });
  after(async () => {
    assert.deepEqual(reached, [], 'nothing outside was asked for');
    assert.deepEqual(faults, []);
    await context.close();
  });

  it('weighs at most 400 kB gzipped', () => {
    for (const { name, url } of pages) {
      const size = gzipSync(readFileSync(fileURLToPath(url)), { level: 9 }).length;
      assert.ok(size <= 400_000, `${name}: ${size} of ${statSync(fileURLToPath(url)).size}`);
    }
  });

  it('says yes to the step of the scene and draws it', async () => {
    const { section, scene, said } = await tryScene(page);
    const [cell, digit] = scene.out[0].split('=');
    await section.locator('.try-name').fill(cell);
    await section.locator('.try-digits button', { hasText: digit }).click();
    await said.getByText('That').first().waitFor();
    assert.match(await said.innerText(), /^Yes: \d leaves r\dc\d\./);
    assert.equal(await section.locator('.try-mark').count(), 1);
  });

  it('takes a cell from the board itself', async () => {
    const section = page.locator('section.scene.now');
    const board = section.locator('.spread > .board svg');
    const { width } = await board.boundingBox();
    const { scenes } = await facts(page);
    const cells = scenes[await section.getAttribute('id')].position.split(' ').filter((word) => /\d/.test(word));
    const open = cells.findIndex((word) => /^\d\d+$/.test(word));
    const scale = width / 600;
    await board.click({ position: { x: (50 + 60 * (open % 9) + 30) * scale, y: (50 + 60 * Math.floor(open / 9) + 30) * scale } });
    assert.equal(await section.locator('.try-name').inputValue(), `r${Math.floor(open / 9) + 1}c${open % 9 + 1}`);
    assert.deepEqual(await section.locator('.try-digits button').allInnerTexts(), [...cells[open]]);
  });

  it('has claims proved and refuted by the engine', async () => {
    const section = page.locator('section.scene.now');
    const { scenes } = await facts(page);
    const [cell, digit] = scenes[await section.getAttribute('id')].out[0].split('=');
    for (const [sign, verdict] of [['!=', 'Proved.'], ['=', 'Not so.']]) {
      await section.locator('.try-claim').fill(`${cell} ${sign} ${digit}`);
      await section.locator('form button').click();
      await section.locator('.try-said').getByText(verdict, { exact: true }).waitFor();
    }
    await section.locator('.try-claim').fill('what is this');
    await section.locator('form button').click();
    await section.locator('.try-said').getByText('The engine could not say').waitFor();
  });

  it('gives hints, a little more each time', async () => {
    const section = page.locator('section.scene.now');
    const said = section.locator('.try-said');
    const hint = section.getByRole('button', { name: 'A hint' });
    for (const words of [/It is about/, /Look at r/, /leaves r/]) {
      await hint.click();
      await said.getByText(words).waitFor();
    }
  });

  it('asks the engine for a hint where nothing falls yet', async () => {
    const { scenes } = await facts(page);
    const [id] = Object.entries(scenes).find(([, each]) => each.out.length === 0 && each.in.length === 0);
    await page.evaluate((hash) => { location.hash = hash; }, id);
    const section = page.locator(`#${id}`);
    await section.locator('details.try > summary').click();
    await section.getByRole('button', { name: 'A hint' }).click();
    await section.locator('.try-said').getByText(/Look for this|No single step/).waitFor();
  });

  it('hides what falls until it is found', async () => {
    const { context: fresh, page: other } = await open(browser, pages[0].url);
    const { section, scene } = await tryScene(other);
    await section.getByRole('button', { name: 'Hide what falls' }).click();
    assert.equal(await section.locator('.words > p').first().isVisible(), false);
    assert.equal(await section.locator('.spread > .board .strike').first().evaluate((strike) => getComputedStyle(strike).visibility), 'hidden');
    for (const candidate of scene.out) {
      const [cell, digit] = candidate.split('=');
      await section.locator('.try-name').fill(cell);
      await section.locator('.try-digits button', { hasText: digit }).click();
    }
    await section.locator('.words > p').first().waitFor({ state: 'visible' });
    await fresh.close();
  });

  it('has no axe violations with the place open', async () => {
    const result = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']).analyze();
    assert.deepEqual(result.violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.target).join(' ')}`), []);
  });

  it('is a whole page without script', async () => {
    const { context: plain, page: still } = await open(browser, pages[0].url, { javaScriptEnabled: false });
    assert.equal(await still.locator('details.try').count(), 0);
    assert.ok(await still.locator('section.scene').count() > 5);
    await plain.close();
  });
});
