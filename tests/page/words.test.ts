/** What the page says of a move. */
import { describe, expect, it } from 'vitest';
import { positionWord } from '../../src/circuit/input-words.ts';
import { isArming } from '../../src/machine/intended-state.ts';
import { Walk } from '../../src/machine/walk.ts';
import { stepWords } from '../../src/page/words.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { Study } from '../../src/study/study.ts';
import { example } from '../helpers/example-plans.ts';
import { planOf } from '../helpers/plan-of.ts';

/** The sentences after each input named has been moved in turn, the last time. */
function said(plan: Plan, ...parts: readonly string[]): string[] {
  const { verified } = Study.of(plan);
  const walk = new Walk(Study.of(plan), verified !== undefined && isArming(verified));
  const ways = (part: string) => walk.contactsTo(part);
  let before = walk.view();
  let words = stepWords('At rest', undefined, before, ways);
  for (const part of parts) {
    const input = walk.inputs.find((i) => i.part === part)!;
    walk.toggle(input.index);
    const now = walk.view();
    words = stepWords(`${part} ${positionWord(input.kind, input.position)}`, before, now, ways);
    before = now;
  }
  return words.map((w) => w.text);
}

describe('what the page says', () => {
  it('is short where all is well', () => {
    const plan = example('saltmarsh-lane');
    expect(said(plan)).toEqual(['At rest: collector stands, as the plan wants.']);
    expect(said(plan, 'bandsaw')).toEqual([
      'bandsaw open: K1 gets 12 V, needs 9 V, pulls in; collector runs, as the plan wants.',
    ]);
    expect(said(plan, 'bandsaw', 'router')).toEqual([
      'router open: K1 stays in; collector keeps running, as the plan wants.',
    ]);
  });

  it('names the contact that a wrong tab opens', () => {
    expect(said(example('wrong/planer-on-break-tab'))[1]).toBe(
      'collector should stand and runs: K1 is in (it gets 11.9 V, needs 9 V).',
    );
    expect(said(example('wrong/planer-on-break-tab'), 'planer')).toEqual([
      'planer open: K1 gets 0 V, lets go; collector stops.',
      'collector should run and does not: no current reaches K1; open on the way: planer COM-NC, bandsaw COM-NO, router COM-NO (planer opens its contact when it is moved).',
    ]);
  });

  it('sets the volts of a coil against what it needs', () => {
    expect(said(example('wrong/coil-24-on-12'), 'bandsaw')).toEqual([
      'bandsaw open: K1 gets 12 V, needs 18 V, stays out; collector stands.',
      'collector should run and does not: K1 gets 12 V, needs 18 V.',
    ]);
  });

  it('follows a chain of relays to the first that gets nothing', () => {
    const words = said(example('wrong/stop-with-make-contact'), 'panel-saw').join(' ');
    expect(words).toMatch(/fan should run and does not: no current reaches Q1; .*STOP/);
  });

  it('tells volts the wrong way round, and what a supply cannot give', () => {
    expect(said(example('wrong/polarised-coil-reversed'), 'bandsaw').join(' ')).toContain(
      'the wrong way round',
    );
    const shorted = planOf(`parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  G: {kind: gate}
runs:
  - {link: [PS1.+, G.COM]}
  - {link: [PS1.-, G.NO]}
`);
    expect(said(shorted, 'G').join(' ')).toContain('PS1 cannot give what is asked of it');
  });

  it('says so where relays chatter, and where arithmetic ends', () => {
    const restless = said(example('wrong/seal-on-own-rest-contact'));
    expect(restless).toEqual(['At rest.', expect.stringContaining('Relays find no rest here')]);
    const mixed = 'AC and DC meet';
    expect(said(example('wrong/diode-on-ac-coil')).join(' ')).toContain(mixed);
  });
});
