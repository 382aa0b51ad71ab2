/** `pullin check` of several plans: each is told as soon as it and all before it are done. */
import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { relative, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import { CHECK_STAGES, type CheckStages } from '../check-stages.ts';
import { directory } from '../input.ts';
import type { Session } from '../io.ts';
import { progress } from '../progress.ts';
import { STATUS, worse } from '../status.ts';
import {
  type Asked,
  type Checked,
  checkedAnyhow,
  type Fate,
  mistaken,
  type Named,
  statusOfFate,
} from './checked.ts';
import { inOrder } from './in-order.ts';
import { Died, Pool } from './pool.ts';
import type { Surroundings } from './worker.ts';
import { type End, summary, writerFor } from './writers.ts';

/** Plans from which workers pay: two hundred small ones took two cores 8 % longer than one, two thousand 15 % less (`npm run bench`). */
const FEWEST = 500;
/** Most workers that are begun unasked: each takes 150 MB or so. */
const MOST_WORKERS = 8;

/** A name of a file as a relative reference (RFC 3986), or as a whole address where it lies elsewhere. */
function uriOf(file: string, folder: string): string {
  const path = resolve(folder, file);
  const inside = relative(folder, path);
  const steps = inside.split(sep);
  if (steps[0] === '..' || resolve(inside) === inside) return pathToFileURL(path).href;
  // Half a surrogate pair cannot be encoded; as bytes it is a replacement character.
  return steps.map((step) => encodeURIComponent(Buffer.from(step).toString())).join('/') || './';
}

/** The plans with their places among the artifacts: a file that is named twice has one. */
function namedFrom(files: readonly string[], session: Session<CheckStages>): Named[] {
  const folder = directory(session.io);
  const indices = new Map<string | null, number>();
  return files.map((file) => {
    const uri = file === '-' ? null : uriOf(file, folder);
    const index = indices.get(uri) ?? indices.size;
    indices.set(uri, index);
    return { file, artifact: { index, uri } };
  });
}

/** How many plans are checked at the same time. */
function workersFor(count: number, asked: number | undefined): number {
  if (asked !== undefined) return Math.min(asked, count);
  return count < FEWEST ? 1 : Math.min(availableParallelism(), MOST_WORKERS, count >> 2);
}

/** A way to check one plan after another, and to be done with it. */
interface Crew {
  readonly atOnce: number;
  readonly check: (named: Named) => Promise<Checked>;
  readonly close: () => Promise<void>;
}

/** In this thread; an interruption is heard between two plans. */
function alone(asked: Asked, session: Session<CheckStages>): Crew {
  return {
    atOnce: 1,
    check: async (named) => {
      await new Promise((turn) => setImmediate(turn));
      return checkedAnyhow(named, asked, session);
    },
    close: async () => undefined,
  };
}

function crewFor(
  count: number,
  atOnce: number | undefined,
  asked: Asked,
  session: Session<CheckStages>,
): Crew {
  const one = alone(asked, session);
  const workers = workersFor(count, atOnce);
  const script = new URL('./check-worker.cjs', import.meta.url);
  // Only what is built has a file for workers, and only the stages of pullin itself run in one.
  if (workers < 2 || session.stages.check !== CHECK_STAGES.check || !existsSync(script)) return one;
  const { io } = session;
  const surroundings: Surroundings = {
    asked,
    cwd: directory(io),
    env: { ...io.env },
    columns: io.stdout.columns,
    isTTY: io.stdout.isTTY === true,
    colour: session.colour,
  };
  const pool = new Pool<Named, Checked>(script, surroundings);
  return {
    atOnce: workers,
    check: async (named) => {
      if (named.file === '-') return one.check(named);
      const answer = await pool.run(named);
      if (!(answer instanceof Died)) return answer;
      return answer.started ? mistaken(named, answer, asked, io.env) : one.check(named);
    },
    close: () => pool.close(),
  };
}

/** Hears the two signals that end a run, once; the second ends pullin at once, as if nobody listened. */
function interruption({ io }: Session<unknown>) {
  let signal: End['signal'];
  let hear: () => void = () => undefined;
  const heard = new Promise<void>((done) => (hear = done));
  const on = (name: 'SIGINT' | 'SIGTERM') => () => {
    signal ??= name;
    hear();
  };
  const [onInt, onTerm] = [on('SIGINT'), on('SIGTERM')];
  io.once?.('SIGINT', onInt);
  io.once?.('SIGTERM', onTerm);
  return {
    heard,
    stop: hear,
    signal: () => signal,
    done: () => {
      io.off?.('SIGINT', onInt);
      io.off?.('SIGTERM', onTerm);
    },
  };
}

/**
 * How far it is, on a terminal alone, and only while nothing is written that shows it: where the reports go to the same
 * terminal they show it themselves, but for one that keeps the others waiting.
 */
function watchedBy(session: Session<CheckStages>, count: number) {
  const { stdout, stderr } = session.io;
  if (stderr.isTTY !== true) return { wrote: () => undefined, waits: () => undefined, wipe: () => undefined };
  const bar = progress('checking plans:', session);
  const shared = stdout.isTTY === true;
  return {
    wrote: (done: number) => {
      if (!shared) bar.step(done, count);
    },
    waits: (done: number) => bar.step(done, count),
    wipe: (whole: boolean) => {
      if (whole || shared) bar.done();
    },
  };
}

/** Checks the plans in the order named, `atOnce` at the same time where that is given, and sets the exit status. */
export async function checkMany(
  files: readonly string[],
  asked: Asked,
  atOnce: number | undefined,
  session: Session<CheckStages>,
): Promise<void> {
  const { out, err } = session;
  const named = namedFrom(files, session);
  const crew = crewFor(named.length, atOnce, asked, session);
  const writer = await writerFor(asked, session);
  const interrupted = interruption(session);
  const bar = watchedBy(session, named.length);
  const fates: Fate[] = [];
  let status: number = STATUS.pass;
  out.write(writer.first());
  try {
    await inOrder<Checked>({
      count: named.length,
      atOnce: crew.atOnce,
      work: (index) => crew.check(named[index]!),
      size: ({ out: text, sarif }) => text.length + (sarif === undefined ? 0 : sarif.results.length * 2_000),
      use: async (answer, index) => {
        fates.push(answer.fate);
        status = worse(status, statusOfFate(answer.fate));
        bar.wipe(answer.err !== '');
        err.write(answer.err);
        out.write(writer.of(answer, named[index]!));
        await out.taken();
        bar.wrote(fates.length);
        // A full disk takes nothing more, whatever the other plans say.
        if (out.failure !== undefined) interrupted.stop();
      },
      waits: bar.waits,
      stop: interrupted.heard,
    });
  } finally {
    interrupted.done();
    bar.wipe(true);
    await crew.close();
  }
  // One that comes when all is done cuts nothing short.
  const signal = fates.length < named.length ? interrupted.signal() : undefined;
  if (signal !== undefined) status = signal === 'SIGINT' ? STATUS.interrupted : STATUS.ended;
  session.exit(status);
  const end: End = { fates, named, status, signal };
  out.write(writer.last(end));
  // The text has it as its last line; what other programs read does not, and a cut is told wherever it happens.
  if (signal !== undefined || (asked.form === 'quiet' && named.length > 1))
    err.write(`pullin: ${summary(end)}\n`);
}
