// SPDX-License-Identifier: Apache-2.0
// What the stage and the window with the notes tell each other.
import { openLink, type Link } from '../desk/link';

/** From the stage: what is on now. */
export interface Cue { readonly kind: 'cue'; readonly number: number; readonly of: number; readonly heading: string; readonly words: string; readonly note: string; readonly next: string }
/** From the notes: tell me, or go on. */
export interface Call { readonly kind: 'call'; readonly move: number }

export const openChannel = (hear: (message: Cue | Call) => void): Link<Cue | Call> => openLink('counterpoise.stage', hear);
