// SPDX-License-Identifier: Apache-2.0
// From a frame, and what is laid over it for the moment, to what the board draws.
import type { BoardView, CellView, HandleView } from '../board/view';
import { candidates, cellTouches, cellWeights, shapeOf } from './operations';
import { cellName, cellNamed, digitsIn, symbolOf, type House, type Shape } from './shape';
import { digitAt, isBlank, type CellDigit, type Frame } from './state';

/** What passes by: a preview, a counter-grid, the choice of cells. None of it is remembered. */
export interface Overlay {
  readonly chosen?: ReadonlySet<number>;
  readonly falls?: readonly CellDigit[];
  readonly placed?: readonly CellDigit[];
  readonly counter?: readonly CellDigit[];
  readonly ringed?: readonly CellDigit[];
  readonly lit?: ReadonlySet<number>;
}

function maskByCell(shape: Shape, list: readonly CellDigit[] | undefined): number[] {
  const masks = new Array<number>(shape.side * shape.side).fill(0);
  for (const { cell, digit } of list ?? []) {
    const at = cellNamed(shape, cell);
    if (at !== undefined) masks[at]! |= 1 << (digit - 1);
  }
  return masks;
}

/** Which known cells of the remainders are taken off: for each digit the first ones on either side. */
export function takenOff(state: Frame, weights: readonly number[]): Set<number> {
  const off = new Set<number>();
  for (const side of [1, -1]) {
    const left = state.cancelled.slice();
    weights.forEach((weight, cell) => {
      const digit = digitAt(state, cell);
      if (!digit || weight * side <= 0 || left[digit - 1]! < Math.abs(weight)) return;
      left[digit - 1]! -= Math.abs(weight);
      off.add(cell);
    });
  }
  return off;
}

const sideWords = { left: ', left remainder', right: ', right remainder', gone: ', in both pans', '': '' } as const;

function labelOf(shape: Shape, cell: number, digit: number, given: boolean, marks: number, hidden: boolean, tint: CellView['tint'], over: string): string {
  const what = digit ? `${symbolOf(digit)}${given ? ', given' : ''}`
    : hidden ? 'empty' : marks ? `empty, candidates ${digitsIn(marks).map(symbolOf).join(' ')}` : 'empty, no candidates';
  return `${cellName(shape, cell)}, ${what}${sideWords[tint]}${over ? `, counter-grid ${over}` : ''}`;
}

function handleOf(house: House, weight: number): HandleView {
  const times = Math.abs(weight);
  const where = weight > 0 ? 'in the left pan' : weight < 0 ? 'in the right pan' : 'in no pan';
  return {
    name: house.name, side: weight > 0 ? 'left' : weight < 0 ? 'right' : '', badge: times > 1 ? `${times}\u00d7` : '',
    label: `${house.spoken}, ${where}${times > 1 ? `, ${times} times` : ''}`,
  };
}

function marksShown(state: Frame, free: readonly number[]): readonly number[] {
  if (state.marks === 'hidden') return free.map(() => 0);
  return state.marks === 'own' ? state.own.map((mask, cell) => (digitAt(state, cell) ? 0 : mask)) : free;
}

const symbols = new Map<Shape, readonly string[]>();

function symbolsOf(shape: Shape): readonly string[] {
  let found = symbols.get(shape);
  if (!found) symbols.set(shape, found = Array.from({ length: shape.side }, (_, i) => symbolOf(i + 1)));
  return found;
}

export function boardView(state: Frame, overlay: Overlay = {}, label = 'Board'): BoardView {
  const shape = shapeOf(state);
  const free = candidates(state), shown = marksShown(state, isBlank(state) ? free.map(() => 0) : free);
  const weights = cellWeights(state), touches = cellTouches(state);
  const off = state.cancelled.some(Boolean) ? takenOff(state, weights) : new Set<number>();
  const falls = maskByCell(shape, overlay.falls), placed = maskByCell(shape, overlay.placed), counter = maskByCell(shape, overlay.counter), ringed = maskByCell(shape, overlay.ringed);
  const lensBit = state.lens ? 1 << (state.lens - 1) : 0;

  const cells = weights.map((weight, cell): CellView => {
    const digit = digitAt(state, cell), given = state.givens[cell] !== 0;
    const proposed = !digit && placed[cell] ? digitsIn(placed[cell]!)[0]! : 0;
    const tint = weight > 0 ? 'left' : weight < 0 ? 'right' : touches[cell] ? 'gone' : '';
    const over = counter[cell] ? digitsIn(counter[cell]!).map(symbolOf).join('') : '';
    const here = lensBit !== 0 && (digit === state.lens || (!digit && (free[cell]! & lensBit) !== 0));
    const marks = shown[cell]! | (free[cell]! & (lensBit | falls[cell]! | ringed[cell]!));
    return {
      digit: digit ? symbolOf(digit) : proposed ? symbolOf(proposed) : '',
      hand: digit ? (given ? 'given' : 'placed') : 'proposed',
      marks: marks & ~falls[cell]!, struck: falls[cell]!, ringed: digit ? 0 : free[cell]! & (lensBit | ringed[cell]!), tint,
      times: Math.abs(weight), off: off.has(cell), chosen: overlay.chosen?.has(cell) ?? false, lit: overlay.lit?.has(cell) ?? false,
      faded: lensBit !== 0 && !here, over,
      label: labelOf(shape, cell, digit, given, state.marks === 'hidden' ? 0 : shown[cell]!, state.marks === 'hidden', tint, over),
    };
  });
  const handles = shape.houses.map((house) => handleOf(house, state.pans[house.name] ?? 0));
  const { side } = shape;
  return {
    side, bandRows: shape.boxRows, stackColumns: shape.boxColumns, symbols: symbolsOf(shape),
    cells, rows: handles.slice(0, side), columns: handles.slice(side, 2 * side), blocks: handles.slice(2 * side), label,
  };
}
