/** The completion scripts by shell, made from the program itself. */
import type { Verb } from '../line/verb.ts';
import { bashScript } from './bash.ts';
import { fishScript } from './fish.ts';
import { programShape } from './tree.ts';
import { zshScript } from './zsh.ts';

const WRITERS = { bash: bashScript, zsh: zshScript, fish: fishScript } as const;

export type Shell = keyof typeof WRITERS;

/** The script that makes `shell` complete `program`; `ids` are what `explain` takes. */
export function scriptFor(shell: Shell, program: Verb, ids: readonly string[]): string {
  return WRITERS[shell](programShape(program), ids);
}
