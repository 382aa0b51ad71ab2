import type { MotorPart, Part, Plan, PlugPart } from '../plan/plan.ts';
import { terminalKey } from '../plan/terminal-key.ts';
import type {
  Circuit,
  Condition,
  Consumer,
  ContactEdge,
  DiodeEdge,
  Input,
  Passive,
  Rail,
  Relay,
  Sense,
  Source,
} from './circuit.ts';
import { conductorNames, joinTerminals, type Rewiring, type Wire } from './nets.ts';
import { type CoilThresholds, coilThresholds, isContactor } from './thresholds.ts';

const ALWAYS: Condition = { by: 'always' };

/** A circuit whose cores are conductors of their own instead of joining their two ends. */
export interface WiredCircuit extends Circuit {
  readonly wires: readonly Wire[];
}

/** Builds the circuit of a plan. Throws nothing for a plan that was read without errors. */
export function buildCircuit(plan: Plan, rewiring?: Rewiring): Circuit {
  return assemble(plan, joinTerminals(plan, rewiring));
}

/** The same circuit with every core apart. Inputs, relays, contacts and elements come in the same order. */
export function buildWiredCircuit(plan: Plan): WiredCircuit {
  const wired = joinTerminals(plan, undefined, true);
  return { ...assemble(plan, wired), wires: wired.wires() };
}

