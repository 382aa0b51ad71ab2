/** What was seen and read, in plain lines that a person types and a log keeps; each is read back as it is written. */

import { positionWord, restWord } from '../../circuit/input-words.ts';
import { isOwn } from '../../circuit/positions.ts';
import { isMains } from '../../circuit/sides.ts';
import { splitTerminalKey, terminalKey } from '../../plan/terminal-key.ts';
import type { Study } from '../../study/study.ts';
import { hint } from '../../text/nearest-name.ts';
import { targetsOf } from '../faults/effect.ts';
import { marksOf } from '../probe-words.ts';
import { type Stance, stanceOf } from '../stance.ts';
import { type Answer, loopKind, type Observation, observe } from './observation.ts';
import { fail, LONGEST, type Parsed, reading, readingText, TOO_LONG } from './reading-form.ts';

/** One line read: what was looked at, and what came of it; undefined for one who is not sure. */
export interface Said {
  readonly observation: Observation;
  readonly answer: Answer | undefined;
}

const REST_WORDS = /^(?:everything )?(?:at )?rest$|^all shut$|^every gate shut$/i;
const FINGER = /\s+by finger$/i;

const RUNS = /^(?:runs|run|on|starts|started)$/i;
const STANDS = /^(?:off|stands|stands still|stays off|stops|stopped|does not (?:start|run)|dead)$/i;
const CHATTERS_WORDS = /^(?:chatters|hums|buzzes|clatters)$/i;
const IN = /^(?:in|pulls in|clicks|on)$/i;
const OUT = /^(?:out|stays out|silent|off|does not click)$/i;
const LIT = /^(?:lit|lights|live|on)$/i;
const DARK = /^(?:dark|does not light|dead|off)$/i;

export class PlainForm {
  private readonly loads: readonly string[];
  private readonly mark: (key: string) => string;
  private readonly range: 'dc' | 'ac';

  constructor(private readonly study: Study) {
    this.range = loopKind(study);
    this.loads = targetsOf(study);
    this.mark = marksOf(study.plan);
  }

  /** `planer open: runs`, `all shut: fan1 runs, fan2 off`, `planer open: K1 in`, `planer open by finger: runs`. */
  saw(text: string): Parsed<Said[]> {
    if (text.length > LONGEST) return fail(TOO_LONG);
    const colon = text.indexOf(':');
    if (colon < 0)
      return fail(
        `found "${text}", expected a position and what was seen, such as "${this.example()}: runs"`,
      );
    const [where, what] = [text.slice(0, colon).trim(), text.slice(colon + 1).trim()];
    const finger = FINGER.test(where);
    const stance = this.stance(where.replace(FINGER, ''));
    if (!stance.ok) return stance;
    const kind = finger ? 'finger' : 'look';
    if (what === '?')
      return {
        ok: true,
        value: [{ observation: observe({ kind, stance: stance.value }), answer: undefined }],
      };
    if (CHATTERS_WORDS.test(what))
      return {
        ok: true,
        value: [{ observation: observe({ kind, stance: stance.value }), answer: { by: 'chatters' } }],
      };
    return this.facts(what, stance.value, kind);
  }

  /** `K1.A1 K1.A2 = 0 V with planer open`, `K1.A1 PS1.- = OL`, `F1.1 F1.2 = beeps`. */
  reading(text: string): Parsed<Said> {
    if (text.length > LONGEST) return fail(TOO_LONG);
    const match = /^(\S+)\s+(\S+)\s*=\s*(.+?)(?:\s+with\s+(.+))?$/i.exec(text.trim());
    if (match === null)
      return fail(
        `found "${text}", expected two terminals and what the meter showed, such as "K1.A1 K1.A2 = 12 V with ${this.example()}"`,
      );
    const ends = [match[1]!, match[2]!].map((t) => this.terminal(t));
    for (const end of ends) if (!end.ok) return end;
    const [a, b] = ends.map((e) => (e as { value: string }).value) as [string, string];
    const stance = this.stance(match[4] ?? 'at rest');
    if (!stance.ok) return stance;
    const read = reading(match[3]!.trim());
    if (!read.ok) return read;
    const pair = { a, b, cost: 1, far: false, main: false };
    const { kind, answer, range } = read.value;
    const live = kind === 'volts' ? [a, b].find((end) => this.isMains(end)) : undefined;
    if (live !== undefined)
      return fail(
        `${this.mark(live)} is on mains, and no probe goes on live mains; say what a lamp does in an outlet, or give ohms with everything unplugged`,
      );
    const at = { stance: stance.value, pair };
    const observation =
      kind === 'ohms' ? observe({ kind, ...at }) : observe({ kind, ...at, range: range ?? this.range });
    return { ok: true, value: { observation, answer } };
  }

