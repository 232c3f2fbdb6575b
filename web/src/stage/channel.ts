// SPDX-License-Identifier: Apache-2.0
// What the stage and the window with the notes tell each other.

/** From the stage: what is on now. */
export interface Cue { readonly kind: 'cue'; readonly number: number; readonly of: number; readonly heading: string; readonly words: string; readonly note: string; readonly next: string }
/** From the notes: tell me, or go on. */
export interface Call { readonly kind: 'call'; readonly move: number }

export function openChannel(hear: (message: Cue | Call) => void): { tell: (message: Cue | Call) => void; close: () => void } {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => {}, close: () => {} };
  const channel = new BroadcastChannel('counterpoise.stage');
  channel.onmessage = (event: MessageEvent<Cue | Call>) => hear(event.data);
  return { tell: (message) => channel.postMessage(message), close: () => channel.close() };
}
