/** The completion script of bash: tables of what there is, and functions that expand nothing of what was typed. */
import { type CommandShape, leavesOf, type OptionShape, type Takes } from './tree.ts';

/** A word that the shell takes as it stands. */
const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;
const array = (words: readonly string[]): string => `(${words.map(quoted).join(' ')})`;

/** The kind in a word: `plans`, `names gates`, `list gates` (several with commas), or `words` with the choices behind. */
function kindOf(takes: Takes, list: boolean, ids: readonly string[]): readonly string[] {
  if (takes.from === 'choices') return ['words', ...takes.choices];
  if (takes.from === 'findings') return ['words', ...ids];
  return takes.from === 'plan' ? [list ? 'list' : 'names', takes.what] : [takes.from];
}

function optionLine(name: string, option: OptionShape, ids: readonly string[]): string[] {
  if (option.placeholder === undefined) return [];
  const flags = [option.long, option.short].flatMap((flag) =>
    flag === undefined ? [] : [quoted(`${name} ${flag}`)],
  );
  return [`    ${flags.join(' | ')}) takes=${array(kindOf(option.takes, option.list, ids))} ;;`];
}

function commandLines(shape: CommandShape, ids: readonly string[]): string[] {
  const { name, options, commands } = shape;
  const flags = options.flatMap(({ long, short }) => (short === undefined ? [long] : [long, short]));
  const last = (command: CommandShape) => command.name.split(' ').at(-1)!;
  const kinds = shape.arguments.map((argument) => kindOf(argument.takes, false, ids));
  const many = shape.arguments.at(-1)?.many === true;
  return [
    `    ${quoted(name)})`,
    `      flags=${array(flags)}`,
    ...(commands.length > 0 ? [`      commands=${array(commands.map(last))}`] : []),
    ...kinds.map((kind, i) => {
      const at = many && i === kinds.length - 1 ? '*' : `${i + 1}`;
      return `      [[ $2 == ${at} ]] && takes=${array(kind)}`;
    }),
    '      ;;',
  ];
}

const all = (shape: CommandShape): CommandShape[] => [shape, ...shape.commands.flatMap(all)];

/** The script for the whole of `shape`; `ids` are what `explain` takes. */
export function bashScript(shape: CommandShape, ids: readonly string[]): string {
  return `# What bash completes after pullin; printed by "pullin completion bash".

# What the command $1 takes: commands, flags, and at place $2 an argument.
_pullin_command() {
  case $1 in
${all(shape)
  .flatMap((one) => commandLines(one, ids))
  .join('\n')}
  esac
}

# What the option of a command takes: $1 is both.
_pullin_option() {
  case $1 in
${[shape, ...leavesOf(shape)]
  .flatMap((one) => one.options.flatMap((option) => optionLine(one.name, option, ids)))
  .join('\n')}
    *) return 1 ;;
  esac
}
${FUNCTIONS}`;
}

