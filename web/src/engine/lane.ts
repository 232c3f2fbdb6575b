// SPDX-License-Identifier: Apache-2.0
// One worker and the questions that wait for it. Work that is called off or takes too long ends with the worker; a new
// one goes on with the questions that are left. Starting one is cheap: the compiled module is shared.
import { fault, type Failed } from './faults';
import type { FromWorker, WorkerLike } from './messages';

export interface LaneSettings {
  /** Makes a worker that runs worker.ts. */
  readonly spawn: () => WorkerLike;
  readonly module: Promise<WebAssembly.Module>;
  /** How long a question may take once it has begun, in milliseconds. */
  readonly limit: number;
  /** A question that was called off may come to its own end for so long before its worker is ended. */
  readonly grace?: number;
  /** How long a worker may take to start. */
  readonly startLimit?: number;
  /** A worker whose engine has taken more bytes than this makes room for a new one once it has answered. */
  readonly mostMemory?: number;
}

export interface Waiting { readonly signal?: AbortSignal | undefined; readonly limit?: number | undefined }

interface Job {
  readonly id: number;
  readonly request: string;
  readonly limit: number;
  readonly settle: (outcome: string | Failed) => void;
}

const mostStarts = 3;  // in a row without a single worker that came up

export class Lane {
  private readonly queue: Job[] = [];
  private running: Job | undefined;
  private worker: WorkerLike | undefined;
  private isReady = false;
  private isStopped = false;
  private failedStarts = 0;
  private lastId = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly settings: LaneSettings) {}

  /** How many questions wait or run. */
  get load(): number {
    return this.queue.length + (this.running ? 1 : 0);
  }

  /** Answers with the text of the engine. Never rejects. */
  put(request: string, { signal, limit = this.settings.limit }: Waiting = {}): Promise<string | Failed> {
    return new Promise((resolve) => {
      if (signal?.aborted) return resolve(fault('cancelled', 'called off'));
      const job: Job = {
        id: this.lastId += 1,
        request,
        limit,
        settle: (outcome) => {
          signal?.removeEventListener('abort', cancel);
          resolve(outcome);
        },
      };
      const cancel = (): void => this.callOff(job);
      signal?.addEventListener('abort', cancel, { once: true });
      this.queue.push(job);
      this.goOn();
    });
  }

  /** Starts the worker before the first question comes. */
  start(): void {
    if (!this.worker && !this.isStopped) this.startWorker();
  }

  /** Ends the worker; questions that wait are called off. */
  stop(): void {
    this.isStopped = true;
    this.endWorker();
    const left = this.queue.splice(0);
    if (this.running) left.push(this.running);
    this.running = undefined;
    for (const job of left) job.settle(fault('cancelled', 'called off'));
  }

  private goOn(): void {
    if (this.running || this.queue.length === 0 || this.isStopped) return;
    if (!this.worker) return this.startWorker();
    if (!this.isReady) return;
    const job = this.running = this.queue.shift()!;
    this.setTimer(job.limit, () => this.giveUp(fault('time-limit', `no answer within ${Math.round(job.limit / 100) / 10} seconds`)));
    this.worker.postMessage({ kind: 'ask', id: job.id, request: job.request });
  }

  private startWorker(): void {
    let worker: WorkerLike;
    try {
      worker = this.worker = this.settings.spawn();
    } catch (surprise) {
      return this.noEngine(String(surprise));
    }
    this.isReady = false;
    worker.onmessage = ({ data }) => { if (worker === this.worker) this.hear(data); };
    worker.onerror = ({ message }) => { if (worker === this.worker) this.fail(message ?? 'the worker stopped'); };
    this.setTimer(this.settings.startLimit ?? 20_000, () => this.fail('the engine did not start in time'));
    this.settings.module.then(
      (module) => { if (worker === this.worker) worker.postMessage({ kind: 'start', module }); },
      (surprise: unknown) => { if (worker === this.worker) this.noEngine(String(surprise)); },
    );
  }

  private hear(message: FromWorker): void {
    if (message.kind === 'trap') return this.fail(message.message);
    if (message.kind === 'ready') {
      this.isReady = true;
      this.failedStarts = 0;
      this.setTimer();
      return this.goOn();
    }
    const job = this.running;
    if (job?.id !== message.id) return;
    this.setTimer();
    this.running = undefined;
    if (message.memory > (this.settings.mostMemory ?? 96_000_000)) {
      this.endWorker();
      this.startWorker();
    }
    job.settle(message.text);
    this.goOn();
  }

  /** A worker that stopped by itself. */
  private fail(message: string): void {
    if (this.isReady) return this.giveUp(fault('crashed', `the engine stopped: ${message}`));
    this.failedStarts += 1;
    if (this.failedStarts >= mostStarts) return this.noEngine(message);
    this.endWorker();
    this.goOn();
  }

  /** Ends the worker and what it was doing. */
  private giveUp(reason: Failed): void {
    const job = this.running;
    this.running = undefined;
    this.endWorker();
    job?.settle(reason);
    this.goOn();
  }

  private noEngine(message: string): void {
    this.endWorker();
    this.failedStarts = 0;  // who asks again may be luckier
    for (const job of this.queue.splice(0)) job.settle(fault('no-engine', `the engine cannot start: ${message}`));
  }

  private callOff(job: Job): void {
    const at = this.queue.indexOf(job);
    if (at >= 0) this.queue.splice(at, 1);
    job.settle(fault('cancelled', 'called off'));
    if (job === this.running) this.setTimer(this.settings.grace ?? 40, () => this.giveUp(fault('cancelled', 'called off')));
  }

  private endWorker(): void {
    this.setTimer();
    this.worker?.terminate();
    this.worker = undefined;
    this.isReady = false;
  }

  /** There is one clock a lane: for the start, for the question that runs, or for its grace. */
  private setTimer(delay?: number, then?: () => void): void {
    clearTimeout(this.timer);
    this.timer = delay === undefined || !then ? undefined : setTimeout(then, delay);
  }
}
