/**
 * Answers of invented shops over the ranges in which real ones lie: gates and distances of a home, a club, a school and a
 * factory, motors by their plates, supplies and relays as people have them in a drawer. Ranges are common practice, no source;
 * full-load amps are those of NEC tables 430.248 and 430.250 (from memory) and of usual 50 Hz plates, give or take a tenth.
 */
export type Texts = Map<string, string>;

/** A generator of numbers that gives the same for the same seed (mulberry32). */
export function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

interface Plate {
  readonly mains: string;
  readonly power: string;
  readonly amps: number;
}

const NEC: readonly Plate[] = [
  ...[
    ['0.5 hp', 9.8],
    ['3/4 hp', 13.8],
    ['1 hp', 16],
    ['1.5 hp', 18],
    ['2 hp', 24],
    ['3 hp', 34],
  ].map(([power, amps]) => ({ mains: '120 V', power: power as string, amps: amps as number })),
  ...[
    ['0.75 hp', 6.9],
    ['1 hp', 8],
    ['1.5 hp', 10],
    ['2 hp', 12],
    ['3 hp', 17],
    ['5 hp', 28],
  ].map(([power, amps]) => ({ mains: '240 V', power: power as string, amps: amps as number })),
  ...[
    ['2 hp', 7.5],
    ['3 hp', 10.6],
    ['5 hp', 16.7],
    ['7.5 hp', 24.2],
    ['10 hp', 30.8],
  ].map(([power, amps]) => ({ mains: '208 V 3-phase', power: power as string, amps: amps as number })),
  ...[
    ['3 hp', 9.6],
    ['5 hp', 15.2],
    ['7.5 hp', 22],
    ['10 hp', 28],
  ].map(([power, amps]) => ({ mains: '240 V 3-phase', power: power as string, amps: amps as number })),
  ...[
    ['3 hp', 4.8],
    ['5 hp', 7.6],
    ['10 hp', 14],
  ].map(([power, amps]) => ({ mains: '480 V 3-phase', power: power as string, amps: amps as number })),
];
const IEC: readonly Plate[] = [
  ...[
    ['0.55 kW', 4],
    ['0.75 kW', 5.2],
    ['1.1 kW', 7.2],
    ['1.5 kW', 9.5],
    ['2.2 kW', 14],
    ['3 kW', 18.5],
  ].map(([power, amps]) => ({ mains: '230 V', power: power as string, amps: amps as number })),
  ...[
    ['0.75 kW', 1.9],
    ['1.5 kW', 3.5],
    ['2.2 kW', 4.9],
    ['3 kW', 6.5],
    ['4 kW', 8.5],
    ['5.5 kW', 11.5],
    ['7.5 kW', 15],
    ['11 kW', 21],
  ].map(([power, amps]) => ({ mains: '400 V 3-phase', power: power as string, amps: amps as number })),
];

const PLUGS: Readonly<Record<string, readonly string[]>> = {
  '120 V': ['NEMA 5-15', 'NEMA 5-20', 'NEMA L5-30'],
  '240 V': ['NEMA 6-15', 'NEMA 6-20', 'NEMA L6-30'],
  '230 V': ['BS 1363', 'CEE 7/4', 'CEE 7/4 16 A C', 'AS/NZS 3112 15 A', 'IEC 60309 32 A blue 2P+E'],
  '400 V 3-phase': ['IEC 60309 16 A red 3P+E', 'IEC 60309 32 A red 3P+E'],
};

/** Gates and m to the farthest of them, by kind of shop, and how often such a shop is drawn. */
const SHOPS = [
  { often: 0.45, gates: [1, 8], reach: [4, 35] },
  { often: 0.3, gates: [6, 15], reach: [10, 50] },
  { often: 0.2, gates: [10, 30], reach: [30, 150] },
  { often: 0.05, gates: [50, 120], reach: [50, 300] },
] as const;

const NAMES = ['saw', 'planer', 'router', 'lathe', 'sander', 'jointer', 'bandsaw', 'mitre', 'drill', 'floor'];