  /** The line that `saw` and `reading` read back; begins with the word for which of them it is. */
  line({ observation: o, answer }: Said): string {
    if (o.kind === 'volts' || o.kind === 'ohms') {
      const where =
        o.stance.moved.length + o.stance.first.length === 0 ? '' : ` with ${this.positions(o.stance)}`;
      const range = o.kind === 'volts' ? o.range : undefined;
      return `reading ${this.mark(o.pair.a)} ${this.mark(o.pair.b)} = ${readingText(range, answer)}${where}`;
    }
    const where = `${this.positions(o.stance)}${o.kind === 'finger' ? ' by finger' : ''}`;
    return `saw ${where}: ${this.sawText(o, answer)}`;
  }

  /** `planer open`, `all shut`, `planer open after start pressed`. */
  positions({ moved, first }: Stance): string {
    const of = (list: readonly number[]) =>
      list
        .map((i) => {
          const { part, kind, position } = this.study.wired.inputs[i]!;
          return `${part} ${positionWord(kind, position)}`;
        })
        .join(', ');
    const here = moved.length === 0 ? 'all shut' : of(moved);
    return first.length === 0 ? here : `${here} after ${of(first)}`;
  }

  private example(): string {
    const gate = this.study.wired.inputs.find((i) => i.kind === 'gate');
    return gate === undefined ? 'all shut' : `${gate.part} open`;
  }

  private sawText(o: Exclude<Observation, { kind: 'volts' | 'ohms' }>, answer: Answer | undefined): string {
    if ('part' in o) {
      const words = { click: ['in', 'out'], lit: ['lit', 'dark'], lamp: ['live', 'dead'] }[o.kind];
      if (answer === undefined) return `${o.part} ?`;
      if (answer.by === 'chatters') return `${o.part} chatters`;
      return `${o.part} ${answer.by === 'yes' && answer.yes ? words[0] : words[1]}`;
    }
    if (answer === undefined) return '?';
    if (answer.by !== 'loads') return 'chatters';
    const state = (load: string) => (answer.on.includes(load) ? 'runs' : 'off');
    if (this.loads.length === 1) return state(this.loads[0]!);
    return answer.of.map((load) => `${load} ${state(load)}`).join(', ');
  }

  private stance(text: string): Parsed<Stance> {
    // Neither a part nor a selector's position that is called `after`.
    const [here, before, more] = text.split(/(?<!,|\bat)\s+after\s+/i) as [string, string?, string?];
    if (more !== undefined) return fail(`found "${text}", expected "after" once at most`);
    const moved = this.moved(here);
    if (!moved.ok) return moved;
    const first = before === undefined ? { ok: true as const, value: [] } : this.moved(before);
    return first.ok ? { ok: true, value: stanceOf(moved.value, first.value) } : first;
  }

  private moved(text: string): Parsed<number[]> {
    const trimmed = text.trim();
    if (REST_WORDS.test(trimmed)) return { ok: true, value: [] };
    const moved: number[] = [];
    const told = new Set<string>();
    for (const one of trimmed.split(/\s*,\s*|\s+and\s+/)) {
      const found = this.input(one);
      if (!found.ok) return found;
      const [name] = one.split(/\s/) as [string];
      if (told.has(name)) return fail(`found "${trimmed}", which names ${name} twice`);
      told.add(name);
      if (found.value !== undefined) moved.push(found.value);
    }
    return { ok: true, value: moved };
  }

