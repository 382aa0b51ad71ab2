/** The manual page: the help of every command, with what the help has no room for. */
import type { Verb } from '../line/verb.ts';
import { MEANINGS, STATUS, statusesOf } from '../status.ts';
import { literal, macro, roff, sentences } from './roff.ts';
import { type ArgumentShape, type CommandShape, leavesOf, type OptionShape, programShape } from './tree.ts';

/** Bold and italic words, and what stands between them as it is. */
const bold = (text: string): string => `\\fB${roff(text)}\\fR`;
const italic = (text: string): string => `\\fI${roff(text)}\\fR`;

function argumentWord({ name, required, many }: ArgumentShape): string {
  const word = `${italic(name)}${many ? '\\ ...' : ''}`;
  return required ? word : `[${word}]`;
}

function synopsis({ name, arguments: arguments_ }: CommandShape): string {
  return [bold(`pullin ${name}`), `[${italic('options')}]`, ...arguments_.map(argumentWord)].join(' ');
}

function optionLines({ long, short, words, placeholder, takes, taken }: OptionShape): string[] {
  const flags = [...(short === undefined ? [] : [bold(short)]), bold(long)].join(', ');
  const value = placeholder === undefined ? '' : ` ${italic(placeholder)}`;
  const choices = takes.from === 'choices' ? ` One of ${takes.choices.join(', ')}.` : '';
  const left = taken === undefined ? '' : ` Without it ${taken}.`;
  return ['.TP', `${flags}${value}`, sentences(`${sentence(words)}${choices}${left}`)];
}

/** With a capital letter in front and a full stop behind. */
function sentence(text: string): string {
  const whole = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.?!]$|[.?!] \([^)]*\)$/.test(whole) ? whole : `${whole}.`;
}

function commandLines(shape: CommandShape): string[] {
  const { name, description, arguments: arguments_, options, ending } = shape;
  return [
    macro('SS', `pullin ${name}`),
    synopsis(shape),
    '.PP',
    sentences(description),
    ...arguments_.flatMap((argument) => ['.TP', italic(argument.name), sentences(sentence(argument.words))]),
    ...options.filter(({ long }) => long !== '--help').flatMap(optionLines),
    ...(ending?.notes ?? []).flatMap((note) => ['.PP', sentences(note)]),
    ...(ending === undefined
      ? []
      : [
          '.PP',
          sentences(
            `Exit status: ${statusesOf(ending.statuses)
              .map(([n, words]) => `${n} ${words}`)
              .join('; ')}.`,
          ),
        ]),
  ];
}

const ENVIRONMENT: readonly (readonly [string, string])[] = [
  ['NO_COLOR', 'Set to anything, no text is coloured.'],
  [
    'FORCE_COLOR',
    'Set to anything but 0 or false, text is coloured in a pipe as well. It goes before NO_COLOR, and --color before both.',
  ],
  ['TERM', 'Where it is dumb, no text is coloured unless that is asked for.'],
  ['LC_ALL, LC_CTYPE, LANG', 'On a terminal of the locale C or POSIX plain ASCII is printed.'],
  ['CHROMIUM', 'The browser that prints the PDF of pullin sheet.'],
  [
    'SOURCE_DATE_EPOCH',
    'Seconds since 1970: the date on drawings and sheets, for files that are to come out the same.',
  ],
  ['PULLIN_DEBUG', 'Set to 1, a mistake of pullin itself is told with where it happened.'],
];

/** Printed where no check has been made yet, so it names all that a reader might do with what is here. */
const CAUTION =
  'The collector side of such a circuit is mains, and mains kills. pullin judges a plan, not what was built of it: the plan may be wrong, and so may pullin. Local codes and the instructions of each part come first, and mains work is for whoever is licensed for it. Pull every plug before anything is opened, and prove with a meter that it is dead.';

/** The page in the man macros, section 1; `version` stands in its foot. */
export function manualPage(program: Verb, version: string): string {
  const shape = programShape(program);
  const leaves = leavesOf(shape).filter(({ name }) => name !== 'help');
  const examples = leaves.flatMap(({ ending }) => ending?.examples ?? []);
  const lines = [
    '.\\" Made from the help of the command by "npm run build".',
    macro('TH', 'PULLIN', '1', '', `pullin ${version}`, 'pullin'),
    '.SH NAME',
    'pullin \\- check, before soldering, the wiring plan of a dust collector',
    'started by switches on its blast gates',
    '.SH SYNOPSIS',
    ...leaves.flatMap((leaf, i) => [...(i === 0 ? [] : ['.br']), synopsis(leaf)]),
    '.SH DESCRIPTION',
    sentences(shape.description),
    sentences(
      'A plan is a YAML file with the parts, the runs of cable between them, and what is to start what; "pullin new" makes one, and "pullin schema" prints the schema that an editor can use.',
    ),
    '.PP',
    sentences(`Caution: ${CAUTION}`),
    '.SH COMMANDS',
    ...leaves.flatMap(commandLines),
    '.SH EXIT STATUS',
    'Each command says above what it can end with.',
    ...Object.entries(STATUS).flatMap(([name, number]) => [
      '.TP',
      bold(`${number}`),
      sentences(sentence(MEANINGS[name as keyof typeof STATUS])),
    ]),
    '.SH ENVIRONMENT',
    ...ENVIRONMENT.flatMap(([name, words]) => ['.TP', bold(name), sentences(words)]),
    '.SH EXAMPLES',
    '.EX',
    ...examples.flatMap((example) => example.split('\n').map(literal)),
    '.EE',
    '.SH SEE ALSO',
    sentences(
      'README.md and examples/README.md of the package, with a tour; schemas/README.md, the reference of the plan and every finding.',
    ),
  ];
  return `${lines.join('\n')}\n`;
}
