// SPDX-License-Identifier: Apache-2.0
// The engine for the screens: the client in its Workers, with a failure of any kind turned into an answer.
import type { Ask, Failed } from './answers';

const none: Failed = { error: { code: 'bug', message: 'the engine is not there' } };
export const ask: Ask = () => Promise.resolve(none);
