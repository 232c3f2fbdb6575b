// SPDX-License-Identifier: Apache-2.0
// Times taken in a rehearsal: how long each scene was on, in milliseconds.

export class Stopwatch {
  private readonly spent: number[];
  private since: number | undefined;

  constructor(scenes: number, private readonly now: () => number = () => performance.now()) { this.spent = new Array<number>(scenes).fill(0); }

  get isRunning(): boolean { return this.since !== undefined; }

  /** Books the time since the last call on this scene. */
  book(scene: number): void {
    if (this.since === undefined) return;
    const now = this.now();
    this.spent[scene] = (this.spent[scene] ?? 0) + now - this.since;
    this.since = now;
  }

  start(): void { this.since ??= this.now(); }
  pause(scene: number): void {
    this.book(scene);
    this.since = undefined;
  }

  seconds(scene: number): number { return (this.spent[scene] ?? 0) / 1000; }
  total(): number { return this.spent.reduce((sum, time) => sum + time, 0) / 1000; }

  /** In whole seconds, five at least, for the scenes that were on for longer than a glance. */
  times(): (number | undefined)[] { return this.spent.map((time) => (time < 2000 ? undefined : Math.max(5, Math.round(time / 1000)))); }
}
