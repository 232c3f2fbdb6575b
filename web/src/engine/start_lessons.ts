// SPDX-License-Identifier: Apache-2.0
// The engine of the page for lessons: the same client, a module with the commands for lessons.
import { makeEngine, type Engine } from './client';
import { packedLessons } from './generated/packed_lessons';
import type { WorkerLike } from './messages';
import { unpack } from './unpack';
import EngineWorker from './worker?worker&inline';

export function startLessonEngine(): Engine {
  return makeEngine({
    spawn: () => new EngineWorker() as unknown as WorkerLike,
    module: async () => WebAssembly.compile(await unpack(packedLessons)),
  });
}
