// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';
import type { Ask } from '../../src/engine/client';
import { Judge } from '../../src/lesson/judge';
import { byDigit, cellFrom, cellName, readCells, type SceneFacts } from '../../src/lesson/marks';
import { sayIn } from '../../src/lesson/words';

const facts: SceneFacts = { position: '1 23 =4 (2) 34 12 . 1234', out: ['r1c2=3'], in: ['r1c4=2'] };
const say = sayIn('en');

/** An engine that gives these answers by command, and notes what it was asked. */
function engine(answers: Record<string, unknown>): { ask: Ask; asked: string[] } {
  const asked: string[] = [];
  const ask = ((command: string, request: object) => {
    asked.push(`${command} ${JSON.stringify(request)}`);
    return Promise.resolve(answers[command] ?? { error: { code: 'crashed', message: 'no answer' } });
  }) as Ask;
  return { ask, asked };
}

describe('marks', () => {
  it('read a grid of candidates', () => {
    const cells = readCells(facts.position);
    expect(cells.map(({ digit, marks }) => digit || marks.join(''))).toEqual(['1', '23', '4', '2', '34', '12', '1234']);
    expect(cells[3]).toEqual({ digit: '', marks: ['2'] });
  });

  it('name cells and read their names', () => {
    expect(cellName(80, 9)).toBe('r9c9');
    for (const [text, wanted] of [['r1c1', 0], ['R9C9', 80], [' 2,1 ', 9], ['r10c1', -1], ['r0c1', -1], ['nonsense', -1], ['', -1]] as const) {
      expect(cellFrom(text, 9), text).toBe(wanted);
    }
  });

  it('group candidates by digit', () => expect([...byDigit(['r1c1=5', 'r2c2=5', 'r3c3=1'])]).toEqual([['5', ['r1c1', 'r2c2']], ['1', ['r3c3']]]));
});

describe('a judge', () => {
  it('knows what the scene is about without asking', async () => {
    const { ask, asked } = engine({});
    const judge = new Judge(ask, facts, say);
    expect(await judge.judge({ cell: 'r1c2', digit: '3', kind: 'out' })).toMatchObject({ holds: true, text: expect.stringContaining('1 of 2 found') });
    expect(judge.isDone).toBe(false);
    expect(await judge.judge({ cell: 'r1c4', digit: '2', kind: 'in' })).toMatchObject({ holds: true, text: expect.stringContaining('That was all') });
    expect(judge.isDone).toBe(true);
    expect(asked).toEqual([]);
  });

  it('says no to what is false', async () => {
    const { ask, asked } = engine({ claim: { verdict: 'refuted', text: '' } });
    expect(await new Judge(ask, facts, say).judge({ cell: 'r1c2', digit: '2', kind: 'out' })).toEqual({ holds: false, text: 'No: 2 leaves r1c2 is not so.' });
    expect(asked[0]).toContain('"claim":"r1c2 != 2"');
  });

  it('accepts what a step shows, and nothing that none shows', async () => {
    const step = { technique: 'x-wing', text: 'Because.' };
    const proved = { verdict: 'proved', text: '' };
    const move = { cell: 'r2c1', digit: '4', kind: 'out' } as const;
    expect(await new Judge(engine({ claim: proved, alternatives: { alternatives: [step] } }).ask, facts, say).judge(move))
      .toEqual({ holds: true, text: 'Yes: 4 leaves r2c1. x wing shows it.', more: 'Because.' });
    expect((await new Judge(engine({ claim: proved, alternatives: { alternatives: [] } }).ask, facts, say).judge(move)).holds).toBe(false);
  });

  it('accepts a digit only when a single puts it there', async () => {
    const singles = { techniques: [{ technique: 'hidden-single', name: 'Hidden single', steps: [{ placements: [{ cell: 'r2c2', digit: 1 }], text: 'One place.' }] }] };
    const judge = new Judge(engine({ claim: { verdict: 'proved', text: '' }, survey: singles }).ask, facts, say);
    expect((await judge.judge({ cell: 'r2c2', digit: '1', kind: 'in' })).text).toContain('Hidden single shows it');
    expect((await judge.judge({ cell: 'r2c2', digit: '2', kind: 'in' })).holds).toBe(false);
  });

  it('says more with every hint', async () => {
    const judge = new Judge(engine({}).ask, facts, say);
    expect([await judge.hint(), await judge.hint(), await judge.hint()].map(({ text }) => text))
      .toEqual(['It is about 2, 3.', 'Look at r1c2, r1c4.', '3 leaves r1c2. 2 goes into r1c4.']);
  });

  it('asks for a hint where the scene has none', async () => {
    const found = { techniques: [{ technique: 'pointing', name: 'Pointing', steps: [{ text: 'All 5s.' }] }] };
    const judge = new Judge(engine({ survey: found }).ask, { ...facts, out: [], in: [] }, say);
    expect(await judge.hint()).toEqual({ holds: false, text: 'Look for this: Pointing.' });
    expect(await judge.hint()).toEqual({ holds: false, text: 'Look for this: Pointing.', more: 'All 5s.' });
  });

  it('passes on why the engine could not say', async () => {
    const judge = new Judge(engine({ claim: { error: { code: 'bad-argument', message: 'no claim', hint: 'try r1c1 = 2' } } }).ask, facts, say);
    expect((await judge.claim('x')).text).toBe('The engine could not say: no claim (try r1c1 = 2)');
  });

  it('speaks German where the lesson does', async () => {
    const judge = new Judge(engine({}).ask, facts, sayIn('de-AT'));
    expect((await judge.judge({ cell: 'r1c2', digit: '3', kind: 'out' })).text).toContain('1 von 2 gefunden');
  });
});
