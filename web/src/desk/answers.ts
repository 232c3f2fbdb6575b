// SPDX-License-Identifier: Apache-2.0
// What the engine answers, as far as the screens read it. The whole forms are docs/formats/*.md.
import type { CellDigit } from './state';

export type { CellDigit };

export interface CheckAnswer { readonly shape: string; readonly givens: number; readonly solutions: 'none' | 'one' | 'many'; readonly minimal: boolean; readonly text: string }

export interface BalanceAnswer {
  readonly left: readonly string[];
  readonly right: readonly string[];
  readonly surplus: number;
  readonly slack: number;
  readonly free_slack: number;
  readonly tally: readonly number[];
  readonly open_left: readonly string[];
  readonly open_right: readonly string[];
  readonly level: number;
  readonly eliminations: readonly CellDigit[];
  readonly text: string;
  readonly load: Readonly<Record<'houses' | 'cells' | 'shares' | 'lemmas' | 'cases' | 'search' | 'total', number>>;
}

/** One digit in the open cells of one remainder. */
export interface PanAccount { readonly known: number; readonly least: number; readonly most: number; readonly cells: readonly string[] }

export interface WeighAnswer extends BalanceAnswer {
  readonly digits?: readonly { readonly digit: number; readonly tally: number; readonly left: PanAccount; readonly right: PanAccount }[];
  /** When nothing falls: which digits are not settled, and single candidates whose fall would make it speak. */
  readonly missing?: { readonly kind: string; readonly unsure: readonly number[]; readonly changes?: readonly { readonly cell: string; readonly digit: number; readonly text: string; readonly eliminations: readonly CellDigit[] }[] };
  readonly stronger: readonly { readonly level: number; readonly eliminations: readonly CellDigit[]; readonly text: string }[];
  readonly impossible: boolean;
  readonly complete: boolean;
  readonly position?: string;
}

export interface FindAnswer { readonly balances: readonly BalanceAnswer[]; readonly impossible: boolean; readonly distinct: number; readonly position?: string }

export interface StepAnswer {
  readonly technique: string;
  readonly placements: readonly CellDigit[];
  readonly eliminations: readonly CellDigit[];
  readonly text: string;
  readonly balance?: BalanceAnswer;
}

export interface PathAnswer {
  readonly solved: boolean;
  readonly steps: readonly StepAnswer[];
  readonly stuck?: { readonly text: string; readonly candidates?: string };
}

export interface Fires { readonly technique: string; readonly name: string; readonly family: string; readonly count: number; readonly is_cut: boolean; readonly steps: readonly StepAnswer[] }
export interface Near { readonly missing: CellDigit; readonly text: string; readonly placements: readonly CellDigit[]; readonly eliminations: readonly CellDigit[] }
export interface SurveyAnswer {
  readonly open_cells: number;
  readonly techniques: readonly Fires[];
  readonly balances: readonly BalanceAnswer[];
  readonly close?: readonly { readonly technique: string; readonly name: string; readonly can_tell: boolean; readonly near: readonly Near[] }[];
}

export interface NeededAnswer { readonly needed: 'no' | 'yes' | 'open'; readonly text: string; readonly without: { readonly solved: boolean; readonly steps: readonly StepAnswer[] } }
export interface AlternativesAnswer { readonly target: CellDigit; readonly found: number; readonly alternatives: readonly StepAnswer[] }

export interface ClaimAnswer {
  readonly number: number;
  readonly claim: string;
  readonly footing: string;
  readonly verdict: 'proved' | 'refuted' | 'open';
  readonly text: string;
  readonly reason?: { readonly spoken: string; readonly written: readonly string[]; readonly minimal: string };
  readonly counter?: readonly CellDigit[];
  readonly additions?: readonly { readonly text: string }[];
  readonly contradiction?: boolean;
  readonly rests_on_unproved?: readonly number[];
  readonly wrong_marks_text?: string;
}
export interface ClaimsAnswer { readonly claims: readonly ClaimAnswer[]; readonly first_not_implied: number; readonly text: string }

export { isFailed as failed, type Failed } from '../engine/faults';
export type { Ask } from '../engine/client';
