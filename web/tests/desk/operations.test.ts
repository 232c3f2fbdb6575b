// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';
import * as operations from '../../src/desk/operations';
import { cellNamed, cellsInWords, shapeNamed, shapes } from '../../src/desk/shape';
import { emptyDesk, type DeskState } from '../../src/desk/state';
import { readPosition } from '../../src/desk/texts';

const nine = shapeNamed('9x9')!;
const ring = '65.....4324.....86..3..........9......2.63..5...8.2........8...72.....9198..4..57';
const withPuzzle = (text: string): DeskState => {
  const position = readPosition(text)!;
  return { ...operations.newPuzzle(emptyDesk(position.shape), position.shape, position.givens, ''), setting: false };
};
const at = (name: string): number => cellNamed(nine, name)!;

describe('shapes', () => {
  it('give every cell one row, one column and one box, and every house as many cells as digits', () => {
    for (const shape of shapes) {
      expect(shape.houses).toHaveLength(3 * shape.side);
      for (const house of shape.houses) expect(new Set(house.cells).size).toBe(shape.side);
      expect(shape.housesOf.every((houses, cell) => houses.length === 3 && houses.every((house) => shape.houses[house]!.cells.includes(cell)))).toBe(true);
    }
  });

  // Boxes of two rows and three columns on 6x6: docs/formats/position.md.
  it('lay the boxes of 6x6 as the engine does', () => {
    const six = shapeNamed('6x6')!;
    expect(six.houses.find((house) => house.name === 'b2')!.cells.map((cell) => `${Math.floor(cell / 6) + 1}${cell % 6 + 1}`)).toEqual(['14', '15', '16', '24', '25', '26']);
  });

  it('write cells shortly, in the language of claims', () => {
    expect(cellsInWords(nine, [at('r3c4'), at('r3c6'), at('r7c4'), at('r7c6'), at('r1c1')])).toBe('r1c1 r37c46');
    expect(cellsInWords(shapeNamed('16x16')!, [0, 17])).toBe('r1c1 r2c2');
  });
});

describe('writing', () => {
  it('never changes the state it is given', () => {
    const state = Object.freeze(withPuzzle(ring));
    operations.write(state, at('r1c3'), 8);
    expect(state.placed.every((digit) => digit === 0)).toBe(true);
  });

  it('leaves givens alone unless a puzzle is entered', () => {
    const state = withPuzzle(ring);
    expect(operations.write(state, 0, 5)).toBe(state);
    expect(operations.write({ ...state, setting: true }, 0, 5).givens[0]).toBe(5);
  });

  it('takes a digit away that is written twice, and refuses digits the board has not', () => {
    const once = operations.write(withPuzzle(ring), at('r1c3'), 8);
    expect(once.placed[at('r1c3')]).toBe(8);
    expect(operations.write(once, at('r1c3'), 8).placed[at('r1c3')]).toBe(0);
    expect(operations.write(once, at('r1c3'), 10)).toBe(once);
  });

  it('keeps automatic marks to what the three houses leave', () => {
    // Row 1 holds 6 5 4 3, column 3 holds 3 2, box 1 holds 6 5 2 4 3: by hand.
    expect(operations.candidates(withPuzzle(ring))[at('r1c3')]).toBe(0b111000001 & ~0b000111110);
  });

  it('strikes a mark in all chosen cells or in none', () => {
    const state = withPuzzle(ring);
    const cells = [at('r1c3'), at('r2c3')];
    const struck = operations.toggleMark(state, cells, 7);
    expect(cells.map((cell) => operations.candidates(struck)[cell]! >> 6 & 1)).toEqual([0, 0]);
    const half = operations.toggleMark(state, [cells[0]!], 7);
    expect(cells.map((cell) => operations.candidates(operations.toggleMark(half, cells, 7))[cell]! >> 6 & 1)).toEqual([1, 1]);
  });

  it('carries out what a step concludes, and no more', () => {
    const next = operations.conclude(withPuzzle(ring), [{ cell: 'r1c3', digit: 8 }], [{ cell: 'r6c9', digit: 9 }, { cell: 'r99c1', digit: 1 }]);
    expect(next.placed.filter(Boolean)).toEqual([8]);
    expect(next.struck.filter(Boolean)).toEqual([1 << 8]);
    expect(next.struck[at('r6c9')]).toBe(1 << 8);
  });
});

