/** The low-voltage parts of a design besides the gates, each with what it is and what to look for. */
import type { Answers, RelayAtHand } from './answers.ts';
import { coilFor, type Design, motorMarks, needsOverload } from './design.ts';
import {
  coilsWithDiode,
  type Fields,
  ordinary,
  overloadName,
  supplyName,
  type Told,
  voltsText,
  wiredPoles,
} from './told.ts';
import type { Value } from './yaml-lines.ts';

const LOOK = 'look for';

function supplyPart(d: Design): Told {
  const tolerance = String(ordinary(`supply-${d.supply.kind}`).tolerance);
  const { supply: s } = d;
  const usual = s.chosen ? ordinary(`supply-${s.kind}`) : {};
  const marks = d.answers.practice === 'nec' ? 'marked Class 2' : 'marked as a separated supply (SELV)';
  const what =
    s.kind === 'dc'
      ? `a plug-in adapter: ${LOOK} ${voltsText(s.volts, s.kind)}, regulated to ${tolerance}, ${s.limit} or more, ${marks}`
      : `a plug-in transformer: ${LOOK} ${voltsText(s.volts, s.kind)}, ${s.limit} or more, for continuous duty, no more than ${String(usual['no-load'])} with nothing on it, ${marks}`;
  return {
    comment: s.chosen
      ? [
          `The low-voltage supply, ${what}.`,
          'It has a socket of its own that is always live, never the switched one.',
        ]
      : [
          'The low-voltage supply you have; it has a socket of its own that is always live, never the switched one.',
        ],
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
      fields: {
        kind: 'timer',
        function: 'off-delay',
        time: `${time} s`,
        supply: 'none',
        ...ordinary('timer'),
      },
    };
  }
  if (between === 'relay-at-hand' && answers.relay !== undefined) {
    return {
      comment: [
        'The relay you have; the gates work it, and it works the contactor. So the thin gate wires carry little.',
      ],
      name: 'K1',
      fields: { kind: 'relay', ...handFields(answers.relay, 1) },
    };
  }
  const { power, inrush, contact } = ordinary(`between-${supply.kind}`);
  const coil = ordinary(`coil-relay-${supply.kind}`);
  return {
    comment: [
      `A small relay that the gates work, and that works the contactor: ${LOOK} a coil for ${voltsText(supply.volts, supply.kind)}`,
      `of ${String(power)} or less that pulls in at ${String(coil['pull-in'])} of its volts or less, and a contact of 6 A. So the thin gate wires carry little.`,
    ],
    name: 'K1',
    fields: {
      kind: 'relay',
      coil: { rated: voltsText(supply.volts, supply.kind), power: power!, inrush, ...coil },
      contact: contact!,
    },
  };
}

const coilRange = ({ supply }: Design) =>
  `made for ${voltsText(supply.volts, supply.kind)} (such as 12-240 V AC/DC)`;

/** s on the knob for so many s that are wanted: a quarter more, in whole fives; common practice. */
const timerSeconds = (wanted: number): number => Math.ceil((wanted * 1.25) / 5) * 5;

/** What is printed on a relay at hand, of which `poles` contacts are used. */
function handFields(hand: RelayAtHand, poles: number): Fields {
  const list = (values: readonly string[]) => (values.length === 0 ? undefined : values);
  return {
    coil: { rated: voltsText(hand.volts, hand.kind), ...hand.coil },
    contact: { ratings: list(hand.ratings), motor: list(hand.motor), 'ac-3': hand.ac3 },
    poles: poles === 1 ? undefined : mainPoles(poles),
  };
}

/** Main contacts of a relay or contactor, marked as EN 50005 and IEC 60947-4-1 do. */
const mainPoles = (count: number): Value =>
  Array.from({ length: count }, (_, i) => ({ form: 'make', marks: [`${2 * i + 1}`, `${2 * i + 2}`] }));

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
  const coil = coilFor(row, supply);
  const dc = coil.kind === 'dc';
  const draw = dc ? { power: `${row.dcWatts} W` } : { power: `${row.acHeld} VA`, inrush: `${row.acPull} VA` };
  const drawWords = dc
    ? `${row.dcWatts} W or less`
    : `${row.acHeld} VA held and ${row.acPull} VA pulling in, or less`;
  const marks = motorMarks(row, d.answers);
  const motor = marks.filter((r) => isOfMains(r, d.answers));
  const what =
    row.style === 'relay'
      ? `power relay with ${row.poles} ${row.poles === 1 ? 'pole' : 'poles'}`
      : 'contactor with 3 main poles';
  const { 'pull-in': pullIn } = ordinary(`coil-${row.style}-${coil.kind}`);
  const rated = [row.ac3 === null ? [] : [`AC-3 ${row.ac3} A`], motor].flat().join(', ');
  return {
    comment: [
      `What switches the collector: a ${what}. ${capital(LOOK)} ${[`${row.amps} A`, rated].filter((w) => w !== '').join(', ')} or better,`,
      `a coil for ${voltsText(coil.volts, coil.kind)} of ${drawWords} that pulls in at ${String(pullIn)} of its volts or less,`,
      'and "reinforced insulation" between coil and contacts.',
      ...(row.style === 'contactor' && poles === 2 ? ['Of its three poles two are used.'] : []),
    ],
    name: 'Q1',
    fields: {
      kind: 'relay',
      coil: {
        rated: voltsText(coil.volts, coil.kind),
        ...draw,
        ...ordinary(`coil-${row.style}-${coil.kind}`),
      },
      contact: {
        ratings: [`${row.amps} A ${row.volts} V AC`],
        'ac-3': row.ac3 === null ? undefined : `${row.ac3} A`,
        motor: marks.length === 0 ? undefined : marks,
      },
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

/** Low-voltage parts besides the gates, in the order of the plan. */
export function lowParts(d: Design): Told[] {
  const { answers } = d;
  const between = betweenPart(d);
  const overload: Told = {
    comment: [
      'The overload relay; the plate names no protector in the motor. Its dial is set to the plate. It sits below the contactor,',
      'and the motor current has to pass it: the conductors that this plan shows from the contactor to the motor land on the',
      'terminals of the overload relay that lie below those of the contactor, not on the contactor itself. One made for three',
      'phases wants current in each of its poles: on single phase follow its sheet, mostly by leading one conductor through twice.',
      'Its contact 95-96 opens on a trip and stops the collector until somebody presses its button.',
    ],
    name: overloadName,
    fields: { kind: 'cutout', setting: answers.motor.amps, ...ordinary('overload') },
  };
  const diode = (name: string): Told => ({
    comment:
      name === 'D1'
        ? ['A diode across the coil takes the voltage spike at every stop; its band goes to A1, which is +.']
        : [],
    name,
    fields: { kind: 'diode', ...ordinary('diode') },
  });
  const fuse: Told = {
    comment: [
      'A slow fuse right beside the supply, within a hand of it: nothing says that the supply limits its own current.',
    ],
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
