// SPDX-License-Identifier: Apache-2.0
// What the page says about its scenes (docs/formats/lesson_page.md), and how cells and candidates are written.

export interface SceneFacts {
  /** A grid of candidates in one line, docs/formats/position.md. */
  readonly position: string;
  /** Candidates that fall in this scene, "r3c4=5". */
  readonly out: readonly string[];
  /** Digits that go in. */
  readonly in: readonly string[];
}

export interface PageFacts {
  readonly language: string;
  readonly side: number;
  readonly scenes: Readonly<Record<string, SceneFacts>>;
}

/** One cell: its digit, or the candidates left. */
export interface CellMarks { readonly digit: string; readonly marks: readonly string[] }

/** The cells of a grid of candidates, row by row. */
export function readCells(position: string): CellMarks[] {
  return position.split(/\s+/).filter((word) => /[0-9A-Ga-g]/.test(word)).map((word) => {
    const bare = word.replace(/[=()]/g, '');
    const isOpen = bare.length > 1 || word.startsWith('(');
    return { digit: isOpen ? '' : bare, marks: isOpen ? [...bare] : [] };
  });
}

export const cellName = (index: number, side: number): string => `r${Math.floor(index / side) + 1}c${index % side + 1}`;

/** The number of a cell that was typed, "r3c4" or "3,4"; -1 when it is none. */
export function cellFrom(text: string, side: number): number {
  const found = /^\s*r?\s*(\d+)\s*[c,;. ]\s*(\d+)\s*$/i.exec(text);
  if (!found) return -1;
  const row = Number(found[1]), column = Number(found[2]);
  return row >= 1 && row <= side && column >= 1 && column <= side ? (row - 1) * side + column - 1 : -1;
}

/** "4 r1c2, r3c4; 5 r5c5" from ["r1c2=4", ...]: by digit. */
export function byDigit(candidates: readonly string[]): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const candidate of candidates) {
    const [cell = '', digit = ''] = candidate.split('=');
    groups.set(digit, [...groups.get(digit) ?? [], cell]);
  }
  return groups;
}
