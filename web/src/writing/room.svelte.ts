// SPDX-License-Identifier: Apache-2.0
// A lesson that is being written: its text with the way back, what the engine says of it, and where it is kept.
import { failed, type Ask } from '../desk/answers';
import { begin, change, redo, undo, type History } from '../desk/history';
import { Tenure, type Holder } from '../desk/tenure';
import type { Failed } from '../engine/faults';
import { writeStored } from './folder';
import type { KeptLesson, KeptLessons, Stored } from './kept';
import { claimsOf, type Judged, type Review, type ReviewedClaim, type ReviewedScene } from './review';
import { readScript, sceneAt, type Piece, type Script } from './script';

/** What keeps the text from being a lesson: of one line, if it is known which. */
export interface Fault { readonly verdict: string; readonly message: string; readonly hint: string; readonly line: number; readonly column: number }

/** The file has changed since it was opened. */
export interface Conflict { readonly name: string; readonly revision: string }

export const longestLesson = 900_000;  // characters; the engine takes a request of 1 MiB

const wordsOf = ({ error }: Failed): string => [error.message, error.hint].filter(Boolean).join('; ');

export class Room {
  history: History<string> = $state.raw(begin(''));
  id = $state('');
  name = $state('');
  isSaved = $state(true);
  stored: Stored | undefined = $state.raw(undefined);
  conflict: Conflict | undefined = $state.raw(undefined);
  review: Review | undefined = $state.raw(undefined);
  /** The text the review is about. */
  reviewed = $state('');
  fault: Fault | undefined = $state.raw(undefined);
  /** The engine could not answer: not a fault of the lesson. */
  trouble = $state('');
  busy = $state(false);
  holder: Holder = $state('asking');
  kept: 'kept' | 'full' | 'changed' = $state('kept');
  said = $state('');

  readonly text: string = $derived(this.history.now);
  readonly script: Script = $derived(readScript(this.text));
  readonly isOpen: boolean = $derived(this.id !== '');
  readonly isFresh: boolean = $derived(this.reviewed === this.text);
  /** Verdicts by key: a claim is asked once, whatever happens to the words around it. */
  private judged: ReadonlyMap<string, Judged> = $state.raw(new Map());
  /** Claims by the words of their line, in order; a line that has not changed keeps its verdict while the lesson is read anew. */
  private readonly claims: ReadonlyMap<string, readonly ReviewedClaim[]> = $derived.by(() => {
    const lines = this.reviewed.split('\n'), found = new Map<string, ReviewedClaim[]>();
    for (const claim of claimsOf(this.review)) {
      const words = lines[claim.line - 1]?.trim() ?? '';
      found.set(words, [...found.get(words) ?? [], claim]);
    }
    return found;
  });

