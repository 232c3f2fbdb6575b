// SPDX-License-Identifier: Apache-2.0
// The longer questions: balances, claims, what fires, hints. Each remembers for which position it was answered.
import type { AlternativesAnswer, BalanceAnswer, ClaimAnswer, ClaimsAnswer, Failed, FindAnswer, NeededAnswer, PathAnswer, StepAnswer, SurveyAnswer } from './answers';
import { failed } from './answers';
import type { Desk } from './desk.svelte';
import * as operations from './operations';
import { positionText, readGrid } from './texts';
import type { DeskState } from './state';

const wordsOf = ({ error }: Failed): string => [error.message, error.hint].filter(Boolean).join('; ');

/** One question that can be asked again: the newest answer counts, older ones are called off. */
class Question<T> {
  answer: T | undefined = $state.raw(undefined);
  fault = $state('');
  busy = $state(false);
  /** The position the answer belongs to. */
  position = $state('');
  private abort: AbortController | undefined;

  constructor(private readonly desk: Desk) {}

  async put(command: string, request: Record<string, unknown>, onPart?: (part: unknown) => void): Promise<T | undefined> {
    this.stop();
    const abort = this.abort = new AbortController();
    const position = this.desk.position;
    this.busy = true;
    this.fault = '';
    const answer = await this.desk.ask<T>(command, request, { signal: abort.signal, onPart });
    if (abort.signal.aborted) return undefined;
    this.busy = false;
    this.position = position;
    if (failed(answer)) {
      this.fault = wordsOf(answer);
      this.answer = undefined;
      return undefined;
    }
    this.answer = answer as T;
    return this.answer;
  }

  stop(): void {
    this.abort?.abort();
    this.abort = undefined;
    this.busy = false;
  }

  clear(): void {
    this.stop();
    this.answer = undefined;
    this.fault = '';
  }
}

/** The finder: ranked balances, shown as they come in. */
export class Finder {
  readonly question: Question<FindAnswer>;
  /** Look where the basics have nothing more to say. */
  afterBasics = $state(true);
  slack = $state(1);
  balances: readonly BalanceAnswer[] = $state.raw([]);
  /** The desk as the balances found suppose it. */
  ground: DeskState | undefined = $state.raw(undefined);
  wanted = $state(true);
  private held = false;
  private waiting: readonly BalanceAnswer[] | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly desk: Desk) {
    this.question = new Question(desk);
    desk.onPosition(() => this.later());
  }

  /** Looks when the board has been left alone for a moment. */
  later(): void {
    clearTimeout(this.timer);
    this.question.clear();
    this.balances = [];
    this.waiting = undefined;
    this.held = false;
    this.ground = undefined;
    if (this.wanted) this.timer = setTimeout(() => void this.look(), 350);
  }

  async look(): Promise<void> {
    clearTimeout(this.timer);
    const desk = this.desk;
    if (desk.check?.solutions === 'none' || desk.position === '' || !desk.doc.givens.some(Boolean)) return;
    this.balances = [];
    const answer = await this.question.put('weigh', { puzzle: desk.position, after_basics: this.afterBasics, max_slack: this.slack, limit: 24 }, (part) => this.takePart(part));
    if (!answer) return;
    this.takePart(answer);
    desk.say(answer.balances.length === 0 ? 'No balance says anything here' : `${answer.balances.length} balances found`);
  }

  /** While the list is held, better answers wait. */
  hold(held: boolean): void {
    this.held = held;
    if (held || !this.waiting) return;
    this.balances = this.waiting;
    this.waiting = undefined;
  }

  private takePart(part: unknown): void {
    const { balances, position } = part as FindAnswer;
    if (Array.isArray(balances)) {
      if (this.held) this.waiting = balances;
      else this.balances = balances;
    }
    if (position && !this.ground) {
      const grid = readGrid(position, this.desk.shape);
      if (grid) this.ground = operations.takePosition(this.desk.doc, grid.digits, grid.masks);
    }
  }

  /** The desk with this balance in its pans. */
  private with(balance: BalanceAnswer): DeskState {
    const base = this.afterBasics && this.ground ? this.ground : this.desk.doc;
    return operations.loadPans({ ...this.desk.doc, placed: base.placed, struck: base.struck, own: base.own, setting: base.setting }, balance.left, balance.right);
  }

  preview(balance: BalanceAnswer): void {
    this.desk.preview = { frame: this.with(balance), overlay: { falls: balance.eliminations }, words: balance.text };
  }

  load(balance: BalanceAnswer): void {
    const before = this.desk.position;
    this.desk.apply(this.with(balance));
    const done = this.desk.position === before ? '' : 'The basics are done. ';
    this.desk.say(`${done}Loaded: ${balance.left.join(' ')} against ${balance.right.join(' ')}. ${balance.text}`);
  }
}

/** The trail of claims, always answered as a whole, so that the first flaw can be marked. */
export class Trail {
  readonly question: Question<ClaimsAnswer>;
  /** By id of the line. */
  verdicts: ReadonlyMap<number, ClaimAnswer> = $state.raw(new Map());
  /** Id of the first line that does not follow; 0 for none. */
  first = $state(0);
  /** Faults of single lines, by id. */
  faults: ReadonlyMap<number, string> = $state.raw(new Map());
  readonly stale: boolean;

