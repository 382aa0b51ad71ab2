/** Command lines for one plan: every command and option, with names out of the plan and with names that nothing has. */
import type { Dice } from './dice.ts';
import { oddNumber, oddText, PROTOTYPE_NAMES } from './odd-values.ts';

/** How a command is called: `-` reads the plan from standard input, `plan.yaml` is a file that may be written to. */
export type Call = readonly string[];

/** What reads as a name anywhere in the text. */
function namesIn(text: string): string[] {
  const found = text.slice(0, 20_000).match(/[^\s{}[\],:"'#]+(?=["']?:)|(?<=[[,]\s?)[^\s{}[\],:"'#]+/g) ?? [];
  return found.length === 0 ? ['g1'] : found;
}

export function callsFor(text: string, dice: Dice, count: number): Call[] {
  const names = namesIn(text);
  const name = () =>
    dice.chance(0.75) ? dice.of(names) : dice.chance(0.5) ? dice.of(PROTOTYPE_NAMES) : oddText(dice);
  const format = (...forms: string[]) => (dice.chance(0.7) ? ['--format', dice.of(forms)] : ['--json']);
  const maybe = (share: number, ...words: string[]) => (dice.chance(share) ? words : []);
  const width = () =>
    maybe(0.2, '--width', dice.of(['20', '40', '72', '200', '500', '0', '-1', oddNumber(dice)]));
  const moved = () => [
    ...maybe(0.4, '--open', dice.chance(0.5) ? name() : `${name()},${name()}`),
    ...maybe(0.2, '--on', dice.chance(0.5) ? name() : `${name()}=${name()}`),
    ...maybe(0.2, '--press', name()),
    ...maybe(0.2, '--trip', name()),
  ];
  const position = () =>
    dice.of([
      'all shut',
      `${name()} open`,
      `${name()} open, ${name()} tripped`,
      `after ${name()} pressed`,
      name(),
    ]);
  const seen = () =>
    dice.of([
      'runs',
      'off',
      'chatters',
      'K1 in',
      `${name()} lit`,
      `${name()} live`,
      `${name()} runs, ${name()} off`,
      oddText(dice),
    ]);
  const shows = () => dice.of(['0 V', '11.8 V', '24 V AC', '155 ohm', 'OL', 'beeps', oddNumber(dice)]);
  const length = () => dice.of(['3 m', '8 ft 6 in', '1cm', '0 m', '1e9 m', oddNumber(dice)]);
  const makers: (() => Call)[] = [
    () => [
      'check',
      '-',
      ...dice.of([['--json'], ['--quiet'], ['--all'], ['--color', 'never'], []]),
      ...width(),
    ],
    () => ['table', '-', ...maybe(0.3, '--all'), ...format('text', 'markdown', 'csv'), ...width()],
    () => [
      'read',
      '-',
      ...maybe(0.7, name(), name()),
      ...moved(),
      ...maybe(0.3, '--dead'),
      ...maybe(0.2, '--loop'),
      ...maybe(0.2, '--clip', `${name()},${name()}`),
      ...maybe(0.4, '--json'),
      ...width(),
    ],
    () => ['mend', '-', ...dice.of([['--json'], ['--diff'], []]), ...width()],
    () => ['mend', 'plan.yaml', '--write'],
    () => [
      'add',
      'gate',
      name(),
      'plan.yaml',
      '--length',
      length(),
      ...maybe(0.5, '--after', name()),
      ...maybe(0.3, '--onward', length()),
      ...maybe(0.4, '--dry-run'),
      ...maybe(0.4, '--force'),
      ...maybe(0.4, '--json'),
    ],
    () => [
      'remove',
      'gate',
      name(),
      'plan.yaml',
      ...maybe(0.4, '--dry-run'),
      ...maybe(0.4, '--force'),
      ...maybe(0.4, '--json'),
    ],
    () => ['meter', '-', ...format('text', 'markdown'), ...width()],
    () => ['faults', '-', ...maybe(0.3, '--all'), ...format('text', 'markdown', 'csv'), ...width()],
    () => [
      'hunt',
      '-',
      ...maybe(0.6, '--saw', `${position()}: ${seen()}`),
      ...maybe(0.3, '--saw', `${position()}: ${seen()}`),
      ...maybe(0.5, '--reading', `${name()} ${name()} = ${shows()} with ${position()}`),
      ...maybe(0.2, '--never-worked'),
      ...maybe(0.1, '--mended', oddText(dice)),
      ...format('text', 'markdown'),
      ...width(),
    ],
    () => [
      'draw',
      '-',
      ...maybe(0.5, '-o', '-'),
      ...moved(),
      ...maybe(0.2, '--runs'),
      ...maybe(0.2, '--ascii'),
      ...maybe(0.2, '--size', dice.of(['a4', 'a3', 'letter', 'tabloid'])),
      ...width(),
    ],
    () => [
      'wirelist',
      '-',
      ...maybe(0.3, '--reel', length()),
      ...format('text', 'markdown', 'csv'),
      ...width(),
    ],
    () => ['materials', '-', ...format('text', 'markdown', 'csv'), ...width()],
    () => [
      'size',
      '-',
      ...maybe(0.4, '--with', `${name()}=${oddNumber(dice)}`),
      ...dice.of([format('text', 'markdown'), ['-o', '-']]),
      ...width(),
    ],
    () => ['page', '-', '-o', '-'],
    () => ['sheet', '-', '-o', '-', ...maybe(0.3, '--size', dice.of(['a4', 'a3', 'letter', 'tabloid']))],
  ];
  // Those without a plan are quick, and are tried beside it.
  const others: (() => Call)[] = [
    () => ['explain', dice.chance(0.3) ? 'gate-dead' : name(), ...maybe(0.3, '--json'), ...width()],
    () => ['new', '-o', '-', ...newFlags(dice, name)],
    () => ['new', '-o', '-', '--answers', '-'],
    () => [name(), '-'],
    () => [dice.of(['check', 'table', 'read', 'size']), '-', `--${name()}`, oddText(dice)],
  ];
  const order = [...makers];
  const chosen = Array.from({ length: Math.min(count, order.length) }, () =>
    order.splice(dice.below(order.length), 1)[0]!(),
  );
  return dice.chance(0.15) ? [...chosen, dice.of(others)()] : chosen;
}

const ANSWERS: Readonly<Record<string, readonly string[]>> = {
  title: ['Shop'],
  practice: ['nec', 'iec'],
  mains: ['120 V', '240 V AC', '230 V'],
  motor: ['1 hp 12.5 A code J', '1.5 kW 230 V', '3 hp 17 A'],
  type: ['capacitor-start', 'universal'],
  protector: ['manual', 'none', 'automatic'],
  circuit: ['choose', 'NEMA 5-15', '20 A'],
  layout: ['chain', 'star', 'ring'],
  gates: ['saw 6 ft, planer 4 ft', 'saw 3 m', 'a 1 m, b 2 m, c 3 m, d 4 m, e 5 m'],
  return: ['3 m'],
  lever: ['open', 'shut'],
  supply: ['choose', '12 V DC 1 A', '24 V AC'],
  relay: ['choose', 'coil 12 V DC 155 ohm pull-in 70 %, 10 A 240 V AC'],
  cutouts: ['none', 'bin-full 8 ft', 'door 1 m, thermal 2 m'],
  hand: ['no', '2 m'],
  'run-on': ['none', '5 s'],
};

function newFlags(dice: Dice, name: () => string): string[] {
  const odd = dice.of([0, 0.05, 0.3]);
  return Object.entries(ANSWERS).flatMap(([key, good]) => {
    if (dice.chance(['gates', 'motor', 'practice', 'lever', 'protector'].includes(key) ? odd : 0.6))
      return [];
    if (!dice.chance(odd)) return [`--${key}`, dice.of(good)];
    return [`--${key}`, dice.chance(0.5) ? `${name()} 3 m, ${name()} ${oddNumber(dice)}` : oddText(dice)];
  });
}
