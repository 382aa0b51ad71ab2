/** Plans that are nothing but much of one thing, or hardly anything at all. */
import type { Dice } from './dice.ts';
import { ACTING, oddText, PROTOTYPE_NAMES } from './odd-values.ts';

const many = (count: number, of: (i: number) => string) =>
  Array.from({ length: count }, (_, i) => of(i)).join('\n');
const PS = '  PS1: {kind: supply, output: 12 V DC, limit: 1 A}';
const RELAY =
  '{kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [10 A 240 V AC]}}';
const plan = (parts: string, runs = '', intent = '') =>
  `format: 1\ntitle: Many\npractice: nec\nparts:\n${parts}\nruns:${runs === '' ? ' []' : `\n${runs}`}\n${intent}`;

/** What is made many times over, alone or joined up. */
const SHAPES: readonly ((n: number) => string)[] = [
  (n) => plan(many(n, (i) => `  P${i}: {kind: supply, output: 12 V DC}`)),
  (n) => plan(many(n, (i) => `  P${i}: {kind: gate, pressed-when: open}`)),
  (n) => plan(many(n, (i) => `  P${i}: ${RELAY}`)),
  (n) => plan(many(n, (i) => `  P${i}: {kind: motor}`)),
  (n) => plan(many(n, (i) => `  P${i}: {kind: plug, volts: 240 V AC}`)),
  (n) => plan(many(n, (i) => `  P${i}: {kind: box}`)),
  (n) =>
    plan(
      `${PS}\n${many(n, (i) => `  K${i}: ${RELAY}`)}`,
      many(n, (i) => `  - {link: [PS1.+, K${i}.A1]}\n  - {link: [PS1.-, K${i}.A2]}`),
    ),
  (n) =>
    plan(
      many(n, (i) => `  P${i}: {kind: supply, output: 12 V DC}`),
      many(n, (i) => `  - {link: [P${i}.+, P${(i + 1) % n}.-]}`),
    ),
  (n) =>
    plan(
      `${PS}\n${many(n, (i) => `  P${i}: {kind: supply, output: 24 V AC, input: 120 V AC}`)}`,
      many(n, (i) => `  - {link: [P${i}.~1, P${(i + 1) % n}.L]}\n  - {link: [P${i}.~2, P${(i + 1) % n}.N]}`),
    ),
  (n) =>
    plan(
      `${PS}\n${many(n, (i) => `  K${i}: ${RELAY}`)}`,
      many(
        n,
        (i) =>
          `  - {link: [PS1.+, K${i}.COM]}\n  - {link: [K${i}.NC, K${(i + 1) % n}.A1]}\n  - {link: [PS1.-, K${i}.A2]}`,
      ),
    ),
  (n) =>
    plan(
      `${PS}\n  K1: ${RELAY}\n${many(n, (i) => `  g${i}: {kind: gate, pressed-when: open}`)}`,
      `${many(n, (i) => `  - {link: [${i === 0 ? 'PS1.+' : `g${i - 1}.NO`}, g${i}.COM]}`)}\n  - {link: [g${n - 1}.NO, K1.A1]}\n  - {link: [PS1.-, K1.A2]}`,
      'intent:\n  K1: {runs-on: [g0]}\n',
    ),
  (n) =>
    plan(
      `${PS}\n${many(n, (i) => `  R${i}: {kind: resistor, resistance: 1 ohm}`)}`,
      many(
        n,
        (i) => `  - {link: [${i === 0 ? 'PS1.+' : `R${i - 1}.2`}, R${i}.1]}\n  - {link: [PS1.-, R${i}.2]}`,
      ),
    ),
  (n) =>
    plan(
      `${PS}\n${many(n, (i) => `  D${i}: {kind: diode}`)}`,
      many(
        n,
        (i) =>
          `  - {link: [PS1.${i % 2 === 0 ? '+' : '-'}, D${i}.A]}\n  - {link: [D${i}.K, D${(i * 7 + 1) % n}.A]}`,
      ),
    ),
  (n) => plan(many(n, (i) => `  S${i}: {kind: selector, positions: [a, b, c]}`)),
  (n) =>
    plan(`  S1: {kind: selector, positions: [${Array.from({ length: n }, (_, i) => `p${i}`).join(', ')}]}`),
  (n) =>
    plan(
      `${PS}\n${many(n, (i) => `  j${i}: {kind: joint}`)}`,
      many(n, (i) => `  - {link: [j${i}, j${(i + 1) % n}]}`),
    ),
  (n) =>
    plan(
      PS,
      many(n, () => '  - {link: [PS1.+, PS1.-]}'),
    ),
  (n) => plan(`  P: &a {kind: joint}\n${many(n, (i) => `  Q${i}: *a`)}`),
  (n) =>
    `format: 1\nx0: &x0 [a, a]\n${many(n, (i) => `x${i + 1}: &x${i + 1} [*x${i}, *x${i}, *x${i}]`)}\nparts: *x${n}\nruns: []\n`,
  (n) => `format: 1\nparts: ${'['.repeat(n)}${']'.repeat(n)}\nruns: []\n`,
  (n) => `format: 1\nparts:\n${many(n, (i) => `${' '.repeat(i + 1)}a:`)}\nruns: []\n`,
  (n) => `format: 1\nparts: {${'? '.repeat(n)}}\nruns: [${'- '.repeat(n)}]\n`,
  (n) => '-\n'.repeat(n),
  (n) => 'a: '.repeat(n),
  (n) => `"${'\\u0000'.repeat(n)}`,
  (n) => `format: 1\ntitle: >\n${many(n, () => '  x')}\nparts: {PS1: {kind: joint}}\nruns: []\n`,
];

