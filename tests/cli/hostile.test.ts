/**
 * What a stranger's plan may hold against what may go out: payloads by forms. The expected is our own rule and Unicode's
 * classes of characters (UAX #44: Cc, Cf, Zl, Zp, Cs, Co, Default_Ignorable_Code_Point).
 */
import { describe, expect, it } from 'vitest';
import { STAGES } from '../../src/cli/stages.ts';
import { pullin } from './fake-io.ts';

/** Whatever does more than print; a line break and the colours of our own are looked at apart. */
const ACTS = /(?!\n)[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}]/u;

const PAYLOADS: readonly (readonly [string, string, string])[] = [
  ['an escape code', '\\e[2Jx', '\u001b[2Jx'],
  ['a C1 control', '\\x9b31mx', '\u009b31mx'],
  ['an operating system command', '\\e]0;x\\ax', '\u001b]0;x\u0007x'],
  ['a direction mark', '\\u202Ex', '\u202ex'],
  ['a line separator', '\\u2028x', '\u2028x'],
  ['a carriage return', '\\rx', '\rx'],
  ['a tag character', '\\U000E0041x', '\u{e0041}x'],
  ['markup', '</script><b>', '</script><b>'],
];

/** A plan that is right but for what `title` says; `more` is a line of the parts. */
const shop = (title: string, more = '') => `format: 1
title: "${title}"
practice: nec
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 144 ohm}, contact: {ratings: [10 A 240 V AC]}}
  g1: {kind: gate, pressed-when: open}
${more}runs:
  - {link: [PS1.+, g1.COM]}
  - {link: [g1.NO, K1.A1]}
  - {link: [PS1.-, K1.A2]}
intent:
  K1: {runs-on: [g1]}
`;

const run = (plan: string, args: readonly string[], isTTY = false) =>
  pullin([args[0]!, '-', ...args.slice(1)], { stages: STAGES, stdin: [plan], isTTY });

/** One entry for each way in which a text of the file comes back in an error. */
const WRONG = (typed: string) => `  PS2: {kind: supply, output: 12 V DC, class-2: "${typed}"}
  K2: {kind: relay, from: "${typed}"}
  PS3: {kind: supply, "outp${typed}": 12 V DC}
  S1: {kind: selector, positions: ["a${typed}", b]}
  S2: {kind: selector, positions: [a, b], rest: "${typed}"}
  "b${typed}": {kind: gate}
  b1: {kind: "${typed}"}
  PS4: {kind: supply, output: "12 V ${typed}"}
`;

it.each(PAYLOADS)('shows %s in errors', async (_, typed) => {
  const { status, err, out } = await run(shop('t', WRONG(typed)), ['check']);
  expect(status).toBe(2);
  expect(err.match(/^-:\d+:\d+: |^[^\n]*:\d+:\d+: /gm)?.length).toBeGreaterThanOrEqual(8);
  expect(err).not.toMatch(ACTS);
  expect(out).toBe('');
});

describe('a title of all of them', () => {
  const title = shop(PAYLOADS.map(([, typed]) => typed).join(' '));

  it('is whole in JSON, where nothing acts', async () => {
    const { out } = await run(title, ['check', '--json']);
    expect(out).not.toMatch(ACTS);
    const { plan } = JSON.parse(out) as { plan: { title: string } };
    expect(plan.title).toBe(PAYLOADS.map(([, , raw]) => raw).join(' '));
  });

  it.each([
    ['check'],
    ['table', '--format', 'markdown'],
    ['table', '--format', 'csv'],
    ['draw'],
    ['draw', '-o', '-'],
  ])('does nothing in %s %s %s', async (...args) => {
    const { out, err } = await run(title, args);
    expect(out.length).toBeGreaterThan(20);
    expect(`${out.replaceAll('\r\n', '\n')}${err}`).not.toMatch(ACTS);
    if (args.includes('-o')) expect(out).not.toContain('</script>');
  });
});

it('leaves nothing of a comment in a diff that moves the cursor of a terminal', async () => {
  const wrong = shop('t').replace('[PS1.-, K1.A2]}', '[PS1.-, K1.A1]}  # \u009b2J\u202e');
  const { out } = await run(wrong, ['mend', '--diff'], true);
  expect(out).toContain('+++');
  expect(out).not.toMatch(ACTS);
});

it('takes names of what every object has for names', async () => {
  const names = shop('t', '  valueOf: {kind: button}\n')
    .replaceAll('g1', 'constructor')
    .replaceAll('K1', 'toString');
  const unwired = names.replace(/runs:[\s\S]*/, 'runs: []\n');
  for (const plan of [names, unwired])
    for (const args of [['table', '--all'], ['read'], ['page', '-o', '-']]) {
      const stages = args[0] === 'page' ? { ...STAGES, page: pageOf } : STAGES;
      const done = await pullin([args[0]!, '-', ...args.slice(1)], { stages, stdin: [plan] });
      expect([args, done.status < 4, done.err.includes('mistake')]).toEqual([args, true, false]);
    }
  const { out } = await run(unwired, ['table']);
  expect(out).not.toMatch(/native code|function/);
});

const pageOf: typeof STAGES.page = async (study) =>
  (await import('../../src/page/build.ts')).pageOf(study, await STAGES.check(study), {
    script: '',
    style: '',
  });
