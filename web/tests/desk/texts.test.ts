// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';
import * as operations from '../../src/desk/operations';
import { shapeNamed } from '../../src/desk/shape';
import { emptyDesk, readState, type DeskState } from '../../src/desk/state';
import { deskFromText, deskToText, fileNameOf, positionText, readGrid, readList, readPosition } from '../../src/desk/texts';

const ring = '65.....4324.....86..3..........9......2.63..5...8.2........8...72.....9198..4..57';
const withPuzzle = (text: string): DeskState => {
  const position = readPosition(text)!;
  return { ...operations.newPuzzle(emptyDesk(position.shape), position.shape, position.givens, ''), setting: false };
};

describe('puzzles as text', () => {
  it('are read in every size', () => {
    expect([16, 36, 81, 256].map((cells) => readPosition('.'.repeat(cells))?.shape.name)).toEqual(['4x4', '6x6', '9x9', '16x16']);
    expect(readPosition('.'.repeat(80))).toBeUndefined();
    expect(readPosition(`G${'.'.repeat(255)}`)?.givens[0]).toBe(16);
  });

  // The drawn form of docs/formats/position.md.
  it('are read as people draw them', () => {
    expect(readPosition('. . | 3 .\n1 . | . .\n----+----\n. . | . 4\n. 1 | . .\n')?.givens).toEqual(readPosition('..3.1......4.1..')?.givens);
  });

  it('with candidates keep what is given, placed and marked apart', () => {
    const words = ['1', '=2', '34', '(3)', ...new Array<string>(12).fill('.')];
    const position = readPosition(words.join(' '))!;
    expect(position.givens.slice(0, 4)).toEqual([1, 0, 0, 0]);
    expect(position.placed.slice(0, 4)).toEqual([0, 2, 0, 0]);
    expect(position.masks.slice(0, 4)).toEqual([0, 0, 0b1100, 0b100]);
  });

  it('that are none are no surprise', () => {
    for (const text of ['', 'x'.repeat(81), '<script>', '\u0000'.repeat(81), '9'.repeat(16), 'r1c1 = 5', '1'.repeat(1_000_000)]) expect(readPosition(text)).toBeUndefined();
  });

  it('are written so that they are read again as the same', () => {
    let state = withPuzzle(ring);
    expect(positionText(state)).toBe(ring);
    state = operations.conclude(state, [{ cell: 'r1c3', digit: 8 }], [{ cell: 'r6c9', digit: 9 }]);
    const again = readPosition(positionText(state))!;
    expect(again.givens).toEqual(state.givens);
    expect(again.placed).toEqual(state.placed);
    expect(readGrid(positionText(state), state.givens.length === 81 ? shapeNamed('9x9')! : shapeNamed('4x4')!)!.masks).toEqual(operations.candidates(state));
  });

  it('cannot say that a cell has nothing left', () => {
    const state = withPuzzle(ring);
    const cell = 2;
    const bare = { ...state, struck: state.struck.map((mask, i) => (i === cell ? 511 : mask)) };
    expect(positionText(bare)).toBe('');
  });

  it('in a list have names, and other lines are passed over', () => {
    expect(readList(`# a list\nfirst\t${ring}\nnonsense\n\n${ring}\n`).map((entry) => entry.name)).toEqual(['first', '']);
  });
});

describe('a desk as a file', () => {
  it('comes back the same', () => {
    let state = operations.addClaim(operations.loadPans(withPuzzle(ring), ['c1'], ['r3']), 'r1c3 = 8');
    state = operations.keepScene({ ...state, notes: 'n\u00f6te \u2028' }, { heading: 'a', words: 'b', note: 'c', falls: [{ cell: 'r1c3', digit: 1 }], placed: [] });
    expect(deskFromText(deskToText(state))).toEqual(state);
  });

  it('is refused when anything in it is not as it should be', () => {
    const good = JSON.parse(JSON.stringify(withPuzzle(ring))) as Record<string, unknown>;
    expect(readState(good)).toBeDefined();
    const damage: Record<string, unknown>[] = [
      { shape: '5x5' }, { givens: [1, 2, 3] }, { givens: new Array(81).fill(10) }, { placed: new Array(81).fill(0.5) }, { struck: new Array(81).fill(-1) }, { own: 'x' }, { marks: 'all' },
      { pans: { r10: 1 } }, { pans: { r1: 0 } }, { pans: { r1: 1e9 } }, { pans: [] }, { cancelled: [] }, { lens: 10 }, { claims: [{ text: 5 }] }, { claims: {} },
      { scenes: [{}] }, { notes: null }, { title: ['a'] }, { setting: 'yes' }, { placed: new Array(81).fill(1) },
    ];
    for (const part of damage) expect(readState({ ...good, ...part }), JSON.stringify(part).slice(0, 40)).toBeUndefined();
    for (const text of ['counterpoise desk 1\n{', 'counterpoise desk 2\n{}', 'counterpoise desk 1\nnull', 'counterpoise desk 1\n[]']) expect(deskFromText(text)).toBeUndefined();
  });

  it('has a name that every disk takes', () => {
    expect(fileNameOf({ ...withPuzzle(ring), title: '../../R\u00f6d <b>' })).toBe('r-d-b.counterpoise.txt');
    expect(fileNameOf(withPuzzle(ring))).toBe('desk.counterpoise.txt');
  });
});
