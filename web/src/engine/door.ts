// SPDX-License-Identifier: Apache-2.0
// The one door of the engine module, as text in and text out (docs/formats/engine.md). No worker, no page: also for
// programs under Node.

interface Exports {
  readonly memory: WebAssembly.Memory;
  _initialize?(): void;
  cp_abi(): number;
  cp_room(bytes: number): number;
  cp_answer(bytes: number): number;
  cp_answer_size(): number;
}

const abi = 1;

export interface Door {
  /** Answers one request after the other. Throws when the engine traps; it is of no use afterwards. */
  answer(request: string): string;
  /** How much memory the engine has taken, in bytes. It never gives any back. */
  memory(): number;
}

export async function openDoor(module: WebAssembly.Module): Promise<Door> {
  const instance = await WebAssembly.instantiate(module, {});
  const engine = instance.exports as unknown as Exports;
  engine._initialize?.();
  if (engine.cp_abi() !== abi) throw new Error(`the engine speaks version ${engine.cp_abi()} of the door, the page version ${abi}`);
  const encoder = new TextEncoder(), decoder = new TextDecoder();
  return {
    answer: (request) => {
      const bytes = encoder.encode(request);
      const room = engine.cp_room(bytes.length);
      // No room: the request is too long, and the answer says so.
      if (room !== 0) new Uint8Array(engine.memory.buffer, room, bytes.length).set(bytes);
      const answer = engine.cp_answer(bytes.length);
      return decoder.decode(new Uint8Array(engine.memory.buffer, answer, engine.cp_answer_size()));
    },
    memory: () => engine.memory.buffer.byteLength,
  };
}
