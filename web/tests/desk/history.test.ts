// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';
import { begin, change, lengthOf, prepend, redo, undo } from '../../src/desk/history';
import { shapeNamed } from '../../src/desk/shape';
import { emptyDesk } from '../../src/desk/state';
import { Keeper, readKept, writeKept } from '../../src/desk/store';

const blank = emptyDesk(shapeNamed('9x9')!);
const named = (title: string) => ({ ...blank, title });

describe('the way back', () => {
  it('has no limit and leads back to the start', () => {
    let history = begin(blank);
    for (let i = 0; i < 5000; i += 1) history = change(history, named(String(i)));
    for (let i = 0; i < 5000; i += 1) history = undo(history);
    expect(history.now).toBe(blank);
    expect(undo(history)).toBe(history);
    for (let i = 0; i < 5000; i += 1) history = redo(history);
    expect(history.now.title).toBe('4999');
    expect(redo(history)).toBe(history);
  });

  it('takes typing as one step, and forgets what was undone once something else is done', () => {
    let history = begin(blank);
    for (const title of ['a', 'ab', 'abc']) history = change(history, named(title), 'title');
    expect(lengthOf(history.past)).toBe(1);
    history = change(undo(history), named('x'));
    expect(history.future).toBeUndefined();
    expect(change(history, history.now)).toBe(history);
  });

  it('goes on behind what was kept of an earlier day', () => {
    const older = change(change(begin(named('1')), named('2')), named('3'));
    let history = prepend(change(begin(named('3')), named('4')), older.past);
    const seen: string[] = [];
    for (; history.past; history = undo(history)) seen.push(history.now.title);
    expect([...seen, history.now.title]).toEqual(['4', '3', '2', '1']);
  });
});

describe('the store', () => {
  const memory = (): Pick<Storage, 'getItem' | 'setItem'> => {
    const map = new Map<string, string>();
    return { getItem: (key) => map.get(key) ?? null, setItem: (key, value) => { map.set(key, value); } };
  };

  it('gives back what it was given', () => {
    const storage = memory();
    expect(writeKept(storage, change(begin(blank), named('kept')))).toBe(true);
    expect(readKept(storage)).toEqual({ depth: 1, state: named('kept') });
  });

  it('says so when it is full, closed or not there, and never throws', () => {
    const full = { getItem: () => { throw new Error('closed'); }, setItem: () => { throw new Error('full'); } };
    expect(writeKept(full, begin(blank))).toBe(false);
    expect(readKept(full)).toBeUndefined();
    expect(writeKept(undefined, begin(blank))).toBe(false);
    const keeper = new Keeper(full as unknown as Storage);
    keeper.keep(begin(blank));
    expect(keeper.full).toBe(true);
    expect(keeper.recall()).toBeUndefined();
  });

  it('does not trust what somebody else wrote there', () => {
    for (const text of ['', '{', 'null', '[]', '{"depth":1}', '{"depth":1,"state":{"shape":"9x9"}}', '{"depth":"x","state":null}']) {
      expect(readKept({ getItem: () => text })).toBeUndefined();
    }
  });
});
