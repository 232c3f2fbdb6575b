// SPDX-License-Identifier: Apache-2.0
// Undo and redo without a limit: the states themselves, in chains that share everything with the history before.
import type { DeskState } from './state';

/** States one after the other, the nearest first. */
export interface Chain<T = DeskState> {
  readonly state: T;
  readonly rest: Chain<T> | undefined;
  readonly length: number;
}

export interface History<T = DeskState> {
  readonly past: Chain<T> | undefined;
  readonly now: T;
  readonly future: Chain<T> | undefined;
  /** Changes of the same kind in a row (typing) are one step back. */
  readonly kind: string;
}

export const link = <T>(state: T, rest: Chain<T> | undefined): Chain<T> => ({ state, rest, length: lengthOf(rest) + 1 });
export const lengthOf = (chain: Chain<unknown> | undefined): number => chain?.length ?? 0;

export const begin = <T>(now: T): History<T> => ({ past: undefined, now, future: undefined, kind: '' });

/** `kind` is empty for changes that are a step by themselves. */
export function change<T>(history: History<T>, next: T, kind = ''): History<T> {
  if (next === history.now) return history;
  if (kind && kind === history.kind) return { ...history, now: next, future: undefined };
  return { past: link(history.now, history.past), now: next, future: undefined, kind };
}

export function undo<T>(history: History<T>): History<T> {
  const { past } = history;
  return past ? { past: past.rest, now: past.state, future: link(history.now, history.future), kind: '' } : history;
}

export function redo<T>(history: History<T>): History<T> {
  const { future } = history;
  return future ? { past: link(history.now, history.past), now: future.state, future: future.rest, kind: '' } : history;
}

/** The history with older states put before it. */
export function prepend(history: History, older: Chain | undefined): History {
  const own: DeskState[] = [];
  for (let chain = history.past; chain; chain = chain.rest) own.push(chain.state);
  return { ...history, past: own.reduceRight((rest, state) => link(state, rest), older) };
}
