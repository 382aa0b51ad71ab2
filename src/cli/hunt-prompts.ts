/** A hunt in a terminal: one question after the other, plain lines that a screen reader reads as they come. */
import { createInterface, type Interface } from 'node:readline';
import type { Hunt } from '../meter/hunt/hunt.ts';
import type { HuntTold } from '../meter/hunt/hunt-model.ts';
import type { Answer, Observation } from '../meter/hunt/observation.ts';
import type { PlainForm } from '../meter/hunt/plain-form.ts';
import { printable } from '../text/escape.ts';
import { wrap } from '../text/wrap.ts';
import type { HuntLog } from './hunt-log.ts';
import { type Session, widthFor } from './io.ts';
import { type LookOptions, print } from './print.ts';

/** What a person typed. */
type Typed =
  | { readonly by: 'answer'; readonly answer: Answer | undefined }
  | { readonly by: 'line'; readonly text: string }
  | { readonly by: 'undo' }
  | { readonly by: 'quit' };

const COMPLAINT =
  'First, what does it do that it should not? Type it as a position and what is seen, such as "planer open: off" or "all shut: runs"; or Enter to be asked.';
const MORE = 'Anything else that was seen? Type it the same way, or Enter for nothing more.';
const LEAVING = 'Left there.';
const NO_MORE = /^(?:nothing more|nothing|no|none|that is all)$/i;
const QUIT = /^(?:quit|q)$/i;

/** Asks until the hunt ends or is left. What was answered is in the log by then. */
export async function huntInTerminal(
  hunt: Hunt,
  log: HuntLog | undefined,
  options: LookOptions,
  session: Session,
): Promise<void> {
  await new Asking(hunt, log, options, session).run();
}

class Asking {
  private readonly lines: Interface;
  private open = true;
  /** lines that were typed before they were asked for, such as several that were pasted at once */
  private readonly ahead: string[] = [];
  private wake: () => void = () => undefined;
  private form!: PlainForm;

  constructor(
    private readonly hunt: Hunt,
    private readonly log: HuntLog | undefined,
    private readonly options: LookOptions,
    private readonly session: Session,
  ) {
    // The terminal itself keeps the line that is typed, so that nothing here has to move the cursor.
    this.lines = createInterface({ input: session.io.stdin as NodeJS.ReadStream, terminal: false });
    this.lines.on('line', (text) => {
      this.ahead.push(text);
      this.wake();
    });
    this.lines.on('close', () => {
      this.open = false;
      this.wake();
    });
  }

  async run(): Promise<void> {
    const late = await import('./late/hunt.ts');
    this.form = new late.PlainForm(this.hunt.study);
    const { io } = this.session;
    const leave = () => this.lines.close();
    io.once?.('SIGINT', leave);
    io.once?.('SIGTERM', leave);
    try {
      await print([...late.careBlocks()], this.options, this.session);
      if (this.hunt.answered.length === 0 && !(await this.complaint())) return this.leaving();
      while (this.open) {
        const { told, next } = late.standingOf(this.hunt);
        if (!(await this.turn(told, next))) break;
      }
    } finally {
      io.off?.('SIGINT', leave);
      io.off?.('SIGTERM', leave);
      this.lines.close();
      await this.log?.written();
    }
  }

  /** One question and its answer, or the end; false to leave. */
  private async turn(told: HuntTold, next: Observation | undefined): Promise<boolean> {
    const late = await import('./late/hunt.ts');
    if (next === undefined) {
      await print(late.standBlocks(told), this.options, this.session);
      return this.end(told);
    }
    this.standing(told);
    this.say(told.next!.question);
    const typed = await this.ask(`${wanted(next)} `, next);
    return this.take(typed, next);
  }

  private standing({ agreeing, answers, suspects, fits, doubtful, danger }: HuntTold): void {
    if (answers.length === 0) return;
    if (danger !== null) this.say(danger);
    const first = suspects[0]?.faults.map((f) => f.text).join(', and ');
    this.say(
      `${agreeing === 0 ? 'Nothing agrees' : `${agreeing} suspects agree`} with all of it; the likeliest: ${first}.`,
    );
    if (fits === 'two faults') this.say('No single fault agrees with all of it; two at once do.');
    if (doubtful !== null)
      this.say(
        `The answer that most speaks against is "${answers[doubtful - 1]}"; look again, and type the line anew if it was otherwise.`,
      );
  }

  /** What was seen before anything is asked, as much of it as there is; false to leave. */
  private async complaint(): Promise<boolean> {
    this.say(COMPLAINT);
    let told = false;
    for (;;) {
      const text = await this.line(told ? 'seen, or Enter: ' : 'seen: ');
      if (text === undefined || QUIT.test(text)) return false;
      if (text === '' || NO_MORE.test(text)) return true;
      if (/^undo$/i.test(text)) this.takeBack();
      else if (this.said(text)) {
        if (!told) this.say(MORE);
        told = true;
      }
    }
  }

  private takeBack(): void {
    if (this.hunt.undo()) this.log?.say('undo');
    else this.say('There is nothing to take back.');
  }

