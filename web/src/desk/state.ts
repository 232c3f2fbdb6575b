// SPDX-License-Identifier: Apache-2.0
// Everything a desk remembers, as one plain object. It is never changed: the operations (operations.ts) make a new one.
// What only passes by (where the keyboard is, what the engine said) is not in here.
import { shapeNamed, type Shape } from './shape';

/** How the marks of open cells come about. */
export type Marks = 'automatic' | 'own' | 'hidden';

/** A line of the trail of claims. */
export interface ClaimLine {
  readonly id: number;
  readonly text: string;
}

/** What the board shows at one moment of a lesson. */
export interface Frame {
  readonly shape: string;
  readonly givens: readonly number[];
  readonly placed: readonly number[];
  readonly struck: readonly number[];
  readonly own: readonly number[];
  readonly marks: Marks;
  readonly pans: Pans;
  readonly cancelled: readonly number[];
  readonly lens: number;
}

/** One screen of a lesson: a frame, what is said, and what the audience does not see. */
export interface Scene {
  readonly heading: string;
  readonly words: string;
  readonly note: string;
  readonly frame: Frame;
  /** What falls or is placed in this scene, by cell and digit. */
  readonly falls: readonly CellDigit[];
  readonly placed: readonly CellDigit[];
}

export interface CellDigit { readonly cell: string; readonly digit: number }

/** Weight of each house that is in a pan: above 0 left, below 0 right. */
export type Pans = Readonly<Record<string, number>>;

export interface DeskState extends Frame {
  /** Name of the puzzle; goes over the board and into files. */
  readonly title: string;
  /** Typing writes givens: a puzzle is being entered by hand. */
  readonly setting: boolean;
  readonly claims: readonly ClaimLine[];
  /** What the claims rest on; empty: position and all rules. */
  readonly footing: string;
  readonly notes: string;
  readonly scenes: readonly Scene[];
}

// The fields, as a frame has them:
//   givens, placed   a digit for each cell, 0 for none; a cell is in one of the two at most
//   struck           for each cell the candidates struck out, as a mask (bit 0 is digit 1)
//   own              for each cell the teacher's own marks, as a mask
//   cancelled        for each digit how many pairs were taken off the pans by hand
//   lens             the digit looked for, 0 for none

export function emptyDesk(shape: Shape): DeskState {
  const nothing = new Array<number>(shape.side * shape.side).fill(0);
  return {
    shape: shape.name, title: '', givens: nothing, placed: nothing, struck: nothing, own: nothing, marks: 'automatic', setting: true,
    pans: {}, cancelled: new Array<number>(shape.side).fill(0), lens: 0, claims: [], footing: '', notes: '', scenes: [],
  };
}

export function frameOf(state: Frame): Frame {
  const { shape, givens, placed, struck, own, marks, pans, cancelled, lens } = state;
  return { shape, givens, placed, struck, own, marks, pans, cancelled, lens };
}

export const digitAt = (state: Frame, cell: number): number => state.givens[cell] || state.placed[cell] || 0;

/** Nothing has been entered. */
export const isBlank = (state: Frame): boolean => !state.givens.some(Boolean) && !state.placed.some(Boolean);

// --- Reading a state back from a file or the browser's store: nothing is taken on trust.

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);

function readNumbers(value: unknown, length: number, most: number): number[] | undefined {
  if (!Array.isArray(value) || value.length !== length) return undefined;
  return value.every((entry) => Number.isInteger(entry) && entry >= 0 && entry <= most) ? (value as number[]) : undefined;
}

function readText(value: unknown, most: number): string | undefined {
  return typeof value === 'string' && value.length <= most ? value : undefined;
}

function readPans(value: unknown, shape: Shape): Pans | undefined {
  if (!isObject(value)) return undefined;
  const known = new Set(shape.houses.map((house) => house.name));
  const fine = Object.entries(value).every(([name, weight]) => known.has(name) && Number.isInteger(weight) && Math.abs(weight as number) <= 99 && weight !== 0);
  return fine ? (value as Pans) : undefined;
}

function readFrame(value: unknown): Frame | undefined {
  if (!isObject(value)) return undefined;
  const shape = typeof value.shape === 'string' ? shapeNamed(value.shape) : undefined;
  if (!shape) return undefined;
  const cells = shape.side * shape.side;
  const all = 2 ** shape.side - 1;
  const givens = readNumbers(value.givens, cells, shape.side), placed = readNumbers(value.placed, cells, shape.side);
  const struck = readNumbers(value.struck, cells, all), own = readNumbers(value.own, cells, all);
  const cancelled = readNumbers(value.cancelled, shape.side, 16 * cells), pans = readPans(value.pans, shape);
  const marks = (['automatic', 'own', 'hidden'] as const).find((word) => word === value.marks);
  const lens = readNumbers([value.lens], 1, shape.side)?.[0];
  if (!givens || !placed || !struck || !own || !cancelled || !pans || !marks || lens === undefined) return undefined;
  if (givens.some((digit, cell) => digit && placed[cell])) return undefined;
  return { shape: shape.name, givens, placed, struck, own, marks, pans, cancelled, lens };
}

function readCells(value: unknown): CellDigit[] | undefined {
  if (!Array.isArray(value) || value.length > 2000) return undefined;
  const fine = value.every((entry) => isObject(entry) && /^r\d{1,2}c\d{1,2}$/.test(String(entry.cell)) && Number.isInteger(entry.digit));
  return fine ? (value as CellDigit[]) : undefined;
}

function readScene(value: unknown): Scene | undefined {
  if (!isObject(value)) return undefined;
  const frame = readFrame(value.frame), falls = readCells(value.falls), placed = readCells(value.placed);
  const heading = readText(value.heading, 500), words = readText(value.words, 20_000), note = readText(value.note, 20_000);
  if (!frame || !falls || !placed || heading === undefined || words === undefined || note === undefined) return undefined;
  return { heading, words, note, frame, falls, placed };
}

/** The state that the value holds; undefined when it is none. */
export function readState(value: unknown): DeskState | undefined {
  const frame = readFrame(value);
  if (!frame || !isObject(value)) return undefined;
  const title = readText(value.title, 500), footing = readText(value.footing, 2000), notes = readText(value.notes, 200_000);
  if (title === undefined || footing === undefined || notes === undefined || typeof value.setting !== 'boolean') return undefined;
  if (!Array.isArray(value.claims) || value.claims.length > 500 || !Array.isArray(value.scenes) || value.scenes.length > 1000) return undefined;
  const claims: ClaimLine[] = [];
  for (const line of value.claims) {
    const text = isObject(line) ? readText(line.text, 2000) : undefined;
    if (text === undefined) return undefined;
    claims.push({ id: claims.length + 1, text });
  }
  const scenes = value.scenes.map(readScene);
  if (scenes.some((scene) => !scene)) return undefined;
  return { ...frame, title, footing, notes, setting: value.setting, claims, scenes: scenes as Scene[] };
}
