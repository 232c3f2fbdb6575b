// SPDX-License-Identifier: Apache-2.0
// What the page answers to a pupil's move, claim or wish for a hint. Knows nothing of the page itself.
import type { Ask } from '../engine/client';
import { isFailed, type Failed } from '../engine/faults';
import { byDigit, type SceneFacts } from './marks';
import type { Say } from './words';

export interface Move { readonly cell: string; readonly digit: string; readonly kind: 'out' | 'in' }

export interface Verdict {
  readonly text: string;
  /** The move stands: the board may show it. */
  readonly holds: boolean;
  /** Further words of the engine, in English. */
  readonly more?: string;
}

interface Step {
  readonly technique?: string;
  readonly name?: string;
  readonly text?: string;
  readonly placements?: readonly { readonly cell: string; readonly digit: number }[];
}
interface ClaimAnswer { readonly verdict: 'proved' | 'refuted' | 'open'; readonly text: string }
interface SurveyAnswer { readonly techniques: readonly { readonly technique: string; readonly name: string; readonly steps: readonly Step[] }[] }

const why = ({ error }: Failed): string => error.hint ? `${error.message} (${error.hint})` : error.message;
const plainName = (id: string): string => id.replace(/-/g, ' ');

export class Judge {
  private readonly found = new Set<string>();
  private hints = 0;

  constructor(private readonly ask: Ask, private readonly facts: SceneFacts, private readonly say: Say) {}

  /** Has the pupil found everything that this scene shows? */
  get isDone(): boolean {
    return this.goal.length > 0 && this.found.size === this.goal.length;
  }

  get hasGoal(): boolean {
    return this.goal.length > 0;
  }

  async judge(move: Move): Promise<Verdict> {
    const what = this.say(move.kind === 'out' ? 'leaves' : 'goesIn', { ...move });
    const key = `${move.cell}=${move.digit}`;
    if (this.facts[move.kind].includes(key)) {
      this.found.add(`${move.kind} ${key}`);
      return { holds: true, text: this.say(this.isDone ? 'allFound' : 'rightHere', { what, count: this.found.size, all: this.goal.length }) };
    }
    const sign = move.kind === 'out' ? '!=' : '=';
    const truth = await this.ask<ClaimAnswer>('claim', { puzzle: this.facts.position, claim: `${move.cell} ${sign} ${move.digit}` });
    if (isFailed(truth)) return this.failure(truth);
    if (truth.verdict === 'refuted') return { holds: false, text: this.say('notSo', { what }) };
    return move.kind === 'out' ? this.judgeOut(move, what) : this.judgeIn(move, what);
  }

  async claim(text: string): Promise<Verdict> {
    const answer = await this.ask<ClaimAnswer>('claim', { puzzle: this.facts.position, claim: text });
    if (isFailed(answer)) return { holds: false, text: this.say('failed', { why: why(answer) }) };
    return { holds: answer.verdict === 'proved', text: this.say(answer.verdict), more: answer.text };
  }

  /** Says a little more each time: the digits, the cells, then the step itself. */
  async hint(): Promise<Verdict> {
    this.hints += 1;
    if (this.goal.length > 0) return { holds: false, text: this.sceneHint() };
    const answer = await this.ask<SurveyAnswer>('survey', { puzzle: this.facts.position, limit: 1 });
    if (isFailed(answer)) return this.failure(answer);
    const easiest = answer.techniques[0];
    if (!easiest) return { holds: false, text: this.say('noHint') };
    const text = this.say('aboutTechnique', { name: easiest.name });
    return this.hints > 1 && easiest.steps[0]?.text ? { holds: false, text, more: easiest.steps[0].text } : { holds: false, text };
  }

  private get goal(): readonly string[] {
    return [...this.facts.out, ...this.facts.in];
  }

  private sceneHint(): string {
    if (this.hints === 1) return this.say('aboutDigits', { digits: [...byDigit(this.goal).keys()].sort().join(', ') });
    if (this.hints === 2) return this.say('aboutCells', { cells: [...new Set(this.goal.map((one) => one.split('=')[0]))].join(', ') });
    const told = (key: 'tellOut' | 'tellIn', list: readonly string[]): string[] => [...byDigit(list)].map(([digit, cells]) => this.say(key, { digit, cells: cells.join(', ') }));
    return [...told('tellOut', this.facts.out), ...told('tellIn', this.facts.in)].join(' ');
  }

  private async judgeOut(move: Move, what: string): Promise<Verdict> {
    const answer = await this.ask<{ readonly alternatives: readonly Step[] }>('alternatives', { puzzle: this.facts.position, eliminate: `${move.cell}=${move.digit}`, limit: 1 });
    if (isFailed(answer)) return this.failure(answer);
    return this.shownBy(answer.alternatives[0], what);
  }

  private async judgeIn(move: Move, what: string): Promise<Verdict> {
    const answer = await this.ask<SurveyAnswer>('survey', { puzzle: this.facts.position, techniques: ['single'], limit: 0 });
    if (isFailed(answer)) return this.failure(answer);
    const places = ({ placements = [] }: Step): boolean => placements.some(({ cell, digit }) => cell === move.cell && digit === parseInt(move.digit, 17));
    const shows = answer.techniques.find(({ steps }) => steps.some(places));
    return this.shownBy(shows && { ...shows.steps.find(places), technique: shows.technique, name: shows.name }, what);
  }

  private shownBy(step: Step | undefined, what: string): Verdict {
    if (!step) return { holds: false, text: this.say('notYet', { what }) };
    const technique = step.technique ?? '';
    const text = technique === 'balance' ? this.say('shownByBalance', { what }) : this.say('shown', { what, name: step.name ?? plainName(technique) });
    return step.text === undefined ? { holds: true, text } : { holds: true, text, more: step.text };
  }

  private failure(answer: Failed): Verdict {
    return { holds: false, text: this.say('failed', { why: why(answer) }) };
  }
}
