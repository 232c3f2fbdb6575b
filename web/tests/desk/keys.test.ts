// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';
import { meaningOf } from '../../src/desk/keys';

const press = (key: string, code = '', more: Partial<Record<'shiftKey' | 'ctrlKey' | 'altKey' | 'metaKey', boolean>> = {}) =>
  ({ key, code, shiftKey: false, ctrlKey: false, altKey: false, metaKey: false, ...more });

describe('keys on the board', () => {
  it('write digits, and marks with Shift, whatever the layout prints', () => {
    expect(meaningOf(press('5', 'Digit5'), 9)).toEqual({ kind: 'digit', digit: 5, mark: false });
    expect(meaningOf(press('%', 'Digit5', { shiftKey: true }), 9)).toEqual({ kind: 'digit', digit: 5, mark: true });
    expect(meaningOf(press('(', 'Digit5'), 9)).toMatchObject({ digit: 5 });
    expect(meaningOf(press('7', 'Numpad7'), 9)).toMatchObject({ digit: 7 });
  });

  it('write letters as digits on large boards only', () => {
    expect(meaningOf(press('g', 'KeyG'), 16)).toEqual({ kind: 'digit', digit: 16, mark: false });
    expect(meaningOf(press('g', 'KeyG'), 9)).toEqual({ kind: 'letter', letter: 'g' });
    for (const letter of 'wotshnmpl') expect(meaningOf(press(letter), 16)).toEqual({ kind: 'letter', letter });
  });

  it('leave the shortcuts of browser and screen reader alone', () => {
    for (const more of [{ ctrlKey: true }, { altKey: true }, { metaKey: true }]) expect(meaningOf(press('5', 'Digit5', more), 9)).toBeUndefined();
    expect(meaningOf(press('Tab', 'Tab'), 9)).toBeUndefined();
    expect(meaningOf(press('F5', 'F5'), 9)).toBeUndefined();
  });
});
