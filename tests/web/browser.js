// SPDX-License-Identifier: Apache-2.0
// A browser without a network, the lesson pages to open in it, and what axe finds on a page.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { chromium } from 'playwright-core';

const flags = [
  '--headless', '--no-sandbox', '--disable-gpu', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync',
];

export function launch() {
  return chromium.launch({ executablePath: process.env.COUNTERPOISE_CHROMIUM ?? '/usr/bin/chromium', args: flags });
}

// Lessons made for the tests: published puzzles of tests/data/puzzles.tsv whose balances differ, one with notes.
const subjects = [['gecode14', []], ['gecode9', ['--notes']]];

// Has the program write lessons into a new folder and returns it.
function makeLessons(program) {
  const folder = mkdtempSync(join(tmpdir(), 'counterpoise-lessons-'));
  const rows = readFileSync(new URL('../data/puzzles.tsv', import.meta.url), 'utf8').split('\n').map((line) => line.split('\t'));
  for (const [name, options] of subjects) {
    const puzzle = rows.find((row) => row[0] === name)[1];
    execFileSync(program, ['lesson', puzzle, '-o', join(folder, name), ...options], { stdio: 'pipe' });
  }
  return folder;
}

// Every .html file in the folder that COUNTERPOISE_LESSON_DIR names, as file: addresses. Without it the program that
// COUNTERPOISE_BIN names makes lessons first.
export function lessonPages() {
  const { COUNTERPOISE_LESSON_DIR: made, COUNTERPOISE_BIN: program } = process.env;
  if (!made && !program) return [];
  const directory = resolve(made || makeLessons(program));
  return readdirSync(directory, { recursive: true })
    .map(String)
    .filter((name) => name.endsWith('.html'))
    .sort()
    .map((name) => ({ name, url: pathToFileURL(join(directory, name)).href }));
}

// Opens a page in a context of its own. Anything that is not the file itself is refused and noted in `reached`;
// what goes wrong inside the page is noted in `faults`.
export async function open(browser, url, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const reached = [];
  const faults = [];
  await context.route('**/*', (route) => {
    const address = route.request().url();
    if (address.split('#')[0] === url.split('#')[0]) return route.continue();
    reached.push(address);
    return route.abort();
  });
  const page = await context.newPage();
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text());
  });
  await page.goto(url);
  return { context, page, reached, faults };
}

// Numbers of the scenes that can be seen, counted from 1.
export function visibleScenes(page) {
  return page.$$eval('section.scene', (scenes) =>
    scenes.flatMap((scene, i) => (scene.checkVisibility() ? [i + 1] : [])));
}

// WCAG 2.0 to 2.2, levels A and AA, and what axe calls best practice. Source of the rules: axe-core's own catalogue.
const axeTags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds; with `rules` only by these, where a screen differs from one already seen in colours or size alone. */
export async function axeViolations(page, ...rules) {
  const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'] });  // of what passes one example is enough
  const result = await (rules.length ? axe.withRules(rules) : axe.withTags(axeTags)).analyze();
  if (result.passes.length < (rules.length ? 1 : 9)) throw new Error('axe did not look at the page');
  return result.violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.target).slice(0, 4).join(' ')}`);
}
