/** Plans of one gate and one coil, half a per cent on either side of a threshold. */
import { expect } from 'vitest';
import { judgeAsTaken } from '../../src/findings/judge.ts';
import type { Finding } from '../../src/findings/report-model.ts';
import { readPlan } from '../../src/plan/read.ts';
import { Study } from '../../src/study/study.ts';

export interface Loop {
  readonly practice?: string;
  readonly ambient?: number;
  readonly supply?: string;
  readonly contact?: string;
  readonly coil?: string;
  /** of the cable to the gate; without it the gate is joined by links */
  readonly gauge?: string;
  readonly metres?: number;
  readonly parts?: readonly string[];
  /** in place of the runs of the plain loop */
  readonly runs?: readonly string[];
  /** besides the runs of the plain loop */
  readonly more?: readonly string[];
  readonly runsOn?: string;
}

export const REGULATED =
  'kind: supply, output: 12 V DC, limit: 2 A, regulation: regulated, tolerance: 2 %, class-2: true';
/** 120 ohm and 75 %: 9 V to pull in at 20 °C. Without `tolerance` and `hot-rise`, which differ between pairs. */
export const COIL =
  'rated: 12 V DC, resistance: 120 ohm, pull-in: 75 %, drop-out: 10 %, most: 200 %, suppressor: diode';
export const WARM = 'tolerance: 10 %, hot-rise: 30 K';
export const EXACT = 'tolerance: 0 %, hot-rise: 30 K';
const ANY = 'ratings: [5 A 250 V AC, 5 A 30 V DC], least: 1 mA 5 V DC';

/** A gate, a coil and what feeds them. */
export function loop(l: Loop): string {
  const cable = `cable: {gauge: ${l.gauge}, cores: 2, insulation: 300 V, strands: solid}, length: ${l.metres} m`;
  const ac = /output: [\d.]+ V AC/.test(l.supply ?? '');
  const [go, back] = ac ? ['PS1.~1', 'PS1.~2'] : ['PS1.+', 'PS1.-'];
  const plain = l.gauge
    ? [`{${cable}, cores: {red: [${go}, g.COM], black: [K1.A1, g.NO]}}`]
    : [`{link: [${go}, g.COM]}`, '{link: [K1.A1, g.NO]}'];
  return [
    'format: 1',
    'title: Threshold',
    `practice: ${l.practice ?? 'nec'}`,
    `ambient: ${l.ambient ?? 35} °C`,
    'parts:',
    `  PS1: {${l.supply ?? REGULATED}}`,
    `  g: {kind: gate, contact: {${l.contact ?? ANY}}}`,
    `  K1: {kind: relay, contact: {ratings: [10 A 250 V AC]}, coil: {${l.coil ?? `${COIL}, ${WARM}`}}}`,
    ...(l.parts ?? []).map((p) => `  ${p}`),
    'runs:',
    ...(l.runs ?? [...plain, `{link: [K1.A2, ${back}]}`, ...(l.more ?? [])]).map((r) => `  - ${r}`),
    'intent:',
    `  K1: {runs-on: [${l.runsOn ?? 'g'}]}`,
    '',
  ].join('\n');
}

export function findings(text: string): readonly Finding[] {
  const read = readPlan(text, 'threshold.yaml');
  if (!read.ok) throw new Error(`${read.errors.map((e) => e.message).join('\n')}\n${text}`);
  return judgeAsTaken(Study.of(read.plan)).findings;
}

/** Whether a plan has a finding, by itself or under another. */
export function has(text: string, id: string): boolean {
  return findings(text).some((f) => f.id === id || f.also.some((a) => a.id === id));
}

export const HALF = 0.005;
const short = (x: number) => Number(x.toPrecision(7));

/** The finding appears as the figure passes the threshold. */
export function begins(
  id: string,
  bad: 'above' | 'below',
  threshold: number,
  plan: (figure: number) => string,
) {
  const side = bad === 'above' ? 1 : -1;
  const wrong = plan(short(threshold * (1 + side * HALF)));
  const right = plan(short(threshold * (1 - side * HALF)));
  expect(has(wrong, id), `${id} at ${threshold} has to be found\n${wrong}`).toBe(true);
  expect(has(right, id), `${id} at ${threshold} must not be found\n${right}`).toBe(false);
}

/** Copper against 20 °C, IEC 60228. */
export const k = (celsius: number) => (234.5 + celsius) / 254.5;
/** ohm per m at 20 °C: 0.017241 ohm mm²/m over the area of the gauge, ASTM B258 with IEC 60028. */
const awgArea = (n: number) => (Math.PI / 4) * (0.127 * 92 ** ((36 - n) / 39)) ** 2;
export const awg = (n: number) => 0.017241 / awgArea(n);
/** ohm of a snap switch's contact: least, as printed, worst; switch data sheets. */
export const CONTACT = { least: 0.015, printed: 0.05, worst: 0.1 };
/** 12 V less and plus 2 %. */
export const LOW = 11.76;
export const HIGH = 12.24;
