// SPDX-License-Identifier: Apache-2.0
// What can go wrong between a question and its answer. The engine's own errors (docs/formats/errors.md) have the same
// form, so that a screen handles both alike.

/** Codes that come from this side of the door. Everything else is the engine's. */
export type OwnCode =
  | 'cancelled'    // the asker called it off
  | 'time-limit'   // it took longer than allowed; the engine was started anew
  | 'crashed'      // the engine stopped in the middle of it; it was started anew
  | 'no-engine';   // this browser cannot start the engine

export interface Failed {
  readonly error: {
    readonly code: OwnCode | (string & {});
    readonly message: string;
    readonly hint?: string;
    readonly where?: { readonly field?: string; readonly line: number; readonly column: number; readonly offset: number; readonly length: number };
  };
}

const hints: Record<OwnCode, string> = {
  'cancelled': '',
  'time-limit': 'ask something smaller, or use the program on the command line, which waits as long as you do',
  'crashed': 'ask again; if it happens again, please report the question',
  'no-engine': 'use a browser from 2023 or later; WebAssembly has to be allowed',
};

export function fault(code: OwnCode, message: string): Failed {
  const hint = hints[code];
  return { error: hint ? { code, message, hint } : { code, message } };
}

export const isFailed = (answer: unknown): answer is Failed => typeof answer === 'object' && answer !== null && 'error' in answer;
