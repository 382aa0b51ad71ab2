/**
 * What stands nearest a motor, a tap or a transformer decides. NEC 2023 as a public copy gives it, and a second copy where
 * no more is said: 430.52(C)(1) and its table; 430.72(C), 450.3(B). Table 430.72(B) from one copy; 310.16 and 110.14(C) read.
 */
import { describe, expect, it } from 'vitest';
import { motorUnprotected } from '../../../src/findings/contacts/motor-unprotected.ts';
import { breakerTooLarge } from '../../../src/findings/mains/breaker-too-large.ts';
import { conductorUnprotected } from '../../../src/findings/mains/conductor-unprotected.ts';
import { cordTooThin } from '../../../src/findings/mains/cord-too-thin.ts';
import { transformerUnprotected } from '../../../src/findings/mains/transformer-unprotected.ts';
import { type BranchShop, branchShop, foundBy } from './branch-shop.ts';

const severities = (check: Parameters<typeof foundBy>[0], s: BranchShop) => [
  ...new Set(foundBy(check, branchShop(s)).map(([severity]) => severity)),
];
const holds: string[] = [];
const fails = ['warning'];

describe('the branch device of a motor of 2 hp on 240 V, 12 A by Table 430.248', () => {
  const behind = (motorFuses: string, breaker = 100) => severities(breakerTooLarge, { breaker, motorFuses });
  it.each([
    // 175 % of 12 A is 21 A, next size 25 A
    ['25 A, class: time-delay', holds],
    ['30 A, class: time-delay', fails],
    // 300 % is 36 A, next size 40 A; a class that is not said goes by this column
    ['40 A, class: fast', holds],
    ['45 A, class: fast', fails],
    ['40 A', holds],
  ])('fuses of %s behind a feeder of 100 A', (fuses, expected) => expect(behind(fuses)).toEqual(expected));
  it('a breaker of its own serves whatever fuses stand behind it, and a larger one never mends', () => {
    expect(behind('45 A, class: fast', 30)).toEqual(holds);
    for (const breaker of [35, 50, 100]) expect(behind('45 A, class: fast', breaker)).toEqual(fails);
  });
  it('names the fuse and what it may be', () =>
    expect(
      foundBy(breakerTooLarge, branchShop({ breaker: 100, motorFuses: '30 A, class: time-delay' }))[0]![1],
    ).toBe('fuse M1 of 30 A is too large for fan: 25 A at most'));
});

describe('a tap to the transformer of the coil, Table 430.72(B)', () => {
  const tap = (s: Partial<BranchShop>) =>
    severities(conductorUnprotected, { breaker: 30, plug: ', terminal-rating: 75 °C', ...s });
  it.each<[string, Partial<BranchShop>, string[]]>([
    ['column B, 18 AWG behind 25 A', { breaker: 25, tap: '18 AWG' }, holds],
    ['column B, 18 AWG behind 30 A', { tap: '18 AWG' }, fails],
    [
      'column B behind the fuses of the motor, 16 AWG',
      { breaker: 100, motorFuses: '25 A, class: time-delay', tap: '16 AWG' },
      holds,
    ],
    ['column C, 16 AWG', { tap: '16 AWG', tapLeaves: true }, fails],
    ['column C, 14 AWG', { tap: '14 AWG', tapLeaves: true }, holds],
    ['column A, fuses of 7 A before 18 AWG', { tap: '18 AWG', tapLeaves: true, tapFuses: '7 A' }, holds],
    ['column A, fuses of 8 A before 18 AWG', { tap: '18 AWG', tapLeaves: true, tapFuses: '8 A' }, fails],
    // what column C lets the branch breaker do, a fuse behind it does not undo
    [
      'fuses of 25 A before 14 AWG that the breaker of 30 A protects',
      { tapLeaves: true, tapFuses: '25 A' },
      holds,
    ],
  ])('%s', (_, s, expected) => expect(tap(s)).toEqual(expected));
});

describe('conductors of the motor, 430.22: 125 % of 17 A for 3 hp', () => {
  const thin = (s: Partial<BranchShop>) =>
    severities(cordTooThin, { breaker: 30, motor: 'protector: manual', ...s });
  const three = (s: Partial<BranchShop>) =>
    foundBy(cordTooThin, branchShop({ breaker: 30, ...s }).replace('power: 2 hp', 'power: 3 hp')).map(
      ([x]) => x,
    );
  it('12 AWG carries 20 A at 60 °C and 25 A at 75 °C, by the lowest of terminals and insulation', () => {
    expect(three({ plug: ', terminal-rating: 75 °C' })).toEqual(holds);
    expect(three({ plug: ', terminal-rating: 60 °C' })).toEqual(fails);
    expect(three({ plug: ', terminal-rating: 75 °C', wire: '12 AWG, rated: 60 °C' })).toEqual(fails);
    // 25 A times 0.82 at 45 °C is 20.5 A
    expect(three({ plug: ', terminal-rating: 75 °C', wire: '12 AWG, rated: 75 °C', ambient: 45 })).toEqual(
      fails,
    );
  });
  it('2 hp need 15 A: 14 AWG at 60 °C has just that', () => {
    expect(thin({ wire: '14 AWG, rated: 60 °C' })).toEqual(holds);
    expect(thin({ wire: '14 AWG, rated: 60 °C', ambient: 31 })).toEqual(fails);
  });
});

describe('what stands ahead of a control transformer', () => {
  const tx = (s: Partial<BranchShop>) => severities(transformerUnprotected, { breaker: 30, ...s });
  const VA100 = 'limit: 100 VA';
  it.each<[string, Partial<BranchShop>, string[]]>([
    // 100 VA at 240 V: 0.417 A, 500 % 2.08 A
    ['100 VA, fuses of 2 A', { transformer: VA100, tapFuses: '2 A' }, holds],
    ['100 VA, fuses of 2.25 A', { transformer: VA100, tapFuses: '2.25 A' }, fails],
    ['100 VA, none but the breaker', { transformer: VA100 }, fails],
    ['Class 2, none: 430.72(C)(1)', { transformer: 'limit: 100 VA, class-2: true' }, holds],
    ['49 VA within the box, none: 430.72(C)(3)', { transformer: 'limit: 49 VA' }, holds],
    ['50 VA within the box, none', { transformer: 'limit: 50 VA' }, fails],
    ['49 VA out of the box, none', { transformer: 'limit: 49 VA', tapLeaves: true }, fails],
    // 500 VA: 2.08 A, 167 % 3.48 A by 450.3(B)
    ['500 VA, fuses of 3.4 A', { transformer: 'limit: 500 VA', tapFuses: '3.4 A' }, holds],
    ['500 VA, fuses of 3.5 A', { transformer: 'limit: 500 VA', tapFuses: '3.5 A' }, fails],
  ])('%s', (_, s, expected) => expect(tx(s)).toEqual(expected));
  it('says nothing of a size that is not stated, and nothing in iec, whose standards give no figure', () => {
    expect(tx({ transformer: 'tolerance: 2 %' })).toEqual(holds);
    expect(
      foundBy(transformerUnprotected, branchShop({ breaker: 30, transformer: VA100 }).replace('nec', 'iec')),
    ).toEqual([]);
  });
});

it('an overload relay that nothing passes is none where the motor has none either: 430.32', () => {
  const idle = (motor: string) =>
    severities(motorUnprotected, {
      breaker: 20,
      motor,
      overload: '{kind: cutout, setting: 11 A, reset: manual}',
    });
  expect(idle('protector: none')).toEqual(['warning']);
  expect(idle('protector: manual')).toEqual(['caution']);
});
