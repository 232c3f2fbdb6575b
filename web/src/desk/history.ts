// SPDX-License-Identifier: Apache-2.0
// Undo and redo without a limit: the states themselves, which share what did not change.
import type { DeskState } from './state';

export interface History {
  readonly past: readonly DeskState[];
  readonly now: DeskState;
  readonly future: readonly DeskState[];
  /** Changes of the same kind in a row (typing) are one step back. */
  readonly kind: string;
}

export const begin = (now: DeskState): History => ({ past: [], now, future: [], kind: '' });

/** `kind` is empty for changes that are a step by themselves. */
export function change(history: History, next: DeskState, kind = ''): History {
  if (next === history.now) return history;
  if (kind && kind === history.kind) return { ...history, now: next, future: [] };
  return { past: [...history.past, history.now], now: next, future: [], kind };
}

export function undo(history: History): History {
  const before = history.past.at(-1);
  if (!before) return history;
  return { past: history.past.slice(0, -1), now: before, future: [history.now, ...history.future], kind: '' };
}

export function redo(history: History): History {
  const [after, ...future] = history.future;
  if (!after) return history;
  return { past: [...history.past, history.now], now: after, future, kind: '' };
}
