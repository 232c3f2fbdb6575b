// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';
import { layoutOf, markMiddle, outline, rules } from '../../src/board/geometry';
import { moved } from '../../src/board/moves';
import { plainCell, type BoardView, type HandleView, type Place } from '../../src/board/view';

const handles = (count: number): HandleView[] => Array.from({ length: count }, (_, i) => ({ name: String(i), side: '', badge: '', label: '' }));
const boardOf = (side: number, bandRows: number, stackColumns: number): BoardView => ({
  side, bandRows, stackColumns, symbols: [], cells: new Array(side * side).fill(plainCell), rows: handles(side), columns: handles(side), blocks: handles(side), label: '',
});
const boards = [boardOf(4, 2, 2), boardOf(6, 2, 3), boardOf(9, 3, 3), boardOf(16, 4, 4)];

describe('moving about', () => {
  const keys = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'Home', 'End'];

  it('stays on the board from every place of every shape', () => {
    const outside: string[] = [];
    for (const board of boards) {
      const places: Place[] = [...board.cells.map((_, index) => ({ kind: 'cell' as const, index })),
        ...(['row', 'column', 'block'] as const).flatMap((kind) => handles(board.side).map((_, index) => ({ kind, index })))];
      for (const place of places) {
        for (const key of keys) {
          for (const control of [false, true]) {
            const next = moved(board, place, key, control);
            if (next && !(next.index >= 0 && next.index < (next.kind === 'cell' ? board.side ** 2 : board.side))) outside.push(`${place.kind} ${place.index} ${key}`);
          }
        }
      }
    }
    expect(outside).toEqual([]);
  });

  it('reaches every handle with the arrows, and comes back', () => {
    for (const board of boards) {
      const seen = new Set<string>();
      const waiting: Place[] = [{ kind: 'cell', index: 0 }];
      for (let place = waiting.pop(); place; place = waiting.pop()) {
        if (seen.has(place.kind + place.index)) continue;
        seen.add(place.kind + place.index);
        for (const key of keys.slice(0, 4)) waiting.push(moved(board, place, key, false)!);
      }
      expect(seen.size).toBe(board.side ** 2 + 3 * board.side);
    }
  });

  it('has no use for other keys', () => {
    expect(moved(boards[2]!, { kind: 'cell', index: 0 }, 'a', false)).toBeUndefined();
  });
});

describe('the drawing', () => {
  it('keeps everything inside and the marks of a cell apart', () => {
    for (const board of boards) {
      const layout = layoutOf(board, false);
      expect(layout.left + layout.cell * board.side).toBeLessThan(layout.blockLeft);
      expect(layout.blockLeft + layout.stacks * layout.blockHandle).toBeLessThanOrEqual(layout.width);
      const middles = Array.from({ length: board.side }, (_, i) => markMiddle(layout.cell, board.side, i));
      expect(new Set(middles.map(({ x, y }) => `${x} ${y}`)).size).toBe(board.side);
      for (const { x, y } of middles) expect(Math.min(x, y, layout.cell - x, layout.cell - y)).toBeGreaterThan(0);
    }
  });

  it('draws a line around what belongs together, none inside', () => {
    const board = boards[0]!;
    const layout = layoutOf(board, false);
    const cells = board.cells.map((cell, i) => ({ ...cell, lit: i === 0 || i === 1 }));
    expect(outline(layout, 4, cells, (cell) => cell.lit).match(/M/g)).toHaveLength(6);
    expect(outline(layout, 4, cells, () => false)).toBe('');
  });

  it('draws every line once', () => {
    for (const board of boards) {
      const { fine, heavy } = rules(layoutOf(board, false), board);
      expect((fine + heavy).match(/M/g)).toHaveLength(2 * (board.side + 1));
    }
  });
});

// The board knows cells, marks, lines and handles; the words of the trade belong elsewhere.
describe('the room', () => {
  const files = Object.entries(import.meta.glob<string>('../../src/board/*', { query: '?raw', import: 'default', eager: true }));

  it('knows no rule and nothing outside itself', () => {
    expect(files.length).toBeGreaterThan(4);
    for (const [name, text] of files) {
      expect(text, name).not.toMatch(/\b(singles?|candidates?|locked|fish|wings?|chains?|tally|surplus|slack|balances?|claims?|sudoku|peers?|solutions?)\b/i);
      expect(text, name).not.toMatch(/from '\.\.\//);
    }
  });

  it('stays small', () => {
    for (const [name, text] of files) expect(text.split('\n').length, name).toBeLessThanOrEqual(350);
  });
});
