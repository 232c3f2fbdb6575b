// SPDX-License-Identifier: Apache-2.0
// What a board shows. The board draws this and reports what was pressed; it knows no rule. Whoever owns the board makes
// a new view when something changes; cells whose values are the same are not drawn again.

/** One cell. Sets of marks are bit masks: bit 0 is the first symbol. */
export interface CellView {
  /** What stands in the cell, '' when it is open. */
  readonly digit: string;
  /** How it stands there: printed with the puzzle, written later, or proposed only. */
  readonly hand: 'given' | 'placed' | 'proposed';
  /** Marks of an open cell. */
  readonly marks: number;
  /** Marks drawn with a line through them. */
  readonly struck: number;
  /** Marks drawn in a ring. */
  readonly ringed: number;
  /** The ground: hatched one way, hatched the other way, crosshatched, or plain. */
  readonly tint: '' | 'left' | 'right' | 'gone';
  /** How often the cell counts; written small when it is more than 1. */
  readonly times: number;
  /** A known digit that has been taken off: drawn faint, with a line through it. */
  readonly off: boolean;
  /** Belongs to the cells chosen. */
  readonly chosen: boolean;
  /** Lifted out: a heavy frame, whatever the ground is. */
  readonly lit: boolean;
  /** Faded, so that the others stand out. */
  readonly faded: boolean;
  /** A digit laid over the cell, '' for none. */
  readonly over: string;
  /** What a screen reader says. */
  readonly label: string;
}

/** A piece of the edge that stands for a whole line or block of cells. */
export interface HandleView {
  readonly name: string;
  readonly side: '' | 'left' | 'right';
  /** Written after the name: how often it counts, when more than once. */
  readonly badge: string;
  readonly label: string;
}

export interface BoardView {
  readonly side: number;
  /** Rows and columns from one heavy line to the next. */
  readonly bandRows: number;
  readonly stackColumns: number;
  /** How the marks are written, one for each bit. */
  readonly symbols: readonly string[];
  readonly cells: readonly CellView[];
  readonly rows: readonly HandleView[];
  readonly columns: readonly HandleView[];
  /** Row by row, as the blocks lie on the board. */
  readonly blocks: readonly HandleView[];
  /** What the whole board is, for a screen reader. */
  readonly label: string;
}

/** Where the keyboard is: a cell or a handle, by number within its kind. */
export interface Place {
  readonly kind: 'cell' | 'row' | 'column' | 'block';
  readonly index: number;
}

export const plainCell: CellView = {
  digit: '', hand: 'given', marks: 0, struck: 0, ringed: 0, tint: '', times: 1, off: false, chosen: false, lit: false, faded: false, over: '', label: '',
};

export const samePlace = (a: Place, b: Place): boolean => a.kind === b.kind && a.index === b.index;

function sameFields<T extends object>(a: T, b: T): boolean {
  for (const key in a) if (a[key] !== b[key]) return false;
  return true;
}

const shared = <T extends object>(before: readonly T[], now: readonly T[]): readonly T[] =>
  now.map((entry, i) => { const old = before[i]; return old && sameFields(old, entry) ? old : entry; });

/** The view with every cell and handle that did not change taken from the view before, so that it is not drawn again. */
export function shareView(before: BoardView | undefined, now: BoardView): BoardView {
  if (before?.side !== now.side) return now;
  return {
    ...now, cells: shared(before.cells, now.cells), rows: shared(before.rows, now.rows), columns: shared(before.columns, now.columns), blocks: shared(before.blocks, now.blocks),
  };
}
