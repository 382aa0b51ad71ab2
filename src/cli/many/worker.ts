/** A thread that checks one plan after another, as it is told. The build makes a file of its own of it, beside the command's. */
import { Readable } from 'node:stream';
import { parentPort, workerData } from 'node:worker_threads';
import { CHECK_STAGES } from '../check-stages.ts';
import { type ColourChoice, type Io, Output, type OutputStream } from '../io.ts';
import { type Asked, checkedAnyhow, type Named } from './checked.ts';

/** What a worker is told when it starts. */
export interface Surroundings {
  readonly asked: Asked;
  readonly cwd: string;
  readonly env: Io['env'];
  /** of standard output, whose width and letters the reports have */
  readonly columns: number | undefined;
  readonly isTTY: boolean;
  readonly colour: ColourChoice;
}

if (parentPort !== null) {
  const port = parentPort;
  const { asked, cwd, env, columns, isTTY, colour } = workerData as Surroundings;
  const stdout: OutputStream = { write: () => true, columns, isTTY };
  const io: Io = { stdin: Readable.from([]), stdout, stderr: stdout, env, cwd };
  const out = new Output(() => stdout);
  const session = { io, colour, out, err: out, stages: CHECK_STAGES, exit: () => undefined };
  port.on('message', (named: Named) => {
    void checkedAnyhow(named, asked, session).then((answer) => port.postMessage(answer));
  });
}
