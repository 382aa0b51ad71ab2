/** A plan as a bench sees it: cores, contacts, poles and what is fed. Reads the plan's data and shares no code with its circuit. */
import type { Plan } from '../../../src/plan/plan.ts';

export interface Lead {
  readonly a: string;
  readonly b: string;
  /** place in the file of the run whose cable it is of: a copy laid beside it has the same */
  readonly run: string;
  readonly colour: string;
  readonly link: boolean;
  /** m, one way; undefined where the plan does not say */
  readonly length: number | undefined;
}

/** What closes a contact: an input away from rest, a selector's position, a relay pulled in, or nothing (a fuse). */
export interface Contact {
  readonly part: string;
  readonly a: string;
  readonly b: string;
  readonly by: 'input' | 'relay' | 'fuse';
  /** the state of the part in which it is closed: `rest`, `moved`, a position, `out`, `in` */
  readonly closed: string;
}

export interface Source {
  readonly part: string;
  readonly poles: readonly string[];
  readonly direct: boolean;
  readonly mains: boolean;
}

export interface Sheet {
  readonly leads: readonly Lead[];
  /** outlet to what is plugged into it */
  readonly plugged: readonly (readonly [string, string])[];
  readonly contacts: readonly Contact[];
  readonly diodes: readonly { readonly part: string; readonly a: string; readonly k: string }[];
  readonly resistors: readonly (readonly [string, string])[];
  readonly sources: readonly Source[];
  /** relays, timers and boards with what pulls them in */
  readonly coils: readonly {
    readonly part: string;
    readonly ends: readonly [string, string];
    readonly input?: string;
    readonly low?: boolean;
  }[];
  readonly lamps: readonly {
    readonly part: string;
    readonly ends: readonly [string, string];
    readonly led: boolean;
  }[];
  readonly loads: readonly { readonly part: string; readonly lives: readonly string[] }[];
  /** inputs with their states, rest first */
  readonly inputs: readonly {
    readonly part: string;
    readonly kind: string;
    readonly states: readonly string[];
  }[];
}

const key = (part: string, terminal: string) => (terminal === '' ? part : `${part}.${terminal}`);

/** All that `plan` says of wiring, as the sheet. */
export function sheetOf(plan: Plan): Sheet {
  const s = {
    leads: [] as Lead[],
    plugged: [] as [string, string][],
    contacts: [] as Contact[],
    diodes: [] as { part: string; a: string; k: string }[],
    resistors: [] as [string, string][],
    sources: [] as Source[],
    coils: [] as { part: string; ends: [string, string]; input?: string; low?: boolean }[],
    lamps: [] as { part: string; ends: [string, string]; led: boolean }[],
    loads: [] as { part: string; lives: string[] }[],
    inputs: [] as { part: string; kind: string; states: string[] }[],
  };
  for (const run of plan.runs)
    for (const core of run.cores)
      s.leads.push({
        a: key(core.a.part, core.a.terminal),
        b: key(core.b.part, core.b.terminal),
        run: `${run.at.line}:${run.at.column}`,
        colour: core.colour,
        link: run.link,
        length: run.length,
      });
  for (const [name, part] of plan.parts) {
    const t = (terminal: string) => key(name, terminal);
    const names = plan.terminals.get(name)!.names;
    const pair = (a: string, b: string, closed: string, by: Contact['by'] = 'input') => {
      if (names.includes(a) && names.includes(b))
        s.contacts.push({ part: name, a: t(a), b: t(b), by, closed });
    };
    switch (part.kind) {
      case 'gate': {
        const moved = part.pressedWhen === 'open';
        pair('COM', 'NO', moved ? 'moved' : 'rest');
        pair('COM', 'NC', moved ? 'rest' : 'moved');
        break;
      }
      case 'switch':
      case 'button':
      case 'cutout':
        pair('COM', 'NO', 'moved');
        pair('COM', 'NC', 'rest');
        pair('95', '96', 'rest');
        pair('97', '98', 'moved');
        break;
      case 'selector':
        for (const p of part.positions) if (p !== 'off') pair('COM', p, p);
        break;
      case 'fuse':
        pair('1', '2', 'rest', 'fuse');
        break;
      case 'relay':
      case 'timer':
      case 'board':
        for (const pole of part.poles) {
          if (pole.make !== undefined) pair(pole.common, pole.make, 'in', 'relay');
          if (pole.break !== undefined) pair(pole.common, pole.break, 'out', 'relay');
        }
        if (part.kind === 'board')
          s.coils.push({ part: name, ends: [t('VCC'), t('GND')], input: t('IN'), low: part.input === 'low' });
        else s.coils.push({ part: name, ends: [t('A1'), t('A2')] });
        break;
      case 'diode':
        s.diodes.push({ part: name, a: t('A'), k: t('K') });
        break;
      case 'led':
        s.lamps.push({ part: name, ends: [t('A'), t('K')], led: true });
        break;
      case 'lamp':
        s.lamps.push({ part: name, ends: [t('1'), t('2')], led: false });
        break;
      case 'resistor':
        s.resistors.push([t('1'), t('2')]);
        break;
      case 'supply':
      case 'battery': {
        const direct = part.output.kind === 'dc';
        const poles = direct ? [t('+'), t('-')] : [t('~1'), t('~2')];
        s.sources.push({ part: name, poles, direct, mains: false });
        break;
      }
      case 'plug': {
        const poles = names.filter((n) => n !== 'PE').map(t);
        s.sources.push({ part: name, poles, direct: false, mains: true });
        break;
      }
      case 'motor':
      case 'load':
      case 'outlet': {
        if ('pluggedInto' in part && part.pluggedInto !== undefined)
          for (const n of names) s.plugged.push([key(part.pluggedInto, n), t(n)]);
        const phases = names.filter((n) => n !== 'PE' && n !== 'N');
        s.loads.push({ part: name, lives: (phases.length > 1 ? phases : [...phases, 'N']).map(t) });
        break;
      }
      default:
    }
    if (part.kind === 'gate' || part.kind === 'switch' || part.kind === 'button' || part.kind === 'cutout')
      s.inputs.push({ part: name, kind: part.kind, states: ['rest', 'moved'] });
    if (part.kind === 'selector')
      s.inputs.push({
        part: name,
        kind: part.kind,
        states: [part.rest, ...part.positions.filter((p) => p !== part.rest)],
      });
  }
  return s;
}

/** Terminals put together by what joins them, as a forest. */
export class Joined {
  readonly #up = new Map<string, string>();

  constructor(pairs: Iterable<readonly [string, string]>) {
    for (const [a, b] of pairs) this.join(a, b);
  }

  root(x: string): string {
    let at = x;
    for (let up = this.#up.get(at); up !== undefined; up = this.#up.get(at)) at = up;
    return at;
  }

  join(a: string, b: string): void {
    const [x, y] = [this.root(a), this.root(b)];
    if (x !== y) this.#up.set(x, y);
  }

  same(a: string, b: string): boolean {
    return this.root(a) === this.root(b);
  }
}

/** What the cores alone join, with what is plugged in. */
export function conductors(s: Sheet): Joined {
  return new Joined([...s.leads.map((l) => [l.a, l.b] as const), ...s.plugged]);
}
