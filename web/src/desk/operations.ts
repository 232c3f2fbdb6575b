// SPDX-License-Identifier: Apache-2.0
// What can be done at a desk. Every operation is a pure function from a state to the next one; one that changes nothing
// gives back the state it was given.
import { cellNamed, houseNamed, shapeNamed, type Shape } from './shape';
import { digitAt, emptyDesk, frameOf, type CellDigit, type DeskState, type Frame, type Marks, type Pans, type Scene } from './state';

export const shapeOf = (state: Frame): Shape => shapeNamed(state.shape)!;

function put<T>(list: readonly T[], at: number, value: T): readonly T[] {
  if (list[at] === value) return list;
  const copy = list.slice();
  copy[at] = value;
  return copy;
}

// --- Digits and marks

/** The digits that no filled cell of the three houses holds, for each open cell. What automatic marks start from. */
export function unseen(state: Frame): number[] {
  const shape = shapeOf(state);
  const held = shape.houses.map((house) => house.cells.reduce((mask, cell) => mask | (digitAt(state, cell) ? 1 << (digitAt(state, cell) - 1) : 0), 0));
  const all = 2 ** shape.side - 1;
  return shape.housesOf.map((houses, cell) => (digitAt(state, cell) ? 0 : houses.reduce((mask, house) => mask & ~held[house]!, all)));
}

/** The candidates of each open cell that the desk works with: the engine is asked about these. */
export function candidates(state: Frame): number[] {
  const free = unseen(state);
  if (state.marks === 'own') return free.map((mask, cell) => (state.own[cell]! & mask ? state.own[cell]! & mask : mask));
  return free.map((mask, cell) => mask & ~state.struck[cell]!);
}

/** Writes a digit, or takes it away when it stands there already; 0 takes away. Givens only while a puzzle is entered. */
export function write(state: DeskState, cell: number, digit: number): DeskState {
  if (cell < 0 || cell >= state.givens.length || digit < 0 || digit > shapeOf(state).side) return state;
  const field = state.setting ? 'givens' : 'placed';
  if (!state.setting && state.givens[cell]) return state;
  const list = put(state[field], cell, state[field][cell] === digit ? 0 : digit);
  return list === state[field] ? state : { ...state, [field]: list };
}

/** Sets or takes away a mark in each cell: set everywhere unless it is set everywhere already. */
export function toggleMark(state: DeskState, cells: readonly number[], digit: number): DeskState {
  const bit = 1 << (digit - 1);
  const open = cells.filter((cell) => !digitAt(state, cell));
  if (open.length === 0 || digit < 1 || digit > shapeOf(state).side) return state;
  if (state.marks === 'own') {
    const off = open.every((cell) => state.own[cell]! & bit);
    return { ...state, own: state.own.map((mask, cell) => (open.includes(cell) ? (off ? mask & ~bit : mask | bit) : mask)) };
  }
  const free = unseen(state);
  const able = open.filter((cell) => free[cell]! & bit);
  if (able.length === 0) return state;
  const off = able.every((cell) => !(state.struck[cell]! & bit));
  return { ...state, struck: state.struck.map((mask, cell) => (able.includes(cell) ? (off ? mask | bit : mask & ~bit) : mask)) };
}

export function chooseMarks(state: DeskState, marks: Marks): DeskState {
  return state.marks === marks ? state : { ...state, marks };
}

/** Own marks begin as what the automatic ones show. */
export function copyMarks(state: DeskState): DeskState {
  return { ...state, own: candidates({ ...state, marks: 'automatic' }), marks: 'own' };
}

/** Carries out what a step concludes. */
export function conclude(state: DeskState, placements: readonly CellDigit[], eliminations: readonly CellDigit[]): DeskState {
  const shape = shapeOf(state);
  const placed = state.placed.slice(), struck = state.struck.slice(), own = state.own.slice();
  for (const { cell, digit } of placements) {
    const at = cellNamed(shape, cell);
    if (at !== undefined && !digitAt(state, at)) placed[at] = digit;
  }
  for (const { cell, digit } of eliminations) {
    const at = cellNamed(shape, cell);
    if (at === undefined) continue;
    struck[at]! |= 1 << (digit - 1);
    own[at]! &= ~(1 << (digit - 1));
  }
  return { ...state, placed, struck, own, setting: false };
}

