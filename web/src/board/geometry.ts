// SPDX-License-Identifier: Apache-2.0
// Where everything lies, in units of the drawing. The cells are 540 units wide together, whatever the shape.
import type { BoardView, CellView, Place } from './view';

export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly cell: number;
  /** Upper left corner of the first cell. */
  readonly left: number;
  readonly top: number;
  readonly handle: number;
  readonly blockHandle: number;
  readonly blockLeft: number;
  readonly stacks: number;
}

const kSpan = 540;
const kGap = 5;

/** `roomy` makes the handles wide enough for a finger where the board is small. */
export function layoutOf(view: Pick<BoardView, 'side' | 'stackColumns'>, roomy: boolean): Layout {
  const stacks = view.side / view.stackColumns;
  const handle = roomy ? 52 : 38;
  const blockHandle = roomy ? 52 : stacks > 3 ? 27 : 31;
  const left = handle + kGap;
  const blockLeft = left + kSpan + kGap;
  return {
    width: blockLeft + stacks * blockHandle + 2, height: left + kSpan + 3,
    cell: kSpan / view.side, left, top: left, handle, blockHandle, blockLeft, stacks,
  };
}

export interface Box { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

export function handleBox(layout: Layout, view: Pick<BoardView, 'side' | 'bandRows'>, place: Place): Box {
  const inset = 1.5;
  const at = (x: number, y: number, width: number, height: number): Box =>
    ({ x: x + inset, y: y + inset, width: width - 2 * inset, height: height - 2 * inset });
  if (place.kind === 'row') return at(0, layout.top + place.index * layout.cell, layout.handle, layout.cell);
  if (place.kind === 'column') return at(layout.left + place.index * layout.cell, 0, layout.cell, layout.handle);
  const band = Math.floor(place.index / layout.stacks);
  const tall = view.bandRows * layout.cell;
  return at(layout.blockLeft + (place.index % layout.stacks) * layout.blockHandle, layout.top + band * tall, layout.blockHandle, tall);
}

/** Middle of a mark inside its cell: columns and rows as even as the number of symbols allows. */
export function markMiddle(cell: number, symbols: number, index: number): { x: number; y: number } {
  const across = Math.ceil(Math.sqrt(symbols));
  const down = Math.ceil(symbols / across);
  return { x: cell * (index % across + 0.5) / across, y: cell * (Math.floor(index / across) + 0.5) / down };
}

export const markSize = (cell: number, symbols: number): number => cell / Math.ceil(Math.sqrt(symbols)) * 0.82;

/** The outline of the cells that `belongs` picks, as one path, drawn a little inside. */
export function outline(layout: Layout, side: number, cells: readonly CellView[], belongs: (cell: CellView) => boolean): string {
  const inside = (row: number, column: number): boolean => {
    if (row < 0 || column < 0 || row >= side || column >= side) return false;
    const cell = cells[row * side + column];
    return cell !== undefined && belongs(cell);
  };
  const size = layout.cell;
  const d = 2.2;
  let path = '';
  for (let row = 0; row < side; row += 1) {
    for (let column = 0; column < side; column += 1) {
      if (!inside(row, column)) continue;
      const x = layout.left + column * size;
      const y = layout.top + row * size;
      const up = !inside(row - 1, column), down = !inside(row + 1, column);
      const west = !inside(row, column - 1), east = !inside(row, column + 1);
      const x0 = x + (west ? d : 0), x1 = x + size - (east ? d : 0);
      const y0 = y + (up ? d : 0), y1 = y + size - (down ? d : 0);
      if (up) path += `M${x0} ${y + d}H${x1}`;
      if (down) path += `M${x0} ${y + size - d}H${x1}`;
      if (west) path += `M${x + d} ${y0}V${y1}`;
      if (east) path += `M${x + size - d} ${y0}V${y1}`;
    }
  }
  return path;
}

/** The lines between cells: fine ones everywhere, heavy ones every `bandRows` and `stackColumns`. */
export function rules(layout: Layout, view: Pick<BoardView, 'side' | 'bandRows' | 'stackColumns'>): { fine: string; heavy: string } {
  let fine = '', heavy = '';
  const end = layout.cell * view.side;
  for (let i = 0; i <= view.side; i += 1) {
    const across = `M${layout.left} ${layout.top + i * layout.cell}h${end}`;
    const down = `M${layout.left + i * layout.cell} ${layout.top}v${end}`;
    if (i % view.bandRows === 0) heavy += across; else fine += across;
    if (i % view.stackColumns === 0) heavy += down; else fine += down;
  }
  return { fine, heavy };
}
