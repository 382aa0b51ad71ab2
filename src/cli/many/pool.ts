/** Workers that each do one piece of work at a time, begun when there is one for them and kept for the next. */
import { Worker } from 'node:worker_threads';

/** Why there is no answer: the worker died at this piece of work, or could not even be started. */
export class Died extends Error {
  readonly started: boolean;

  constructor(message: string, started: boolean) {
    super(message);
    this.started = started;
  }
}

const WHY: Readonly<Record<string, string>> = {
  ERR_WORKER_OUT_OF_MEMORY: 'the memory did not suffice for this plan',
};

/**
 * MB. V8 lets a heap grow with what it may have: without a bound two workers hold 60 % more after two thousand plans than
 * after two hundred, with it they stay where they are. No plan within the bounds of a file comes near it.
 */
const HEAP = { maxYoungGenerationSizeMb: 8, maxOldGenerationSizeMb: 1000 };

interface Hand {
  readonly worker: Worker;
  started: boolean;
  settle: ((answer: unknown) => void) | undefined;
}

export class Pool<Job, Answer> {
  readonly #script: URL;
  readonly #data: unknown;
  readonly #hands = new Set<Hand>();
  readonly #idle: Hand[] = [];

  /** `data` is told each worker when it starts. */
  constructor(script: URL, data: unknown) {
    this.#script = script;
    this.#data = data;
  }

  /** The worker's answer; a `Died` where it gives none. Never rejects. */
  async run(job: Job): Promise<Answer | Died> {
    let hand: Hand;
    try {
      hand = this.#idle.pop() ?? this.#begin();
    } catch (error) {
      return new Died((error as Error).message, false);
    }
    return new Promise((done) => {
      hand.settle = (answer) => {
        hand.settle = undefined;
        done(answer as Answer | Died);
      };
      hand.worker.postMessage(job);
    });
  }

  /** Ends all workers, whatever they are at; what they were at is never answered. */
  async close(): Promise<void> {
    const hands = [...this.#hands];
    for (const hand of hands) hand.settle = undefined;
    await Promise.all(hands.map(({ worker }) => worker.terminate()));
  }

  #begin(): Hand {
    const worker = new Worker(this.#script, { workerData: this.#data, execArgv: [], resourceLimits: HEAP });
    const hand: Hand = { worker, started: false, settle: undefined };
    this.#hands.add(hand);
    worker.on('online', () => {
      hand.started = true;
    });
    worker.on('message', (answer: unknown) => {
      this.#idle.push(hand);
      hand.settle?.(answer);
    });
    const died = (why: string) => {
      this.#hands.delete(hand);
      const at = this.#idle.indexOf(hand);
      if (at !== -1) this.#idle.splice(at, 1);
      hand.settle?.(new Died(why, hand.started));
    };
    worker.on('error', (error: NodeJS.ErrnoException) => died(WHY[error.code ?? ''] ?? error.message));
    worker.on('exit', (code) => died(`a worker ended with status ${code}`));
    return hand;
  }
}
