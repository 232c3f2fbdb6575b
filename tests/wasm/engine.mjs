// SPDX-License-Identifier: Apache-2.0
// The engine modules under Node: COUNTERPOISE_WASM names the desk's, the page for lessons has its own beside it.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

export async function openEngine(name = 'counterpoise_engine.wasm') {
  const file = process.env.COUNTERPOISE_WASM && join(dirname(process.env.COUNTERPOISE_WASM), name);
  if (!file || !existsSync(file)) throw new Error(`there is no engine at COUNTERPOISE_WASM=${file}; ./test builds it`);
  const module = await WebAssembly.compile(readFileSync(file));
  const start = async () => {
    const { exports } = await WebAssembly.instantiate(module, {});
    exports._initialize?.();
    return exports;
  };
  let engine = await start();
  return {
    module,
    exports: () => engine,
    restart: async () => { engine = await start(); },
    // Bytes in, text out.
    askBytes: (bytes) => {
      const room = engine.cp_room(bytes.length);
      if (room !== 0) new Uint8Array(engine.memory.buffer, room, bytes.length).set(bytes);
      const at = engine.cp_answer(bytes.length);
      return new TextDecoder('utf-8', { fatal: true }).decode(new Uint8Array(engine.memory.buffer, at, engine.cp_answer_size()));
    },
    ask(request) {
      return JSON.parse(this.askBytes(new TextEncoder().encode(JSON.stringify(request))));
    },
  };
}
