// SPDX-License-Identifier: Apache-2.0
// The module of the page for lessons, asked as that page asks it: everything but the claims, then claim by claim.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { test } from 'node:test';
import { openEngine } from './engine.mjs';

const folder = new URL('../../data/series/', import.meta.url);
const claimsOf = (review) => review.scenes.flatMap((scene) => scene.claims);

for (const name of readdirSync(folder).filter((each) => each.endsWith('.lesson'))) {
  test(`every claim of ${name} is proved`, async () => {
    const engine = await openEngine('counterpoise_lessons.wasm');
    const lesson = readFileSync(new URL(name, folder), 'utf8');
    const review = engine.ask({ command: 'lesson_review', lesson, only: 0 });
    assert.ok(review.scenes.length > 3 && !review.stop, JSON.stringify(review.stop ?? review.error));
    const claims = claimsOf(review);
    assert.ok(claims.length > 0);
    for (const { number, claim, verdict } of claims) {
      assert.equal(verdict, 'unasked');
      const asked = claimsOf(engine.ask({ command: 'lesson_review', lesson, only: number })).find((each) => each.number === number);
      assert.equal(asked.verdict, 'proved', `${number}: ${claim}`);
      assert.ok(asked.text);
    }
  });
}
