// SPDX-License-Identifier: Apache-2.0
// Puzzles, positions and whole desks as text. The engine judges whether a text is a puzzle and says what is wrong with
// it; what it has accepted is read here. The forms are those of docs/formats/position.md and docs/formats/desk.md.
import { candidates } from './operations';
import { digitOf, digitsIn, shapeNamed, shapeOfCells, symbolOf, type Shape } from './shape';
import { digitAt, readState, type DeskState, type Frame } from './state';

/** Longer texts are refused before anything looks at them. */
export const longestText = 2_000_000;
const longestPuzzle = 20_000;

export interface Position {
  readonly shape: Shape;
  readonly givens: readonly number[];
  readonly placed: readonly number[];
  /** Candidates by cell where the text states them, else 0. */
  readonly masks: readonly number[];
}

const maskOf = (word: string): number => [...word].reduce((mask, symbol) => mask | 1 << ((digitOf(symbol) ?? 1) - 1), 0);

function fromWords(words: readonly string[], shape: Shape): Position {
  const givens: number[] = [], placed: number[] = [], masks: number[] = [];
  for (const word of words) {
    const bare = word.replace(/[=()]/g, '');
    const digit = digitOf(bare) ?? 0;
    givens.push(word.length === 1 ? digit : 0);
    placed.push(word.startsWith('=') ? digit : 0);
    masks.push(word.length > 1 && !word.startsWith('=') ? maskOf(bare) : 0);
  }
  return { shape, givens, placed, masks };
}

/** A text that is a puzzle or a position; undefined when it is neither. */
export function readPosition(text: string): Position | undefined {
  if (text.length > longestPuzzle) return undefined;
  const words = text.replace(/[|]/g, ' ').split(/\s+/).filter((word) => word && !/^[-+]+$/.test(word));
  const byWords = shapeOfCells(words.length);
  if (byWords && words.some((word) => word.length > 1) && words.every((word) => /^(=?[1-9A-Ga-g]|\(?[1-9A-Ga-g]+\)?|[.0_])$/.test(word))) return fromWords(words, byWords);
  const signs = [...text.replace(/[\s|+,;:=-]/g, '')];
  const shape = shapeOfCells(signs.length);
  if (!shape || !signs.every((sign) => /[.0_1-9A-Ga-g]/.test(sign))) return undefined;
  const givens = signs.map((sign) => digitOf(sign) ?? 0);
  if (givens.some((digit) => digit > shape.side)) return undefined;
  const nothing = givens.map(() => 0);
  return { shape, givens, placed: nothing, masks: nothing };
}

export interface Named { readonly name: string; readonly text: string }

/** The puzzles of a list, one a line, with a name before a tab if it has one. */
export function readList(text: string): Named[] {
  const found: Named[] = [];
  for (const line of text.slice(0, longestText).split(/\r?\n/)) {
    if (!line.trim() || line.startsWith('#')) continue;
    const parts = line.split('\t');
    const [name, puzzle] = parts.length > 1 ? [parts[0]!, parts[1]!] : ['', line];
    if (readPosition(puzzle)) found.push({ name, text: puzzle });
    if (found.length >= 500) break;
  }
  return found;
}

/** The position as the engine reads it; '' when some open cell has nothing left, which no text can say. */
export function positionText(state: Frame): string {
  const free = candidates(state);
  if (free.some((mask, cell) => mask === 0 && !digitAt(state, cell))) return '';
  const plain = state.marks !== 'own' && state.struck.every((mask) => mask === 0) && state.placed.every((digit) => digit === 0);
  if (plain) return state.givens.map((digit) => (digit ? symbolOf(digit) : '.')).join('');
  return free.map((mask, cell) => {
    if (state.givens[cell]) return symbolOf(state.givens[cell]);
    if (state.placed[cell]) return `=${symbolOf(state.placed[cell])}`;
    const word = digitsIn(mask).map(symbolOf).join('');
    return word.length === 1 ? `(${word})` : word;
  }).join(' ');
}

/** A grid of candidates as the engine writes it: digits and masks by cell. */
export function readGrid(text: string, shape: Shape): { digits: number[]; masks: number[] } | undefined {
  const position = readPosition(text);
  if (!position || position.shape !== shape) return undefined;
  const digits = position.givens.map((digit, cell) => digit || position.placed[cell]!);
  return { digits, masks: position.masks.map((mask, cell) => (digits[cell] ? 0 : mask)) };
}

// --- A whole desk as a file

const heading = 'counterpoise desk 1';

export const deskToText = (state: DeskState): string => `${heading}\n${JSON.stringify(state, null, 1)}\n`;

/** undefined when the text is no desk. */
export function deskFromText(text: string): DeskState | undefined {
  if (text.length > longestText || !text.trimStart().startsWith(heading)) return undefined;
  try {
    return readState(JSON.parse(text.trimStart().slice(heading.length)));
  } catch {
    return undefined;
  }
}

export const isDeskText = (text: string): boolean => text.slice(0, 200).trimStart().startsWith('counterpoise desk');

export const fileNameOf = (state: DeskState): string =>
  `${state.title.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 40) || 'desk'}.counterpoise.txt`;

export { shapeNamed };