  constructor(private readonly desk: Desk) {
    this.question = new Question(desk);
    this.stale = $derived(this.verdicts.size > 0 && this.question.position !== desk.position);
  }

  private script(): { request: Record<string, unknown>; ids: number[] } {
    const { doc, position } = this.desk;
    const left = operations.panText(doc, 1), right = operations.panText(doc, -1);
    const lines: string[] = [];
    const ids: number[] = [];
    if (left && right) lines.push(`balance x = ${left.replace(/ /g, '')} : ${right.replace(/ /g, '')}`);
    for (const line of doc.claims) {
      if (!line.text.trim()) continue;
      lines.push(line.text.trim());
      ids.push(line.id);
    }
    return { request: { script: JSON.stringify(lines), puzzle: position, ...(doc.footing.trim() ? { footing: doc.footing.trim() } : {}) }, ids };
  }

  /** Asks for all verdicts. A line that cannot be read is named, and the lines before it are answered. */
  async judge(): Promise<void> {
    const { request, ids } = this.script();
    this.faults = new Map();
    this.desk.counter = undefined;
    if (ids.length === 0) { this.verdicts = new Map(); this.first = 0; return; }
    const answer = await this.question.put('claims', request);
    if (!answer) return this.blame(ids);
    this.verdicts = new Map(answer.claims.map((claim) => [ids[claim.number - 1] ?? 0, claim]));
    this.first = answer.first_not_implied ? ids[answer.first_not_implied - 1] ?? 0 : 0;
    const last = answer.claims.at(-1);
    if (last) this.desk.say(`${last.claim}: ${last.text}`);
  }

  private blame(ids: readonly number[]): void {
    if (!this.question.fault) return;
    this.verdicts = new Map();
    this.first = 0;
    this.faults = new Map([[ids.at(-1) ?? 0, this.question.fault]]);
    this.desk.say(this.question.fault);
  }
}

/** What fires, whether it is needed, what else gives the same, and the whole path. */
export class Catalogue {
  readonly survey: Question<SurveyAnswer>;
  readonly needed: Question<NeededAnswer>;
  readonly alternatives: Question<AlternativesAnswer>;
  readonly path: Question<PathAnswer>;

  constructor(private readonly desk: Desk) {
    this.survey = new Question(desk);
    this.needed = new Question(desk);
    this.alternatives = new Question(desk);
    this.path = new Question(desk);
    desk.onPosition(() => { this.survey.clear(); this.needed.clear(); this.alternatives.clear(); this.path.clear(); });
  }

  lookAround(techniques: readonly string[] = []): Promise<SurveyAnswer | undefined> {
    return this.survey.put('survey', { puzzle: this.desk.position, ...(techniques.length ? { technique: techniques } : {}), limit: 4 });
  }

  isNeeded(techniques: readonly string[]): Promise<NeededAnswer | undefined> {
    return this.needed.put('needed', { puzzle: this.desk.position, technique: techniques });
  }

  otherWays(candidate: string): Promise<AlternativesAnswer | undefined> {
    return this.alternatives.put('alternatives', { puzzle: this.desk.position, eliminate: candidate, limit: 12 });
  }

  findPath(): Promise<PathAnswer | undefined> {
    return this.path.put('path', { puzzle: this.desk.position });
  }

  preview(step: StepAnswer): void {
    const { balance } = step;
    const frame = balance ? operations.loadPans(this.desk.doc, balance.left, balance.right) : { ...this.desk.doc, pans: {} };
    this.desk.preview = { frame, overlay: { falls: step.eliminations, placed: step.placements }, words: step.text };
  }

  carryOut(step: StepAnswer): void {
    let next = operations.conclude(this.desk.doc, step.placements, step.eliminations);
    if (step.balance) next = operations.loadPans(next, step.balance.left, step.balance.right);
    this.desk.apply(next);
    this.desk.say(step.text);
  }

  /** Carries out the steps of the path up to and with this one. */
  follow(upTo: number): void {
    const steps = this.path.answer?.steps.slice(0, upTo + 1) ?? [];
    const next = steps.reduce((state, step) => operations.conclude(state, step.placements, step.eliminations), this.desk.doc);
    if (positionText(next) !== this.desk.position) this.desk.apply(next);
    this.desk.say(`${steps.length} steps carried out`);
  }
}

/** The next step, given away in three strengths. */
export class Hint {
  readonly question: Question<PathAnswer>;
  strength = $state(0);
  readonly step: StepAnswer | undefined;

  constructor(private readonly desk: Desk) {
    this.question = new Question(desk);
    this.step = $derived(this.question.answer?.steps[0]);
    desk.onPosition(() => { this.question.clear(); this.strength = 0; });
  }

  async give(strength: number): Promise<void> {
    if (!this.question.answer && !await this.question.put('path', { puzzle: this.desk.position })) return;
    this.strength = strength;
  }
}
