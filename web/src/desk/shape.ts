// SPDX-License-Identifier: Apache-2.0
// The shapes of grids as data: how cells and houses are called and which cells a house has. Nothing is deduced here;
// whatever follows from a position is the engine's to say.

export interface House {
  readonly name: string;
  readonly spoken: string;
  readonly cells: readonly number[];
}

export interface Shape {
  readonly name: string;
  readonly side: number;
  readonly boxRows: number;
  readonly boxColumns: number;
  /** Rows, then columns, then boxes. */
  readonly houses: readonly House[];
  /** For each cell the numbers of its three houses. */
  readonly housesOf: readonly (readonly number[])[];
}

function makeShape(side: number, boxRows: number, boxColumns: number): Shape {
  const stacks = side / boxColumns;
  const cells: number[][] = Array.from({ length: 3 * side }, () => []);
  const housesOf: number[][] = [];
  for (let cell = 0; cell < side * side; cell += 1) {
    const row = Math.floor(cell / side), column = cell % side;
    const box = Math.floor(row / boxRows) * stacks + Math.floor(column / boxColumns);
    const own = [row, side + column, 2 * side + box];
    own.forEach((house) => cells[house]!.push(cell));
    housesOf.push(own);
  }
  const kinds = [['r', 'row'], ['c', 'column'], ['b', 'box']] as const;
  const houses = cells.map((own, at) => {
    const [letter, word] = kinds[Math.floor(at / side)]!;
    return { name: `${letter}${at % side + 1}`, spoken: `${word} ${at % side + 1}`, cells: own };
  });
  return { name: `${side}x${side}`, side, boxRows, boxColumns, houses, housesOf };
}

export const shapes: readonly Shape[] = [makeShape(4, 2, 2), makeShape(6, 2, 3), makeShape(9, 3, 3), makeShape(16, 4, 4)];

export const shapeNamed = (name: string): Shape | undefined => shapes.find((shape) => shape.name === name);
export const shapeOfCells = (cells: number): Shape | undefined => shapes.find((shape) => shape.side * shape.side === cells);

/** 1 to 9, then A to G. */
export const symbolOf = (digit: number): string => (digit > 9 ? String.fromCharCode(55 + digit) : String(digit));
/** An entry of a tally: with its sign, a minus that is one. */
export const signed = (entry: number, zero = '0'): string => (entry > 0 ? `+${entry}` : entry < 0 ? `\u2212${-entry}` : zero);
export function digitOf(symbol: string): number | undefined {
  const code = symbol.toUpperCase().charCodeAt(0);
  if (code >= 49 && code <= 57) return code - 48;
  return code >= 65 && code <= 71 ? code - 55 : undefined;
}

export const cellName = (shape: Shape, cell: number): string => `r${Math.floor(cell / shape.side) + 1}c${cell % shape.side + 1}`;

export function cellNamed(shape: Shape, name: string): number | undefined {
  const match = /^r(\d+)c(\d+)$/.exec(name);
  if (!match) return undefined;
  const row = Number(match[1]) - 1, column = Number(match[2]) - 1;
  return row >= 0 && column >= 0 && row < shape.side && column < shape.side ? row * shape.side + column : undefined;
}

export const houseNamed = (shape: Shape, name: string): number => shape.houses.findIndex((house) => house.name === name);

/** The digits of a mask, smallest first. */
export function digitsIn(mask: number): number[] {
  const digits: number[] = [];
  for (let digit = 1; mask >> (digit - 1); digit += 1) if (mask >> (digit - 1) & 1) digits.push(digit);
  return digits;
}

/** Cells as a person writes them: r3c46 for r3c4 and r3c6, up to 9x9; in the language of claims. */
export function cellsInWords(shape: Shape, cells: readonly number[]): string {
  if (shape.side > 9) return cells.map((cell) => cellName(shape, cell)).join(' ');
  const rows = new Map<number, number[]>();
  for (const cell of [...cells].sort((a, b) => a - b)) {
    const row = Math.floor(cell / shape.side) + 1;
    rows.set(row, [...(rows.get(row) ?? []), cell % shape.side + 1]);
  }
  const byColumns = new Map<string, number[]>();
  for (const [row, columns] of rows) {
    const key = columns.join('');
    byColumns.set(key, [...(byColumns.get(key) ?? []), row]);
  }
  return [...byColumns].map(([columns, of]) => `r${of.join('')}c${columns}`).join(' ');
}
