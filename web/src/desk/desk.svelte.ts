// SPDX-License-Identifier: Apache-2.0
// The desk in use: its state with the way back, the choice of cells, and what passes by on the board.
import { shareView, type BoardView, type Place } from '../board/view';
import type { CheckAnswer, WeighAnswer } from './answers';
import { failed, type Ask } from './answers';
import { boardView, type Overlay } from './board_view';
import { begin, change, prepend, redo, undo, type History } from './history';
import * as operations from './operations';
import { shapes, type Shape } from './shape';
import { emptyDesk, type CellDigit, type DeskState, type Frame } from './state';
import type { Keeper } from './store';
import { Tenure } from './tenure';
import { deskFromText, isDeskText, longestText, positionText, readGrid, readList, readPosition, type Named } from './texts';

/** Shown on the board in place of what is there, for as long as the pointer or the keyboard rests on something. */
export interface Preview { readonly frame?: Frame; readonly overlay?: Overlay; readonly words?: string }

const nothing: readonly CellDigit[] = [];

export type Pen = 'digit' | 'mark';

export class Desk {
  history: History = $state.raw(begin(emptyDesk(shapes[2]!)));
  place: Place = $state.raw({ kind: 'cell', index: 40 });
  chosen: ReadonlySet<number> = $state.raw(new Set());
  pen: Pen = $state('digit');
  preview: Preview | undefined = $state.raw(undefined);
  /** Cells and digits of a counter-grid laid over the board. */
  counter: Overlay['counter'] = $state.raw(undefined);
  /** What was loaded lately did not fit: why. */
  fault = $state('');
  /** A list was pasted: its puzzles, to choose from. */
  list: readonly Named[] = $state.raw([]);
  /** Read out by screen readers. */
  said = $state('');
  /** The browser's store is full or closed. */
  unkept = $state(false);
  /** Another window keeps the desk. */
  elsewhere = $state(false);

  check: CheckAnswer | undefined = $state.raw(undefined);
  checking = $state(false);
  weighing: WeighAnswer | undefined = $state.raw(undefined);
  weighFault = $state('');
  /** The first answer says what the pans hold; the thorough one what follows from it. */
  thorough = $state(false);

  readonly doc: DeskState = $derived(this.history.now);
  readonly shape: Shape = $derived(operations.shapeOf(this.doc));
  readonly position: string = $derived(positionText(this.doc));
  private readonly falls: readonly CellDigit[] = $derived((this.preview ? this.preview.overlay?.falls : this.counter ? undefined : this.weighing?.eliminations.length ? this.weighing.eliminations : undefined) ?? nothing);
  readonly view: BoardView = $derived.by(() => {
    const frame = this.preview?.frame ?? this.doc;
    const overlay = { ...this.preview?.overlay, falls: this.falls, counter: this.preview ? undefined : this.counter, chosen: this.chosen };
    return this.lastView = shareView(this.lastView, boardView(frame, overlay, this.boardLabel(frame)));
  });
  private lastView: BoardView | undefined;

  private checkAbort: AbortController | undefined;
  private weighAbort: AbortController | undefined;
  private listeners: (() => void)[] = [];
  private readonly tenure = new Tenure('counterpoise.desk', (holder) => this.becomeKept(holder === 'elsewhere'));
  private isTouched = false;  // something was done in this window

  constructor(readonly ask: Ask, private readonly keeper?: Keeper) {}

  private boardLabel(frame: Frame): string {
    const shape = operations.shapeOf(frame);
    const name = this.doc.title ? `${this.doc.title}, ` : '';
    return `${name}board of ${shape.side} by ${shape.side} cells; rows on the left edge, columns on the top edge, boxes on the right edge`;
  }

  /** Takes up what was kept. */
  start(): void {
    const kept = this.keeper?.recall();
    if (kept) {
      this.history = kept;
      this.place = { kind: 'cell', index: 0 };
      void this.keeper?.recallPast().then((past) => {
        if (past) this.history = prepend(this.history, past);
      });
    }
    // Until it is known who keeps the desk, nothing is written.
    if (this.keeper) this.keeper.isElsewhere = true;
    this.tenure.take();
    this.moved(true, true);
  }

  private becomeKept(elsewhere: boolean): void {
    this.elsewhere = elsewhere;
    this.keeper?.become(elsewhere);
    if (elsewhere) this.say('The desk is open in another window, which keeps it');
  }

