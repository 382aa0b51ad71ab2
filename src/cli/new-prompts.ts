/** The questions of `pullin new` in a terminal, one after the other, with a way back and out at each. */
import input from '@inquirer/input';
import type { AnswerProblem } from '../lists/new/answering.ts';
import type { NewPlan } from '../lists/new/new-plan.ts';
import type { Key, Known } from '../lists/new/questions.ts';
import { printable } from '../text/escape.ts';
import { wrap } from '../text/wrap.ts';
import { type Session, widthFor } from './io.ts';
import { type LookOptions, print } from './print.ts';

type Texts = Map<Key, string>;

/** What a person typed: an answer, a way back, or a way out. */
type Typed = { readonly text: string } | 'back' | 'quit';

const BACK = /^back$/i;
const QUIT = /^quit$/i;

/** Plain text: no colours and no signs that a screen reader spells out. */
const plain = (text: string) => text;
const THEME = {
  prefix: '',
  style: {
    answer: plain,
    message: plain,
    error: (text: string) => `! ${text}`,
    help: plain,
    highlight: plain,
    key: plain,
    defaultAnswer: (text: string) => `[${text}]`,
  },
};

class Asker {
  readonly #session: Session;
  readonly #width: number;

  constructor(session: Session, options: LookOptions) {
    this.#session = session;
    this.#width = Math.min(100, widthFor(options.width, session.io.stdout));
  }

  say(text: string): void {
    this.#session.out.write(`${wrap(text, this.#width).join('\n')}\n`);
  }

  /** One prompt; what is wrong with an answer is said and asked again. Ctrl-C and Ctrl-D quit. */
  async ask(
    message: string,
    usual: string | undefined,
    wrong: (text: string) => string | undefined,
  ): Promise<Typed> {
    const { io } = this.#session;
    const stop = new AbortController();
    const stdin = io.stdin as NodeJS.ReadStream;
    const onKey = (_: string | undefined, key: { ctrl?: boolean; name?: string } | undefined) => {
      if (key?.ctrl === true && key.name === 'd') stop.abort();
    };
    const onEnd = () => stop.abort();
    stdin.on('keypress', onKey);
    stdin.on('end', onEnd);
    try {
      const text = await input(
        {
          message,
          ...(usual === undefined ? {} : { default: usual }),
          theme: THEME,
          // What is typed is drawn again by the prompt, so it is made printable too.
          transformer: printable,
          validate: (typed) => {
            const trimmed = typed.trim();
            if (BACK.test(trimmed) || QUIT.test(trimmed)) return true;
            return wrong(trimmed) ?? true;
          },
        },
        { input: stdin, output: io.stdout as NodeJS.WriteStream, signal: stop.signal },
      );
      const trimmed = text.trim();
      return BACK.test(trimmed) ? 'back' : QUIT.test(trimmed) ? 'quit' : { text: trimmed };
    } catch (error) {
      if (error instanceof Error && /^(?:Exit|Abort)PromptError$/.test(error.name)) return 'quit';
      throw error;
    } finally {
      stdin.off('keypress', onKey);
      stdin.off('end', onEnd);
    }
  }
}

const INTRO =
  'There are sixteen questions at most. Answer each question and press Enter. Enter alone takes what stands in brackets. Type "back" for the question before, "quit" to leave; nothing is written before the end.';

export interface Asked {
  readonly made: NewPlan;
  /** a name for the file that `isThere` does not say is taken; undefined where the person quit */
  fileName(usual: string, isThere: (name: string) => boolean): Promise<string | undefined>;
}

