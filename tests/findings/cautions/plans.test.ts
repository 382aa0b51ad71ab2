/** For every caution a plan that gives cause for it, and one that differs in one thing and does not. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { chooseCautions } from '../../../src/findings/cautions/choose.ts';
import { cautionFacts, type Readings } from '../../../src/findings/cautions/facts.ts';
import { TRIGGERED, type TriggeredId } from '../../../src/findings/cautions/texts.ts';
import { judgeAsTaken } from '../../../src/findings/judge.ts';
import type { Caution } from '../../../src/findings/report-model.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { Study } from '../../../src/study/study.ts';

type Change = readonly [from: string, to: string];

/** A plan of tests/findings/bases with some of its text changed, and what readings the document asks for. */
interface Given {
  readonly base?: string;
  /** a plan of its own in place of a base */
  readonly text?: string;
  readonly changes?: readonly Change[];
  readonly readings?: Readings;
}

function cautionsOf({ base, text: own, changes = [], readings = 'none' }: Given): readonly Caution[] {
  let text = own ?? readFileSync(new URL(`../bases/${base}.yaml`, import.meta.url), 'utf8');
  for (const [from, to] of changes) {
    expect(text).toContain(from);
    text = text.replace(from, to);
  }
  const read = readPlan(text, 'plan.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => `${e.position.line}: ${e.message}`).join('\n'));
  const study = Study.of(read.plan);
  return chooseCautions(cautionFacts(study, judgeAsTaken(study).findings, readings));
}

const chain = (...changes: readonly Change[]): Given => ({ base: 'dc-chain', changes });
const DC = chain();
const REGULATED: Change = ['regulation: regulated\n    tolerance: 2 %\n    class-2: true', ''];
const supply = (text: string): Change => [REGULATED[0], text];
const TWO_LEGS: readonly Change[] = [
  [
    'pattern: NEMA L5-30\n    breaker: 30 A\n    volts: 120 V AC',
    'pattern: NEMA L6-30\n    breaker: 30 A\n    volts: 240 V AC',
  ],
  ['X1: {kind: outlet, pattern: NEMA L5-30}', 'X1: {kind: outlet, pattern: NEMA L6-30}'],
  ['volts: 120 V AC\n    amps: 15 A', 'volts: 240 V AC\n    amps: 8 A'],
  ['black: [K1.NO, X1.L]', 'black: [K1.NO, X1.L1]'],
  ['white: [neutral, X1.N]', 'white: [neutral, X1.L2]'],
  ['black: [P1.L, K1.COM], white: [P1.N, neutral]', 'black: [P1.L1, K1.COM], white: [P1.L2, neutral]'],
];
/** A relay on a battery, with nothing on its contact. */
const LOOP_ALONE: Given = {
  text: `format: 1
practice: nec
parts:
  B1: {kind: battery, output: 12 V DC}
  g: {kind: gate, pressed-when: open}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [5 A 250 V AC]}}
runs:
  - {link: [B1.+, g.COM]}
  - {link: [g.NO, K1.A1]}
  - {link: [K1.A2, B1.-]}
intent:
  K1: {runs-on: [g]}
`,
};
const BOARD: Given = { base: 'board' };
const AC: Given = { base: 'ac-contactor' };

/** The plan that prints it first, the one that does not second. */
const PAIRS: Readonly<Record<TriggeredId, readonly [prints: Given, silent: Given]>> = {
  'C-LOCKOUT': [{ base: 'fixed-motor' }, DC],
  'C-LIVEMAINS': [
    { ...DC, readings: 'mains' },
    { ...DC, readings: 'loop' },
  ],
  'C-PROVEMETER': [{ ...DC, readings: 'loop' }, DC],
  'C-NOTCLASS2': [chain(supply('regulation: regulated\n    tolerance: 2 %')), DC],
  'C-TOOHIGHVOLTS': [
    chain(
      ['output: 12 V DC', 'output: 72 V DC'],
      ['rated: 12 V DC\n      resistance: 155 ohm', 'rated: 72 V DC\n      resistance: 5600 ohm'],
    ),
    DC,
  ],
  'C-NOLOADVOLTS': [chain(supply('regulation: unregulated')), DC],
  'C-PARALLELSUPPLIES': [
    chain(
      [
        '  D1: {kind',
        '  PS2: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated, class-2: true}\n  D1: {kind',
      ],
      [
        '  - {link: [D1.K, K1.A1]}',
        '  - {cable: bell, length: 2 m, cores: {red: [PS2.+, feed], white: [PS2.-, K1.A2]}}\n  - {link: [D1.K, K1.A1]}',
      ],
    ),
    DC,
  ],
  'C-BELLDUTY': [
    { ...AC, changes: [['limit: 40 VA', 'limit: 10 VA']] },
    { ...AC, changes: [['limit: 40 VA', 'limit: 30 VA']] },
  ],
  'C-BATTERY': [{ base: 'battery' }, DC],
  'C-EARTH': [
    chain([
      'white: [PS1.-, K1.A2]}}',
      'white: [PS1.-, K1.A2]}}\n  - {cable: wire, length: 50 cm, cores: {green: [feed, B1.PE]}}',
    ]),
    chain([
      'white: [PS1.-, K1.A2]}}',
      'white: [PS1.-, K1.A2]}}\n  - {cable: wire, length: 50 cm, cores: {green: [K1.A2, B1.PE]}}',
    ]),
  ],
  'C-CABLEDAMAGE': [
    DC,
    {
      base: 'dc-chain',
      changes: [['snap:\n    kind: gate\n    pressed-when: open\n', 'snap:\n    kind: switch\n']],
    },
  ],
  'C-COILMISMATCH': [
    chain(['rated: 12 V DC\n      resistance: 155 ohm', 'rated: 12 V AC\n      power: 1 VA']),
    DC,
  ],
  'C-DIODE': [chain(['  - {link: [D1.K, K1.A1]}\n', '']), DC],
  'C-SHAREDBOX': [chain(['    divider: true', '    divider: false']), DC],
  'C-SHAREDCABLE': [
    chain(
      [
        '{cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
        '{cable: cord, length: 60 cm, cores: {black: [K1.NO, X1.L], white: [call, K1.A1]}}',
      ],
      ['  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}\n', ''],
    ),
    DC,
  ],
  'C-RELAYISOLATION': [
    DC,
    chain(['  K1:\n    kind: relay', '  K1:\n    kind: relay\n    isolation: reinforced']),
  ],
  'C-BAREBOARD': [BOARD, DC],
  'C-ENCLOSURE': [chain(['holds: [K1, D1,', 'holds: [D1,']), DC],
  'C-SPLICES': [chain([', call, neutral]', ', call]']), DC],
  'C-MOTORRATING': [chain([', motor: [1.5 hp 120 V AC]', '']), DC],
  'C-NEUTRAL': [
    chain(
      ['black: [K1.NO, X1.L]', 'black: [K1.NO, X1.N]'],
      ['white: [neutral, X1.N]', 'white: [neutral, X1.L]'],
      ['black: [P1.L, K1.COM], white: [P1.N, neutral]', 'black: [P1.N, K1.COM], white: [P1.L, neutral]'],
    ),
    DC,
  ],
  'C-ONELEG': [chain(...TWO_LEGS), DC],
  'C-GROUND': [chain([', green: [B1.PE, X1.PE]', '']), DC],
  'C-OVERLOAD': [chain(['    protector: manual\n', '']), DC],
  'C-AUTORESET': [chain(['protector: manual', 'protector: automatic']), DC],
  'C-POWERRETURN': [
    {
      base: 'eleven-relays',
      changes: [
        ['{link: [K11.NO, lamp.1]}', '{link: [K11.NO, K1.A1]}'],
        ['parts:\n', 'parts:\n  P1: {kind: plug, volts: 230 V AC, breaker: 16 A}\n'],
      ],
    },
    DC,
  ],
  'C-STARTS': [chain(['    protector: manual', '    protector: manual\n    starts-per-hour: 60']), DC],
  'C-CAPACITOR': [DC, chain(['type: capacitor-start', 'type: split-phase'])],
  'C-SSR': [chain(['  K1:\n    kind: relay', '  K1:\n    kind: relay\n    technology: solid-state']), DC],
  'C-WELD': [chain(['pull-in: 75 %', 'pull-in: 80 %']), DC],
  'C-CORDFIXED': [
    {
      base: 'fixed-motor',
      changes: [['insulation: 600 V, flexible: false', 'insulation: 600 V, flexible: true']],
    },
    { base: 'fixed-motor' },
  ],
  'C-STRAIN': [
    DC,
    chain(
      ['holds: [K1, D1, pilot, feed, call, neutral]', 'holds: [D1, pilot, feed, call]'],
      ['metal: true', 'metal: false'],
      ['green: [P1.PE, B1.PE]', 'green: [P1.PE, X1.PE]'],
      [', green: [B1.PE, X1.PE]', ''],
    ),
  ],
  'C-PLUGHP': [DC, chain(['power: 1.5 hp\n', 'power: 0.3 hp\n'])],
  'C-BRANCHLOAD': [chain(['amps: 15 A', 'amps: 25 A']), DC],
  'C-CORD15': [chain(['protector: manual', 'protector: none']), chain(['    protector: manual\n', ''])],
  'C-GFCI': [DC, { base: 'fixed-motor' }],
  'C-DUSTCLASS': [{ base: 'three-phase' }, DC],
  'C-AIRFIRST': [DC, LOOP_ALONE],
  'C-UK': [BOARD, DC],
  'C-EU': [BOARD, DC],
  'C-CA': [DC, BOARD],
};

describe('every caution', () => {
  it.each(TRIGGERED.map(({ id }) => [id, ...PAIRS[id]] as const))(
    '%s is printed for a plan that gives cause, and not for one that does not',
    (id, prints, silent) => {
      expect(cautionsOf(prints).map((c) => c.id)).toContain(id);
      expect(cautionsOf(silent).map((c) => c.id)).not.toContain(id);
    },
  );
});

describe('what a plan says changes what is printed', () => {
  const levelOf = (id: TriggeredId, given: Given) => cautionsOf(given).find((c) => c.id === id)?.level;

  it('a barrier that is stated as weak weighs more than one that is not stated', () => {
    const with_ = (isolation: string) =>
      chain(['  K1:\n    kind: relay', `  K1:\n    kind: relay\n    isolation: ${isolation}`]);
    expect(levelOf('C-RELAYISOLATION', DC)).toBe('warning');
    expect(levelOf('C-RELAYISOLATION', with_('basic'))).toBe('danger');
    expect(levelOf('C-RELAYISOLATION', with_('reinforced'))).toBeUndefined();
  });

  it('a motor that has no protector asks for one as one that states none does', () => {
    for (const protector of ['', '    protector: none\n'])
      expect(cautionsOf(chain(['    protector: manual\n', protector])).map((c) => c.id)).toContain(
        'C-OVERLOAD',
      );
    expect(cautionsOf(DC).map((c) => c.id)).not.toContain('C-OVERLOAD');
  });

  it('one transformer rises with nothing on it, as several do', () => {
    expect(cautionsOf({ base: 'bell-and-adapter' }).map((c) => c.id)).toContain('C-NOLOADVOLTS');
  });

  it('a leg left live is no broken neutral', () => {
    expect(cautionsOf(chain(...TWO_LEGS)).map((c) => c.id)).not.toContain('C-NEUTRAL');
  });

  it('a box that does not hold the relay does not house it', () => {
    expect(cautionsOf(DC).map((c) => c.id)).not.toContain('C-ENCLOSURE');
    expect(cautionsOf(chain(['holds: [K1, D1,', 'holds: [D1,'])).map((c) => c.id)).toContain('C-ENCLOSURE');
  });
});
