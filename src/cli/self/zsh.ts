/** The completion script of zsh. */
import type { ArgumentShape, CommandShape, OptionShape, Takes } from './tree.ts';

/** A word that the shell takes as it stands. */
const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;
/** Words within a specification, where brackets and colons have a meaning. */
const specified = (text: string): string => text.replace(/[\\[\]:]/g, '\\$&');

function action(takes: Takes, list: boolean): string {
  switch (takes.from) {
    case 'choices':
      return `(${takes.choices.map(specified).join(' ')})`;
    case 'findings':
      return '_pullin_findings';
    case 'plan':
      // After a space the words are called as they stand; without it more would be put between them.
      return ` _pullin_names ${takes.what}${list ? ' list' : ''}`;
    case 'plans':
      return '_pullin_plans';
    case 'files':
      return '_files';
    case 'nothing':
      return ' ';
  }
}

function optionSpec({ long, short, words, placeholder, takes, list, conflicts }: OptionShape): string {
  const flags = short === undefined ? [long] : [short, long];
  const told = `[${specified(words)}]${placeholder === undefined ? '' : `:${specified(placeholder)}:${action(takes, list)}`}`;
  const others = [...flags, ...conflicts].filter((flag, _, all) => all.length > 1 || flag !== long);
  const without = others.length === 0 ? '' : `(${others.join(' ')})`;
  const spelt = flags.map((flag) => {
    if (placeholder === undefined) return flag;
    return flag.startsWith('--') ? `${flag}=` : `${flag}+`;
  });
  return spelt.map((flag) => quoted(`${without}${flag}${told}`)).join(' ');
}

function argumentSpec({ name, words, required, many, takes }: ArgumentShape, index: number): string {
  const at = many ? '*' : `${index + 1}`;
  return quoted(
    `${at}:${required || many ? '' : ':'}${specified(words === '' ? name : words)}:${action(takes, false)}`,
  );
}

const functionOf = (name: string): string => `_pullin${name === '' ? '' : `_${name.replaceAll(' ', '_')}`}`;

/** The functions of a command and of those in it. */
function functions(shape: CommandShape): string {
  const specs = [...shape.options.map(optionSpec), ...shape.arguments.map(argumentSpec)];
  const own = shape.commands.length === 0 ? leaf(shape, specs) : holder(shape, specs);
  return [...shape.commands.map(functions), own].join('\n');
}

const leaf = ({ name }: CommandShape, specs: readonly string[]): string => `${functionOf(name)}() {
  _arguments -s -S \\
${specs.map((spec) => `    ${spec}`).join(' \\\n')}
}
`;

function holder({ name, commands }: CommandShape, specs: readonly string[]): string {
  const last = (command: CommandShape) => command.name.split(' ').at(-1)!;
  return `${functionOf(name)}() {
  local curcontext=$curcontext state line ret=1
  typeset -A opt_args
  _arguments -C \\
${[...specs, quoted('1: :->command'), quoted('*:: :->argument')].map((spec) => `    ${spec}`).join(' \\\n')} && ret=0
  case $state in
    command)
      local -a commands=(
${commands.map((command) => `        ${quoted(`${last(command)}:${command.summary}`)}`).join('\n')}
      )
      _describe -t commands command commands && ret=0
      ;;
    argument)
      case $line[1] in
${commands.map((command) => `        ${last(command)}) ${functionOf(command.name)} && ret=0 ;;`).join('\n')}
      esac
      ;;
  esac
  return ret
}
`;
}

/** The script for the whole of `shape`; `ids` are what `explain` takes. */
export function zshScript(shape: CommandShape, ids: readonly string[]): string {
  return `#compdef pullin
# What zsh completes after pullin; printed by "pullin completion zsh".

# Folders and plan files.
_pullin_plans() {
  _files -g '*.(yaml|yml)(-.)'
}

_pullin_findings() {
  local -a findings=(${ids.map(quoted).join(' ')})
  compadd -a findings
}

# Names of a plan: of the one that is named, else of the only one in the folder. Quotes are taken off a word, and nothing
# in it is expanded.
_pullin_names() {
  local word plan
  local -a found names
  for word in "\${(@Q)words[1,CURRENT-1]}" "\${(@Q)words[CURRENT+1,-1]}"; do
    [[ $word == '~/'* ]] && word=$HOME/\${word[3,-1]}
    [[ ($word == *.yaml || $word == *.yml) && -f $word ]] && plan=$word
  done
  if [[ -z $plan ]]; then
    found=(./*.(yaml|yml)(N-.))
    (( $#found == 1 )) && plan=$found[1]
  fi
  [[ -n $plan ]] || return 1
  names=("\${(@f)$(command pullin completion zsh --names "$1" --of "$plan" 2>/dev/null)}")
  names=("\${(@)names:#}")
  if [[ $2 == list ]]; then
    compset -P '*,'
    compadd -S '' -a names
  else
    compadd -a names
  fi
}

${functions(shape)}
if [[ $funcstack[1] == _pullin ]]; then
  _pullin "$@"
else
  compdef _pullin pullin
fi
`;
}
