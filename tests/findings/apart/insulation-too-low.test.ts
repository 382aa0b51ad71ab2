import { describe, expect, it } from 'vitest';
import { shop } from '../mains-plans.ts';
import { findings, loop } from '../threshold-plans.ts';

const of = (text: string, id: string) => findings(text).filter((f) => f.id === id);

describe('insulation-too-low', () => {
  it('names the ends of the cable, and nothing where it reaches the volts', () => {
    const at = (volts: number) =>
      of(
        loop({ gauge: '20 AWG', metres: 1 }).replace('insulation: 300 V', `insulation: ${volts} V`),
        'insulation-too-low',
      );
    expect(at(11).map((f) => [f.parts, f.severity])).toEqual([[['PS1', 'g'], 'danger']]);
    expect(at(11)[0]?.figures[0]?.value).toBe(11);
    expect(at(300)).toEqual([]);
  });
  it('not stated is a doubt on mains and none on the loop', () => {
    const bare = (text: string) => of(text.replaceAll(/, insulation: \d+ V/g, ''), 'insulation-too-low');
    expect(bare(loop({ gauge: '20 AWG', metres: 1 }))).toEqual([]);
    const [found] = bare(shop({}));
    expect(found).toMatchObject({ severity: 'doubt' });
    expect(found?.parts).toEqual(expect.arrayContaining(['P1', 'K1']));
    expect(found?.figures[0]?.value).toBeNull();
  });
});
