// SPDX-License-Identifier: Apache-2.0
// The bundled series as a class meets it: built by the program, opened from disk, without a network. HTML is judged by html-validate,
// WebVTT by webvtt-parser, both of which know nothing of ours; SVG and PDF have their judges in tests/cli/series_files_test.py.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, describe, it } from 'node:test';
import { pathToFileURL } from 'node:url';
import { HtmlValidate } from 'html-validate';
import webvtt from 'webvtt-parser';
import { axeViolations, launch, open, visibleScenes } from './browser.js';

const { WebVTTParser } = webvtt;
const program = process.env.COUNTERPOISE_BIN;
const folder = program ? mkdtempSync(join(tmpdir(), 'counterpoise-series-')) : '';
if (program) execFileSync(program, ['series', 'build', '-o', folder, '--only', 'page,captions,chapters', '--notes'], { stdio: 'pipe' });
const { lessons } = program ? JSON.parse(readFileSync(join(folder, 'series.json'), 'utf8')) : { lessons: [] };
const text = (name) => readFileSync(join(folder, name), 'utf8');
const address = (name) => pathToFileURL(join(folder, name)).href;
const pages = ['index.html', ...lessons.map((lesson) => `${lesson}/index.html`)];
let browser;

// A context in which every page of the folder may be opened, and nothing else.
async function openFolder(name, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, offline: true, ...options });
  const reached = [];
  await context.route('**/*', (route) => {
    if (route.request().url().startsWith(pathToFileURL(folder).href)) return route.continue();
    reached.push(route.request().url());
    return route.abort();
  });
  const page = await context.newPage();
  await page.goto(address(name));
  return { context, page, reached };
}

it('has a series to test', () => assert.ok(lessons.length >= 4, 'set COUNTERPOISE_BIN to the program'));

describe('the bundled series', { skip: !program }, () => {
  before(async () => { browser = await launch(); });
  after(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true });
  });

  it('has pages that html-validate finds nothing wrong with', async () => {
    const judge = new HtmlValidate({
      extends: ['html-validate:standard', 'html-validate:a11y'],
      // Scripts and styles stand in the page because it is one file; the content policy names their hashes.
      rules: { 'require-sri': 'off' },
    });
    for (const name of pages) {
      const report = await judge.validateString(text(name));
      const faults = report.results.flatMap((result) => result.messages.map(({ line, column, ruleId, message }) => `${name}:${line}:${column} ${ruleId}: ${message}`));
      assert.deepEqual(faults, []);
    }
  });

  it('has captions and chapters that webvtt-parser reads without a fault', () => {
    for (const lesson of lessons) {
      for (const [name, kind] of [['captions.vtt', 'subtitles/captions/descriptions'], ['chapters.vtt', 'chapters']]) {
        const parsed = new WebVTTParser().parse(text(`${lesson}/${name}`), kind);
        assert.deepEqual(parsed.errors, [], `${lesson}/${name}`);
        assert.ok(parsed.cues.length >= 10);
      }
    }
    assert.ok(new WebVTTParser().parse('WEBVTT\n\n00:02.000 --> 00:01.000\nx\n').errors.length > 0, 'the judge sees faults');
  });

  it('has an engine in every lesson', () => {
    for (const lesson of lessons) assert.ok(text(`${lesson}/index.html`).includes('id="trial"'), './test builds the script with the engine first (build/lesson/pupil.js)');
  });

  it('is walked from lesson to lesson with the keyboard alone, without a network', async () => {
    const { context, page, reached } = await openFolder('index.html');
    await page.keyboard.press('Tab');
    assert.equal(await page.evaluate(() => document.activeElement.getAttribute('href')), `${lessons[0]}/index.html`);
    await page.keyboard.press('Enter');
    for (let i = 0; i < lessons.length; ++i) {
      await page.waitForURL(address(`${lessons[i]}/index.html`) + '**');
      const count = await page.locator('section.scene').count();
      for (let scene = 1; scene <= count; ++scene) {
        assert.deepEqual(await visibleScenes(page), [scene]);
        await page.keyboard.press('ArrowRight');
      }
      const next = page.locator('nav.course a[rel=next]');
      assert.equal(await next.count(), i + 1 < lessons.length ? 1 : 0);
      await (await next.count() ? next : page.locator('nav.course a').first()).focus();
      await page.keyboard.press('Enter');
    }
    await page.waitForURL(address('index.html'));
    assert.deepEqual(reached, []);
    await context.close();
  });

  for (const name of pages) {
    it(`${name} has no axe violations, light, dark and on a phone, and does not scroll sideways`, async () => {
      const { context, page, reached } = await openFolder(name);
      const fits = () => page.evaluate(() => document.documentElement.scrollWidth <= innerWidth);
      assert.deepEqual(await axeViolations(page), []);
      assert.ok(await fits());
      await page.emulateMedia({ colorScheme: 'dark' });
      assert.deepEqual(await axeViolations(page, 'color-contrast'), [], 'dark');
      await page.setViewportSize({ width: 360, height: 740 });
      if (name !== 'index.html') await page.keyboard.press('End');
      assert.deepEqual(await axeViolations(page, 'color-contrast', 'target-size', 'scrollable-region-focusable'), [], 'phone');
      assert.ok(await fits(), 'phone');
      assert.deepEqual(reached, []);
      await context.close();
    });
  }

  it('prints whole lessons without the ways to other pages', async () => {
    for (const lesson of lessons) {
      const { context, page } = await openFolder(`${lesson}/index.html`);
      await page.emulateMedia({ media: 'print' });
      const count = await page.locator('section.scene').count();
      assert.equal((await visibleScenes(page)).length, count);
      assert.equal(await page.locator('nav.course').isVisible(), false);
      await context.close();
    }
  });

  it('tries the step of every lesson with the engine inside', async () => {
    for (const lesson of lessons) {
      const { context, page, reached, faults } = await open(browser, address(`${lesson}/index.html`));
      const { scenes } = await page.evaluate(() => JSON.parse(document.getElementById('trial').textContent));
      const [id, scene] = Object.entries(scenes).find(([, each]) => each.out.length > 0);
      await page.evaluate((hash) => { location.hash = hash; }, id);
      const section = page.locator(`#${id}`);
      await section.locator('details.try > summary').click();
      const [cell, digit] = scene.out[0].split('=');
      await section.locator('.try-name').fill(cell);
      await section.locator('.try-digits button', { hasText: digit }).click();
      await section.locator('.try-said').getByText(/^Yes/).waitFor();
      assert.deepEqual([reached, faults], [[], []]);
      await context.close();
    }
  });
});
