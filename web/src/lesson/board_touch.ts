// SPDX-License-Identifier: Apache-2.0
// The picture of a board as something to point at and to write on. Its measures are those of src/export/board_svg.cpp;
// a test compares them with a page.

const cellSide = 60, margin = 50;
const space = 'http://www.w3.org/2000/svg';

export class BoardTouch {
  private frame: SVGElement | undefined;

  constructor(private readonly svg: SVGSVGElement, private readonly side: number) {}

  /** Calls with the number of each cell that is pressed. */
  onCell(listener: (index: number) => void): void {
    this.svg.addEventListener('click', (event) => {
      const matrix = this.svg.getScreenCTM();
      if (!matrix) return;
      const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
      const column = Math.floor((x - margin) / cellSide), row = Math.floor((y - margin) / cellSide);
      if (column >= 0 && row >= 0 && column < this.side && row < this.side) listener(row * this.side + column);
    });
  }

  /** Frames the cell that is spoken of; -1: none. */
  choose(index: number): void {
    this.frame?.remove();
    this.frame = undefined;
    if (index < 0) return;
    this.frame = this.draw('rect', { class: 'try-cell', x: this.x(index) + 4, y: this.y(index) + 4, width: cellSide - 8, height: cellSide - 8 });
  }

  /** Crosses out or rings the small digit of a candidate; writes it beside the middle if the picture does not show it. */
  mark(index: number, digit: string, kind: 'out' | 'in'): void {
    const at = this.placeOf(index, digit);
    if (kind === 'out') this.draw('path', { class: 'strike try-mark', d: `M${at.x - 9} ${at.y + 7}l18 -14` });
    else this.draw('circle', { class: 'ring try-mark', cx: at.x, cy: at.y, r: 11 });
  }

  private x(index: number): number {
    return margin + cellSide * (index % this.side);
  }

  private y(index: number): number {
    return margin + cellSide * Math.floor(index / this.side);
  }

  private placeOf(index: number, digit: string): { x: number; y: number } {
    const left = this.x(index), top = this.y(index);
    for (const text of this.svg.querySelectorAll<SVGTextElement>('.cand text')) {
      const x = Number(text.getAttribute('x')), y = Number(text.getAttribute('y'));
      if (text.textContent === digit && x > left && x < left + cellSide && y > top && y < top + cellSide) return { x, y: y - 6 };
    }
    const at = { x: left + cellSide / 2, y: top + cellSide / 2 };
    const text = this.draw('text', { class: 'cand try-mark', x: at.x, y: at.y + 6 });
    text.textContent = digit;
    return at;
  }

  private draw(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
    const element = document.createElementNS(space, name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
    this.svg.append(element);
    return element;
  }
}
