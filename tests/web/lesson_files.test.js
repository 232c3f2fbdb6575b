// SPDX-License-Identifier: Apache-2.0
// The page and the tracks of a lesson, judged by validators that know nothing of ours: html-validate for HTML, webvtt-parser
// (written by an editor of the WebVTT specification) and vtt.js (the parser of a browser) for WebVTT.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, describe, it } from 'node:test';
import { HtmlValidate } from 'html-validate';
import vtt from 'vtt.js';
import webvtt from 'webvtt-parser';

const { WebVTTParser } = webvtt;
// What vtt.js fills in; its own class wants a browser.
class Cue {
  constructor(startTime, endTime, text) { Object.assign(this, { startTime, endTime, text }); }
}
const program = process.env.COUNTERPOISE_BIN;
const puzzle = readFileSync(new URL('../data/puzzles.tsv', import.meta.url), 'utf8').split('\n').map((line) => line.split('\t')).find((row) => row[0] === 'gecode14')[1];
let folder;
const text = (name) => readFileSync(join(folder, name), 'utf8');

describe('the files of a lesson', { skip: program ? false : 'set COUNTERPOISE_BIN to the program' }, () => {
  before(() => {
    folder = mkdtempSync(join(tmpdir(), 'counterpoise-files-'));
    execFileSync(program, ['lesson', puzzle, '-o', folder, '--only', 'page,captions,chapters', '--notes'], { stdio: 'pipe' });
  });
  after(() => rmSync(folder, { recursive: true }));

  it('include a page that html-validate finds nothing wrong with', async () => {
    const judge = new HtmlValidate({
      extends: ['html-validate:standard', 'html-validate:a11y'],
      // Scripts and styles stand in the page because it is one file; the content policy names their hashes.
      rules: { 'require-sri': 'off' },
    });
    const report = await judge.validateString(text('index.html'));
    const faults = report.results.flatMap((result) => result.messages.map(({ line, column, ruleId, message }) => `${line}:${column} ${ruleId}: ${message}`));
    assert.deepEqual(faults, []);
    const bad = await judge.validateString('<!DOCTYPE html><html lang="en"><head><title>x</title></head><body><p><div></div></p></body></html>');
    assert.equal(bad.valid, false, 'the judge sees faults');
  });

  for (const name of ['captions.vtt', 'chapters.vtt']) {
    it(`include ${name}, which two parsers read alike and without a fault`, () => {
      const strict = new WebVTTParser().parse(text(name), name.startsWith('chapters') ? 'chapters' : 'subtitles/captions/descriptions');
      assert.deepEqual(strict.errors, []);
      const cues = [];
      const faults = [];
      const browser = new vtt.WebVTT.Parser({ VTTCue: Cue }, vtt.WebVTT.StringDecoder());
      browser.oncue = (cue) => cues.push(cue);
      browser.onparsingerror = (fault) => faults.push(fault.message);
      browser.parse(text(name));
      browser.flush();
      assert.deepEqual(faults, []);
      assert.deepEqual(cues.map(({ startTime, endTime }) => [startTime, endTime]), strict.cues.map(({ startTime, endTime }) => [startTime, endTime]));
      assert.ok(cues.length >= 10);
      const times = cues.flatMap(({ startTime, endTime }) => [startTime, endTime]);
      assert.deepEqual(times, times.toSorted((a, b) => a - b), 'cues follow one another');
      assert.ok(new WebVTTParser().parse('WEBVTT\n\n00:02.000 --> 00:01.000\nx\n').errors.length > 0, 'the judge sees faults');
    });
  }

  it('give every word of the page in the captions', () => {
    const page = text('index.html').match(/<div class="words">([^]*?)<(?:div|table|details|\/div)/)[1].replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ').trim();
    const spoken = text('captions.vtt').split('\n').filter((line) => line && !line.includes('-->') && !/^\d+-\d+$/.test(line)).join(' ');
    assert.ok(page.length > 50 && spoken.includes(page), page);
  });
});
