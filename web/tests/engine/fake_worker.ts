// SPDX-License-Identifier: Apache-2.0
// A worker without an engine: the test decides what it says and when.
import type { FromWorker, ToWorker, WorkerLike } from '../../src/engine/messages';

export class FakeWorker implements WorkerLike {
  onmessage: ((event: { data: FromWorker }) => void) | null = null;
  onerror: ((event: { message?: string }) => void) | null = null;
  readonly asked: { readonly id: number; readonly request: string }[] = [];
  ended = false;

  constructor(private readonly startsBy: 'itself' | 'trap' | 'hand' = 'itself') {}

  postMessage(message: ToWorker): void {
    if (message.kind === 'ask') this.asked.push(message);
    else if (this.startsBy === 'itself') this.say({ kind: 'ready' });
    else if (this.startsBy === 'trap') this.say({ kind: 'trap', id: 0, message: 'no memory' });
  }

  terminate(): void {
    this.ended = true;
  }

  say(data: FromWorker): void {
    this.onmessage?.({ data });
  }

  /** Answers the newest question. */
  answer(text: string, memory = 1_000_000): void {
    this.say({ kind: 'answer', id: this.asked.at(-1)!.id, text, memory });
  }
}

/** Makes workers and remembers them. */
export function workshop(startsBy: 'itself' | 'trap' | 'hand' = 'itself'): { made: FakeWorker[]; spawn: () => FakeWorker } {
  const made: FakeWorker[] = [];
  return {
    made,
    spawn: () => {
      const worker = new FakeWorker(startsBy);
      made.push(worker);
      return worker;
    },
  };
}

// The smallest module there is; nobody runs it.
export const emptyModule = async (): Promise<WebAssembly.Module> => WebAssembly.compile(new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0]));
