/** `pullin completion SHELL` */
import { Argument, Option } from 'commander';
import { nearest } from '../../text/nearest-name.ts';
import { readInput } from '../input.ts';
import type { Session } from '../io.ts';
import type { Verb } from '../line/verb.ts';
import { withQuestions } from '../new.ts';
import { Problem } from '../status.ts';

const SHELLS = ['bash', 'zsh', 'fish'] as const;

interface CompletionFlags {
  readonly names?: string;
  readonly of?: string;
}

/** What the scripts ask back: names out of a plan, one a line; nothing of a plan that cannot be read. */
async function names(kind: string, file: string, { io, out, stages }: Session): Promise<void> {
  const read = await stages.readPlan(await readInput(file, io), file);
  if (!read.ok) return;
  const { namesOf } = await import('./plan-names.ts');
  for (const name of namesOf(read.plan, kind)) out.write(`${name}\n`);
}

async function run(
  shell: string,
  { names: kind, of: file }: CompletionFlags,
  program: Verb,
  session: Session,
): Promise<void> {
  if (kind !== undefined && file !== undefined) return names(kind, file, session);
  const { scriptFor } = await import('./scripts.ts');
  const script = SHELLS.find((one) => one === shell);
  if (script === undefined) {
    const near = nearest(shell, SHELLS);
    throw new Problem(
      `there is no completion for "${shell}"; ${near === undefined ? `there is one for ${SHELLS.join(', ')}` : `did you mean ${near}?`}`,
    );
  }
  const { allCautions } = await import('../late/all.ts');
  await withQuestions(program, ['new']);
  const ids = [...(await session.stages.explanations()), ...allCautions()].map(({ id }) => id);
  session.out.write(scriptFor(script, program, ids));
}

export function addCompletion(program: Verb, session: Session): void {
  program
    .command('completion')
    .summary('print what makes a shell complete commands, options and names')
    .description(
      'Prints a script with which bash, zsh or fish completes commands, options and what they take: plan files, findings, and the names of gates, switches and terminals once the plan is named, or where there is one plan in the folder.',
    )
    .addArgument(new Argument('<shell>', 'the shell').choices(SHELLS).argParser((text) => text))
    .addOption(new Option('--names <kind>').hideHelp())
    .addOption(new Option('--of <plan>').hideHelp())
    .ends({
      notes: [
        'bash: pullin completion bash > ~/.local/share/bash-completion/completions/pullin (needs bash-completion; without it, have ~/.bashrc source the file).',
        'zsh: pullin completion zsh > _pullin in a folder of $fpath, before compinit is called.',
        'fish: pullin completion fish > ~/.config/fish/completions/pullin.fish.',
        'It takes effect in a new shell. Print it again after an update.',
      ],
      statuses: { pass: 'printed', unreadable: 'there is none for that shell' },
      examples: ['pullin completion bash', 'pullin completion fish'],
    })
    .action((shell: string, flags: CompletionFlags) => run(shell, flags, program, session));
}
