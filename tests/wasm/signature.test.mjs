// SPDX-License-Identifier: Apache-2.0
// The module does what the native program does: the same positions, the same signature, and it needs nothing around it.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { openEngine } from './engine.mjs';

const golden = readFileSync(new URL('../golden/bench_signature.txt', import.meta.url), 'utf8');
const recorded = Object.fromEntries(golden.split('\n').filter((line) => line && !line.startsWith('#')).map((line) => line.split(' ')));

test('the module imports nothing and exports the door', async () => {
  const { module, exports } = await openEngine();
  assert.deepEqual(WebAssembly.Module.imports(module), []);
  const names = WebAssembly.Module.exports(module).map(({ name }) => name).sort();
  assert.deepEqual(names, ['_initialize', 'cp_abi', 'cp_answer', 'cp_answer_size', 'cp_room', 'memory']);
  assert.equal(exports().cp_abi(), 1);
});

test('the signature is the one of the native program', async () => {
  const quick = !process.env.COUNTERPOISE_FULL_BENCH;
  const engine = await openEngine();
  const answer = engine.ask({ command: 'bench', quick });
  assert.ok(answer.positions.length >= 10);
  assert.equal(answer.signature, recorded[quick ? 'quick' : 'full']);
});