/** Takes over digits and candidates as the engine gives them. */
export function takePosition(state: DeskState, digits: readonly number[], masks: readonly number[]): DeskState {
  const placed = state.placed.map((_, cell) => (state.givens[cell] ? 0 : digits[cell] ?? 0));
  const next: DeskState = { ...state, placed, setting: false };
  const free = unseen(next);
  const struck = free.map((mask, cell) => mask & ~(masks[cell] ?? mask));
  const own = state.own.map((mask, cell) => mask & (masks[cell] ?? mask));
  return { ...next, struck, own };
}

export function startSetting(state: DeskState, setting: boolean): DeskState {
  return state.setting === setting ? state : { ...state, setting };
}

/** Back to the givens; pans, claims and notes stay. */
export function clearWork(state: DeskState): DeskState {
  const nothing = state.givens.map(() => 0);
  return { ...state, placed: nothing, struck: nothing, own: nothing, cancelled: state.cancelled.map(() => 0) };
}

/** A new puzzle on a cleared desk; notes stay. */
export function newPuzzle(state: DeskState, shape: Shape, givens: readonly number[], title: string): DeskState {
  return { ...emptyDesk(shape), givens, title, setting: givens.every((digit) => digit === 0), notes: state.notes };
}

// --- Pans

function withPans(state: DeskState, pans: Pans): DeskState {
  return { ...state, pans, cancelled: state.cancelled.map(() => 0) };
}

/** Weight 0 takes the house out. */
export function weighHouse(state: DeskState, house: string, weight: number): DeskState {
  if (houseNamed(shapeOf(state), house) < 0 || (state.pans[house] ?? 0) === weight) return state;
  const { [house]: _, ...others } = state.pans;
  return withPans(state, weight === 0 ? others : { ...others, [house]: weight });
}

/** Out, left, right, out; backwards: out, right, left, out. */
export function turnHouse(state: DeskState, house: string, backwards: boolean): DeskState {
  const now = Math.sign(state.pans[house] ?? 0);
  const order = backwards ? [0, -1, 1] : [0, 1, -1];
  return weighHouse(state, house, order[(order.indexOf(now) + 1) % 3]!);
}

/** Houses of one pan as text: "c1, c2, 2*r5", in the order of the shape. */
export function panText(state: Frame, side: 1 | -1): string {
  return shapeOf(state).houses.filter((house) => (state.pans[house.name] ?? 0) * side > 0)
    .map((house) => { const times = Math.abs(state.pans[house.name]!); return times > 1 ? `${times}*${house.name}` : house.name; }).join(', ');
}

export interface PanWords { readonly weights: Pans; readonly wrong: string }

/** Reads "c1, c2 2*r5". Several numbers after a letter are several houses up to 9x9: c12 is c1 and c2. */
export function readPan(shape: Shape, text: string): PanWords {
  const weights: Record<string, number> = {};
  for (const word of text.toLowerCase().split(/[\s,;]+/).filter(Boolean)) {
    const match = /^(?:(\d{1,2})\*)?([rcb])(\d+)$/.exec(word);
    if (!match) return { weights: {}, wrong: word };
    const numbers = shape.side <= 9 ? [...match[3]!] : [match[3]!];
    for (const number of numbers) {
      const name = match[2]! + number;
      if (houseNamed(shape, name) < 0) return { weights: {}, wrong: word };
      weights[name] = (weights[name] ?? 0) + Number(match[1] ?? 1);
      if (weights[name] > 99 || weights[name] === 0) return { weights: {}, wrong: word };
    }
  }
  return { weights, wrong: '' };
}

/** Puts these houses into one pan, in place of what was there; houses move over from the other pan. */
export function fillPan(state: DeskState, side: 1 | -1, weights: Pans): DeskState {
  const others = Object.entries(state.pans).filter(([name, weight]) => weight * side < 0 && !(name in weights));
  const own = Object.entries(weights).map(([name, weight]) => [name, side * weight] as const);
  const pans = Object.fromEntries([...others, ...own]);
  const same = Object.keys(pans).length === Object.keys(state.pans).length && Object.entries(pans).every(([name, weight]) => state.pans[name] === weight);
  return same ? state : withPans(state, pans);
}

