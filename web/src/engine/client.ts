// SPDX-License-Identifier: Apache-2.0
// How a screen asks the engine. Everything is answered on this machine, inside this page. Questions about the pans never
// wait for a long search: they have a worker of their own.
import { fault, isFailed, type Failed } from './faults';
import { Lane } from './lane';
import type { WorkerLike } from './messages';
import { rounds } from './rounds';

export type Request = Readonly<Record<string, unknown>>;

export interface Asking {
  /** Calls the question off. Work that has begun is ended; the answer is the error `cancelled`. */
  readonly signal?: AbortSignal | undefined;
  /** Gets better and better answers before the last one. Only searching for balances has any: `weigh` without houses. */
  readonly onPart?: ((part: unknown) => void) | undefined;
  /** How long it may take once begun, in milliseconds, when not the usual time. */
  readonly limit?: number | undefined;
}

/** Asks; the answer is what docs/formats/<command>.md says, or an error of the same form. Never rejects. */
export type Ask = <T>(command: string, request: Request, asking?: Asking) => Promise<T | Failed>;

export interface Engine {
  readonly ask: Ask;
  /** Compiles and runs the engine once, so that the first question is answered as fast as the second. */
  warmUp(): Promise<void>;
  /** Ends all workers. */
  stop(): void;
}

export interface EngineSettings {
  readonly spawn: () => WorkerLike;
  readonly module: () => Promise<WebAssembly.Module>;
}

/** What a question waits for. */
export type LaneName = 'pans' | 'look' | 'long';

// Generous: nothing usual comes near them, and every wait can be called off.
const limits: Record<LaneName, number> = { pans: 10_000, look: 20_000, long: 180_000 };

const namesHouses = (request: Request): boolean => 'left' in request || 'right' in request;

export function laneOf(command: string, request: Request): LaneName {
  if (command === 'weigh' && namesHouses(request)) {
    // Levels 1 to 4 take a few milliseconds at most; the complete search of level 5 may take a second.
    const level = request['level'];
    return request['why'] !== true && typeof level === 'number' && level <= 4 ? 'pans' : 'look';
  }
  return command === 'check' ? 'look' : 'long';
}

// Any puzzle does; this one lets every part of weighing run.
const sample = '65.....4324.....86..3..........9......2.63..5...8.2........8...72.....9198..4..57';
const sampleRequests: readonly (readonly [LaneName, string, Request])[] = [
  ['look', 'check', { puzzle: sample }],
  ['pans', 'weigh', { puzzle: sample, left: 'c1,c2,c8,c9', right: 'r3,r7,b4,b6', level: 4 }],
  ['pans', 'weigh', { puzzle: sample, left: 'r1', right: '', level: 4 }],
  ['pans', 'weigh', { puzzle: sample, left: 'r1,r2', right: 'c1,c2', level: 4 }],
  ['look', 'weigh', { puzzle: sample, left: 'r1,r2', right: 'c1', why: true }],
];

export function makeEngine({ spawn, module }: EngineSettings): Engine {
  let compiled: Promise<WebAssembly.Module> | undefined;
  const lanes = new Map<LaneName, Lane>();
  const lane = (name: LaneName): Lane => {
    let found = lanes.get(name);
    if (!found) {
      compiled ??= module();
      found = new Lane({ spawn, module: compiled, limit: limits[name] });
      lanes.set(name, found);
    }
    return found;
  };

  async function askOnce(command: string, request: Request, { signal, limit }: Asking): Promise<unknown> {
    const text = await lane(laneOf(command, request)).put(JSON.stringify({ command, ...request }), { signal, limit });
    if (typeof text !== 'string') return text;
    try {
      return JSON.parse(text) as unknown;
    } catch {
      return fault('crashed', 'the engine gave an answer that cannot be read');
    }
  }

  async function findInRounds(request: Request, asking: Asking): Promise<unknown> {
    let answer: unknown;
    for (const bounds of rounds) {
      answer = await askOnce('weigh', { ...request, ...bounds }, asking);
      if (isFailed(answer)) return answer;
      asking.onPart?.(answer);
    }
    return answer;
  }

  return {
    ask: async <T>(command: string, request: Request, asking: Asking = {}) => {
      const inRounds = command === 'weigh' && asking.onPart && !namesHouses(request) && !('most_houses' in request);
      return await (inRounds ? findInRounds(request, asking) : askOnce(command, request, asking)) as T | Failed;
    },
    warmUp: async () => {
      lane('long').start();
      await Promise.all(sampleRequests.map(([name, command, request]) => lane(name).put(JSON.stringify({ command, ...request }))));
    },
    stop: () => {
      for (const each of lanes.values()) each.stop();
      lanes.clear();
    },
  };
}
