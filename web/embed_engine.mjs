// SPDX-License-Identifier: Apache-2.0
// node embed_engine.mjs ENGINE.wasm   Writes src/engine/generated/packed_engine.ts: the engine as text inside the
// script, so that the page is whole without a second request and opens from disk as well.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { constants, deflateRawSync } from 'node:zlib';

const [source] = process.argv.slice(2);
if (!source) {
  console.error('usage: node embed_engine.mjs ENGINE.wasm');
  process.exit(64);
}
const packed = deflateRawSync(readFileSync(source), { level: constants.Z_BEST_COMPRESSION, memLevel: 9 }).toString('base64');
const folder = fileURLToPath(new URL('./src/engine/generated/', import.meta.url));
mkdirSync(folder, { recursive: true });
writeFileSync(`${folder}packed_engine.ts`, `// SPDX-License-Identifier: Apache-2.0\n// Written by embed_engine.mjs.\nexport const packedEngine = '${packed}';\n`);
console.log(`engine: ${packed.length} characters`);
