// SPDX-License-Identifier: Apache-2.0
// Only one window at a time keeps a work in the browser: the one that holds its lock. The browser gives the lock back when
// the window is closed or crashes. A browser without locks lets every window keep, as there is no way to know.

export type Holder = 'asking' | 'here' | 'elsewhere';

// A page that is loaded again asks while the old one is still going.
const patience = 800;

export class Tenure {
  holder: Holder = 'asking';
  private end: (() => void) | undefined;

  /** `onchange` hears every new holder. */
  constructor(private readonly name: string, private readonly onchange: (holder: Holder) => void) {}

  /** Asks for the lock, and gives up after a moment when another window has it. */
  take(): void { this.ask({ signal: AbortSignal.timeout(patience) }); }

  /** Takes it away from the other window, which hears of it. */
  takeOver(): void { this.ask({ steal: true }); }

  release(): void {
    this.end?.();
    this.end = undefined;
  }

  private become(holder: Holder): void {
    if (holder === this.holder) return;
    this.holder = holder;
    this.onchange(holder);
  }

  private ask(options: LockOptions): void {
    const locks = globalThis.navigator?.locks;
    if (!locks) return this.become('here');
    locks.request(this.name, options, () => new Promise<void>((resolve) => {
      this.end = resolve;
      this.become('here');
    })).catch(() => {
      this.end = undefined;
      this.become('elsewhere');
    });
  }
}