/** Asks what is not answered yet, and again where no plan passes. Undefined where the person quit. */
export async function askAll(
  given: ReadonlyMap<Key, string>,
  make: (texts: Texts) => Promise<NewPlan | undefined>,
  options: LookOptions,
  session: Session,
): Promise<Asked | undefined> {
  const asker = new Asker(session, options);
  asker.say(INTRO);
  const texts: Texts = new Map(given);
  let at = 0;
  for (;;) {
    if (!(await questions(asker, given, texts, at))) return undefined;
    asker.say('');
    const made = await make(texts);
    if (made === undefined) return undefined;
    if (made.passes) return { made, fileName: (usual, isThere) => fileName(asker, usual, isThere) };
    const next = await afterFailure(asker, made, texts, options, session);
    if (next === 'quit') return undefined;
    if (next !== 'back') return { made: next, fileName: (usual, isThere) => fileName(asker, usual, isThere) };
    // Only what was not given beforehand can be asked again.
    at = 0;
  }

  /** Tells why no plan passes and offers the change that does. */
  async function afterFailure(
    a: Asker,
    made: NewPlan,
    all: Texts,
    look: LookOptions,
    s: Session,
  ): Promise<NewPlan | 'back' | 'quit'> {
    const { impossiblePlan } = await import('./late/new.ts');
    await print(impossiblePlan(made), look, s);
    const { nearest } = made;
    const words =
      nearest === null
        ? 'Type back to go through the answers again, or quit.'
        : 'Type yes to take that change, back to go through the answers again, or quit.';
    a.say(words);
    const typed = await a.ask('>', undefined, (text) =>
      nearest !== null && /^y(?:es)?$/i.test(text) ? undefined : words,
    );
    if (typed === 'back' || typed === 'quit') return typed;
    for (const { key, to } of nearest ?? []) all.set(key, to);
    if (all.get('layout') !== 'ring') all.delete('return');
    return (await make(all)) ?? 'quit';
  }
}

/** Goes through the questions from one of them on; false where the person quit. */
async function questions(
  asker: Asker,
  given: ReadonlyMap<Key, string>,
  texts: Texts,
  from: number,
): Promise<boolean> {
  const { KEYS, QUESTIONS, answerTo, isAsked } = await import('./late/new.ts');
  const keys = KEYS.filter((key) => !given.has(key));
  const asked: number[] = [];
  let at = from;
  while (at < keys.length) {
    const key = keys[at]!;
    const known = knownBefore(key, texts, KEYS, answerTo, isAsked);
    if (!isAsked(key, known)) {
      texts.delete(key);
      at += 1;
      continue;
    }
    const { ask, about, usual, choices } = QUESTIONS[key];
    const own = usual?.(known);
    asker.say(`\n${asked.length + 1}. ${ask}`);
    if (choices !== undefined) asker.say(`One of: ${choices.join(', ')}.`);
    asker.say(about);
    const before = texts.get(key);
    if (own !== undefined) asker.say(`Usual: ${own.text}, since ${own.because}.`);
    const typed = await asker.ask(`${key}:`, before ?? own?.text, (text) => {
      const answer = answerTo(key, text, known);
      return 'problem' in answer ? printable(answer.problem) : undefined;
    });
    if (typed === 'quit') return false;
    if (typed === 'back') {
      const previous = asked.pop();
      if (previous === undefined) asker.say('This is the first question.');
      else at = previous;
      continue;
    }
    texts.set(key, typed.text);
    asked.push(at);
    at += 1;
  }
  return true;
}

type AnswerTo = (
  key: Key,
  text: string,
  known: Known,
) => { readonly value: unknown } | { readonly problem: AnswerProblem['problem'] };

/** What the answers before a question come to. */
function knownBefore(
  key: Key,
  texts: Texts,
  keys: readonly Key[],
  answerTo: AnswerTo,
  isAsked: (key: Key, known: Known) => boolean,
): Known {
  const known: Record<string, unknown> = {};
  for (const other of keys.slice(0, keys.indexOf(key))) {
    const text = texts.get(other);
    if (text === undefined || !isAsked(other, known as Known)) continue;
    const answer = answerTo(other, text, known as Known);
    if ('value' in answer) known[other] = answer.value;
  }
  return known as Known;
}

async function fileName(
  asker: Asker,
  usual: string,
  isThere: (name: string) => boolean,
): Promise<string | undefined> {
  if (!isThere(usual)) return usual;
  let count = 2;
  const numbered = () => usual.replace(/\.yaml$/, `-${count}.yaml`);
  while (isThere(numbered())) count += 1;
  asker.say(`\n${printable(usual)} is there already. Which file is to be written?`);
  const typed = await asker.ask('file:', numbered(), (text) => {
    if (!/\.ya?ml$/i.test(text)) return 'a plan file ends in .yaml';
    return isThere(text) ? 'that one is there already' : undefined;
  });
  return typeof typed === 'string' ? undefined : typed.text;
}