function assemble(plan: Plan, wired: ReturnType<typeof joinTerminals>): Circuit {
  const { net } = wired;
  const inputs: Input[] = [];
  const contacts: ContactEdge[] = [];
  const diodes: DiodeEdge[] = [];
  const passives: Passive[] = [];
  const sources: Source[] = [];
  const relays: Relay[] = [];
  const consumers: Consumer[] = [];

  const touch = (part: Part, terminal: string) => net(terminalKey(part.name, terminal));
  const contact = (part: Part, a: string, b: string, when: Condition, pole = 0) => {
    contacts.push({ a: touch(part, a), b: touch(part, b), when, part: part.name, terminals: [a, b], pole });
  };
  const addInput = (part: Part, kind: Input['kind'], position?: string): number => {
    inputs.push({
      index: inputs.length,
      part: part.name,
      kind,
      ...(position === undefined ? {} : { position }),
    });
    return inputs.length - 1;
  };
  const addSwitch = (part: Part & { kind: Input['kind'] }, makes: boolean) => {
    // `makes`: the working position closes COM-NO. A gate whose shut slide presses the lever is the reverse.
    const input = addInput(part, part.kind);
    contact(part, 'COM', 'NO', { by: 'input', input, value: makes });
    contact(part, 'COM', 'NC', { by: 'input', input, value: !makes });
    if (
      part.kind === 'cutout' &&
      [...wired.used].some((key) => OVERLOAD.some((t) => key === `${part.name}.${t}`))
    ) {
      contact(part, '95', '96', { by: 'input', input, value: false });
      contact(part, '97', '98', { by: 'input', input, value: true });
    }
  };
  const addPoles = (part: Part & { kind: 'relay' | 'timer' | 'board' }, relay: number) => {
    for (const pole of part.poles) {
      if (pole.make !== undefined)
        contact(part, pole.common, pole.make, { by: 'relay', relay, value: true }, pole.index);
      if (pole.break !== undefined)
        contact(part, pole.common, pole.break, { by: 'relay', relay, value: false }, pole.index);
    }
  };

  for (const part of plan.parts.values()) {
    switch (part.kind) {
      case 'gate':
        addSwitch(part, part.pressedWhen === 'open');
        break;
      case 'switch':
      case 'button':
      case 'cutout':
        addSwitch(part, true);
        break;
      case 'selector': {
        const others = part.positions.filter((position) => position !== part.rest);
        const first = inputs.length;
        for (const position of others) addInput(part, 'selector', position);
        others.forEach((position, i) => {
          if (position !== 'off')
            contact(part, 'COM', position, { by: 'input', input: first + i, value: true });
        });
        // The resting position is "none of the others"; its contact carries that as a list of literals below.
        if (part.rest !== 'off') {
          let from = touch(part, 'COM');
          others.forEach((_, i) => {
            const to = i === others.length - 1 ? touch(part, part.rest) : wired.fresh();
            contacts.push({
              a: from,
              b: to,
              when: { by: 'input', input: first + i, value: false },
              part: part.name,
              terminals: ['COM', part.rest],
              pole: 0,
            });
            from = to;
          });
        }
        break;
      }
      case 'relay':
      case 'timer': {
        const index = relays.length;
        const limits = coilThresholds(part.coil, part.polarised, isContactor(part));
        const a = touch(part, 'A1');
        const b = touch(part, 'A2');
        const senses: Sense[] = [coilSense(a, b, limits)];
        if (part.kind === 'timer' && (wired.used.has(`${part.name}.T1`) || wired.used.has(`${part.name}.T2`)))
          senses.push({ by: 'joined', a: touch(part, 'T1'), b: touch(part, 'T2') });
        relays.push({ index, part: part.name, senses });
        passives.push({ a, b, part: part.name, what: 'coil' });
        if (part.coil.suppressor === 'diode' && part.coil.rated.kind === 'dc')
          diodes.push({ anode: b, cathode: a, part: part.name, drop: 0.7, load: false, builtIn: true });
        addPoles(part, index);
        break;
      }
      case 'board': {
        const index = relays.length;
        const vcc = touch(part, 'VCC');
        const gnd = touch(part, 'GND');
        const pin = touch(part, 'IN');
        const rated = part.supply.volts;
        const threshold = part.threshold ?? rated / 2;
        const pullIn = part.coil
          ? coilThresholds(part.coil, true, isContactor(part))
          : { pullIn: 0.75 * rated, dropOut: 0.1 * rated };
        const needed = part.input === 'low' ? rated - threshold : threshold;
        const [from, to] = part.input === 'low' ? [vcc, pin] : [pin, gnd];
        relays.push({
          index,
          part: part.name,
          senses: [
            {
              by: 'volts',
              a: vcc,
              b: gnd,
              pullIn: pullIn.pullIn,
              dropOut: pullIn.dropOut,
              polarised: true,
              what: 'supply',
            },
            { by: 'volts', a: from, b: to, pullIn: needed, dropOut: needed, polarised: true, what: 'input' },
          ],
        });
        passives.push({ a: vcc, b: gnd, part: part.name, what: 'coil' });
        passives.push({ a: from, b: to, part: part.name, what: 'input' });
        addPoles(part, index);
        break;
      }
      case 'diode':
        diodes.push({
          anode: touch(part, 'A'),
          cathode: touch(part, 'K'),
          part: part.name,
          drop: 0.7,
          load: false,
          builtIn: false,
        });
        break;
      case 'led':
        diodes.push({
          anode: touch(part, 'A'),
          cathode: touch(part, 'K'),
          part: part.name,
          drop: part.forward ?? 2,
          load: true,
          builtIn: false,
          amps: part.current ?? 0.02,
        });
        break;
      case 'resistor':
      case 'lamp':
        passives.push({ a: touch(part, '1'), b: touch(part, '2'), part: part.name, what: part.kind });
        break;
      case 'fuse':
        contact(part, '1', '2', ALWAYS);
        break;
      case 'supply': {
        const [p, q] = part.output.kind === 'dc' ? ['+', '-'] : ['~1', '~2'];
        sources.push({
          index: sources.length,
          part: part.name,
          kind: part.output.kind,
          mains: false,
          rails: [rail(touch(part, p!), p!, part.output.volts), rail(touch(part, q!), q!, 0)],
          feed: supplyFeed(part.name, part.fedFrom, wired.used, net),
        });
        if (sources.at(-1)!.feed.by === 'nets') {
          const feed = sources.at(-1)!.feed as { a: number; b: number };
          passives.push({ a: feed.a, b: feed.b, part: part.name, what: 'primary' });
        }
        break;
      }
      case 'battery':
        sources.push({
          index: sources.length,
          part: part.name,
          kind: 'dc',
          mains: false,
          rails: [rail(touch(part, '+'), '+', part.output.volts), rail(touch(part, '-'), '-', 0)],
          feed: { by: 'always' },
        });
        break;
      case 'plug':
        sources.push({
          index: sources.length,
          part: part.name,
          kind: part.volts.kind,
          mains: true,
          rails: plugRails(part, touch, (t) => wired.used.has(`${part.name}.${t}`)),
          feed: { by: 'always' },
        });
        break;
      case 'outlet':
      case 'motor':
      case 'load': {
        const names = conductorNames(part.feed);
        const nets = new Map(names.map((t) => [t, touch(part, t)]));
        consumers.push({
          part: part.name,
          kind: part.kind,
          nets,
          ...(part.kind === 'outlet' ? {} : { volts: (part as MotorPart).volts.volts }),
        });
        if (part.kind !== 'outlet') {
          for (let i = 1; i < names.length; i++)
            passives.push({
              a: nets.get(names[i - 1]!)!,
              b: nets.get(names[i]!)!,
              part: part.name,
              what: 'load',
            });
        }
        break;
      }
      case 'joint':
      case 'box':
        break;
    }
  }
  return {
    plan,
    netCount: wired.count(),
    netOf: wired.netOf,
    terminals: wired.terminals(),
    inputs,
    contacts,
    diodes,
    passives,
    sources,
    relays,
    consumers,
    landed: wired.landed,
  };
}

