// SPDX-License-Identifier: Apache-2.0
// What goes into every lesson page beside its own script: below the words of each scene a place to try steps, with the
// engine inside the page. Nothing is fetched, kept or sent; the engine starts when the first place is opened.
import type { Ask, Engine } from '../engine/client';
import { startEngine } from '../engine/start';
import type { PageFacts } from './marks';
import { Panel } from './panel';
import style from './pupil.css?inline';
import { sayIn } from './words';

const block = document.getElementById('trial');
const facts = JSON.parse(block?.textContent ?? '{"language":"en","side":9,"scenes":{}}') as PageFacts;
const say = sayIn(facts.language);

let engine: Engine | undefined;
const ask: Ask = (...question) => (engine ??= startEngine()).ask(...question);

// The content policy of the page allows no further <style>; a sheet made by a script that may run is none.
const sheet = new CSSStyleSheet();
sheet.replaceSync(style);
document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];

for (const [id, scene] of Object.entries(facts.scenes)) {
  const section = document.getElementById(id);
  const words = section?.querySelector('.words');
  if (!section || !words || !section.querySelector('.spread > .board svg')) continue;
  const part = document.createElement('details');
  part.className = 'try';
  const summary = document.createElement('summary');
  summary.textContent = say('tryIt');
  part.append(summary);
  part.addEventListener('toggle', () => {
    if (part.open && part.childElementCount === 1) part.append(new Panel(section, scene, facts.side, ask, say).build());
    if (!part.open) section.classList.remove('veiled');
  });
  words.append(part);
}
