// SPDX-License-Identifier: Apache-2.0
// Runs the engine beside the page. One question at a time; whoever waits can end this worker at any moment.
import { openDoor, type Door } from './door';
import type { FromWorker, ToWorker } from './messages';

let door: Door | undefined;
const say = (message: FromWorker): void => self.postMessage(message);

self.onmessage = async ({ data }: MessageEvent<ToWorker>): Promise<void> => {
  const id = data.kind === 'ask' ? data.id : 0;
  try {
    if (data.kind === 'start') {
      door = await openDoor(data.module);
      say({ kind: 'ready' });
    } else if (door) {
      say({ kind: 'answer', id, text: door.answer(data.request), memory: door.memory() });
    }
  } catch (surprise) {
    say({ kind: 'trap', id, message: String(surprise) });
  }
};