  /** Goes on here, and the other window hears of it. What it has kept is here now, or one Undo away if something was done here. */
  async takeOver(): Promise<void> {
    const kept = this.keeper?.recall(), past = await this.keeper?.recallPast(), mine = this.doc;
    if (kept) {
      const theirs = past ? prepend(kept, past) : kept;
      this.install(this.isTouched ? change(theirs, mine) : theirs);
    }
    this.tenure.takeOver();
  }

  /** Calls back whenever digits or candidates have changed. */
  onPosition(listener: () => void): void { this.listeners.push(listener); }

  say(words: string): void {
    // The same words twice are read out twice only if the text differs.
    this.said = this.said === words ? `${words}\u00a0` : words;
  }

  // --- Changes

  apply(next: DeskState, kind = ''): void {
    this.install(change(this.history, next, kind));
  }

  undo(): void {
    if (!this.history.past) return this.say('Nothing to undo');
    this.install(undo(this.history));
    this.say('Undone');
  }

  redo(): void {
    if (!this.history.future) return this.say('Nothing to redo');
    this.install(redo(this.history));
    this.say('Done again');
  }

  private install(history: History): void {
    if (history === this.history) return;
    const before = this.doc, position = this.position;
    this.isTouched = true;
    this.history = history;
    this.keeper?.keep(history);
    this.unkept = this.keeper?.full ?? false;
    this.preview = undefined;
    this.moved(this.position !== position || before.shape !== this.doc.shape, this.doc.pans !== before.pans);
    if (before.shape !== this.doc.shape) { this.place = { kind: 'cell', index: 0 }; this.chosen = new Set(); }
  }

  private moved(position: boolean, pans: boolean): void {
    if (position) {
      this.counter = undefined;
      void this.askCheck();
      for (const listener of this.listeners) listener();
    }
    if (position || pans) this.weigh();
  }

  // --- What the engine says at once

  private async askCheck(): Promise<void> {
    this.checkAbort?.abort();
    const abort = this.checkAbort = new AbortController();
    if (this.position === '' || this.doc.givens.every((digit) => !digit)) {
      this.check = undefined;
      return;
    }
    this.checking = true;
    const answer = await this.ask<CheckAnswer>('check', { puzzle: this.position }, { signal: abort.signal });
    if (abort.signal.aborted) return;
    this.checking = false;
    this.check = failed(answer) ? undefined : answer;
    if (failed(answer)) this.fault = [answer.error.message, answer.error.hint].filter(Boolean).join('; ');
    else if (answer.solutions !== 'one') this.say(answer.text);
  }

  private weigh(): void {
    this.weighAbort?.abort();
    const left = operations.panText(this.doc, 1), right = operations.panText(this.doc, -1);
    this.thorough = false;
    if ((!left && !right) || this.position === '') {
      this.weighing = undefined;
      this.weighFault = '';
      return;
    }
    void this.askWeigh(this.weighAbort = new AbortController(), { puzzle: this.position, left, right });
  }

  private async askWeigh(abort: AbortController, request: Record<string, unknown>): Promise<void> {
    // The first answer is there at once; the second may take its time in a worker of its own.
    for (const more of [{ level: 1 }, { level: 5, why: true }]) {
      const answer = await this.ask<WeighAnswer>('weigh', { ...request, ...more }, { signal: abort.signal });
      if (abort.signal.aborted) return;
      this.weighFault = failed(answer) ? answer.error.message : '';
      if (failed(answer)) {
        if (more.level === 1) this.weighing = undefined;
        return;
      }
      this.weighing = answer;
    }
    this.thorough = true;
    if (this.weighing) this.say(weighedInWords(this.weighing));
  }

  // --- Puzzles in

  /** Takes a pasted or opened text: a desk, a puzzle or a position, or a list of puzzles. */
  async take(text: string, title = ''): Promise<boolean> {
    this.fault = '';
    this.list = [];
    if (text.length > longestText) return this.refuse('That is too much text for a puzzle: more than two million characters');
    if (isDeskText(text)) {
      const state = deskFromText(text);
      if (!state) return this.refuse('That file is no desk of this kind, or it was damaged');
      this.apply(state);
      this.say('Desk opened');
      return true;
    }
    const position = readPosition(text);
    if (!position) return this.takeOther(text);
    const answer = await this.ask<CheckAnswer>('check', { puzzle: text });
    if (failed(answer)) return this.refuse([answer.error.message, answer.error.hint].filter(Boolean).join('; '));
    let next = operations.newPuzzle(this.doc, position.shape, position.givens, title);
    if (position.placed.some(Boolean) || position.masks.some(Boolean)) {
      const digits = position.givens.map((digit, cell) => digit || position.placed[cell]!);
      const free = operations.unseen({ ...next, placed: position.placed });
      next = operations.takePosition(next, digits, position.masks.map((mask, cell) => mask || free[cell]!));
    }
    this.apply(next);
    this.place = { kind: 'cell', index: 0 };
    this.chosen = new Set();
    this.say(answer.text);
    return true;
  }

