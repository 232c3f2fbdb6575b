// SPDX-License-Identifier: Apache-2.0
// Only one window at a time keeps a work in the browser: the one that holds its lock. The browser gives the lock back when
// the window is closed or crashes. A browser without locks lets every window keep, as there is no way to know.

export type Holder = 'asking' | 'here' | 'elsewhere';

// A page that is loaded again asks while the old one is still going: it asks so many times, so many milliseconds apart.
const tries = 4, pause = 250;

export class Tenure {
  holder: Holder = 'asking';
  private end: (() => void) | undefined;
  private isOver = false;

  /** `onchange` hears every new holder. */
  constructor(private readonly name: string, private readonly onchange: (holder: Holder) => void) {}

  /** Asks for the lock, and gives up after a moment when another window has it. */
  take(): void { this.ask({ ifAvailable: true }, tries); }

  /** Takes it away from the other window, which hears of it. */
  takeOver(): void { this.ask({ steal: true }, 0); }

  release(): void {
    this.isOver = true;
    this.end?.();
    this.end = undefined;
  }

  private become(holder: Holder): void {
    if (holder === this.holder || this.isOver) return;
    this.holder = holder;
    this.onchange(holder);
  }

  private ask(options: LockOptions, more: number): void {
    const locks = globalThis.navigator?.locks;
    if (!locks) return this.become('here');
    locks.request(this.name, options, (lock) => {
      if (!lock) return this.miss(options, more);
      if (this.isOver) return undefined;
      return new Promise<void>((resolve) => {
        this.end = resolve;
        this.become('here');
      });
    }).catch(() => {  // it was taken away
      this.end = undefined;
      this.become('elsewhere');
    });
  }

  private miss(options: LockOptions, more: number): void {
    if (this.isOver) return;
    if (more > 0) setTimeout(() => this.ask(options, more - 1), pause);
    else this.become('elsewhere');
  }
}