const OVERLOAD = ['95', '96', '97', '98'];

function coilSense(a: number, b: number, limits: CoilThresholds): Sense {
  return { by: 'volts', a, b, ...limits, what: 'coil' };
}

function rail(net: number, terminal: string, re: number, im = 0, live = re !== 0 || im !== 0): Rail {
  return { net, terminal, re, im, live };
}

/** Potentials of a plug's pins against earth: line at the full voltage, two legs at half each, or three phases. */
function plugRails(
  part: PlugPart,
  touch: (part: Part, t: string) => number,
  used: (t: string) => boolean,
): Rail[] {
  const v = part.volts.volts;
  const neutral = used('N') ? [rail(touch(part, 'N'), 'N', 0)] : [];
  // Two legs of a 120/240 V supply lie 240 V apart; a plug of half that with one leg in use and a neutral is plain
  // single-phase whose line pin was called L1.
  if (part.feed === 'two-leg' && v <= 150 && used('N') && used('L1') !== used('L2')) {
    const line = used('L1') ? 'L1' : 'L2';
    return [rail(touch(part, line), line, v), ...neutral];
  }
  if (part.feed === 'two-leg')
    return [rail(touch(part, 'L1'), 'L1', v / 2), rail(touch(part, 'L2'), 'L2', -v / 2), ...neutral];
  if (part.feed === 'three-phase') {
    const phase = v / Math.sqrt(3);
    const third = (2 * Math.PI) / 3;
    return [
      ...['L1', 'L2', 'L3'].map((t, i) =>
        rail(touch(part, t), t, phase * Math.cos(-i * third), phase * Math.sin(-i * third)),
      ),
      ...neutral,
    ];
  }
  return [rail(touch(part, 'L'), 'L', v), rail(touch(part, 'N'), 'N', 0)];
}

function supplyFeed(
  name: string,
  fedFrom: string | undefined,
  used: ReadonlySet<string>,
  net: (key: string) => number,
): Source['feed'] {
  if (fedFrom !== undefined && fedFrom !== 'always-live') return { by: 'part', part: fedFrom };
  for (const [a, b] of [
    ['L', 'N'],
    ['L1', 'L2'],
  ] as const) {
    const ka = `${name}.${a}`;
    const kb = `${name}.${b}`;
    if (used.has(ka) || used.has(kb)) return { by: 'nets', a: net(ka), b: net(kb) };
  }
  return { by: 'always' };
}