export function loadPans(state: DeskState, left: readonly string[], right: readonly string[]): DeskState {
  const shape = shapeOf(state);
  const pans: Record<string, number> = {};
  for (const [list, sign] of [[left, 1], [right, -1]] as const) {
    for (const [name, weight] of Object.entries(readPan(shape, list.join(',')).weights)) pans[name] = sign * weight;
  }
  return withPans(state, pans);
}

/** The weight of each cell: that of its three houses together. */
export function cellWeights(state: Frame): number[] {
  const shape = shapeOf(state);
  const weights = shape.houses.map((house) => state.pans[house.name] ?? 0);
  return shape.housesOf.map((houses) => houses.reduce((sum, house) => sum + weights[house]!, 0));
}

/** In how many houses of a pan each cell lies, whatever their sign: 0 is outside. */
export function cellTouches(state: Frame): number[] {
  const shape = shapeOf(state);
  return shape.housesOf.map((houses) => houses.reduce((sum, house) => sum + (state.pans[shape.houses[house]!.name] ? 1 : 0), 0));
}

/** How many copies of each digit are known in a remainder. */
export function knownDigits(state: Frame, side: 1 | -1): number[] {
  const counts = new Array<number>(shapeOf(state).side).fill(0);
  cellWeights(state).forEach((weight, cell) => {
    const digit = digitAt(state, cell);
    if (digit && weight * side > 0) counts[digit - 1]! += Math.abs(weight);
  });
  return counts;
}

/** Takes one pair of equal digits off the pans, as many times as asked; never more than both hold. */
export function cancelPair(state: DeskState, digit: number, pairs: number): DeskState {
  const most = Math.min(knownDigits(state, 1)[digit - 1] ?? 0, knownDigits(state, -1)[digit - 1] ?? 0);
  const next = Math.max(0, Math.min(most, pairs));
  return next === state.cancelled[digit - 1] ? state : { ...state, cancelled: put(state.cancelled, digit - 1, next) };
}

export function cancelAll(state: DeskState): DeskState {
  const left = knownDigits(state, 1), right = knownDigits(state, -1);
  return { ...state, cancelled: left.map((count, i) => Math.min(count, right[i]!)) };
}

export function putBack(state: DeskState): DeskState {
  return state.cancelled.some(Boolean) ? { ...state, cancelled: state.cancelled.map(() => 0) } : state;
}

export function lookThrough(state: DeskState, digit: number): DeskState {
  return { ...state, lens: state.lens === digit ? 0 : digit };
}

// --- Claims, notes, scenes

export function addClaim(state: DeskState, text: string): DeskState {
  const id = 1 + Math.max(0, ...state.claims.map((line) => line.id));
  return { ...state, claims: [...state.claims, { id, text }] };
}

export function editClaim(state: DeskState, id: number, text: string): DeskState {
  if (!state.claims.some((line) => line.id === id && line.text !== text)) return state;
  return { ...state, claims: state.claims.map((line) => (line.id === id ? { id, text } : line)) };
}

export function dropClaim(state: DeskState, id: number): DeskState {
  return { ...state, claims: state.claims.filter((line) => line.id !== id) };
}

export function keepScene(state: DeskState, scene: Omit<Scene, 'frame'>): DeskState {
  return { ...state, scenes: [...state.scenes, { ...scene, frame: frameOf(state) }] };
}

export function editScene(state: DeskState, at: number, part: Partial<Pick<Scene, 'heading' | 'words' | 'note'>>): DeskState {
  return { ...state, scenes: state.scenes.map((scene, i) => (i === at ? { ...scene, ...part } : scene)) };
}

export function dropScene(state: DeskState, at: number): DeskState {
  return { ...state, scenes: state.scenes.filter((_, i) => i !== at) };
}

export function moveScene(state: DeskState, at: number, by: 1 | -1): DeskState {
  const to = at + by;
  if (to < 0 || to >= state.scenes.length) return state;
  const scenes = state.scenes.slice();
  [scenes[at], scenes[to]] = [scenes[to]!, scenes[at]!];
  return { ...state, scenes };
}
