// SPDX-License-Identifier: Apache-2.0
// The engine travels inside the script: deflated, as base64.

export async function unpack(base64: string): Promise<Uint8Array<ArrayBuffer>> {
  const packed = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}
