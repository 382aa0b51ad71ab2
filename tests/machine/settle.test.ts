import { expect, it } from 'vitest';
import type { Source } from '../../src/circuit/circuit.ts';
import { closedWith, hasPower, settle } from '../../src/machine/settle.ts';

const out = { relays: [false, false], alive: [true] };

it('rests where nothing moves any more', () => {
  // The second relay follows the first, which pulls in at once.
  const rest = settle(out, ({ relays, alive }) => ({ relays: [true, relays[0]!], alive }));
  expect(rest).toEqual({ relays: [true, true], alive: [true], settled: true });
});

it('keeps what holds itself when it goes on from there', () => {
  const sealed = ({ relays: [a, b] }: { readonly relays: readonly boolean[] }) => ({
    relays: [a!, b! || a!],
    alive: [true],
  });
  expect(settle({ ...out, relays: [false, true] }, sealed).relays).toEqual([false, true]);
  expect(settle(out, sealed).relays).toEqual([false, false]);
});

it('gives up on what breaks its own coil', () => {
  const { settled } = settle(out, ({ relays, alive }) => ({ relays: [!relays[0], false], alive }));
  expect(settled).toBe(false);
});

it('does not rest while a source still comes on', () => {
  const rest = settle({ relays: [], alive: [true, false] }, () => ({ relays: [], alive: [true, true] }));
  expect(rest).toEqual({ relays: [], alive: [true, true], settled: true });
});

it('closes a contact by its input or its relay', () => {
  const closed = closedWith(new Set([2]), [true]);
  expect(closed({ when: { by: 'always' } })).toBe(true);
  expect(closed({ when: { by: 'input', input: 2, value: true } })).toBe(true);
  expect(closed({ when: { by: 'input', input: 1, value: false } })).toBe(true);
  expect(closed({ when: { by: 'relay', relay: 0, value: false } })).toBe(false);
});

it('gives a source power from its own terminals, its plug or its outlet', () => {
  const source = (part: string, feed: Source['feed']): Source => ({
    index: 0,
    part,
    kind: 'dc',
    mains: false,
    rails: [],
    feed,
  });
  const plug = source('wall', { by: 'always' });
  const outlet = {
    part: 'socket',
    kind: 'outlet' as const,
    nets: new Map([
      ['L', 1],
      ['N', 2],
    ]),
  };
  const circuit = { sources: [plug], consumers: [outlet] };
  const on = (feed: Source['feed'], alive: boolean, fed: readonly number[]) =>
    hasPower(
      circuit,
      source('S1', feed),
      () => alive,
      (a, b) => fed.includes(a) && fed.includes(b),
    );
  expect(on({ by: 'always' }, false, [])).toBe(true);
  expect(on({ by: 'nets', a: 3, b: 4 }, false, [3, 4])).toBe(true);
  expect(on({ by: 'nets', a: 3, b: 4 }, true, [3])).toBe(false);
  expect(on({ by: 'part', part: 'wall' }, true, [])).toBe(true);
  expect(on({ by: 'part', part: 'wall' }, false, [1, 2])).toBe(false);
  expect(on({ by: 'part', part: 'socket' }, false, [1, 2])).toBe(true);
  expect(on({ by: 'part', part: 'socket' }, true, [1])).toBe(false);
  expect(on({ by: 'part', part: 'nothing' }, true, [1, 2])).toBe(false);
});
