/** Pages made from the sources. */

import { readFileSync } from 'node:fs';
import { pageOf } from '../../src/page/build.ts';
import { mendingOf } from '../../src/page/mending.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { check } from '../../src/repair/check.ts';
import { Study } from '../../src/study/study.ts';
import { example, examplePath } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';
import { browserFiles } from './browser-files.ts';

/** With `text`, that of the plan's file, the page has the mended plan as well where there is one. */
export function pageFor(plan: Plan, text?: string): string {
  const study = Study.of(plan);
  const report = check(study);
  return pageOf(
    study,
    report,
    browserFiles(),
    text === undefined ? undefined : mendingOf(study, report, text),
  );
}

const pages = new Map<string, string>();

/** The page of an example, as `pullin page` writes it; made once for all who look at it. */
export function pageOfExample(name: string): string {
  const page = pages.get(name) ?? pageFor(example(name), readFileSync(examplePath(name), 'utf8'));
  pages.set(name, page);
  return page;
}

/** What text from a plan must never become. */
export const MARKUP =
  '<img src=x onerror="document.title=1">\'</script><script>document.title=1</script>&lt;';

/** A plan with markup wherever text stands in it, also where its format would not let it in. */
export function hostilePlan(): Plan {
  const plan = planOf(TEXT);
  const runs = plan.runs.map((run) => ({
    ...run,
    name: MARKUP,
    route: MARKUP,
    ...(run.cable === undefined ? {} : { cable: { ...run.cable, gauge: MARKUP } }),
    cores: run.cores.map((core) => ({
      ...core,
      colour: MARKUP,
      a: { ...core.a, written: MARKUP },
      b: { ...core.b, written: MARKUP },
    })),
  }));
  return { ...plan, runs };
}

const TEXT = `title: ${JSON.stringify(MARKUP)}
parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  G: {kind: gate, contact: {ratings: [5 A 250 V AC]}}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 144 ohm}, contact: {ratings: [10 A 240 V AC]}}
  P1: {kind: plug, volts: 230 V AC, pattern: ${JSON.stringify(MARKUP)}}
  M: {kind: motor, volts: 230 V AC, power: 500 W}
runs:
  - {cable: {kind: cable, gauge: 20 AWG, cores: 2}, length: 2 m, cores: {red: [PS1.+, G.COM], white: [PS1.-, K1.A2]}}
  - {link: [G.NO, K1.A1]}
  - {link: [P1.L, K1.11]}
  - {link: [K1.14, M.L]}
  - {link: [P1.N, M.N]}
`;
