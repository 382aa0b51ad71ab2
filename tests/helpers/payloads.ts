/** What strangers may write into a plan, and a plan that has it wherever free text may stand. */
import { STAGES, type Stages } from '../../src/cli/stages.ts';
import { printable } from '../../src/text/escape.ts';
import { pullin } from '../cli/fake-io.ts';

/** Whatever does more than print (UAX #44); a line break is looked at apart. */
export const ACTS = /(?!\n)[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}]/u;

export const PAYLOADS: readonly (readonly [string, string])[] = [
  ['an escape sequence', '\u001b[2J'],
  ['an operating system command', '\u001b]0;x\u0007'],
  ['a C1 control', '\u009b31m'],
  ['a bidirectional override', '\u202ex'],
  ['an isolate', '\u2066x\u2069'],
  ['a script element', '<script>alert(1)</script>'],
  ['an image that fails', '<img src=x onerror=alert(1)>'],
  ['the end of a CDATA section', ']]>'],
  ['a comment', '<!-- --> <!--'],
  ['quotes', '"\'`"'],
  ['an attribute', '" onload="alert(1)'],
  ['an address with a scheme', 'javascript:alert(1)'],
  ['an address', 'http://x.invalid www.x.invalid a@x.invalid'],
  ['a formula', "=cmd|'/C x'!A0"],
  ['a sum', '+1+1'],
  ['a function', '@SUM(1)'],
  ['a code span', '`x` ```x'],
  ['a table of Markdown', '| a | b |'],
  ['a link of Markdown', '[a](b) ![c](d) [e]: f'],
  ['emphasis', '**a** _b_ ~~c~~ # d'],
  ['a list of Markdown', '1. a'],
  ['an entity', '&amp;&#60;&lt;'],
  ['a macro of a manual page', "%s .TH x \\fB 'br"],
  ['a line break', 'a\nb'],
  ['a carriage return', 'a\r\nb'],
  ['nothing', '\0'],
  ['half a character', '\ud800'],
  ['a line separator', 'a\u2028b'],
  ['a mark of byte order', '\ufeff'],
  ['a tag character', '\u{e0041}'],
];

/** How text shows: what acts as its code point, on one line. */
export const shownOf = (payload: string): string => printable(payload).trim();

/** A right plan with the payload where any text may stand: within its title, and at the beginning of the way of a run. */
export function planWith(payload: string): string {
  const text = JSON.stringify(`t${payload}t`);
  const first = JSON.stringify(payload);
  return `format: 1
title: ${text}
practice: nec
stock:
  twin: {kind: cable, gauge: 18 AWG, cores: 3}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, class-2: true}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 144 ohm}, contact: {ratings: [10 A 240 V AC]}}
  g1: {kind: gate, pressed-when: open}
runs:
  - {cable: twin, route: ${first}, length: 2 m, cores: {red: [PS1.+, g1.COM]}}
  - {link: [g1.NO, K1.A1]}
  - {link: [PS1.-, K1.A2]}
intent:
  K1: {runs-on: [g1]}
`;
}

/** Command lines that write SVG and HTML. */
export const DRAWN: readonly (readonly string[])[] = [
  ['draw', '-o', '-'],
  ['draw', '--runs', '-o', '-'],
  ['page', '-o', '-'],
  ['sheet', '-o', '-'],
];

/** The page without what the build makes. */
export const stages: Stages = {
  ...STAGES,
  page: async (study) =>
    (await import('../../src/page/build.ts')).pageOf(study, await STAGES.check(study), {
      script: '',
      style: '',
    }),
};

/** Each plan as each command draws it, worked out once: two tests look at the same drawing. */
const drawings = new Map<string, ReturnType<typeof run>>();

/** What a command line that draws writes of a plan. */
export function drawn(plan: string, args: readonly string[]): ReturnType<typeof run> {
  const key = JSON.stringify([plan, args]);
  const known = drawings.get(key) ?? run(plan, args);
  drawings.set(key, known);
  return known;
}

export const run = (plan: string, [command, ...args]: readonly string[], isTTY = false) =>
  pullin([command!, '-', ...args], { stages, stdin: [plan], isTTY });
