// SPDX-License-Identifier: Apache-2.0
// Whatever is pushed through the door, an answer comes out: one line of JSON, never a trap. Seeded, so that a failure
// comes again: COUNTERPOISE_FUZZ_SEED, COUNTERPOISE_FUZZ_ROUNDS.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { openEngine } from './engine.mjs';

const seed = Number(process.env.COUNTERPOISE_FUZZ_SEED ?? 20261126);
const roundsWanted = Number(process.env.COUNTERPOISE_FUZZ_ROUNDS ?? 4000);

// xorshift32: the same numbers everywhere.
function dice(start) {
  let state = start >>> 0 || 1;
  return (below) => {
    state ^= state << 13; state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5; state >>>= 0;
    return state % below;
  };
}

const four = '..3.1......4.1..';
const good = [
  { command: 'check', puzzle: four },
  { command: 'weigh', puzzle: four, left: 'r1,2*r2', right: 'c1', why: true, level: 5 },
  { command: 'weigh', puzzle: four, max_slack: 2, limit: 3, most_houses: 5 },
  { command: 'path', puzzle: four, without: ['naked-single'], only: ['single'] },
  { command: 'survey', puzzle: four, technique: ['x-wing'], limit: 1, after_basics: true },
  { command: 'needed', puzzle: four, technique: ['naked-single'] },
  { command: 'alternatives', puzzle: four, eliminate: 'r1c1=2', at_step: 1 },
  { command: 'claim', puzzle: four, claim: 'r1c1 != 2', footing: 'rules' },
  { command: 'claims', puzzle: four, script: 'r1c1 != 2\nr1c2 = 1' },
  { command: 'count', shape: '4x4' },
];
const strange = [null, true, -1, 1.5, 1e300, 18446744073709551615, 2147483648, '', '\u0000', '\ud800', 'x'.repeat(5000), [], [1], {}, { a: 1 }];

const encode = (text) => new TextEncoder().encode(text);
const pick = (roll, list) => list[roll(list.length)];

function garbage(roll) {
  return Uint8Array.from({ length: roll(300) }, () => roll(256));
}

function brokenText(roll) {
  const bytes = encode(JSON.stringify(pick(roll, good)));
  for (let times = 1 + roll(4); times > 0; times -= 1) bytes[roll(bytes.length)] = roll(3) === 0 ? roll(256) : 32 + roll(95);
  return roll(4) === 0 ? bytes.slice(0, roll(bytes.length)) : bytes;
}

// Well-formed, with a field that is missing, new, or of another kind or text.
function brokenRequest(roll) {
  const request = { ...pick(roll, good) };
  const field = pick(roll, Object.keys(request));
  const what = roll(4);
  if (what === 0) delete request[field];
  else if (what === 1) request[field] = pick(roll, strange);
  else if (what === 2) request[`${field}x`] = 1;
  else request[field] = String(request[field]).split('').sort(() => roll(3) - 1).join('');
  return encode(JSON.stringify(request));
}

function check(text, about) {
  assert.ok(!text.includes('\n'), about);
  const answer = JSON.parse(text);
  assert.ok(answer !== null && typeof answer === 'object' && !Array.isArray(answer), about);
  if ('error' in answer) {
    assert.ok(answer.error.message.length > 0 && answer.error.code.length > 0, about);
    assert.notEqual(answer.error.code, 'bug', about);
  }
  return answer;
}

test('random and mutilated requests are answered', async () => {
  const engine = await openEngine();
  const roll = dice(seed);
  let errors = 0, answers = 0;
  for (let round = 0; round < roundsWanted; round += 1) {
    const bytes = pick(roll, [garbage, brokenText, brokenRequest, brokenRequest])(roll);
    const answer = check(engine.askBytes(bytes), `seed ${seed}, round ${round}`);
    if ('error' in answer) errors += 1; else answers += 1;
  }
  assert.ok(errors > roundsWanted / 4, `${errors} errors`);
  assert.ok(answers > roundsWanted / 100, `${answers} answers`);  // some mutilations do no harm
});

test('random bytes are errors', async () => {
  const engine = await openEngine();
  const roll = dice(seed + 1);
  for (let round = 0; round < 500; round += 1) {
    assert.ok('error' in check(engine.askBytes(garbage(roll)), `seed ${seed}, round ${round}`));
  }
});

test('deep, long and huge requests are errors', async () => {
  const engine = await openEngine();
  const deep = 200_000;
  for (const text of ['['.repeat(deep), '['.repeat(deep) + ']'.repeat(deep), '{"command":'.repeat(deep / 4), `{"command":"check","puzzle":${'['.repeat(deep)}${']'.repeat(deep)}}`,
    JSON.stringify({ command: 'check', puzzle: '1'.repeat(900_000) }), JSON.stringify({ command: 'claims', puzzle: four, script: 'r1c1 = 1\n'.repeat(60_000) })]) {
    check(engine.askBytes(encode(text)), text.slice(0, 40));
  }
  const tooLong = check(engine.askBytes(new Uint8Array(3_000_000).fill(32)), 'too long');
  assert.match(tooLong.error.message, /longer than 1 MiB/);
  // Having refused that, it still works.
  assert.equal(engine.ask({ command: 'check', puzzle: four }).solutions, 'one');
});

test('memory does not grow with the number of requests', async () => {
  const engine = await openEngine();
  const once = () => { for (const request of good.slice(0, 4)) engine.ask(request); };
  for (let i = 0; i < 5; i += 1) once();
  const before = engine.exports().memory.buffer.byteLength;
  for (let i = 0; i < 60; i += 1) once();
  assert.equal(engine.exports().memory.buffer.byteLength, before);
});
