// SPDX-License-Identifier: Apache-2.0
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { isFailed } from '../../src/engine/faults';
import { Lane } from '../../src/engine/lane';
import { emptyModule, workshop, type FakeWorker } from './fake_worker';

const settle = async (): Promise<void> => { await vi.advanceTimersByTimeAsync(0); };
const codeOf = (outcome: unknown): string => (isFailed(outcome) ? outcome.error.code : '');

describe('a lane', () => {
  let module: Promise<WebAssembly.Module>;
  beforeEach(async () => {
    module = emptyModule();
    await module;
    vi.useFakeTimers();
  });
  afterEach(() => { vi.useRealTimers(); });

  const makeLane = (spawn: () => FakeWorker, limit = 1000): Lane => new Lane({ spawn, module, limit, grace: 40, startLimit: 500 });

  it('answers one question after the other with one worker', async () => {
    const { made, spawn } = workshop();
    const lane = makeLane(spawn);
    const first = lane.put('a'), second = lane.put('b');
    await settle();
    expect(made.length).toBe(1);
    expect(made[0]!.asked.map(({ request }) => request)).toEqual(['a']);
    made[0]!.answer('A');
    expect(await first).toBe('A');
    expect(made[0]!.asked.map(({ request }) => request)).toEqual(['a', 'b']);
    made[0]!.answer('B');
    expect(await second).toBe('B');
    expect(lane.load).toBe(0);
  });

  it('drops a question that was called off while it waited', async () => {
    const { made, spawn } = workshop();
    const lane = makeLane(spawn);
    const abort = new AbortController();
    const first = lane.put('a'), second = lane.put('b', { signal: abort.signal }), third = lane.put('c');
    await settle();
    abort.abort();
    expect(codeOf(await second)).toBe('cancelled');
    made[0]!.answer('A');
    made[0]!.answer('C');
    expect([await first, await third]).toEqual(['A', 'C']);
    expect(made[0]!.asked.map(({ request }) => request)).toEqual(['a', 'c']);
    expect(made.length).toBe(1);
  });

  it('ends the worker of a question that was called off, and goes on with a new one', async () => {
    const { made, spawn } = workshop();
    const lane = makeLane(spawn);
    const abort = new AbortController();
    const first = lane.put('a', { signal: abort.signal }), second = lane.put('b');
    await settle();
    abort.abort();
    expect(codeOf(await first)).toBe('cancelled');
    expect(made[0]!.ended).toBe(false);  // it has a moment to finish by itself
    await vi.advanceTimersByTimeAsync(50);
    expect(made[0]!.ended).toBe(true);
    expect(made[1]!.asked.map(({ request }) => request)).toEqual(['b']);
    made[1]!.answer('B');
    expect(await second).toBe('B');
  });

  it('keeps the worker when the question called off ends by itself in time', async () => {
    const { made, spawn } = workshop();
    const lane = makeLane(spawn);
    const abort = new AbortController();
    const first = lane.put('a', { signal: abort.signal }), second = lane.put('b');
    await settle();
    abort.abort();
    made[0]!.answer('too late');
    made[0]!.answer('B');
    await vi.advanceTimersByTimeAsync(100);
    expect([codeOf(await first), await second]).toEqual(['cancelled', 'B']);
    expect(made.length).toBe(1);
    expect(made[0]!.ended).toBe(false);
  });

  it('does not even begin with a question that was called off before', async () => {
    const { made, spawn } = workshop();
    expect(codeOf(await makeLane(spawn).put('a', { signal: AbortSignal.abort() }))).toBe('cancelled');
    expect(made.length).toBe(0);
  });

  it('gives a question so much time and no more', async () => {
    const { made, spawn } = workshop();
    const lane = makeLane(spawn);
    const slow = lane.put('slow'), next = lane.put('next');
    await settle();
    await vi.advanceTimersByTimeAsync(999);
    expect(made[0]!.ended).toBe(false);
    await vi.advanceTimersByTimeAsync(2);
    expect(codeOf(await slow)).toBe('time-limit');
    expect(made[0]!.ended).toBe(true);
    made[1]!.answer('N');
    expect(await next).toBe('N');
  });

  it('counts the time of a question from its own beginning', async () => {
    const { made, spawn } = workshop();
    const lane = makeLane(spawn);
    const first = lane.put('a'), second = lane.put('b');
    await settle();
    await vi.advanceTimersByTimeAsync(900);
    made[0]!.answer('A');
    await vi.advanceTimersByTimeAsync(900);
    made[0]!.answer('B');
    expect([await first, await second]).toEqual(['A', 'B']);
  });

  it('survives a trap', async () => {
    const { made, spawn } = workshop();
    const lane = makeLane(spawn);
    const first = lane.put('a'), second = lane.put('b');
    await settle();
    made[0]!.say({ kind: 'trap', id: made[0]!.asked[0]!.id, message: 'unreachable' });
    expect(codeOf(await first)).toBe('crashed');
    await settle();
    made[1]!.answer('B');
    expect(await second).toBe('B');
  });

  it('takes no answer from a worker that was ended', async () => {
    const { made, spawn } = workshop();
    const lane = makeLane(spawn);
    const slow = lane.put('slow');
    await settle();
    await vi.advanceTimersByTimeAsync(1001);
    const next = lane.put('next');
    await settle();
    made[0]!.say({ kind: 'answer', id: made[1]!.asked[0]!.id, text: 'a ghost', memory: 0 });
    made[1]!.answer('N');
    expect([codeOf(await slow), await next]).toEqual(['time-limit', 'N']);
  });

  it('says that there is no engine when no worker comes up', async () => {
    const { made, spawn } = workshop('trap');
    const outcome = makeLane(spawn).put('a');
    await settle();
    expect(codeOf(await outcome)).toBe('no-engine');
    expect(made.length).toBe(3);
    expect(made.every(({ ended }) => ended)).toBe(true);
  });

  it('does not wait for ever for a worker that never starts', async () => {
    const { spawn } = workshop('hand');
    const outcome = makeLane(spawn).put('a');
    await vi.advanceTimersByTimeAsync(3 * 501);
    expect(codeOf(await outcome)).toBe('no-engine');
  });

  it('says that there is no engine when the module cannot be compiled', async () => {
    const { spawn } = workshop();
    const broken = Promise.reject(new Error('WebAssembly is not allowed'));
    broken.catch(() => undefined);
    const outcome = await new Lane({ spawn, module: broken, limit: 1000 }).put('a');
    expect(isFailed(outcome) && outcome.error.message).toContain('WebAssembly is not allowed');
  });

  it('makes room for a new worker when the engine has grown large', async () => {
    const { made, spawn } = workshop();
    const lane = makeLane(spawn);
    const first = lane.put('a'), second = lane.put('b');
    await settle();
    made[0]!.answer('A', 200_000_000);
    expect(await first).toBe('A');
    await settle();
    expect(made[0]!.ended).toBe(true);
    made[1]!.answer('B');
    expect(await second).toBe('B');
    expect(made.length).toBe(2);
  });

  it('calls everything off when it is stopped', async () => {
    const { made, spawn } = workshop();
    const lane = makeLane(spawn);
    const outcomes = [lane.put('a'), lane.put('b')];
    await settle();
    lane.stop();
    expect((await Promise.all(outcomes)).map(codeOf)).toEqual(['cancelled', 'cancelled']);
    expect(made[0]!.ended).toBe(true);
  });
});
