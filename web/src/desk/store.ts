// SPDX-License-Identifier: Apache-2.0
// Keeps the desk in the browser. The state is written at once and whole after every change (local storage is
// synchronous, so that even a killed page loses nothing); the way back is kept step by step in IndexedDB, which has
// room for it. A store that is missing, full or forbidden costs the memory, never the desk.
import { begin, lengthOf, link, type Chain, type History } from './history';
import { readState, type DeskState } from './state';

const key = 'counterpoise.desk.1';

interface Kept { readonly depth: number; readonly state: DeskState }

export function readKept(storage: Pick<Storage, 'getItem'> | undefined): Kept | undefined {
  try {
    const value: unknown = JSON.parse(storage?.getItem(key) ?? 'null');
    if (typeof value !== 'object' || value === null || !('state' in value) || !('depth' in value)) return undefined;
    const state = readState(value.state);
    return state && Number.isInteger(value.depth) ? { depth: value.depth as number, state } : undefined;
  } catch {
    return undefined;
  }
}

/** False when the browser would not take it. */
export function writeKept(storage: Pick<Storage, 'setItem'> | undefined, history: History): boolean {
  try {
    if (!storage) return false;
    storage.setItem(key, JSON.stringify({ depth: lengthOf(history.past), state: history.now }));
    return true;
  } catch {
    return false;
  }
}

/** The browser's store, or none: reading `localStorage` itself may throw. */
export function browserStorage(): Storage | undefined {
  try {
    return globalThis.localStorage;
  } catch {
    return undefined;
  }
}

function openLine(): Promise<IDBDatabase | undefined> {
  return new Promise((resolve) => {
    try {
      const request = indexedDB.open('counterpoise', 1);
      request.onupgradeneeded = () => { request.result.createObjectStore('past'); };
      request.onsuccess = () => resolve(request.result);
      request.onerror = request.onblocked = () => resolve(undefined);
    } catch {
      resolve(undefined);
    }
  });
}

/** The way back, on disk: entry n is what undo leads to from depth n + 1. */
export class Keeper {
  private database: Promise<IDBDatabase | undefined> | undefined;
  private written: Chain | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  full = false;
  /** Another window keeps the desk: nothing is written from here. */
  isElsewhere = false;
  private held: History | undefined;

  constructor(private readonly storage: Storage | undefined = browserStorage()) {}

  /** Called with every new history. */
  keep(history: History): void {
    this.held = history;
    if (this.isElsewhere) return;
    this.full = !writeKept(this.storage, history);
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.writePast(history.past), 300);
  }

  /** From now on this window keeps the desk, or another one. What has changed meanwhile is written at once. */
  become(isElsewhere: boolean): void {
    this.isElsewhere = isElsewhere;
    if (isElsewhere) clearTimeout(this.timer);
    else if (this.held) this.keep(this.held);
  }

  private async writePast(past: Chain | undefined): Promise<void> {
    const database = await (this.database ??= openLine());
    if (!database) return;
    // What both chains end in is on disk already.
    const fresh: Chain[] = [];
    let old = this.written, same = past;
    while (same !== old) {
      if (lengthOf(old) > lengthOf(same)) { old = old!.rest; continue; }
      fresh.push(same!);
      if (lengthOf(old) === lengthOf(same)) old = old!.rest;
      same = same!.rest;
    }
    try {
      const store = database.transaction('past', 'readwrite').objectStore('past');
      store.delete(IDBKeyRange.lowerBound(lengthOf(same)));
      for (const { state, length } of fresh) store.put(state, length - 1);
      this.written = past;
    } catch {
      this.database = undefined;
    }
  }

  /** The state that was kept, at once; undefined when there is none. */
  recall(): History | undefined {
    const kept = readKept(this.storage);
    return kept ? begin(kept.state) : undefined;
  }

  /** What lies before the state that was kept. */
  async recallPast(): Promise<Chain | undefined> {
    const depth = readKept(this.storage)?.depth ?? 0;
    const database = await (this.database ??= openLine());
    if (!database || depth === 0) return undefined;
    return new Promise((resolve) => {
      try {
        const request = database.transaction('past').objectStore('past').getAll(IDBKeyRange.bound(0, depth, false, true));
        request.onerror = () => resolve(undefined);
        request.onsuccess = () => {
          const states = (request.result as unknown[]).map(readState);
          const fine = states.every(Boolean) ? (states as DeskState[]) : [];
          this.written = fine.reduce<Chain | undefined>((rest, state) => link(state, rest), undefined);
          resolve(this.written);
        };
      } catch {
        resolve(undefined);
      }
    });
  }
}
