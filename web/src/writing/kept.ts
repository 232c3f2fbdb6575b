// SPDX-License-Identifier: Apache-2.0
// Lessons kept in the browser: each under a name of its own, with a revision that grows with every change. A window writes
// only over the revision it knows; Tenure sees to it that two windows do not even try.

/** What is known of the file that a lesson belongs to in the folder of the program. */
export interface Stored { readonly name: string; readonly revision: string }

export interface KeptLesson {
  readonly id: string;
  /** Of the file, with its ending. */
  readonly name: string;
  readonly text: string;
  readonly revision: number;
  /** When, in milliseconds since 1970. */
  readonly at: number;
  /** The text was saved or opened just so. */
  readonly isSaved: boolean;
  readonly stored?: Stored | undefined;
}

export type Kept = 'kept' | 'full' | 'changed';

const prefix = 'counterpoise.lesson.';
const most = 24;  // saved ones beyond these are forgotten, the oldest first

type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

function readOne(store: Store, id: string): KeptLesson | undefined {
  try {
    const value: unknown = JSON.parse(store.getItem(prefix + id) ?? 'null');
    if (typeof value !== 'object' || value === null) return undefined;
    const { name, text, revision, at, isSaved, stored } = value as Record<string, unknown>;
    if (typeof name !== 'string' || typeof text !== 'string' || !Number.isInteger(revision) || typeof at !== 'number') return undefined;
    return { id, name, text, revision: revision as number, at, isSaved: isSaved === true, stored: stored as Stored | undefined };
  } catch {
    return undefined;
  }
}

export class KeptLessons {
  constructor(private readonly store: Store | undefined) {}

  /** The newest first. */
  list(): KeptLesson[] {
    const found: KeptLesson[] = [];
    try {
      for (let i = 0; i < (this.store?.length ?? 0); i += 1) {
        const key = this.store!.key(i) ?? '';
        const lesson = key.startsWith(prefix) ? readOne(this.store!, key.slice(prefix.length)) : undefined;
        if (lesson) found.push(lesson);
      }
    } catch { /* a store that fails keeps nothing */ }
    return found.sort((a, b) => b.at - a.at);
  }

  read(id: string): KeptLesson | undefined { return this.store ? readOne(this.store, id) : undefined; }

  /** `lesson.revision` is the new one. "changed": what is kept is not the revision before it, and stays. */
  write(lesson: KeptLesson): Kept {
    if (!this.store) return 'full';
    const before = this.read(lesson.id);
    if (before && before.revision !== lesson.revision - 1) return 'changed';
    try {
      this.store.setItem(prefix + lesson.id, JSON.stringify(lesson));
    } catch {
      return 'full';
    }
    if (!before) this.tidy(lesson.id);
    return 'kept';
  }

  drop(id: string): void {
    try { this.store?.removeItem(prefix + id); } catch { /* it stays */ }
  }

  private tidy(newest: string): void {
    for (const lesson of this.list().slice(most)) if (lesson.isSaved && lesson.id !== newest) this.drop(lesson.id);
  }
}
