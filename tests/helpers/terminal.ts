/** The command in a pseudo-terminal, built from the sources, with somebody who types at it (`terminal.py`). */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { builtCommand } from './command.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Step {
  /** text to wait for since the step before */
  readonly wait: string;
  readonly send?: string;
  /** columns that the terminal has from then on */
  readonly resize?: number;
}

export interface Typed {
  readonly status: number;
  /** all that came, with what moves the cursor */
  readonly output: string;
}

const python = ['python3', 'python'].find(
  (name) => spawnSync(name, ['-c', 'import pty, fcntl']).status === 0,
);

/** Without Python 3 and pseudo-terminals these tests are skipped. */
export const HAS_TERMINAL = python !== undefined;

interface Around {
  readonly cwd: string;
  readonly columns?: number;
  readonly env?: Readonly<Record<string, string>>;
}

/** Runs `pullin ARGS...` in a terminal of so many columns and goes through the steps. */
export function inTerminal(args: readonly string[], steps: readonly Step[], around: Around): Typed {
  return atTerminal([process.execPath, builtCommand(), ...args], steps, around);
}

/** The same with any command. */
export function atTerminal(command: readonly string[], steps: readonly Step[], around: Around): Typed {
  const task = {
    command,
    cwd: around.cwd,
    columns: around.columns ?? 80,
    env: { PATH: process.env.PATH ?? '', LANG: 'C.UTF-8', TERM: 'xterm-256color', ...around.env },
    steps,
  };
  const done = spawnSync(python!, [join(root, 'tests/helpers/terminal.py')], {
    input: JSON.stringify(task),
    encoding: 'utf8',
  });
  if (done.status !== 0) throw new Error(`terminal.py: ${done.stderr}`);
  return JSON.parse(done.stdout) as Typed;
}

/** What a person would read: without what moves the cursor or colours. */
export function read(output: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: taking them out is the purpose
  return output.replace(/\u001b\[[\d;?]*[A-Za-z]/g, '').replaceAll('\r', '');
}
