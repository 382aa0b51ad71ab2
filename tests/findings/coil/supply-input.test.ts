import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge } from '../../../src/findings/judge.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { Study } from '../../../src/study/study.ts';

const shop = readFileSync(new URL('../bases/control-transformer.yaml', import.meta.url), 'utf8');

function findingsOf(text: string) {
  const read = readPlan(text, 'shop.yaml');
  if (!read.ok) throw new Error(read.errors.map((e) => e.message).join('\n'));
  return judge(Study.of(read.plan)).findings;
}

const onMains = (volts: number) =>
  shop.replace('volts: 240 V AC, frequency', `volts: ${volts} V AC, frequency`);
const severityOf = (text: string) => findingsOf(text).find((f) => f.id === 'supply-input')?.severity;

describe('a supply fed other volts than it is wired for', () => {
  // Arithmetic of turns: 208 V on the 240 V tap give 86.7 %, 240 V on the 208 V tap 115.4 % (trade tables of taps).
  it('gives 104 V of 120 V with 208 V on the tap for 240 V, and the coil is told what it gets', () => {
    const [found] = findingsOf(onMains(208)).filter((f) => f.id === 'supply-input');
    expect(found!.message).toContain('gets 208 V: it gives 104 V AC in place of 120 V');
    expect(found!.why).toContain('The coil of Q1 then gets');
    expect(found!.why).toContain('needs 102 V');
  });

  it('gives 138.5 V with 240 V on the tap for 208 V', () => {
    const [found] = findingsOf(shop.replace('F2.2, T1.240', 'F2.2, T1.208')).filter(
      (f) => f.id === 'supply-input',
    );
    expect(found!.severity).toBe('warning');
    expect(found!.message).toContain('it gives 138.5 V AC in place of 120 V');
  });

  // The mains itself may stand 10 % off (common practice).
  it.each([
    [216, undefined],
    [215, 'fault'],
    [264, undefined],
    [265, 'warning'],
  ])('%d V on the tap for 240 V: %s', (volts, severity) => {
    expect(severityOf(onMains(volts))).toBe(severity);
  });

  it('names one supply where another hangs on it', () => {
    expect(findingsOf(onMains(208)).filter((f) => f.id === 'supply-input')).toHaveLength(1);
  });

  it('names two taps that are wired at once', () => {
    const both = shop.replace(
      '  - {cable: wire, length: 30 cm, cores: {red: [F2.2, T1.240]}}',
      '  - {cable: wire, length: 30 cm, cores: {red: [F2.2, T1.240]}}\n  - {link: [T1.208, T1.240]}',
    );
    expect(findingsOf(both).find((f) => f.id === 'supply-input')?.message).toContain(
      '3 terminals of the primary',
    );
  });
});

describe('a secondary at mains volts', () => {
  const ids = (text: string) => findingsOf(text).flatMap((f) => [f.id, ...f.also.map((a) => a.id)]);

  it('is mains side and no loop that is not low voltage', () => {
    expect(ids(shop)).not.toContain('supply-over-limits');
    const joined = shop.replace('white: [PS1.-, K1.A2]', 'white: [T1.~2, K1.A2]');
    expect(ids(joined)).toContain('mains-meets-low-voltage');
  });

  it('is dead with the transformer, and so is the supply behind it', () => {
    const off = shop.replace('  - {cable: wire, length: 30 cm, cores: {black: [F1.2, T1.0]}}\n', '');
    expect(ids(off)).toContain('loop-dead');
  });

  it('is counted with what hangs on it: 8 VA held, 60 VA at pull-in, and the adapter', () => {
    expect(ids(shop.replace('limit: 100 VA', 'limit: 80 VA'))).not.toContain('supply-overloaded');
    expect(ids(shop.replace('limit: 100 VA', 'limit: 30 VA'))).toContain('supply-overloaded');
  });
});
