// SPDX-License-Identifier: Apache-2.0
// What the engine says of a lesson that is being written: docs/formats/lesson_review.md.

export type Verdict = 'proved' | 'refuted' | 'open';

/** `key`: whatever the claim depends on; the same key has the same verdict. */
export interface ReviewedClaim { readonly number: number; readonly key: string; readonly line: number; readonly claim: string; readonly footing?: string; readonly verdict: Verdict | 'unasked'; readonly text?: string }

/** What was answered to a claim. */
export interface Judged { readonly verdict: Verdict; readonly text: string }
export interface TallyRows { readonly surplus: number; readonly right: readonly number[]; readonly left: readonly number[]; readonly tally: readonly number[] }
export interface ReviewedExercise { readonly question: string; readonly answer: string; readonly board?: string; readonly pans?: string }

export interface ReviewedScene {
  readonly heading: string;
  readonly line: number;
  readonly seconds: number;
  /** The teacher wrote it; otherwise it comes from the words. */
  readonly is_time_given: boolean;
  readonly words: number;
  readonly paragraphs: readonly { readonly text: string; readonly term?: string }[];
  /** Pictures as SVG, drawn by the rules of the review. */
  readonly board?: string;
  readonly pans?: string;
  readonly solution?: string;
  readonly tally?: TallyRows;
  readonly steps: readonly string[];
  readonly exercises: readonly ReviewedExercise[];
  readonly claims: readonly ReviewedClaim[];
  readonly note?: string;
}

export interface Review {
  readonly title: string;
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  readonly minutes?: number;
  readonly seconds: number;
  readonly words_a_minute: number;
  readonly rules: string;
  readonly scenes: readonly ReviewedScene[];
  readonly stop?: { readonly verdict: 'unfit' | 'bug' | Verdict; readonly message: string; readonly hint?: string; readonly scene: string; readonly line: number; readonly column: number };
}

/** All claims, in their order. */
export const claimsOf = (review: Review | undefined): readonly ReviewedClaim[] => review?.scenes.flatMap((scene) => scene.claims) ?? [];

export const speakingSeconds = (words: number, wordsAMinute: number): number => Math.ceil(words * 60 / wordsAMinute);