  /** Takes in a line in plain form; false, with what is wrong, where it cannot be read. */
  private said(text: string): boolean {
    // `saw` is a word for what follows it in a log, and a gate may well be called that.
    const bare = text.replace(/^(?:saw|reading) /, '');
    const asReading = /^\S+\s+\S+\s*=/.test(bare);
    const whole = asReading ? this.form.reading(text) : this.form.saw(text);
    const read =
      whole.ok || bare === text ? whole : asReading ? this.form.reading(bare) : this.form.saw(bare);
    if (!read.ok) {
      this.say(`! ${read.problem}`);
      return false;
    }
    for (const one of [read.value].flat()) {
      this.hunt.answer(one.observation, one.answer);
      this.log?.say(this.form.line(one));
    }
    return true;
  }

  private async take(typed: Typed, observation: Observation): Promise<boolean> {
    switch (typed.by) {
      case 'quit':
        this.leaving();
        return false;
      case 'undo':
        this.takeBack();
        return true;
      case 'line':
        this.said(typed.text);
        return true;
      case 'answer':
        this.hunt.answer(observation, typed.answer);
        this.log?.say(this.form.line({ observation, answer: typed.answer }));
        return true;
    }
  }

  /** Asks whether what was done helped; false where the hunt is over. */
  private async end(told: HuntTold): Promise<boolean> {
    if (told.mended !== null) return false;
    if (told.end === null) {
      this.say('Nothing is left to suspect. What is at fault is none of what is hunted for here.');
      return false;
    }
    for (;;) {
      const text = await this.line('Did that put it right? yes, no, undo or quit: ');
      if (text === undefined || QUIT.test(text)) return false;
      if (/^(?:y|yes|mended)$/i.test(text)) {
        await this.mended(told.end.cure);
        return false;
      }
      if (/^undo$/i.test(text)) {
        this.takeBack();
        return true;
      }
      if (isLine(text) && this.said(text)) return true;
      if (!/^(?:n|no)$/i.test(text)) continue;
      const done = await this.done(told.end.cure);
      if (done === undefined) return false;
      const out = this.hunt
        .group()
        .filter((r) => r.suspect.faults.some((f) => done.some((c) => c.startsWith(`${f.text}: `))));
      if (out.length > 0) this.hunt.cleared(out.map((r) => r.suspect));
      this.log?.noHelp(out.map((r) => r.suspect.faults.map((f) => f.text).join(', and ')));
      return true;
    }
  }

  /** Says what put it right: of several cures those that were done. */
  private async mended(cures: readonly string[]): Promise<void> {
    const done = await this.done(cures);
    if (done === undefined) return;
    const of = new Set(this.hunt.group().flatMap((r) => r.suspect.faults));
    const by = [...of].filter((f) => done.some((c) => c.startsWith(`${f.text}: `))).map((f) => f.text);
    this.hunt.putRight(by.join('; or '));
    this.log?.say(`mended: ${by.join('; or ')}`);
    this.say(`Mended: ${by.join('; or ')}.`);
  }

  /** Which of the cures were tried; what was not done is not struck off. Undefined where there is no more to come. */
  private async done(cures: readonly string[]): Promise<readonly string[] | undefined> {
    if (cures.length === 1) return cures;
    for (;;) {
      const text = await this.line('Which of these did you do? Their numbers, or all: ');
      if (text === undefined || QUIT.test(text)) return undefined;
      if (/^all$/i.test(text)) return cures;
      const numbers = text.split(/[\s,]+/).map(Number);
      if (numbers.every((n) => Number.isInteger(n) && n >= 1 && n <= cures.length))
        return numbers.map((n) => cures[n - 1]!);
      this.say(`! found "${text}", expected numbers from 1 to ${cures.length}, or all`);
    }
  }

  private async ask(prompt: string, observation: Observation): Promise<Typed> {
    for (;;) {
      const text = await this.line(prompt);
      if (text === undefined || QUIT.test(text)) return { by: 'quit' };
      if (/^undo$/i.test(text)) return { by: 'undo' };
      if (isLine(text)) return { by: 'line', text };
      const late = await import('./late/hunt.ts');
      const answer = late.answerTo(this.hunt, observation, text);
      if (answer.ok) return { by: 'answer', answer: answer.value };
      this.say(`! ${answer.problem}`);
    }
  }

  /** One line as typed; undefined where there is no more to come, by Ctrl-C or Ctrl-D. */
  private async line(prompt: string): Promise<string | undefined> {
    this.session.out.write(prompt);
    while (this.ahead.length === 0 && this.open) await new Promise<void>((done) => (this.wake = done));
    const text = this.ahead.shift();
    if (text === undefined) this.session.out.write('\n');
    return text?.trim();
  }

  private leaving(): void {
    this.say(this.log === undefined ? LEAVING : `${LEAVING} The log has all of it.`);
  }

  private say(text: string): void {
    const width = Math.min(100, widthFor(this.options.width, this.session.io.stdout));
    this.session.out.write(`${wrap(printable(text), width).join('\n')}\n`);
  }
}

/** Whether it is no answer to what was asked, but a line in plain form. */
function isLine(text: string): boolean {
  return text.includes(':') || text.includes('=');
}

/** What may be typed to a question. */
function wanted({ kind }: Observation): string {
  if (kind === 'volts') return 'volts (? undo quit):';
  if (kind === 'ohms') return 'ohms, OL or beeps (? undo quit):';
  return 'yes, no or chatters (? undo quit):';
}