/** Hardly a plan. */
const SMALL: readonly string[] = [
  '',
  ' ',
  '\n',
  '---\n',
  'null\n',
  '[]\n',
  '{}\n',
  'x',
  'format: 1\n',
  'format: 1\nparts: {}\nruns: []\n',
  'format: 1\nparts: {j: {kind: joint}}\nruns: []\n',
  'format: 1\nparts: {j: {kind: joint}}\nruns: []\nintent: {}\n',
  'format: 1\nparts: {P: {kind: plug, volts: 240 V AC}}\nruns: []\n',
  'format: 1\nparts: {M: {kind: motor}}\nruns: []\n',
  'format: 1\nparts: {B: {kind: battery, output: 12 V DC}}\nruns: []\n',
  'format: 1\nparts: {PS1: {kind: supply, output: 12 V DC}, g: {kind: gate}}\nruns: []\n',
  'format: 1\nparts: {PS1: {kind: supply, output: 12 V DC}, j: {kind: joint}}\nruns: [{link: [PS1.+, PS1.-]}]\n',
  'format: 1\nparts: {PS1: {kind: supply, output: 0 V DC}, j: {kind: joint}}\nruns: [{link: [j, PS1.-]}]\n',
  'format: 1\nparts: {bx: {kind: box}}\nruns: []\n',
  'format: 1\nparts: {M: {kind: motor}, g: {kind: gate}}\nruns: []\nintent: {M: {runs-on: [g]}}\n',
];

/** A small plan that works, in which every name is one that does not look like one. */
function named(dice: Dice): string {
  const name = () =>
    JSON.stringify(
      dice.chance(0.9) ? `${dice.of(PROTOTYPE_NAMES)}${dice.of(['', '-2', 'é'])}` : oddText(dice),
    );
  const text = () => JSON.stringify(`x${dice.of(ACTING)}`);
  const [gate, relay, supply, core, stock] = [name(), name(), name(), text(), name()] as const;
  const end = (part: string, mark: string) => JSON.stringify(`${JSON.parse(part) as string}.${mark}`);
  return plan(
    `  ${supply}: {kind: supply, output: 12 V DC, limit: 1 A}\n  ${relay}: ${RELAY}\n  ${gate}: {kind: gate, pressed-when: open}\n  S: {kind: selector, positions: [${name()}, ${name()}], rest: ${name()}}`,
    `  - {cable: ${stock}, length: 3 m, name: ${text()}, route: ${text()}, cores: {${core}: [${end(supply, '+')}, ${end(gate, 'COM')}], white: [${end(gate, 'NO')}, ${end(relay, 'A1')}]}}\n  - {link: [${end(supply, '-')}, ${end(relay, 'A2')}]}`,
    `stock:\n  ${stock}: {kind: cable, gauge: 18 AWG, cores: 2}\nintent:\n  ${relay}: {runs-on: [${gate}]}\n`,
  );
}

export function degenerate(dice: Dice): string {
  if (dice.chance(0.25)) return dice.of(SMALL);
  if (dice.chance(0.35)) return named(dice);
  const shape = dice.of(SHAPES);
  const count = dice.of([1, 2, 3, 8, 30, 100, 300, 500]);
  const text = shape(count);
  return text.length > 100_000 ? shape(8) : text;
}
