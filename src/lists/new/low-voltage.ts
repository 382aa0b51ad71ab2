/** The low-voltage side of a design: its parts and cables, in a plan's own words, each with what it is. */
import { tables } from '../../ratings/tables.ts';
import type { Answers, Distance, RelayAtHand } from './answers.ts';
import { type Design, needsOverload, polesNeeded } from './design.ts';
import type { Value } from './yaml-lines.ts';

/** One thing of a plan, with the comment that goes above it. */
export interface Told {
  readonly comment: readonly string[];
  readonly name: string;
  readonly fields: Record<string, Value | undefined>;
}

/** A cable with the ends of its cores, or a bare link. */
export interface Laid {
  readonly cable?: string;
  readonly length?: string;
  readonly cores?: Record<string, readonly [string, string]>;
  readonly link?: readonly [string, string];
}

type Fields = Record<string, Value | undefined>;

/** What ordinary parts of a kind have printed on them. */
export function ordinary(name: string): Fields {
  const row = tables.ordinaryFields().rows.find((r) => r.name === name);
  if (row === undefined) throw new Error(`the table of ordinary parts has no ${name}`);
  return { ...row.fields } as Fields;
}

export const isDc = ({ supply }: Design): boolean => supply.kind === 'dc';
export const supplyName = (d: Design): string => (isDc(d) ? 'PS1' : 'T1');
export const voltsText = (volts: number, kind: 'dc' | 'ac'): string => `${volts} V ${kind.toUpperCase()}`;