describe('pans', () => {
  it('turn a house left, right and out, or the other way round', () => {
    let state = withPuzzle(ring);
    const seen = [1, 2, 3].map(() => { state = operations.turnHouse(state, 'r3', false); return state.pans.r3 ?? 0; });
    expect(seen).toEqual([1, -1, 0]);
    expect(operations.turnHouse(state, 'r3', true).pans.r3).toBe(-1);
    expect(operations.turnHouse(state, 'r10', false)).toBe(state);
  });

  it('read houses in several ways and name what they cannot read', () => {
    expect(operations.readPan(nine, 'c1289, 2*r3 b4').weights).toEqual({ c1: 1, c2: 1, c8: 1, c9: 1, r3: 2, b4: 1 });
    for (const word of ['r0', 'x3', 'c1o', '0*r1', '100*r1', '-2*r1']) expect(operations.readPan(nine, `r2 ${word}`).wrong).toBe(word);
    expect(operations.readPan(shapeNamed('16x16')!, 'r12').weights).toEqual({ r12: 1 });
  });

  it('write what they read', () => {
    const state = operations.fillPan(withPuzzle(ring), 1, operations.readPan(nine, 'b2 c3 2*r7').weights);
    expect(operations.panText(state, 1)).toBe('2*r7, c3, b2');
    expect(operations.fillPan(state, 1, operations.readPan(nine, operations.panText(state, 1)).weights)).toBe(state);
  });

  // The ring theorem: the corners (16 cells) hold the same digits as the ring around box 5. design.md, check 4.
  it('weigh the ring: sixteen cells on either side', () => {
    const state = operations.loadPans(withPuzzle(ring), ['c1', 'c2', 'c8', 'c9'], ['r3', 'r7', 'b4', 'b6']);
    const weights = operations.cellWeights(state);
    const left = weights.flatMap((weight, cell) => (weight > 0 ? [cell] : []));
    expect(cellsInWords(nine, left)).toBe('r1289c1289');
    expect(weights.filter((weight) => weight < 0)).toHaveLength(16);
    expect(cellsInWords(nine, weights.flatMap((weight, cell) => (weight < 0 ? [cell] : [])))).toBe('r37c34567 r456c37');
  });

  // a rows against b columns leave a(9-b) and b(9-a) cells: design.md, section 1.
  it('leave a(9-b) and b(9-a) cells of a rows against b columns', () => {
    for (let a = 1; a < 9; a += 1) {
      for (let b = 1; b < 9; b += 1) {
        const state = operations.loadPans(withPuzzle(ring), nine.houses.slice(0, a).map((house) => house.name), nine.houses.slice(9, 9 + b).map((house) => house.name));
        const weights = operations.cellWeights(state);
        expect([weights.filter((weight) => weight > 0).length, weights.filter((weight) => weight < 0).length]).toEqual([a * (9 - b), b * (9 - a)]);
      }
    }
  });

  it('take off pairs of equal digits as far as both sides have them', () => {
    const state = operations.loadPans(withPuzzle(ring), ['c1', 'c2', 'c8', 'c9'], ['r3', 'r7', 'b4', 'b6']);
    const left = operations.knownDigits(state, 1), right = operations.knownDigits(state, -1);
    expect(operations.cancelAll(state).cancelled).toEqual(left.map((count, i) => Math.min(count, right[i]!)));
    expect(operations.cancelPair(state, 8, 99).cancelled[7]).toBe(Math.min(left[7]!, right[7]!));
    expect(operations.cancelPair(state, 8, -1)).toBe(state);
    expect(operations.turnHouse(operations.cancelAll(state), 'r1', false).cancelled.every((count) => count === 0)).toBe(true);
  });
});

describe('claims and scenes', () => {
  it('keep their numbers when one is taken off', () => {
    let state = withPuzzle(ring);
    for (const text of ['a', 'b', 'c']) state = operations.addClaim(state, text);
    state = operations.addClaim(operations.dropClaim(state, 2), 'd');
    expect(state.claims.map(({ id, text }) => `${id}${text}`)).toEqual(['1a', '3c', '4d']);
    expect(operations.editClaim(state, 3, 'c')).toBe(state);
  });

  it('keep the frame of a scene whatever happens on the board afterwards', () => {
    const state = operations.keepScene(withPuzzle(ring), { heading: 'h', words: '', note: '', falls: [], placed: [] });
    const later = operations.write(state, at('r1c3'), 8);
    expect(later.scenes[0]!.frame.placed[at('r1c3')]).toBe(0);
    expect(operations.moveScene(later, 0, 1)).toBe(later);
  });
});
