// SPDX-License-Identifier: Apache-2.0
// A lesson out of the steps of a path: plain steps are gone through at once, every other one gets a scene that asks and
// a scene that answers. No scene shows anything that a later one is to say.
import type { StepAnswer } from '../desk/answers';
import { conclude, loadPans } from '../desk/operations';
import { frameOf, type DeskState, type Scene } from '../desk/state';

/** What an audience of advanced teachers' lessons does without being told; the basics of docs/manual/weigh.md. */
const plain = new Set(['full-house', 'naked-single', 'hidden-single', 'pointing', 'claiming', 'naked-pair', 'naked-triple', 'naked-quad', 'hidden-pair', 'hidden-triple', 'hidden-quad', 'x-wing', 'swordfish', 'jellyfish']);

const spoken = (technique: string): string => technique.replaceAll('-', ' ');

function headingOf(step: StepAnswer): string {
  if (!step.balance) return `A ${spoken(step.technique)}`;
  return `Weigh ${step.balance.left.join(', ')} against ${step.balance.right.join(', ')}`;
}

export function scenesFromPath(start: DeskState, steps: readonly StepAnswer[]): Scene[] {
  const scenes: Scene[] = [{ heading: start.title || 'The puzzle', words: '', note: '', frame: { ...frameOf(start), pans: {}, lens: 0, marks: 'hidden' }, falls: [], placed: [] }];
  let state: DeskState = loadPans({ ...start, lens: 0 }, [], []);
  let walked: StepAnswer[] = [];
  const rest = () => {
    if (walked.length === 0) return;
    const note = walked.map((step) => step.text).join('\n');
    scenes.push({ heading: `${walked.length} plain ${walked.length === 1 ? 'step' : 'steps'}`, words: '', note: note.slice(0, 20_000), frame: frameOf(state), falls: [], placed: [] });
    walked = [];
  };
  for (const step of steps) {
    if (plain.has(step.technique)) {
      walked.push(step);
    } else {
      rest();
      const frame = frameOf(step.balance ? loadPans(state, step.balance.left, step.balance.right) : state);
      const heading = headingOf(step);
      scenes.push({ heading, words: '', note: step.text, frame, falls: [], placed: [] });
      scenes.push({ heading, words: step.text, note: '', frame, falls: step.eliminations, placed: step.placements });
    }
    state = conclude(state, step.placements, step.eliminations);
  }
  rest();
  return scenes;
}