  private revision = 0;
  private tenure: Tenure | undefined;
  private abort: AbortController | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly ask: Ask, private readonly lessons: KeptLessons) {}

  say(words: string): void { this.said = this.said === words ? `${words}\u00a0` : words; }

  // --- Opening and closing

  open(text: string, name: string, how: { id?: string; revision?: number; isSaved?: boolean; stored?: Stored | undefined } = {}): void {
    this.close();
    this.id = how.id ?? crypto.randomUUID();
    this.revision = how.revision ?? 0;
    this.name = name;
    this.stored = how.stored;
    this.isSaved = how.isSaved ?? true;
    this.history = begin(text.replace(/\r\n?/g, '\n'));
    this.holder = 'asking';
    this.tenure = new Tenure(`counterpoise.lesson.${this.id}`, (holder) => this.becomeHolder(holder));
    this.tenure.take();
    this.look(0);
  }

  openKept(lesson: KeptLesson): void { this.open(lesson.text, lesson.name, lesson); }

  close(): void {
    this.tenure?.release();
    this.tenure = undefined;
    this.abort?.abort();
    clearTimeout(this.timer);
    this.history = begin('');
    this.id = '';
    this.review = this.fault = this.conflict = undefined;
    this.reviewed = this.trouble = '';
    this.kept = 'kept';
  }

  private becomeHolder(holder: Holder): void {
    this.holder = holder;
    if (holder === 'here') this.keep();
    else if (holder === 'elsewhere') this.say('This lesson is open in another window, which keeps it');
  }

  /** Goes on here; the other window hears of it. What it has kept is one Undo away. */
  takeOver(): void {
    const kept = this.lessons.read(this.id), mine = this.text, hasChanged = this.history.past !== undefined;
    if (kept) {
      this.revision = kept.revision;
      if (kept.text !== mine) this.history = hasChanged ? change(change(this.history, kept.text), mine) : change(this.history, kept.text);
    }
    this.kept = 'kept';
    this.tenure?.takeOver();
    this.look(0);
  }

  /** Leaves the other window its lesson and goes on with a copy. */
  copy(): void {
    const { text, name, history } = this;
    this.open(text, name, { isSaved: false });
    this.history = history;
  }

  // --- Changes

  edit(next: string, kind = ''): void {
    if (next === this.text) return;
    if (next.length > longestLesson) { this.say('That is more text than a lesson may have'); return; }
    this.history = change(this.history, next, kind);
    this.changed();
  }

  undo(): void { if (this.history.past) { this.history = undo(this.history); this.changed(); this.say('Undone'); } }
  redo(): void { if (this.history.future) { this.history = redo(this.history); this.changed(); this.say('Done again'); } }

  private changed(): void {
    this.isSaved = false;
    this.keep();
    this.look(350);
  }

  private keep(): void {
    if (this.holder !== 'here' || !this.id || this.text === '') return;
    const lesson: KeptLesson = { id: this.id, name: this.name, text: this.text, revision: this.revision + 1, at: Date.now(), isSaved: this.isSaved, stored: this.stored };
    this.kept = this.lessons.write(lesson);
    if (this.kept === 'kept') this.revision += 1;
  }

  rename(name: string): void {
    this.name = name;
    this.keep();
  }

  // --- What the engine says

  /** Asks when the text has been left alone for so many milliseconds. */
  private look(delay: number): void {
    clearTimeout(this.timer);
    this.abort?.abort();
    this.timer = setTimeout(() => void this.askReview(), delay);
  }

  private async askReview(): Promise<void> {
    const abort = this.abort = new AbortController(), text = this.text;
    this.busy = true;
    // First everything but the claims, which takes a moment; then those whose verdict is not known yet, one by one.
    const answer = await this.ask<Review>('lesson_review', { lesson: text, only: 0 }, { signal: abort.signal });
    if (abort.signal.aborted) return;
    this.take(answer, text);
    if (!failed(answer)) await this.askClaims(answer, text, abort.signal);
    if (!abort.signal.aborted) this.busy = false;
  }

  private take(answer: Review | Failed, text: string): void {
    this.trouble = '';
    if (failed(answer)) {
      const { where, message, hint, code } = answer.error;
      if (where) this.fault = { verdict: 'unfit', message, hint: hint ?? '', line: where.line, column: where.column };
      else this.trouble = wordsOf(answer);
      if (where || code.startsWith('bad-')) this.reviewed = text;
      return;
    }
    const { stop } = answer;
    this.review = answer;
    this.reviewed = text;
    this.fault = stop ? { verdict: stop.verdict, message: stop.message, hint: stop.hint ?? '', line: stop.line, column: stop.column } : undefined;
  }

  private async askClaims(review: Review, text: string, signal: AbortSignal): Promise<void> {
    for (const { key, number } of claimsOf(review)) {
      if (this.judged.has(key)) continue;
      const answer = await this.ask<Review>('lesson_review', { lesson: text, only: number }, { signal });
      if (signal.aborted) return;
      if (failed(answer)) { this.trouble = wordsOf(answer); return; }
      const asked = claimsOf(answer).find((claim) => claim.number === number);
      if (asked && asked.verdict !== 'unasked') this.judged = new Map(this.judged).set(key, { verdict: asked.verdict, text: asked.text ?? '' });
    }
  }

  private claimAt(piece: Piece): ReviewedClaim | undefined {
    const words = this.script.lines[piece.from - 1]?.trim() ?? '';
    const found = this.claims.get(words);
    if (!found) return undefined;
    if (this.isFresh) return found.find((claim) => claim.line === piece.from);
    return found[this.script.lines.slice(0, piece.from - 1).filter((line) => line.trim() === words).length];
  }

  /** What was answered to a claim; undefined when it was not asked yet. */
  claimOf(piece: Piece): Judged | undefined {
    const claim = this.claimAt(piece);
    return claim && this.judged.get(claim.key);
  }

  /** How the claims of a scene stand. */
  verdicts(at: number): Readonly<Record<'proved' | 'refuted' | 'open' | 'unasked', number>> {
    const count = { proved: 0, refuted: 0, open: 0, unasked: 0 };
    for (const { key } of this.built(at)?.claims ?? []) count[this.judged.get(key)?.verdict ?? 'unasked'] += 1;
    return count;
  }

  /** Everything is proved. */
  readonly isWhole: boolean = $derived.by(() => this.isFresh && !this.fault && this.review !== undefined
    && claimsOf(this.review).every((claim) => this.judged.get(claim.key)?.verdict === 'proved'));
  readonly isAsking: boolean = $derived.by(() => !this.isFresh || claimsOf(this.review).some((claim) => !this.judged.has(claim.key)));

  /** The scene as it was built last. */
  built(at: number): ReviewedScene | undefined {
    const scene = this.script.scenes[at];
    if (!scene || !this.review) return undefined;
    const same = this.review.scenes[at];
    return same?.heading === scene.heading ? same : this.review.scenes.find((each) => each.heading === scene.heading) ?? same;
  }

  /** The build has got past this line. */
  isPast(line: number): boolean {
    return this.isFresh && this.review !== undefined && (!this.fault || this.fault.line > line);
  }

  readonly faultScene: number = $derived(this.fault ? sceneAt(this.script, this.fault.line) : -1);

  // --- Saving

  saved(stored?: Stored): void {
    this.isSaved = true;
    if (stored) { this.stored = stored; this.name = stored.name; }
    this.conflict = undefined;
    this.keep();
  }

  /** Writes it to the folder of the program. `over`: this revision may be written over although it is not the one opened. */
  async store(name: string, over?: string): Promise<string> {
    const known = over ?? (this.stored?.name === name ? this.stored.revision : undefined);
    const text = this.text;
    const answer = await writeStored(name, text, known);
    if (answer.kind === 'written') {
      this.saved(answer.stored);
      if (this.text !== text) { this.isSaved = false; this.keep(); }
      this.say(`Saved as ${name}`);
      return '';
    }
    if (answer.kind === 'changed') { this.conflict = { name, revision: answer.revision }; return ''; }
    return answer.message;
  }

  /** Drafts a lesson; what is wrong, or '' when it is open. */
  async draft(request: Record<string, unknown>): Promise<string> {
    this.busy = true;
    const answer = await this.ask<{ lesson: string; title: string }>('lesson_draft', request);
    this.busy = false;
    if (failed(answer)) return wordsOf(answer);
    if (typeof answer.lesson !== 'string') return 'No balance says anything on this puzzle';
    this.open(answer.lesson, fileNameFor(answer.title), { isSaved: false });
    return '';
  }
}

export const fileNameFor = (title: string): string => `${title.toLowerCase().normalize('NFKD').replace(/[^a-z0-9]+/g, '_').replace(/^_|_$/g, '').slice(0, 48) || 'lesson'}.lesson`;