  private async takeOther(text: string): Promise<boolean> {
    const found = readList(text);
    if (found.length === 1) return this.take(found[0]!.text, found[0]!.name);
    if (found.length > 1) {
      this.list = found;
      this.say(`${found.length} puzzles: choose one`);
      return false;
    }
    // The engine knows best what is wrong and where; it need not see more than a page of it.
    const answer = await this.ask<CheckAnswer>('check', { puzzle: text.slice(0, 2000) });
    return this.refuse(failed(answer) ? [answer.error.message, answer.error.hint].filter(Boolean).join('; ') : 'That is no puzzle');
  }

  private refuse(words: string): false {
    this.fault = words;
    this.say(words);
    return false;
  }

  /** Singles, locked candidates, subsets and basic fish until none of them says anything: one step of the history. */
  async doBasics(): Promise<void> {
    const next = await this.afterBasics();
    if (typeof next === 'string') { this.refuse(next); return; }
    if (next.position === this.position) return this.say('The basics say nothing more here');
    this.apply(next.state);
    this.say('The basics are done');
  }

  /** The state after the basics, or what is wrong. */
  async afterBasics(): Promise<{ state: DeskState; position: string } | string> {
    const answer = await this.ask<WeighAnswer>('weigh', { puzzle: this.position, left: 'r1', right: 'c1', level: 1, after_basics: true });
    if (failed(answer)) return answer.error.message;
    const grid = readGrid(answer.position ?? '', this.shape);
    if (!grid) return 'The answer could not be read';
    const state = operations.takePosition(this.doc, grid.digits, grid.masks);
    return { state, position: positionText(state) };
  }

  // --- Cells

  goTo(place: Place, how: { shift: boolean; add: boolean; drag: boolean }): void {
    const before = this.place;
    this.place = place;
    if (place.kind !== 'cell') return;
    if (how.shift && before.kind === 'cell') this.chosen = new Set([...this.chosen, ...this.between(before.index, place.index)]);
    else if (how.add && !how.drag) this.chosen = toggled(this.chosen, place.index);
    else if (how.drag) this.chosen = new Set([...this.chosen, before.kind === 'cell' ? before.index : place.index, place.index]);
    else if (this.chosen.size > 0) this.chosen = new Set();
  }

  private between(from: number, to: number): number[] {
    const side = this.shape.side;
    const [top, bottom] = [Math.floor(from / side), Math.floor(to / side)].sort((a, b) => a - b) as [number, number];
    const [west, east] = [from % side, to % side].sort((a, b) => a - b) as [number, number];
    const cells: number[] = [];
    for (let row = top; row <= bottom; row += 1) for (let column = west; column <= east; column += 1) cells.push(row * side + column);
    return cells;
  }

  /** The cells that writing goes to: those chosen, or the one with the keyboard. */
  targets(): number[] {
    if (this.chosen.size > 0) return [...this.chosen].sort((a, b) => a - b);
    return this.place.kind === 'cell' ? [this.place.index] : [];
  }

  write(digit: number, pen: Pen = this.pen): void {
    const cells = this.targets();
    if (cells.length === 0 || digit > this.shape.side) return;
    if (pen === 'mark' && digit > 0) return this.apply(operations.toggleMark(this.doc, cells, digit));
    this.apply(cells.reduce((state, cell) => operations.write(state, cell, digit), this.doc));
  }

  turnHouse(name: string, backwards: boolean): void {
    this.apply(operations.turnHouse(this.doc, name, backwards));
  }
}

function toggled(set: ReadonlySet<number>, entry: number): ReadonlySet<number> {
  const next = new Set(set);
  if (!next.delete(entry)) next.add(entry);
  return next;
}

/** A balance in a few words, for a screen reader and for the line under the beam. */
export function weighedInWords(answer: WeighAnswer): string {
  if (answer.impossible) return 'This balance shows that the position has no solution';
  const falls = answer.eliminations.length;
  const what = falls > 0 ? `${falls} ${falls === 1 ? 'candidate falls' : 'candidates fall'}` : 'nothing falls';
  return `Surplus ${answer.surplus}, slack ${answer.slack}: ${what}`;
}
