/** The completion script of fish. */
import { type CommandShape, leavesOf, type OptionShape, type Takes } from './tree.ts';

/** A word that the shell takes as it stands. */
const quoted = (text: string): string => `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;

/** What is offered, as the argument of -a; nothing where there is nothing to offer. */
function offered(takes: Takes, list: boolean, ids: readonly string[]): string | undefined {
  switch (takes.from) {
    case 'choices':
      return quoted(takes.choices.join(' '));
    case 'findings':
      return quoted(ids.join(' '));
    case 'plan':
      return quoted(`(__pullin_names ${takes.what}${list ? ' list' : ''})`);
    case 'plans':
      return quoted('(__pullin_plans)');
    default:
      return undefined;
  }
}

function optionLine(name: string, option: OptionShape, ids: readonly string[]): string {
  const { long, short, words, placeholder, takes, list } = option;
  const what = placeholder === undefined ? undefined : offered(takes, list, ids);
  const value = placeholder === undefined ? '' : takes.from === 'files' ? ' -r -F' : ' -x';
  return [
    `complete -c pullin -n ${quoted(`__pullin_in ${quoted(name)}`)}`,
    short === undefined ? '' : ` -s ${short.slice(1)}`,
    ` -l ${long.slice(2)}${value}`,
    what === undefined ? '' : ` -a ${what}`,
    ` -d ${quoted(words)}`,
  ].join('');
}

function commandLines(shape: CommandShape, ids: readonly string[]): string[] {
  const { name, options, commands } = shape;
  const arguments_ = shape.arguments.flatMap((argument, i) => {
    const what = offered(argument.takes, false, ids);
    const at = argument.many ? `${i + 1} more` : `${i + 1}`;
    const when = quoted(`__pullin_in ${quoted(name)} ${at}`);
    return what === undefined
      ? []
      : [`complete -c pullin -n ${when} -a ${what} -d ${quoted(argument.words)}`];
  });
  return [
    ...commands.map((command) => {
      const word = command.name.split(' ').at(-1)!;
      const when = quoted(`__pullin_in ${quoted(name)} 1`);
      return `complete -c pullin -n ${when} -a ${word} -d ${quoted(command.summary)}`;
    }),
    ...options.map((option) => optionLine(name, option, ids)),
    ...arguments_,
    ...commands.flatMap((command) => commandLines(command, ids)),
  ];
}

/** The script for the whole of `shape`; `ids` are what `explain` takes. */
export function fishScript(shape: CommandShape, ids: readonly string[]): string {
  const options = [shape, ...leavesOf(shape)].flatMap((one) => one.options);
  const valued = options
    .filter((option) => option.placeholder !== undefined)
    .flatMap(({ long, short }) => (short === undefined ? [long] : [long, short]));
  const holders = shape.commands.filter((command) => command.commands.length > 0);
  return `# What fish completes after pullin; printed by "pullin completion fish".

# The command that is typed so far on the first line, then a line for each argument of it.
function __pullin_typed
    set -l valued ${[...new Set(valued)].join(' ')}
    set -l command
    set -l rest
    set -l skip no
    set -l ended no
    for word in (commandline -opc)[2..]
        if test $skip = yes
            set skip no
        else if test $ended = no; and string match -q -- '-*' $word
            test x$word = x--; and set ended yes
            contains -- $word $valued; and set skip yes
        else if test (count $command) -eq 0; or contains -- "$command" ${holders.map(({ name }) => name).join(' ')}
            set -a command $word
        else
            set -a rest $word
        end
    end
    echo "$command"
    for word in $rest
        printf '%s\\n' $word
    end
end

# Whether that is the command $argv[1], and with $argv[2] whether its argument of that number comes next.
function __pullin_in
    set -l typed (__pullin_typed)
    test "$typed[1]" = "$argv[1]"; or return 1
    test (count $argv) -lt 2; and return 0
    test (count $typed) -eq $argv[2]; and return 0
    test (count $argv) -gt 2; and test (count $typed) -ge $argv[2]
end

# What is typed of the word, without the option before it.
function __pullin_current
    commandline -ct | string replace -r -- '^--[a-z-]+=' ''
end

# Folders and plan files.
function __pullin_plans
    __fish_complete_path (__pullin_current) | string match -r -- '^[^\\t]*(?:/|\\.ya?ml)(?=\\t|$)'
end

# Names of a plan: of the one that is named, else of the only one in the folder.
function __pullin_names
    set -l plan
    for word in (commandline -opc)[2..]
        set -l path (string replace -r -- '^~/' "$HOME/" $word)
        string match -qr -- '\\.ya?ml$' $path; and test -f $path; and set plan $path
    end
    if test (count $plan) -eq 0
        set -l found ./*.yaml ./*.yml
        test (count $found) -eq 1; and set plan $found
    end
    test (count $plan) -eq 1; or return
    set -l before ''
    if test (count $argv) -gt 1
        set before (__pullin_current | string match -r -- '^.*,'); or set before ''
    end
    for name in (command pullin completion fish --names $argv[1] --of $plan 2>/dev/null)
        printf '%s\\n' $before$name
    end
end

complete -c pullin -f
${commandLines(shape, ids).join('\n')}
`;
}
