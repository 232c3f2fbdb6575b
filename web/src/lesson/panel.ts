// SPDX-License-Identifier: Apache-2.0
// The part of a scene where pupils try steps. Everything can be done with the keyboard; the board can be pointed at as well.
import type { Ask } from '../engine/client';
import { BoardTouch } from './board_touch';
import { Judge, type Move, type Verdict } from './judge';
import { cellFrom, cellName, readCells, type CellMarks, type SceneFacts } from './marks';
import type { Say } from './words';

type Children = readonly (Node | string)[];

function make<K extends keyof HTMLElementTagNameMap>(name: K, attributes: Readonly<Record<string, string>> = {}, children: Children = []): HTMLElementTagNameMap[K] {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...children);
  return element;
}

export class Panel {
  private readonly cells: readonly CellMarks[];
  private readonly judge: Judge;
  private readonly touch: BoardTouch;
  private readonly cellField: HTMLInputElement;
  private readonly digits = make('div', { class: 'try-digits' });
  private readonly said = make('output', { class: 'try-said', 'aria-live': 'polite' });
  private kind: Move['kind'] = 'out';
  private cell = -1;
  private asked = 0;

  constructor(private readonly section: HTMLElement, facts: SceneFacts, private readonly side: number, ask: Ask, private readonly say: Say) {
    this.cells = readCells(facts.position);
    this.judge = new Judge(ask, facts, say);
    this.touch = new BoardTouch(section.querySelector<SVGSVGElement>('.spread > .board svg')!, side);
    this.cellField = make('input', { class: 'try-name', size: '6', autocomplete: 'off', spellcheck: 'false' });
    this.cellField.addEventListener('input', () => this.choose(cellFrom(this.cellField.value, this.side)));
    this.touch.onCell((index) => {
      this.cellField.value = cellName(index, this.side);
      this.choose(index);
    });
  }

  /** What goes below the words of the scene. */
  build(): HTMLElement {
    const parts: (Node | string)[] = [];
    if (this.judge.hasGoal) parts.push(this.veilButton());
    parts.push(
      make('p', {}, [this.say('pointAt')]),
      make('p', { class: 'try-row' }, [make('label', {}, [`${this.say('cell')} `, this.cellField]), this.kindChoice()]),
      this.digits,
      this.claimForm(),
      make('p', {}, [this.button(this.say('hint'), () => this.tell(this.judge.hint()))]),
      this.said,
    );
    return make('div', { class: 'try-body' }, parts);
  }

  private button(text: string, press: () => void): HTMLButtonElement {
    const button = make('button', { type: 'button' }, [text]);
    button.addEventListener('click', press);
    return button;
  }

  private veilButton(): HTMLElement {
    const button = this.button(this.say('veil'), () => this.veil(!this.section.classList.contains('veiled'), button));
    return make('p', {}, [button]);
  }

  private veil(isVeiled: boolean, button: HTMLButtonElement): void {
    this.section.classList.toggle('veiled', isVeiled);
    button.textContent = this.say(isVeiled ? 'unveil' : 'veil');
  }

  private kindChoice(): HTMLElement {
    const choice = make('select', { 'aria-label': `${this.say('strikeOut')} / ${this.say('putIn')}` }, [
      make('option', { value: 'out' }, [this.say('strikeOut')]),
      make('option', { value: 'in' }, [this.say('putIn')]),
    ]);
    choice.addEventListener('change', () => {
      this.kind = choice.value === 'in' ? 'in' : 'out';
      this.choose(this.cell);
    });
    return choice;
  }

  private claimForm(): HTMLElement {
    const field = make('input', { class: 'try-claim', size: '24', autocomplete: 'off', spellcheck: 'false', placeholder: this.say('claimExample') });
    const form = make('form', { class: 'try-row' }, [make('label', {}, [`${this.say('claim')} `, field]), make('button', { type: 'submit' }, [this.say('check')])]);
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      if (field.value.trim() !== '') this.tell(this.judge.claim(field.value));
    });
    return form;
  }

  private choose(index: number): void {
    this.cell = index;
    this.touch.choose(index);
    this.digits.replaceChildren();
    const { digit, marks } = this.cells[index] ?? { digit: '', marks: [] };
    if (digit !== '') this.show({ holds: false, text: this.say('isFilled') });
    const verb = this.say(this.kind === 'out' ? 'strikeOut' : 'putIn');
    for (const mark of marks) {
      const button = this.button(mark, () => this.move(index, mark));
      button.setAttribute('aria-label', `${verb} ${mark}, ${cellName(index, this.side)}`);
      this.digits.append(button);
    }
    if (index < 0 && this.cellField.value.length > 3) this.show({ holds: false, text: this.say('noCell') });
  }

  private move(index: number, digit: string): void {
    const { kind } = this;
    this.tell(this.judge.judge({ cell: cellName(index, this.side), digit, kind }), (verdict) => {
      if (verdict.holds) this.touch.mark(index, digit, kind);
      if (this.judge.isDone) this.section.classList.remove('veiled');
    });
  }

  /** The last question wins: an answer that comes after the next question is not shown. */
  private tell(coming: Promise<Verdict>, then: (verdict: Verdict) => void = () => {}): void {
    const number = this.asked += 1;
    this.show({ holds: false, text: this.say('thinking') });
    void coming.then((verdict) => {
      then(verdict);
      if (number === this.asked) this.show(verdict);
    });
  }

  private show({ text, more }: Verdict): void {
    this.said.replaceChildren(make('p', {}, [text]));
    if (more !== undefined) this.said.append(make('p', { lang: 'en' }, [more]));
  }
}
