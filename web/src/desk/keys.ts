// SPDX-License-Identifier: Apache-2.0
// What a key pressed on the board means. Digits go by the key's place, so that Shift works on every keyboard.

export type Meaning =
  | { readonly kind: 'digit'; readonly digit: number; readonly mark: boolean }
  | { readonly kind: 'erase' } | { readonly kind: 'choose' }
  | { readonly kind: 'letter'; readonly letter: string };

type Key = Pick<KeyboardEvent, 'key' | 'code' | 'shiftKey' | 'ctrlKey' | 'altKey' | 'metaKey'>;

/** undefined when the key means nothing here. `side` is the largest digit. */
export function meaningOf(event: Key, side: number): Meaning | undefined {
  if (event.ctrlKey || event.altKey || event.metaKey) return undefined;
  const number = /^(?:Digit|Numpad)([1-9])$/.exec(event.code)?.[1] ?? (/^[1-9]$/.test(event.key) ? event.key : undefined);
  if (number) return { kind: 'digit', digit: Number(number), mark: event.shiftKey };
  if (event.key === 'Delete' || event.key === 'Backspace' || event.key === '0') return { kind: 'erase' };
  if (event.key === ' ') return { kind: 'choose' };
  if (event.key === '?') return { kind: 'letter', letter: '?' };
  if (event.key.length !== 1) return undefined;
  const letter = event.key.toLowerCase();
  // On large boards A to G are digits; no letter with a meaning of its own is among them.
  if (side > 9 && letter >= 'a' && letter <= 'g') return { kind: 'digit', digit: letter.charCodeAt(0) - 87, mark: event.shiftKey };
  return event.shiftKey ? undefined : { kind: 'letter', letter };
}
