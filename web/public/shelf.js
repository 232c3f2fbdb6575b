// SPDX-License-Identifier: Apache-2.0
// The page of the shelf: asks the program that serves it (docs/formats/shelf_door.md) and shows what it says. It works nothing
// out about puzzles itself.
'use strict';

const page = 20;
const part = (id) => document.getElementById(id);
let question = { query: '', by: 'number' };   // of the list that is shown or waited for; another object: another question
let shown = 0;

/** An element with properties and children; text stays text. */
function make(name, properties = {}, ...children) {
  const element = Object.assign(document.createElement(name), properties);
  element.append(...children);
  return element;
}

/** The answer of the program, or an error with message and perhaps hint and place. */
async function door(path, wish) {
  try {
    const reply = await fetch(path, wish && { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(wish) });
    return await reply.json();
  } catch {
    return { error: { message: 'the shelf does not answer', hint: 'this page works while counterpoise desk --shelf FILE runs' } };
  }
}

function showFault(error) {
  part('fault').textContent = error ? `${error.message[0].toUpperCase()}${error.message.slice(1)}.${error.hint ? ` ${error.hint[0].toUpperCase()}${error.hint.slice(1)}.` : ''}` : '';
}

// --- The question

/** What the choices say, as terms of the query language. */
function chosenTerms() {
  const terms = [...document.querySelectorAll('[data-term]:checked')].map((box) => box.dataset.term);
  if (part('balance').value) terms.push(part('balance').value);
  if (part('tags').value) terms.push(`tag "${part('tags').value}"`);
  return terms;
}

function wholeQuery() {
  const line = part('query').value.trim(), terms = chosenTerms();
  if (line) terms.unshift(terms.length ? `(${line})` : line);
  return terms.join(' and ');
}

function tellQuery() { part('asked').textContent = `Asks: ${wholeQuery() || 'every puzzle'}`; }

/** Puts the choice of letters where the fault is, as far as it lies in the line. */
function pointAt(where) {
  const input = part('query');
  input.setAttribute('aria-invalid', where ? 'true' : 'false');
  if (!where) return;
  const bracket = input.value.trim() && chosenTerms().length ? 1 : 0, blanks = input.value.length - input.value.trimStart().length;
  const at = Math.min(Math.max(where.column - 1 - bracket, 0) + blanks, input.value.length);
  input.focus();
  input.setSelectionRange(at, Math.min(at + (where.length || 0), input.value.length));
}

async function look(fresh) {
  if (fresh) [question, shown] = [{ query: wholeQuery(), by: part('by').value }, 0];
  const now = question, more = part('more'), wasHere = document.activeElement === more;
  more.disabled = true;
  const answer = await door(`shelf/find?${new URLSearchParams({ ...now, limit: String(page), skip: String(shown) })}`);
  if (now !== question) return;
  more.disabled = false;
  if (wasHere) more.focus();
  showFault(answer.error);
  pointAt(answer.error?.where);
  if (fresh) more.hidden = true;   // it would go on with a list that is not shown
  if (answer.error) return;
  if (fresh) part('found').replaceChildren();
  shown += answer.puzzles.length;
  for (const puzzle of answer.puzzles) part('found').append(entry(puzzle));
  more.hidden = !answer.has_more;
  part('said').textContent = shown === 0 ? 'Nothing on the shelf fits.' : `${shown}${answer.has_more ? ' and more' : ''} ${shown === 1 && !answer.has_more ? 'fits' : 'fit'}. Led by ${answer.leader}.`;
  if (fresh) void tellSpread();
}

// --- How what is found is spread

/** A drawing of the program, with its bars as a table for those who read numbers. */
function chart(one) {
  const drawn = new DOMParser().parseFromString(one.svg, 'text/html').querySelector('svg');
  const wide = make('div', { className: 'wide', tabIndex: 0 }, document.adoptNode(drawn));   // on a narrow screen it scrolls
  wide.setAttribute('role', 'group');
  wide.setAttribute('aria-label', `${one.title}, as bars`);
  const rows = one.bars.map((bar) => make('tr', {}, make('th', { scope: 'row' }, bar.label), make('td', {}, String(bar.count))));
  const numbers = make('details', {}, make('summary', {}, `${one.title} in numbers`), make('table', {}, make('tbody', {}, ...rows)));
  return make('section', {}, make('h2', {}, one.title), make('p', { className: 'quiet' }, `${one.words}.`), wide, numbers);
}

/** The charts of the list that is shown; nothing is counted while they are closed. */
async function tellSpread() {
  if (!part('spread').open) return;
  const now = question, answer = await door(`shelf/charts?${new URLSearchParams({ query: now.query })}`);
  if (now !== question) return;
  if (answer.error) showFault(answer.error);
  part('counted').textContent = answer.error ? '' : `${answer.words}${answer.has_more ? ` These are the first ${answer.puzzles} by number; more fit.` : ''}`;
  part('charts').replaceChildren(...(answer.charts ?? []).map(chart));
}

// --- One puzzle

