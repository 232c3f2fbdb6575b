// SPDX-License-Identifier: Apache-2.0
// What the page and a worker say to each other.

export type ToWorker =
  | { readonly kind: 'start'; readonly module: WebAssembly.Module }
  | { readonly kind: 'ask'; readonly id: number; readonly request: string };

export type FromWorker =
  | { readonly kind: 'ready' }
  | { readonly kind: 'answer'; readonly id: number; readonly text: string; readonly memory: number }
  | { readonly kind: 'trap'; readonly id: number; readonly message: string };  // id 0: while starting

/** As much of a Worker as is used. */
export interface WorkerLike {
  onmessage: ((event: { data: FromWorker }) => void) | null;
  onerror: ((event: { message?: string }) => void) | null;
  postMessage(message: ToWorker): void;
  terminate(): void;
}
