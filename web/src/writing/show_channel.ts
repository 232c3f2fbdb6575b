// SPDX-License-Identifier: Apache-2.0
// What the window of the teacher and the window for the audience tell each other.
import { openLink, type Link } from '../desk/link';
import type { ReviewedScene } from './review';

/** From the teacher: what is to be seen. */
export interface Shown { readonly kind: 'shown'; readonly scene: ReviewedScene; readonly rules: string; readonly language: string; readonly direction: 'ltr' | 'rtl'; readonly answers: boolean }
/** From the audience's window: show me, or go on. */
export interface Asked { readonly kind: 'asked'; readonly move: number }

export const openShow = (hear: (message: Shown | Asked) => void): Link<Shown | Asked> => openLink('counterpoise.show', hear);

/** What a key means while a lesson is shown: by how many scenes it moves. */
export function moveOf(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'altKey' | 'metaKey' | 'target'>): number {
  if (event.ctrlKey || event.altKey || event.metaKey) return 0;
  const moves: Readonly<Record<string, number>> = { ArrowRight: 1, PageDown: 1, ArrowLeft: -1, PageUp: -1, Home: -1000, End: 1000 };
  if (event.key === ' ') return event.target instanceof HTMLElement && event.target.matches('button, summary, input') ? 0 : 1;
  return moves[event.key] ?? 0;
}
