// SPDX-License-Identifier: Apache-2.0
// Where the arrow keys lead: over the cells, and past the edge onto the handles.
import type { BoardView, Place } from './view';

type Step = readonly [down: number, right: number];

const arrows: Readonly<Record<string, Step>> = {
  ArrowUp: [-1, 0], ArrowDown: [1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1],
};

function fromCell(view: BoardView, index: number, [down, right]: Step): Place {
  const row = Math.floor(index / view.side) + down;
  const column = index % view.side + right;
  if (row < 0) return { kind: 'column', index: column };
  if (column < 0) return { kind: 'row', index: row };
  if (column >= view.side) return { kind: 'block', index: Math.floor(row / view.bandRows) * (view.side / view.stackColumns) };
  if (row >= view.side) return { kind: 'cell', index };
  return { kind: 'cell', index: row * view.side + column };
}

function fromBlock(view: BoardView, index: number, [down, right]: Step): Place {
  const stacks = view.side / view.stackColumns;
  const band = Math.floor(index / stacks) + down;
  const stack = index % stacks + right;
  if (stack < 0) return { kind: 'cell', index: (Math.floor(index / stacks) * view.bandRows + 1) * view.side - 1 };
  if (stack >= stacks || band < 0 || band >= view.blocks.length / stacks) return { kind: 'block', index };
  return { kind: 'block', index: band * stacks + stack };
}

/** The place a key leads to; undefined when the key is none of ours. */
export function moved(view: BoardView, from: Place, key: string, control: boolean): Place | undefined {
  const { side } = view;
  if (key === 'Home' || key === 'End') {
    if (from.kind !== 'cell') return undefined;
    const row = control ? (key === 'Home' ? 0 : side - 1) : Math.floor(from.index / side);
    return { kind: 'cell', index: row * side + (key === 'Home' ? 0 : side - 1) };
  }
  const step = arrows[key];
  if (!step) return undefined;
  if (from.kind === 'cell') return fromCell(view, from.index, step);
  if (from.kind === 'block') return fromBlock(view, from.index, step);
  const along = from.kind === 'row' ? step[0] : step[1];
  const inward = from.kind === 'row' ? step[1] : step[0];
  if (inward > 0) return { kind: 'cell', index: from.kind === 'row' ? from.index * side : from.index };
  const next = from.index + along;
  return next < 0 || next >= side ? from : { kind: from.kind, index: next };
}
