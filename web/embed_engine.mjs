// SPDX-License-Identifier: Apache-2.0
// node embed_engine.mjs ENGINE.wasm LESSONS.wasm   Writes src/engine/generated/packed_engine.ts and packed_lessons.ts: the
// engine as text inside the scripts, so that a page is whole without a second request and opens from disk as well.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { constants, deflateRawSync } from 'node:zlib';

const sources = process.argv.slice(2);
if (sources.length !== 2) {
  console.error('usage: node embed_engine.mjs ENGINE.wasm LESSONS.wasm');
  process.exit(64);
}
const folder = fileURLToPath(new URL('./src/engine/generated/', import.meta.url));
mkdirSync(folder, { recursive: true });
for (const [i, name] of ['Engine', 'Lessons'].entries()) {
  const packed = deflateRawSync(readFileSync(sources[i]), { level: constants.Z_BEST_COMPRESSION, memLevel: 9 }).toString('base64');
  writeFileSync(`${folder}packed_${name.toLowerCase()}.ts`, `// SPDX-License-Identifier: Apache-2.0\n// Written by embed_engine.mjs.\nexport const packed${name} = '${packed}';\n`);
  console.log(`${name.toLowerCase()}: ${packed.length} characters`);
}