  /** Number of the input that is moved; undefined for one that is said to be at rest. */
  private input(text: string): Parsed<number | undefined> {
    const [name, ...rest] = text.trim().split(/\s+/);
    const word = rest.join(' ').toLowerCase();
    const { inputs } = this.study.wired;
    const own = inputs.filter((i) => i.part === name);
    if (own.length === 0)
      return fail(
        `no gate, switch, button or cut-out is called "${name}"${hint(
          name ?? '',
          inputs.map((i) => i.part),
        )}`,
      );
    const [first] = own;
    const at = own.find((i) => positionWord(i.kind, i.position).toLowerCase() === word);
    if (at !== undefined) return { ok: true, value: at.index };
    const resting = restWord(this.study.plan, name!, first!.kind);
    if ([resting.toLowerCase(), `at ${resting.toLowerCase()}`].includes(word))
      return { ok: true, value: undefined };
    const words = [...own.map((i) => positionWord(i.kind, i.position)), resting];
    return fail(`found "${text.trim()}", expected ${words.map((w) => `${name} ${w}`).join(' or ')}`);
  }

  private facts(what: string, stance: Stance, kind: 'look' | 'finger'): Parsed<Said[]> {
    const on: string[] = [];
    const of: string[] = [];
    const said: Said[] = [];
    for (const one of what.split(/\s*,\s*/)) {
      const [first, ...rest] = one.split(/\s+/) as [string, ...string[]];
      const bare = RUNS.test(one) || STANDS.test(one);
      const named = !bare && this.study.plan.parts.has(first) ? first : undefined;
      const state = named === undefined ? one : rest.join(' ');
      if (named !== undefined && !this.loads.includes(named)) {
        const fact = this.fact(named, state, stance);
        if (!fact.ok) return fact;
        said.push(fact.value);
        continue;
      }
      if (!RUNS.test(state) && !STANDS.test(state)) return fail(this.unread(one, first));
      const loads = named === undefined ? this.loads : [named];
      const twice = loads.find((load) => of.includes(load));
      if (twice !== undefined) return fail(`found "${what}", which tells of ${twice} twice`);
      of.push(...loads);
      if (RUNS.test(state)) on.push(...loads);
    }
    if (of.length > 0) said.push({ observation: observe({ kind, stance }), answer: { by: 'loads', on, of } });
    return { ok: true, value: said };
  }

  /** What is wrong with something seen that begins with a word which names no relay, lamp or outlet. */
  private unread(one: string, first: string): string {
    const { parts } = this.study.plan;
    const near = parts.has(first) || !/\s/.test(one) ? '' : hint(first, parts.keys());
    return `found "${one}", expected runs, off or chatters${near}`;
  }

  /** A relay that pulls in, a lamp that gives light, an outlet in which a lamp lights. */
  private fact(part: string, state: string, stance: Stance): Parsed<Said> {
    const { plan, wired } = this.study;
    const { kind } = plan.parts.get(part)!;
    const relay = wired.relays.some((r) => isOwn(r) && r.part === part);
    const lamp = kind === 'lamp' || kind === 'led';
    if (!relay && !lamp && kind !== 'outlet' && kind !== 'plug')
      return fail(`${part} is nothing that can be seen to work; name a load, a relay, a lamp or an outlet`);
    const observation = observe({ kind: relay ? 'click' : lamp ? 'lit' : 'lamp', stance, part });
    const said = (answer: Answer | undefined): Parsed<Said> => ({ ok: true, value: { observation, answer } });
    if (state === '?') return said(undefined);
    if (relay && CHATTERS_WORDS.test(state)) return said({ by: 'chatters' });
    const [yes, no] = relay ? [IN, OUT] : [LIT, DARK];
    if (yes.test(state) || no.test(state)) return said({ by: 'yes', yes: yes.test(state) });
    const words = relay ? 'in, out or chatters' : lamp ? 'lit or dark' : 'live or dead';
    return fail(`found "${part}${state === '' ? '' : ` ${state}`}", expected ${part} ${words}`);
  }

  private isMains(key: string): boolean {
    const { circuit, sides } = this.study;
    return isMains(sides, circuit.netOf.get(key));
  }

  private terminal(text: string): Parsed<string> {
    const { part, terminal } = splitTerminalKey(text);
    const marks = this.study.plan.terminals.get(part);
    if (marks === undefined)
      return fail(`no part is called "${part}"${hint(part, this.study.plan.parts.keys())}`);
    const found = marks.find(terminal);
    if (found === undefined)
      return fail(`${part} has no terminal "${terminal}"${hint(terminal, marks.marks()) || '.'}`);
    return { ok: true, value: terminalKey(part, found) };
  }
}
