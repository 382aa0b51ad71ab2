/** A thread that is asked one task at a time, and taken anew when it hangs or has used up its memory. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Call } from './commands.ts';
import type { Finding } from './trial.ts';
import type { Answer, Task } from './worker.ts';

/** Most memory that any command may use, MB. */
const MOST_MEMORY = 300;

export interface Done {
  readonly findings: readonly Finding[];
  readonly readable: boolean;
  readonly news: number;
  readonly functions: number;
}

export class Thread {
  #worker: Worker | undefined;
  readonly #folder = mkdtempSync(join(tmpdir(), 'pullin-fuzz-'));

  /** `patience`: wall seconds without a word after which a command counts as hanging; `guided`: coverage is wanted */
  constructor(
    private readonly patience: number,
    private readonly guided: boolean,
  ) {}

  #begun(): Promise<Worker> {
    if (this.#worker !== undefined) return Promise.resolve(this.#worker);
    const worker = new Worker(new URL('./worker.ts', import.meta.url), {
      workerData: { cwd: this.#folder, guided: this.guided },
      resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY },
      execArgv: ['--import', new URL('../typescript-loader.mjs', import.meta.url).href],
    });
    this.#worker = worker;
    return new Promise((ready, fail) => {
      worker.once('message', () => ready(worker));
      worker.once('error', fail);
    });
  }

  async ask(task: Task): Promise<Done> {
    const worker = await this.#begun();
    let call: Call = ['judged'];
    const lost = (kind: string, told: string): Done => ({
      findings: [{ kind, where: call[0] ?? '', call, told }],
      readable: false,
      news: 0,
      functions: 0,
    });
    const done = await new Promise<Done>((answered) => {
      let timer: NodeJS.Timeout;
      const wait = () => {
        clearTimeout(timer);
        timer = setTimeout(
          () => void worker.terminate().then(() => answered(lost('hangs', `over ${this.patience} s`))),
          this.patience * 1000,
        );
      };
      const hear = (answer: Answer) => {
        wait();
        if ('begun' in answer) call = answer.begun;
        else end(answer);
      };
      const fail = (error: NodeJS.ErrnoException) => {
        const full = error.code === 'ERR_WORKER_OUT_OF_MEMORY';
        end(lost(full ? 'memory' : 'died', full ? `over ${MOST_MEMORY} MB` : String(error.stack)));
      };
      const end = (how: Done) => {
        clearTimeout(timer);
        worker.off('message', hear).off('error', fail);
        answered(how);
      };
      wait();
      worker.on('message', hear).on('error', fail);
      worker.postMessage(task);
    });
    if (done.findings.some(({ kind }) => ['hangs', 'memory', 'died'].includes(kind))) await this.end();
    return done;
  }

  async end(): Promise<void> {
    const worker = this.#worker;
    this.#worker = undefined;
    await worker?.terminate();
  }

  async close(): Promise<void> {
    await this.end();
    rmSync(this.#folder, { recursive: true, force: true });
  }
}
