/** The commands with their arguments and options as plain data, read off the program itself, for completion and manual. */
import type { Argument, Option } from 'commander';
import type { Verb } from '../line/verb.ts';

/** What goes where a placeholder stands: names out of a plan, a file, a few choices, or words of one's own. */
export type Takes =
  | { readonly from: 'plan'; readonly what: NameKind }
  | { readonly from: 'choices'; readonly choices: readonly string[] }
  | { readonly from: 'plans' | 'files' | 'findings' | 'nothing' };

/** Names that a plan has. */
export const NAME_KINDS = ['gates', 'switches', 'buttons', 'cutouts', 'terminals'] as const;
export type NameKind = (typeof NAME_KINDS)[number];

/** Which placeholder stands for what; one that is not here takes words of one's own. */
const PLACEHOLDERS: Readonly<Record<string, Takes>> = {
  plan: { from: 'plans' },
  file: { from: 'files' },
  id: { from: 'findings' },
  gate: { from: 'plan', what: 'gates' },
  gates: { from: 'plan', what: 'gates' },
  switches: { from: 'plan', what: 'switches' },
  buttons: { from: 'plan', what: 'buttons' },
  cutouts: { from: 'plan', what: 'cutouts' },
  terminals: { from: 'plan', what: 'terminals' },
  a: { from: 'plan', what: 'terminals' },
  b: { from: 'plan', what: 'terminals' },
};

export interface ArgumentShape {
  readonly name: string;
  readonly words: string;
  readonly required: boolean;
  /** may be given again and again */
  readonly many: boolean;
  readonly takes: Takes;
}

export interface OptionShape {
  readonly long: string;
  readonly short: string | undefined;
  readonly words: string;
  /** `columns`; undefined where it takes nothing */
  readonly placeholder: string | undefined;
  readonly takes: Takes;
  /** several names with commas between */
  readonly list: boolean;
  /** what it is taken to be where it is left out, as words */
  readonly taken: string | undefined;
  /** long names of what cannot stand beside it */
  readonly conflicts: readonly string[];
}

export interface CommandShape {
  /** `add gate` */
  readonly name: string;
  readonly summary: string;
  readonly description: string;
  readonly arguments: readonly ArgumentShape[];
  readonly options: readonly OptionShape[];
  /** what follows the options; undefined of a command that only holds others */
  readonly ending: Verb['ending'];
  readonly commands: readonly CommandShape[];
}

/** Names out of a plan only where the command takes one. */
function takesOf(name: string, choices: readonly string[] | undefined, verb: Verb): Takes {
  if (choices !== undefined) return { from: 'choices', choices };
  const hasPlan = verb.registeredArguments.some((one) => one.name() === 'plan');
  const takes = Object.hasOwn(PLACEHOLDERS, name) ? PLACEHOLDERS[name]! : undefined;
  return takes === undefined || (takes.from === 'plan' && !hasPlan) ? { from: 'nothing' } : takes;
}

function argumentShape(argument: Argument, verb: Verb): ArgumentShape {
  return {
    name: argument.name(),
    words: argument.description,
    required: argument.required,
    many: argument.variadic,
    takes: takesOf(argument.name(), argument.argChoices, verb),
  };
}

const camel = (long: string) => long.slice(2).replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());

function optionShapes(verb: Verb): OptionShape[] {
  const options = verb.createHelp().visibleOptions(verb);
  return options.map((option) => {
    const placeholder = /[<[]([^>\]]+)[>\]]/.exec(option.flags)?.[1];
    const taken: unknown = option.defaultValue;
    const takes: Takes =
      placeholder === undefined ? { from: 'nothing' } : takesOf(placeholder, option.argChoices, verb);
    return {
      long: option.long!,
      short: option.short,
      words: option.description,
      placeholder,
      takes,
      list: takes.from === 'plan' && placeholder !== 'gate',
      taken: typeof taken === 'string' ? taken : undefined,
      conflicts: conflictsOf(option, options),
    };
  });
}

/** Commander keeps what an option excludes by its property, and tells nobody of it but through the option itself. */
function conflictsOf(option: Option, all: readonly Option[]): string[] {
  const { conflictsWith = [] } = option as Option & { readonly conflictsWith?: readonly string[] };
  return all.flatMap(({ long }) => (long !== undefined && conflictsWith.includes(camel(long)) ? [long] : []));
}

/** `help` as a command: it takes the name of another. */
function helpShape(verb: Verb): CommandShape {
  const choices = verb.verbs.map((one) => one.name());
  const argument = { name: 'command', words: 'command', required: false, many: false } as const;
  return {
    name: 'help',
    summary: 'print the help of a command',
    description: '',
    arguments: [{ ...argument, takes: { from: 'choices', choices } }],
    options: [],
    ending: undefined,
    commands: [],
  };
}

/** The whole program with all that is in it; what is hidden stays so. */
export function programShape(program: Verb): CommandShape {
  const shape = shapeOf(program);
  return { ...shape, commands: [...shape.commands, helpShape(program)] };
}

function shapeOf(verb: Verb): CommandShape {
  return {
    name: verb.parent === null ? '' : verb.called.replace(/^\S+ /, ''),
    summary: verb.summary(),
    description: verb.description(),
    arguments: verb.registeredArguments.map((argument) => argumentShape(argument, verb)),
    options: optionShapes(verb),
    ending: verb.ending,
    commands: verb.verbs.map(shapeOf),
  };
}

/** All commands that do something, in the order of the help. */
export function leavesOf(shape: CommandShape): CommandShape[] {
  return shape.commands.length === 0 ? [shape] : shape.commands.flatMap(leavesOf);
}
