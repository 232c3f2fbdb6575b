// SPDX-License-Identifier: Apache-2.0
// The client with the real engine: the workers are played by this thread.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { laneOf, makeEngine, type Engine } from '../../src/engine/client';
import { openDoor, type Door } from '../../src/engine/door';
import { isFailed } from '../../src/engine/faults';
import { packedEngine } from '../../src/engine/generated/packed_engine';
import type { FromWorker, ToWorker, WorkerLike } from '../../src/engine/messages';
import { unpack } from '../../src/engine/unpack';

class NearWorker implements WorkerLike {
  onmessage: ((event: { data: FromWorker }) => void) | null = null;
  onerror: ((event: { message?: string }) => void) | null = null;
  private door: Door | undefined;

  postMessage(message: ToWorker): void {
    void this.hear(message).then((data) => this.onmessage?.({ data }));
  }

  private async hear(message: ToWorker): Promise<FromWorker> {
    if (message.kind === 'ask') return { kind: 'answer', id: message.id, text: this.door!.answer(message.request), memory: this.door!.memory() };
    this.door = await openDoor(message.module);
    return { kind: 'ready' };
  }

  terminate(): void {}
}

const stuck = '6........7.35...2.....14.........9.....9....435.1....2.6.3.1..7....9..6..452...1.';
let engine: Engine;
beforeAll(() => { engine = makeEngine({ spawn: () => new NearWorker(), module: async () => WebAssembly.compile(await unpack(packedEngine)) }); });
afterAll(() => engine.stop());

describe('the client', { timeout: 60_000 }, () => {
  it('hands answers through as they are', async () => {
    const answer = await engine.ask<{ solutions: string; givens: number }>('check', { puzzle: '..3.1......4.1..' });
    expect(answer).toMatchObject({ solutions: 'one', givens: 4 });
  });

  it('gives the errors of the engine with their place', async () => {
    const answer = await engine.ask('check', { puzzle: '..3.1......4.1.x' });
    expect(isFailed(answer) && answer.error).toMatchObject({ code: 'bad-puzzle', where: { field: 'puzzle', column: 16 } });
  });

  it('finds balances of few houses first, and at last what one search finds', async () => {
    interface Found { readonly balances: readonly { readonly left: readonly string[]; readonly right: readonly string[] }[] }
    const request = { puzzle: stuck, after_basics: true, limit: 24 };
    const parts: Found[] = [];
    const inRounds = await engine.ask<Found>('weigh', request, { onPart: (part) => parts.push(part as Found) });
    expect(inRounds).toEqual(await engine.ask<Found>('weigh', request));
    expect(parts.at(-1)).toEqual(inRounds);
    const most = parts.map(({ balances }) => Math.max(...balances.map(({ left, right }) => left.length + right.length)));
    expect(most.length).toBe(2);
    expect(most[0]).toBeLessThanOrEqual(3);
    expect(most[1]).toBeGreaterThan(3);
  });

  it('weighs an empty pan', async () => {
    const answer = await engine.ask<{ missing: { kind: string } }>('weigh', { puzzle: stuck, left: '', right: '', level: 1 });
    expect(answer).toMatchObject({ missing: { kind: 'no-houses' } });
  });

  it('stops between rounds when it is called off', async () => {
    const abort = new AbortController();
    const parts: unknown[] = [];
    const answer = await engine.ask('weigh', { puzzle: stuck, after_basics: true }, {
      signal: abort.signal,
      onPart: (part) => { parts.push(part); abort.abort(); },
    });
    expect(isFailed(answer) && answer.error.code).toBe('cancelled');
    expect(parts.length).toBe(1);
  });

  it('refuses a request that is too long, and goes on', async () => {
    const answer = await engine.ask('check', { puzzle: 'x'.repeat(2_000_000) });
    expect(isFailed(answer) && answer.error.message).toContain('longer than 1 MiB');
    expect(isFailed(await engine.ask('check', { puzzle: stuck }))).toBe(false);
  });

  it('is warmed up without harm', async () => {
    await engine.warmUp();
    expect(isFailed(await engine.ask('check', { puzzle: stuck }))).toBe(false);
  });
});

describe('the lane of a question', () => {
  it('is the short one for the pans, as long as no complete search is asked for', () => {
    expect(laneOf('weigh', { left: 'r1', right: '', level: 4 })).toBe('pans');
    expect(laneOf('weigh', { left: 'r1', right: '' })).toBe('look');
    expect(laneOf('weigh', { left: 'r1', right: '', level: 4, why: true })).toBe('look');
  });

  it('is the long one for searches', () => {
    for (const command of ['weigh', 'survey', 'path', 'claims', 'needed']) expect(laneOf(command, { puzzle: stuck })).toBe('long');
    expect(laneOf('check', { puzzle: stuck })).toBe('look');
  });
});