function drawing(text) {
  const side = Math.sqrt(text.length), size = 90 / side;
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  const put = (name, attributes, words = '') => {
    const element = document.createElementNS(svg.namespaceURI, name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
    element.textContent = words;
    svg.append(element);
  };
  svg.setAttribute('viewBox', '0 0 90 90');
  svg.setAttribute('class', 'little');
  svg.setAttribute('aria-hidden', 'true');
  const high = side === 9 ? 3 : 2, wide = side === 4 ? 2 : 3;
  for (let i = 1; i < side; ++i) {
    put('line', { x1: 0, x2: 90, y1: i * size, y2: i * size, class: i % high ? '' : 'thick' });
    put('line', { y1: 0, y2: 90, x1: i * size, x2: i * size, class: i % wide ? '' : 'thick' });
  }
  [...text].forEach((letter, cell) => {
    if (letter !== '.') put('text', { x: (cell % side + .5) * size, y: (Math.floor(cell / side) + .5) * size + 2.4 }, letter);
  });
  return svg;
}

function measureWords(puzzle) {
  const words = [`${puzzle.givens} givens`];
  if (puzzle.solutions !== 'one') words.push(puzzle.solutions === 'none' ? 'no solution' : 'several solutions');
  const path = puzzle.survey?.path;
  if (path) words.push(`${path.steps} steps`, `hardest ${path.hardest} (${path.technique})`, `effort ${path.effort}`, path.end);
  else if (puzzle.solutions === 'one') words.push('not surveyed');
  return words.join(', ');
}

/** A tag or lesson with the button that takes it away. */
function wordChip(puzzle, what, word) {
  const drop = make('button', { type: 'button', className: 'drop', title: `Take away ${word}` }, '\u00d7');
  drop.setAttribute('aria-label', `Take away ${what === 'tag' ? 'tag' : 'lesson'} ${word}`);
  drop.onclick = () => void write(puzzle, what, { text: word, drop: true });
  return make('span', { className: what === 'tag' ? 'word' : 'word lesson' }, what === 'tag' ? word : `used in ${word}`, drop);
}

function addingForm(puzzle) {
  const text = make('input', { type: 'text' }), what = make('select', {});
  for (const [value, words] of [['tag', 'as a tag'], ['note', 'as a note'], ['use', 'as a lesson that uses it']]) what.append(make('option', { value }, words));
  what.setAttribute('aria-label', `What the words on puzzle ${puzzle.number} are`);
  const form = make('form', {}, make('label', {}, make('span', {}, `Words on puzzle ${puzzle.number}`), text), what, make('button', {}, 'Write'));
  form.onsubmit = (event) => {
    event.preventDefault();
    void write(puzzle, what.value, { text: text.value });
  };
  return form;
}

function entry(puzzle) {
  const title = `${puzzle.number}${puzzle.name ? ` ${puzzle.name}` : ''}`;
  const words = make('p', { className: 'words' }, ...puzzle.tags.map((tag) => wordChip(puzzle, 'tag', tag)), ...puzzle.lessons.map((lesson) => wordChip(puzzle, 'use', lesson)));
  const open = make('a', { className: 'link', href: `./#puzzle=${encodeURIComponent(puzzle.puzzle)}` }, 'Open on the desk');
  open.setAttribute('aria-label', `Open puzzle ${puzzle.number} on the desk`);
  const about = make('div', {}, make('h2', {}, title), make('p', {}, measureWords(puzzle)), make('p', { className: 'quiet' }, [puzzle.source, puzzle.licence].filter(Boolean).join(', ')), words,
    ...puzzle.notes.map((note) => make('p', { className: 'note' }, note)), addingForm(puzzle), open);
  const item = make('li', { className: 'entry' }, drawing(puzzle.puzzle), about);
  item.dataset.number = puzzle.number;
  return item;
}

async function write(puzzle, what, wish) {
  const answer = await door(`shelf/${what}`, { number: puzzle.number, ...wish });
  showFault(answer.error);
  if (answer.error) return;
  const old = document.querySelector(`[data-number="${puzzle.number}"]`), fresh = entry(answer);
  old.replaceWith(fresh);
  fresh.querySelector('input').focus();
  part('said').textContent = wish.drop ? `Taken from puzzle ${puzzle.number}.` : `Written on puzzle ${puzzle.number}.`;
  void tellShelf();
}

// --- The whole

async function tellShelf() {
  const about = await door('shelf/about');
  if (about.error || about.puzzles === undefined) {
    showFault({ message: 'no shelf is served here', hint: 'start counterpoise desk --shelf FILE' });
    return false;
  }
  part('name').textContent = about.name;
  const number = (count) => count.toLocaleString('en');
  part('counts').textContent = `${number(about.puzzles)} puzzles, ${number(about.proper)} with one solution, ${number(about.surveyed)} surveyed, ${number(about.used)} used in lessons`;
  const tags = part('tags'), chosen = tags.value;
  tags.replaceChildren(make('option', { value: '' }, 'any'), ...about.tags.map((tag) => make('option', { value: tag }, tag)));
  tags.value = about.tags.includes(chosen) ? chosen : '';
  return true;
}

async function start() {
  try {
    document.documentElement.dataset.light = localStorage.getItem('counterpoise.light') ?? '';
  } catch { /* no store: as the system has it */ }
  part('ask').onsubmit = (event) => {
    event.preventDefault();
    void look(true);
  };
  part('ask').oninput = tellQuery;
  part('spread').ontoggle = () => void tellSpread();
  part('more').onclick = () => void look(false);
  tellQuery();
  if (await tellShelf()) await look(true);
}

void start();
