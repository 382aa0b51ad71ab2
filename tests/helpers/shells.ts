/** Completion in real shells: lines are typed with the keys that put in whatever the shell would offer. */
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { builtCommand } from './command.ts';
import { atTerminal, HAS_TERMINAL } from './terminal.ts';

export type Shell = 'bash' | 'zsh' | 'fish';

const there = (name: string) => spawnSync(name, ['--version']).status === 0;

/** Why a shell cannot be tried here; undefined where it can. PULLIN_TOOLS=1 makes one that is missing a failure. */
export function missing(shell: Shell): string | undefined {
  if (process.env.PULLIN_TOOLS === '1') return undefined;
  if (!HAS_TERMINAL) return 'there is no Python 3 with pseudo-terminals';
  return there(shell) ? undefined : `${shell} is not installed`;
}

/** A folder with a `pullin` to be found by a shell; `answer` is a shell script in its place. */
export function binOf(
  folder: string,
  answer = `exec '${process.execPath}' '${builtCommand()}' "$@"`,
): string {
  const bin = join(folder, '.bin');
  mkdirSync(bin, { recursive: true });
  writeFileSync(join(bin, 'pullin'), `#!/bin/sh\n${answer}\n`);
  chmodSync(join(bin, 'pullin'), 0o755);
  return bin;
}

interface Place {
  readonly cwd: string;
  /** folder with the `pullin` to ask */
  readonly bin: string;
  /** file with the completion script */
  readonly script: string;
}

/** Keys that put in all that is offered, and that show the line between marks and empty it. */
const ALL = '\u0018\u0001';
const SHOW = '\u0018\u0002';

const SETUP: Readonly<Record<'bash' | 'zsh', (script: string) => string>> = {
  bash: (script) => `
PS1='READY> '
source '${script}'
bind 'set enable-bracketed-paste off'
bind 'set disable-completion off'
bind '"\\C-x\\C-a": insert-completions'
shown() { printf '<<%s>>\\n' "$READLINE_LINE"; READLINE_LINE=; READLINE_POINT=0; }
bind -x '"\\C-x\\C-b": shown'
`,
  zsh: (script) => `
PS1='READY> '
autoload -Uz compinit && compinit -u -C -d '${script}.dump'
source '${script}'
zle -C all-matches complete-word _generic
zstyle ':completion:all-matches::::' completer _all_matches _complete
zstyle ':completion:all-matches:*' old-matches false
zstyle ':completion:all-matches:*' insert true
zstyle ':completion:*' insert-tab false
bindkey -e
bindkey '^X^A' all-matches
shown() { zle -I; print -r -- "<<$BUFFER>>"; BUFFER=; }
zle -N shown
bindkey '^X^B' shown
`,
};

/** Each line as it stands once the shell has put in all it offers at its end. */
export function completed(shell: Shell, lines: readonly string[], place: Place): string[] {
  if (shell === 'fish') return byFish(lines, place);
  const all = byKeys(shell, lines, ALL, place);
  if (shell === 'bash') return all;
  // zsh leaves one that stands alone to the usual key.
  const left = lines.filter((line, i) => all[i] === line.trimEnd());
  const alone = left.length === 0 ? [] : byKeys(shell, left, '\t', place);
  return all.map((line, i) => alone[left.indexOf(lines[i]!)] ?? line);
}

function byKeys(
  shell: 'bash' | 'zsh',
  lines: readonly string[],
  keys: string,
  { cwd, bin, script }: Place,
): string[] {
  const rc = join(bin, `.${shell}rc`);
  writeFileSync(rc, SETUP[shell](script));
  const start = shell === 'bash' ? ['bash', '--noprofile', '--rcfile', rc, '-i'] : ['zsh', '-d', '-i'];
  const steps = [
    ...lines.map((line, i) => ({ wait: i === 0 ? 'READY> ' : '>>', send: `${line}${keys}${SHOW}` })),
    { wait: '>>', send: 'exit\n' },
  ];
  const { output } = atTerminal(start, steps, {
    cwd,
    columns: 1000,
    env: { PATH: `${bin}:${process.env.PATH ?? ''}`, TERM: 'dumb', HOME: bin, ZDOTDIR: bin },
  });
  const shown = [...output.matchAll(/<<([^\r\n]*)>>/g)].map(([, line]) => line!.trimEnd());
  if (shown.length !== lines.length) throw new Error(`${shell} said:\n${output}`);
  return shown;
}

/** fish tells what it offers, quoted as it would put it in. */
function byFish(lines: readonly string[], { cwd, bin, script }: Place): string[] {
  const source = `source '${script}'
    for line in (printf '%s\\n' $LINES_TYPED | string split \\n)
      complete --escape -C "$line" | string replace -r '\\t.*' ''
      echo '<<>>'
    end`;
  const { stdout, stderr } = spawnSync('fish', ['--no-config', '-c', source], {
    cwd,
    encoding: 'utf8',
    env: {
      PATH: `${bin}:${process.env.PATH ?? ''}`,
      HOME: bin,
      LINES_TYPED: lines.join('\n'),
      LANG: 'C.UTF-8',
    },
  });
  if (stderr !== '') throw new Error(stderr);
  const told = stdout.split('<<>>\n');
  return lines.map((line, i) => {
    const before = line.slice(0, line.lastIndexOf(' ') + 1);
    return `${before}${told[i]!.split('\n')
      .filter((one) => one !== '')
      .join(' ')}`.trimEnd();
  });
}

/** The words of a line as the shell would hand them to the command, each taken for what it is. */
export function wordsBy(shell: Shell, line: string, { cwd, bin }: Place): string[] {
  const words = line.replace(/^\S+ /, '');
  const { stdout } = spawnSync(shell, ['-c', `printf '%s\\n' ${words}`], {
    cwd,
    encoding: 'utf8',
    env: { PATH: `${bin}:${process.env.PATH ?? ''}`, HOME: bin, LANG: 'C.UTF-8' },
  });
  return stdout.trimEnd().split('\n');
}
