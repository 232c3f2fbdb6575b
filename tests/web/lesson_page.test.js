// SPDX-License-Identifier: Apache-2.0
// The lesson page as an audience and a teacher meet it: opened from disk, without a network.
import assert from 'node:assert/strict';
import { after, before, describe, it } from 'node:test';
import { axeViolations, launch, lessonPages, open, visibleScenes } from './browser.js';

const pages = lessonPages();
let browser;

before(async () => { browser = await launch(); });
after(async () => { await browser?.close(); });

// axe does not look at colours inside figures. Contrast as WCAG 2.2 defines it (relative luminance), on the page's own
// colours: 4.5 to 1 for digits and words, 3 to 1 for lines that carry meaning.
function contrastFaults() {
  const style = getComputedStyle(document.documentElement);
  const luminance = (name) => {
    const hex = style.getPropertyValue(`--${name}`).trim().replace(/^#(.)(.)(.)$/, '#$1$1$2$2$3$3');
    const [r, g, b] = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16) / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (a, b) => {
    const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (high + 0.05) / (low + 0.05);
  };
  const text = [['ink', 'paper'], ['ink', 'page'], ['ink', 'left-tint'], ['ink', 'right-tint'], ['dim', 'gone-tint'], ['dim', 'page'], ['link', 'page']];
  const lines = [['rule', 'paper'], ['hair', 'paper'], ['left', 'paper'], ['left', 'left-tint'], ['right-edge', 'paper'], ['right-edge', 'right-tint'],
    ['gone', 'paper'], ['strike', 'paper'], ['ring', 'paper']];
  const check = (pairs, least) => pairs.map(([a, b]) => [a, b, contrast(a, b)]).filter(([, , value]) => !(value >= least)).map(([a, b, value]) => `${a} on ${b}: ${value.toFixed(2)}`);
  return [...check(text, 4.5), ...check(lines, 3)];
}

const sceneCount = (page) => page.locator('section.scene').count();

it('has pages to test', () => {
  assert.ok(pages.length > 0, 'set COUNTERPOISE_LESSON_DIR to a folder of lessons, or COUNTERPOISE_BIN to the program');
});

for (const { name, url } of pages) {
  describe(name, () => {
    it('reaches for nothing outside and runs without a fault', async () => {
      const { context, page, reached, faults } = await open(browser, url);
      await page.keyboard.press('End');
      await page.locator('details.answer > summary').click();
      assert.deepEqual(reached, []);
      assert.deepEqual(faults, []);
      await context.close();
    });

    it('has a content policy that keeps foreign scripts and styles out', async () => {
      const { context, page } = await open(browser, url);
      const ran = await page.evaluate(() => {
        const script = document.createElement('script');
        script.textContent = 'window.intruder = true';
        document.body.append(script);
        const style = document.createElement('style');
        style.textContent = 'body { outline: 99px solid red }';
        document.head.append(style);
        return [window.intruder === true, getComputedStyle(document.body).outlineWidth === '99px'];
      });
      assert.deepEqual(ran, [false, false]);
      await context.close();
    });

    it('passes axe from scene to scene', async () => {
      const { context, page } = await open(browser, url);
      assert.deepEqual(await axeViolations(page), [], 'first scene');
      await page.getByText('All scenes').click();
      assert.deepEqual(await axeViolations(page), [], 'list of scenes');
      await page.keyboard.press('End');
      await page.locator('details.answer > summary').click();
      assert.deepEqual(await axeViolations(page), [], 'last scene with the solution');
      await page.emulateMedia({ colorScheme: 'dark' });
      assert.deepEqual(await axeViolations(page, 'color-contrast'), [], 'last scene, dark');
      await context.close();
    });

    // Takes long, and pages with all parts differ in words alone: the last one has notes too.
    if (name === pages.at(-1).name) it('passes axe with everything on the page at once', async () => {
      // As without script; axe itself needs script, so the page is brought into that state.
      const { context, page } = await open(browser, url);
      await page.evaluate(() => {
        document.documentElement.classList.remove('stepping');
        document.querySelector('.bar').hidden = true;
        for (const part of document.querySelectorAll('details')) part.open = true;
      });
      assert.deepEqual(await axeViolations(page), [], 'light');
      await page.emulateMedia({ colorScheme: 'dark' });
      assert.deepEqual(await axeViolations(page, 'color-contrast'), [], 'dark');
      await context.close();
    });

    for (const colorScheme of ['light', 'dark']) {
      it(`keeps figures legible, ${colorScheme}`, async () => {
        const { context, page } = await open(browser, url, { colorScheme });
        assert.deepEqual(await page.evaluate(contrastFaults), []);
        await context.close();
      });
    }

    it('is stepped through with the keyboard', async () => {
      const { context, page } = await open(browser, url);
      const scenes = await sceneCount(page);
      assert.deepEqual(await visibleScenes(page), [1]);
      const presses = [
        ['ArrowRight', 2], ['PageDown', 3], ['ArrowLeft', 2], ['PageUp', 1], ['PageUp', 1],
        ['End', scenes], ['ArrowRight', scenes], ['Home', 1],
      ];
      for (const [key, scene] of presses) {
        await page.keyboard.press(key);
        assert.deepEqual(await visibleScenes(page), [scene], key);
        assert.equal(await page.locator('output').textContent(), `Scene ${scene} of ${scenes}`);
      }
      await page.keyboard.press('ArrowRight');
      assert.equal(await page.evaluate(() => document.activeElement.id), 'scene-2-h', 'the heading has the focus');
      await context.close();
    });

    it('leaves other keys and shortcuts alone', async () => {
      const { context, page } = await open(browser, url);
      const prevented = await page.evaluate(() => {
        const list = [
          { key: 'p' }, { key: 'p', ctrlKey: true }, { key: 'ArrowRight', altKey: true },
          { key: 'ArrowDown' }, { key: ' ' }, { key: 'Tab' },
        ];
        return list.filter((init) => !document.body.dispatchEvent(new KeyboardEvent('keydown', { ...init, bubbles: true, cancelable: true })));
      });
      assert.deepEqual(prevented, []);
      assert.deepEqual(await visibleScenes(page), [1]);
      await context.close();
    });

    it('is stepped through with the buttons and the list of scenes', async () => {
      const { context, page } = await open(browser, url);
      await page.getByRole('button', { name: 'Next' }).click();
      assert.deepEqual(await visibleScenes(page), [2]);
      await page.getByRole('button', { name: 'Back' }).click();
      assert.deepEqual(await visibleScenes(page), [1]);
      assert.equal(await page.getByRole('button', { name: 'Back' }).getAttribute('aria-disabled'), 'true');
      await page.getByRole('button', { name: 'Back' }).dispatchEvent('click');
      assert.deepEqual(await visibleScenes(page), [1]);
      await page.getByText('All scenes').click();
      await page.locator('.contents a').nth(2).click();
      assert.deepEqual(await visibleScenes(page), [3]);
      assert.equal(await page.locator('.contents a').nth(2).getAttribute('aria-current'), 'step');
      await context.close();
    });

    it('opens at the scene its address names', async () => {
      const { context, page } = await open(browser, `${url}#scene-3`);
      assert.deepEqual(await visibleScenes(page), [3]);
      await context.close();
    });

    it('does not scroll sideways on a phone, in any scene', async () => {
      const { context, page } = await open(browser, url, { viewport: { width: 360, height: 740 } });
      const scenes = await sceneCount(page);
      for (let scene = 1; scene <= scenes; ++scene) {
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
        assert.equal(wide, 0, `scene ${scene}`);
        await page.keyboard.press('ArrowRight');
      }
      await context.close();
    });

    it('shows every scene when scripts are off, the solution still folded', async () => {
      const { context, page } = await open(browser, url, { javaScriptEnabled: false });
      const scenes = page.locator('section.scene');
      const count = await scenes.count();
      assert.ok(count >= 5);
      for (let i = 0; i < count; ++i) assert.ok(await scenes.nth(i).isVisible(), `scene ${i + 1}`);
      assert.ok(!(await page.getByRole('button', { name: 'Next' }).isVisible()));
      const answer = page.locator('details.answer svg');
      assert.ok(!(await answer.isVisible()));
      await page.locator('details.answer > summary').click();
      assert.ok(await answer.isVisible());
      await context.close();
    });

    it('does not show the solution before it is asked for', async () => {
      const { context, page } = await open(browser, url);
      const scenes = await sceneCount(page);
      const answer = page.locator('details.answer svg');
      for (let scene = 1; scene <= scenes; ++scene) {
        assert.ok(!(await answer.isVisible()), `scene ${scene}`);
        const digits = await page.$$eval('section.scene.now svg', (figures) =>
          figures.map((figure) => (figure.checkVisibility() ? figure.querySelectorAll('.given, .known').length : 0)));
        assert.ok(Math.max(0, ...digits) < 81, `scene ${scene} shows a full grid`);
        await page.keyboard.press('ArrowRight');
      }
      await page.keyboard.press('End');
      await page.locator('details.answer > summary').click();
      assert.ok(await answer.isVisible());
      assert.equal(await answer.locator('.given, .known').count(), 81);
      await context.close();
    });

    it('prints every scene, with the solution, without the controls', async () => {
      const { context, page } = await open(browser, url, { colorScheme: 'dark' });
      await page.emulateMedia({ media: 'print' });
      const scenes = await sceneCount(page);
      assert.equal((await visibleScenes(page)).length, scenes);
      assert.ok(await page.locator('details.answer svg').isVisible());
      assert.ok(!(await page.locator('.bar').isVisible()));
      const paper = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
      assert.equal(paper, 'rgb(255, 255, 255)', 'light paper even when the screen is dark');
      const pdf = await page.pdf({ preferCSSPageSize: true });
      assert.ok(pdf.length > 20_000);
      await context.close();
    });

    it('says every figure in words', async () => {
      const { context, page } = await open(browser, url);
      const figures = await page.$$eval('svg', (list) => list.map((svg) => {
        const labelled = (svg.getAttribute('aria-labelledby') ?? '').split(' ').map((id) => document.getElementById(id)?.textContent ?? '');
        return svg.getAttribute('role') === 'img' && labelled.length === 2 && labelled.every((text) => text.length > 3);
      }));
      assert.ok(figures.length >= 5);
      assert.ok(figures.every(Boolean));
      const ids = await page.$$eval('[id]', (list) => list.map((element) => element.id));
      assert.equal(new Set(ids).size, ids.length, 'no id occurs twice');
      await context.close();
    });

    it('has type that can be read from the back of a room at 1920 by 1080', async () => {
      const { context, page } = await open(browser, url, { viewport: { width: 1920, height: 1080 } });
      const size = await page.evaluate(() => parseFloat(getComputedStyle(document.querySelector('.scene.now p:not(.number)')).fontSize));
      assert.ok(size >= 22, `${size} px`);
      const digit = await page.evaluate(() => document.querySelector('.scene.now .board svg .given').getBoundingClientRect().height);
      assert.ok(digit >= 30, `${digit} px`);
      await context.close();
    });
  });
}