/** The answers of one shop. Every random number is drawn from `next`. */
export function answerSet(next: () => number): Texts {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
  const between = (low: number, high: number) => low + (high - low) * next();
  const chance = (share: number) => next() < share;
  const practice = chance(0.5) ? 'nec' : 'iec';
  const texts: Texts = new Map([
    ['title', `Shop ${Math.floor(next() * 1000)}`],
    ['practice', practice],
    ['lever', pick(['open', 'shut'])],
  ]);
  const plate = pick(practice === 'nec' ? NEC : IEC);
  const amps = plate.amps * between(0.9, 1.1);
  const start = chance(0.25)
    ? chance(0.5) && practice === 'nec'
      ? `, code ${pick(['G', 'H', 'J', 'K', 'L'])}`
      : `, locked rotor ${(amps * between(5, 7.5)).toFixed(0)} A`
    : '';
  texts.set('mains', plate.mains);
  texts.set('motor', `${plate.power}, ${amps.toFixed(1)} A${start}`);
  texts.set('protector', pick(['manual', 'manual', 'automatic', 'none']));
  if (!plate.mains.includes('3') || plate.mains === '230 V')
    texts.set(
      'type',
      pick(['capacitor-start', 'capacitor-start', 'permanent-split', 'split-phase', 'universal']),
    );
  if (plate.mains.includes('3-phase')) texts.delete('type');
  if (chance(0.25))
    texts.set(
      'circuit',
      pick([
        ...(PLUGS[plate.mains] ?? []),
        ...(practice === 'nec'
          ? ['fixed', 'fixed 20 A', 'fixed 30 A']
          : ['fixed', 'fixed 16 A C', 'fixed 20 A D']),
      ]),
    );
  const draw = next();
  const upTo = (i: number) => SHOPS.slice(0, i + 1).reduce((sum, s) => sum + s.often, 0);
  const shop = SHOPS.find((_, i) => draw < upTo(i)) ?? SHOPS[0];
  const count = Math.round(between(shop.gates[0], shop.gates[1]));
  const reach = between(shop.reach[0], shop.reach[1]);
  const layout = pick(['chain', 'chain', 'star', 'ring']);
  const feet = practice === 'nec' ? chance(0.8) : chance(0.1);
  const length = (metres: number) =>
    feet ? `${Math.max(1, Math.round(metres / 0.3048))} ft` : `${Math.max(0.3, metres).toFixed(1)} m`;
  const cuts = Array.from({ length: count }, () => next() + 0.2);
  const sum = cuts.reduce((a, b) => a + b, 0);
  texts.set('layout', layout);
  texts.set(
    'gates',
    cuts
      .map(
        (cut, i) =>
          `${NAMES[i % NAMES.length]}${i >= NAMES.length ? Math.floor(i / NAMES.length) : ''} ${length(layout === 'star' ? between(0.1, 1) * reach : (cut / sum) * reach)}`,
      )
      .join(', '),
  );
  if (layout === 'ring' && chance(0.7)) texts.set('return', length(reach * between(0.3, 1)));
  if (chance(0.35))
    texts.set(
      'supply',
      pick([
        '12 V DC',
        '24 V DC',
        '24 V AC',
        '12 V DC 1 A regulated class 2',
        '24 V DC 0.5 A regulated class 2',
        '5 V DC 1 A regulated',
        '9 V DC 300 mA unregulated',
        '12 V DC 2 A',
        '24 V AC 40 VA class 2',
        '24 V AC 75 VA no-load 27 V class 2',
        '16 V AC 10 VA',
        '24 V AC 20 VA',
        '24 V DC 10 A regulated',
      ]),
    );
  const coil = /(\d+) V (AC|DC)/.exec(texts.get('supply') ?? '12 V DC')!;
  if (chance(0.2))
    texts.set(
      'relay',
      `coil ${coil[0]} ${pick(coil[2] === 'DC' ? ['155 ohm', '90 ohm pull-in 75 %', '1.7 W pull-in 70 % drop-out 10 %', '', '320 ohm'] : ['7 VA inrush 40 VA', '4 VA', ''])}, ${pick(['30 A 240 V AC, 1.5 hp 120 V AC', '25 A 250 V AC, AC-3 12 A, 2 poles', '40 A 240 V AC, 3 hp 240 V AC, 2 poles', '10 A 250 V AC', '25 A 690 V AC, AC-3 18 A, 3 poles'])}`,
    );
  if (chance(0.3))
    texts.set(
      'cutouts',
      `bin-full ${length(between(1, 6))}${chance(0.2) ? `, fire-door ${length(between(2, 12))}` : ''}`,
    );
  if (chance(0.3)) texts.set('hand', length(between(1, 8)));
  if (chance(0.2)) texts.set('run-on', `${Math.round(between(5, 30))} s`);
  return texts;
}
