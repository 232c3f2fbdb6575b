// SPDX-License-Identifier: Apache-2.0
// The engine of this page: the module that travels with it, in workers of its own.
import { makeEngine, type Engine } from './client';
import { packedEngine } from './generated/packed_engine';
import type { WorkerLike } from './messages';
import { unpack } from './unpack';
import EngineWorker from './worker?worker&inline';

export function startEngine(): Engine {
  return makeEngine({
    spawn: () => new EngineWorker() as unknown as WorkerLike,
    module: async () => WebAssembly.compile(await unpack(packedEngine)),
  });
}