/** Short lengths inside the box and beside it, in the unit of the answers. */
export const usualLengths = ({ gates }: Answers) =>
  /ft|in|foot|feet|['"]/.test(gates[0]?.length.text ?? 'm')
    ? { supply: '6 ft', inside: '1 ft', cord: '6 ft', tail: '3 ft', feed: '10 ft', machine: '15 ft' }
    : { supply: '2 m', inside: '30 cm', cord: '2 m', tail: '1 m', feed: '3 m', machine: '5 m' };

const LOOK = 'look for';

function supplyPart(d: Design): Told {
  const tolerance = String(ordinary(`supply-${d.supply.kind}`).tolerance);
  const { supply: s } = d;
  const usual = s.chosen ? ordinary(`supply-${s.kind}`) : {};
  const marks = d.answers.practice === 'nec' ? 'marked Class 2' : 'marked as a separated supply (SELV)';
  const what =
    s.kind === 'dc'
      ? `a plug-in adapter: ${LOOK} ${voltsText(s.volts, s.kind)}, regulated to ${tolerance}, ${s.limit} or more, ${marks}`
      : `a plug-in transformer: ${LOOK} ${voltsText(s.volts, s.kind)}, ${s.limit} or more, for continuous duty, ${marks}`;
  return {
    comment: s.chosen
      ? [`The low-voltage supply, ${what}.`, 'It has a socket of its own that is always live, never the switched one.']
      : ['The low-voltage supply you have; it has a socket of its own that is always live, never the switched one.'],
    name: supplyName(d),
    fields: {
      kind: 'supply',
      output: voltsText(s.volts, s.kind),
      limit: s.limit,
      regulation: s.regulation,
      tolerance: s.tolerance,
      'no-load': s['no-load'],
      ...usual,
      ...(s.class2 ? { 'class-2': 'true' } : {}),
    },
  };
}

/** The relay or timer that the gates work where they do not work the switch's own coil. */
function betweenPart(d: Design): Told | undefined {
  const { between, supply, answers } = d;
  if (between === 'none') return undefined;
  if (between === 'timer') {
    const time = timerSeconds(answers['run-on']);
    return {
      comment: [
        `The run-on timer: ${LOOK} "true off-delay", which holds with its supply gone, ${coilRange(d)} and`,
        `at least ${time} s. Set its knob to ${time} s: knobs are coarse, and ${answers['run-on']} s are asked for.`,
      ],
      name: 'KT1',
      fields: { kind: 'timer', function: 'off-delay', time: `${time} s`, supply: 'none', ...ordinary('timer') },
    };
  }
  if (between === 'relay-at-hand' && answers.relay !== undefined) {
    return {
      comment: ['The relay you have; the gates work it, and it works the contactor. So the thin gate wires carry little.'],
      name: 'K1',
      fields: { kind: 'relay', ...handFields(answers.relay, 1) },
    };
  }
  const { power, inrush, contact } = ordinary(`between-${supply.kind}`);
  return {
    comment: [
      `A small relay that the gates work, and that works the contactor: ${LOOK} a coil for ${voltsText(supply.volts, supply.kind)}`,
      `of ${power} or less and a contact of 6 A. So the thin gate wires carry little.`,
    ],
    name: 'K1',
    fields: {
      kind: 'relay',
      coil: { rated: voltsText(supply.volts, supply.kind), power: power!, inrush, ...ordinary(`coil-relay-${supply.kind}`) },
      contact: contact!,
    },
  };
}

const coilRange = ({ supply }: Design) => `made for ${voltsText(supply.volts, supply.kind)} (such as 12-240 V AC/DC)`;

/** s on the knob for so many s that are wanted: a quarter more, in whole fives; common practice. */
export const timerSeconds = (wanted: number): number => Math.ceil((wanted * 1.25) / 5) * 5;

/** What is printed on a relay at hand, of which `poles` contacts are used. */
export function handFields(hand: RelayAtHand, poles: number): Fields {
  const list = (values: readonly string[]) => (values.length === 0 ? undefined : values);
  return {
    coil: { rated: voltsText(hand.volts, hand.kind), ...hand.coil },
    contact: { ratings: list(hand.ratings), motor: list(hand.motor), 'ac-3': hand.ac3 },
    poles: poles === 1 ? undefined : mainPoles(poles),
  };
}

/** Main contacts of a relay or contactor, marked as EN 50005 and IEC 60947-4-1 do. */
export const mainPoles = (count: number): Value =>
  Array.from({ length: count }, (_, i) => ({ form: 'make', marks: [`${2 * i + 1}`, `${2 * i + 2}`] }));

/** The switch's poles that are wired: all of a relay's, of a contactor as many as the mains has conductors. */
export function wiredPoles(d: Design): number {
  const needed = polesNeeded(d.answers);
  const has = d.switching.row?.poles ?? d.switching.hand?.poles ?? 1;
  return has === 1 ? 1 : Math.max(2, needed);
}

function switchPart(d: Design): Told {
  const { switching, supply } = d;
  const poles = wiredPoles(d);
  if (switching.hand !== undefined) {
    return {
      comment: ['The relay you have. It breaks the mains of the collector.'],
      name: 'Q1',
      fields: { kind: 'relay', ...handFields(switching.hand, poles) },
    };
  }
  const { row } = switching;
  const dc = supply.kind === 'dc';
  const draw = dc
    ? { power: `${row.dcWatts} W` }
    : { power: `${row.acHeld} VA`, inrush: `${row.acPull} VA` };
  const drawWords = dc ? `${row.dcWatts} W or less` : `${row.acHeld} VA held and ${row.acPull} VA pulling in, or less`;
  const motor = row.motor.filter((r) => isOfMains(r, d.answers));
  const what = row.style === 'relay' ? `power relay with ${row.poles} ${row.poles === 1 ? 'pole' : 'poles'}` : 'contactor with 3 main poles';
  const rated = [row.ac3 === null ? [] : [`AC-3 ${row.ac3} A`], motor].flat().join(', ');
  return {
    comment: [
      `What switches the collector: a ${what}. ${capital(LOOK)} ${rated || `${row.amps} A`} or better,`,
      `a coil for ${voltsText(supply.volts, supply.kind)} of ${drawWords}, and "reinforced insulation" between coil and contacts.`,
      ...(row.style === 'contactor' && poles === 2 ? ['Of its three poles two are used.'] : []),
    ],
    name: 'Q1',
    fields: {
      kind: 'relay',
      coil: { rated: voltsText(supply.volts, supply.kind), ...draw, ...ordinary(`coil-${row.style}-${supply.kind}`) },
      contact: { ratings: [`${row.amps} A ${row.volts} V AC`], 'ac-3': row.ac3 === null ? undefined : `${row.ac3} A`, motor: row.motor },
      poles: poles === 1 ? undefined : mainPoles(poles),
      isolation: 'reinforced',
    },
  };
}

const capital = (text: string) => `${text[0]?.toUpperCase()}${text.slice(1)}`;

/** Whether a horsepower rating is for the volts and phases of the collector, as far as its words say. */
const isOfMains = (rating: string, { mains }: Answers): boolean =>
  rating.includes('3-phase') === (mains.phases === 3) &&
  Math.abs(Number(/([\d.]+) V/.exec(rating)?.[1] ?? 0) - mains.volts) < 0.1 * mains.volts;

export const overloadName = 'OL1';

/** Low-voltage parts besides the gates, in the order of the plan. */
export function lowParts(d: Design): Told[] {
  const { answers } = d;
  const between = betweenPart(d);
  const overload: Told = {
    comment: [
      'The overload relay, mounted on the contactor; the plate names no protector in the motor. Its dial is set to the plate.',
      'Its contact 95-96 opens on a trip and stops the collector until somebody presses its button.',
    ],
    name: overloadName,
    fields: { kind: 'cutout', setting: answers.motor.amps, ...ordinary('overload') },
  };
  const diode = (name: string): Told => ({
    comment: name === 'D1' ? ['A diode across each coil takes the voltage spike at every stop; its band goes to A1, which is +.'] : [],
    name,
    fields: { kind: 'diode', ...ordinary('diode') },
  });
  const fuse: Told = {
    comment: ['A slow fuse right beside the supply, within a hand of it: nothing says that the supply limits its own current.'],
    name: 'F1',
    fields: { kind: 'fuse', rating: d.fuse, class: 'time-delay' },
  };
  return [
    supplyPart(d),
    ...(d.fuse === undefined ? [] : [fuse]),
    ...(between === undefined ? [] : [between]),
    switchPart(d),
    ...(needsOverload(answers) ? [overload] : []),
    ...coilsWithDiode(d).map((_, i) => diode(`D${i + 1}`)),
  ];
}

/** Coils on DC that a diode of their own quiets; a timer has an electronic input, which needs none. */
export function coilsWithDiode(d: Design): string[] {
  if (!isDc(d)) return [];
  return [...(d.between === 'relay' || d.between === 'relay-at-hand' ? ['K1'] : []), 'Q1'];
}

/** The tab of a gate's switch that closes as the gate opens. */
export const gateTab = ({ lever }: Answers): 'NO' | 'NC' => (lever === 'open' ? 'NO' : 'NC');

export const loopColours = ({ practice }: Answers): readonly [string, string] =>
  practice === 'nec' ? ['red', 'white'] : ['red', 'black'];

/** Cables of the gates by the layout. */
export function gateRuns({ answers }: Design, feed: string, call: string): Laid[] {
  const [go, back] = loopColours(answers);
  const tab = gateTab(answers);
  const piece = (length: Distance, from: readonly [string, string], to: string): Laid => ({
    cable: 'bell',
    length: length.text,
    cores: { [go]: [from[0], `${to}.COM`], [back]: [from[1], `${to}.${tab}`] },
  });
  const { gates, layout } = answers;
  const ends = (name: string): readonly [string, string] => [`${name}.COM`, `${name}.${tab}`];
  const runs = gates.map((gate, i) =>
    piece(gate.length, layout === 'star' || i === 0 ? [feed, call] : ends(gates[i - 1]!.name), gate.name),
  );
  const last = gates.at(-1);
  if (layout !== 'ring' || last === undefined || answers.return === undefined) return runs;
  const [com, other] = ends(last.name);
  return [...runs, { cable: 'bell', length: answers.return.text, cores: { [go]: [com, feed], [back]: [other, call] } }];
}

/** Everything of low voltage but the gates' own cables: feed, cut-outs, hand switch, coils. */
export function lowRuns(d: Design): { readonly before: readonly Laid[]; readonly after: readonly Laid[]; readonly joints: readonly string[]; readonly feed: string } {
  const { answers, between } = d;
  const [go, back] = loopColours(answers);
  const [plus, minus] = isDc(d) ? ['+', '-'] : ['~1', '~2'];
  const usual = usualLengths(answers);
  const supply = supplyName(d);
  const stops = [...(needsOverload(answers) ? [{ name: overloadName, length: undefined }] : []), ...answers.cutouts];
  const bars = ['feed', ...stops.map((_, i) => (i === stops.length - 1 ? 'go' : `feed-${i + 2}`))];
  const before: Laid[] =
    d.fuse === undefined
      ? [{ cable: 'bell', length: usual.supply, cores: { [go]: [`${supply}.${plus}`, bars[0]!], [back]: [`${supply}.${minus}`, 'common'] } }]
      : [
          { link: [`${supply}.${plus}`, 'F1.1'] },
          { cable: 'bell', length: usual.supply, cores: { [go]: ['F1.2', bars[0]!], [back]: [`${supply}.${minus}`, 'common'] } },
        ];
  for (const [i, stop] of stops.entries()) {
    const [from, to] = [bars[i]!, bars[i + 1]!];
    if (stop.length === undefined) before.push({ link: [from, `${stop.name}.95`] }, { link: [`${stop.name}.96`, to] });
    else
      before.push({ cable: 'bell', length: stop.length.text, cores: { [go]: [from, `${stop.name}.COM`], [back]: [to, `${stop.name}.NC`] } });
  }
  const feed = bars.at(-1)!;
  const after: Laid[] = [];
  if (answers.hand !== undefined)
    after.push({ cable: 'bell', length: answers.hand.text, cores: { [go]: [feed, 'hand.COM'], [back]: ['call', 'hand.NO'] } });
  if (between === 'none') after.push({ link: ['call', 'Q1.A1'] });
  else {
    const name = between === 'timer' ? 'KT1' : 'K1';
    const [common, make] = between === 'timer' ? ['15', '18'] : ['COM', 'NO'];
    after.push({ link: ['call', `${name}.A1`] }, { link: ['common', `${name}.A2`] });
    after.push({ link: [feed, `${name}.${common}`] }, { link: [`${name}.${make}`, 'Q1.A1'] });
  }
  after.push({ link: ['common', 'Q1.A2'] });
  for (const [i, coil] of coilsWithDiode(d).entries())
    after.push({ link: [`D${i + 1}.K`, `${coil}.A1`] }, { link: [`D${i + 1}.A`, `${coil}.A2`] });
  return { before, after, joints: [...bars, 'call', 'common'], feed };
}