const FUNCTIONS = `
# A word as typed, without its quotes. Nothing in it is expanded.
_pullin_plain() {
  local text=$1 quote= letter i
  plain=
  for ((i = 0; i < \${#text}; i++)); do
    letter=\${text:i:1}
    if [[ $quote == "'" ]]; then
      if [[ $letter == "'" ]]; then quote=; else plain+=$letter; fi
    elif [[ $letter == '\\' ]]; then
      i=$((i + 1))
      [[ $quote == '"' && \${text:i:1} != [\\"\\$\\\`\\\\] ]] && plain+=$letter
      plain+=\${text:i:1}
    elif [[ $letter == '"' ]]; then
      if [[ $quote == '"' ]]; then quote=; else quote='"'; fi
    elif [[ $letter == "'" && -z $quote ]]; then
      quote=$letter
    else
      plain+=$letter
    fi
  done
}

# Offers the words that begin with what was typed, after $1, each so that the shell takes it as it stands.
_pullin_offer() {
  local before=$1 word whole
  shift
  for word in "$@"; do
    [[ $before$word == "$cur"* ]] || continue
    whole=$before$word
    [[ $whole =~ ^[[:alnum:]_.,+@%/:=-]+$ ]] || printf -v whole %q "$whole"
    # Within quotes of one's own only what needs none can be put in.
    [[ $typed == [\\"\\']* && $whole != "$before$word" ]] && continue
    COMPREPLY+=("$whole")
  done
}

# Offers folders, and files: $1 is plans for those alone.
_pullin_files() {
  local path=$cur found restore
  [[ $path == '~/'* ]] && path=$HOME/\${path:2}
  restore=$(shopt -p failglob)
  shopt -u failglob
  for found in "$path"*; do
    [[ -e $found ]] || continue
    [[ $1 == plans && ! -d $found && $found != *.yaml && $found != *.yml ]] && continue
    [[ $cur == '~/'* ]] && found="~/\${found:\${#HOME} + 1}"
    COMPREPLY+=("$found")
  done
  $restore
  compopt -o filenames 2>/dev/null
}

# The plan that is named, else the only one in the folder.
_pullin_plan() {
  local word found=()
  plan=
  for word in "\${words[@]}"; do
    _pullin_plain "$word"
    [[ $plain == '~/'* ]] && plain=$HOME/\${plain:2}
    [[ ($plain == *.yaml || $plain == *.yml) && -f $plain ]] && plan=$plain
  done
  [[ -n $plan ]] && return
  for word in ./*.yaml ./*.yml; do [[ -f $word ]] && found+=("$word"); done
  ((\${#found[@]} == 1)) && plan=\${found[0]}
}

# Offers the names of a plan, after $2.
_pullin_names() {
  local plan plain name names=()
  _pullin_plan
  [[ -n $plan ]] || return
  while IFS= read -r name; do names+=("$name"); done < <(command pullin completion bash --names "$1" --of "$plan" 2>/dev/null)
  _pullin_offer "$2" "\${names[@]}"
}

_pullin_taken() {
  case \${takes[0]} in
    words) _pullin_offer "$1" "\${takes[@]:1}" ;;
    names) _pullin_names "\${takes[1]}" "$1" ;;
    list)
      local before=$1
      [[ \${cur:\${#before}} == *,* ]] && before=\${cur%,*},
      _pullin_names "\${takes[1]}" "$before"
      compopt -o nospace 2>/dev/null
      ;;
    plans | files) _pullin_files "\${takes[0]}" ;;
  esac
}

_pullin() {
  local cur typed plain words=() word command= place=0 ended= i broken=
  local flags=() commands=() takes=()
  COMPREPLY=()
  # bash breaks words at = and :, and here they are put together again.
  for ((i = 0; i <= COMP_CWORD; i++)); do
    word=\${COMP_WORDS[i]}
    if [[ $i -gt 1 && ($broken == yes || $word == [=:]*) && -n $word ]]; then
      words[\${#words[@]} - 1]+=$word
    else
      words+=("$word")
    fi
    broken=
    [[ $word == *[=:] && $COMP_WORDBREAKS == *"\${word: -1}"* ]] && broken=yes
  done
  typed=\${words[\${#words[@]} - 1]}
  _pullin_plain "$typed"
  cur=$plain
  # Which command it is, and how many arguments there are already.
  for ((i = 1; i < \${#words[@]} - 1; i++)); do
    _pullin_plain "\${words[i]}"
    if [[ -z $ended && $plain == -- ]]; then
      ended=yes
    elif [[ -z $ended && $plain == -* ]]; then
      _pullin_option "$command $plain" && i=$((i + 1))
    else
      commands=()
      _pullin_command "$command" 0
      if ((\${#commands[@]} > 0)); then command+=\${command:+ }$plain; else place=$((place + 1)); fi
    fi
  done
  takes=()
  if [[ -z $ended && $i -ge \${#words[@]} ]]; then
    # What was typed belongs to the option before it.
    _pullin_plain "\${words[\${#words[@]} - 2]}"
    _pullin_option "$command $plain" && _pullin_taken ''
  elif [[ -z $ended && $cur == --*=* ]]; then
    _pullin_option "$command \${cur%%=*}" && {
      word=\${cur%%=*}=
      if [[ \${takes[0]} == plans || \${takes[0]} == files ]]; then
        cur=\${cur#*=}
        typed=
        _pullin_taken ''
        return
      fi
      _pullin_taken "$word"
    }
  elif [[ -z $ended && $cur == -* ]]; then
    _pullin_command "$command" 0
    _pullin_offer '' "\${flags[@]}"
  else
    commands=()
    _pullin_command "$command" $((place + 1))
    if ((\${#commands[@]} > 0)); then _pullin_offer '' "\${commands[@]}"; else _pullin_taken ''; fi
  fi
  # What stands before the last = or : stays as it is typed.
  if [[ $typed != [\\"\\']* && $typed == *[=:]* ]]; then
    word=\${typed%"\${typed##*[=:]}"}
    [[ $COMP_WORDBREAKS == *"\${word: -1}"* ]] || return
    for i in "\${!COMPREPLY[@]}"; do COMPREPLY[i]=\${COMPREPLY[i]#"$word"}; done
  fi
}

complete -o nosort -F _pullin pullin 2>/dev/null || complete -F _pullin pullin
`;
