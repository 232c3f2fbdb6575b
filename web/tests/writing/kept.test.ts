// SPDX-License-Identifier: Apache-2.0
// Lessons in the browser's store, and the clock of the rehearsal.
import { describe, expect, it } from 'vitest';
import { KeptLessons, type KeptLesson } from '../../src/writing/kept';
import { Stopwatch } from '../../src/writing/stopwatch';

function store(room = Infinity): Storage {
  const map = new Map<string, string>();
  return {
    get length() { return map.size; },
    key: (i: number) => [...map.keys()][i] ?? null,
    getItem: (key: string) => map.get(key) ?? null,
    setItem: (key: string, value: string) => { if (value.length > room) throw new Error('full'); map.set(key, value); },
    removeItem: (key: string) => { map.delete(key); },
    clear: () => map.clear(),
  };
}

const lesson = (id: string, revision: number, text = 'x'): KeptLesson => ({ id, name: `${id}.lesson`, text, revision, at: revision, isSaved: true });

describe('kept lessons', () => {
  it('are written only over the revision that is known', () => {
    const kept = new KeptLessons(store());
    expect(kept.write(lesson('a', 1, 'one'))).toBe('kept');
    expect(kept.write(lesson('a', 2, 'two'))).toBe('kept');
    expect(kept.write(lesson('a', 2, 'from another window'))).toBe('changed');
    expect(kept.read('a')?.text).toBe('two');
  });

  it('say when there is no room, and forget saved ones only', () => {
    expect(new KeptLessons(store(10)).write(lesson('a', 1))).toBe('full');
    expect(new KeptLessons(undefined).write(lesson('a', 1))).toBe('full');
    const kept = new KeptLessons(store());
    kept.write({ ...lesson('old', 1), isSaved: false });
    for (let i = 2; i < 40; i += 1) kept.write({ ...lesson(`n${i}`, 1), at: i });
    const ids = kept.list().map(({ id }) => id);
    expect(ids).toContain('old');
    expect(ids).toContain('n39');
    expect(ids.length).toBeLessThan(30);
  });

  it('are not read from a damaged store', () => {
    const damaged = store();
    damaged.setItem('counterpoise.lesson.a', '{"text":');
    damaged.setItem('counterpoise.lesson.b', '{"text":7}');
    expect(new KeptLessons(damaged).list()).toEqual([]);
  });
});

describe('the clock of a rehearsal', () => {
  it('books time on the scene that was on, and stands when it is stopped', () => {
    let now = 0;
    const watch = new Stopwatch(3, () => now);
    now = 5000; watch.book(0);
    expect(watch.total()).toBe(0);
    watch.start();
    now = 12_400; watch.book(0);
    now = 13_000; watch.book(1);
    now = 20_000; watch.pause(2);
    now = 90_000; watch.book(2);
    expect([watch.seconds(0), watch.seconds(1), watch.seconds(2)]).toEqual([7.4, 0.6, 7]);
    expect(watch.times()).toEqual([7, undefined, 7]);
    watch.start();
    now = 91_000; watch.book(2);
    expect(watch.total()).toBeCloseTo(16);
  });
});
