import { describe, expect, it } from 'vitest';
import { secondsOfWork } from '../helpers/work.ts';
import { judge, mutants, type Oracle, replay } from './brute.ts';
import { published } from './published.ts';

const rowAt = (o: Oracle, inputs: Record<string, string>): Record<string, boolean> | undefined =>
  o.table.find((r) => {
    const rest = o.table[0]!.inputs;
    return Object.entries({ ...rest, ...inputs }).every(([k, v]) => r.inputs[k] === v);
  })?.on;

describe.each(published)('published relay logic, $id ($source)', ({ plan, expect: printed, steps }) => {
  it('gives the printed states', () => {
    const o = judge(plan);
    for (const p of printed) expect([p, rowAt(o, p.inputs)?.[p.target]]).toEqual([p, p.runs]);
  });
  it.runIf(steps)('gives the printed sequence', () => {
    const got = replay(
      plan,
      steps!.map((s) => s.move),
    );
    steps!.forEach((s, i) => {
      expect([i, got[i]]).toMatchObject([i, s.expect]);
    });
  });
});

const symptomsOf = (id: string): string[] =>
  [...judge(published.find((p) => p.id === id)!.plan).symptoms].sort();

describe('what the published circuits amount to', () => {
  it('finds nothing in an OR, reversing by two buttons, and start-stop with one contactor', () => {
    expect(symptomsOf('or')).toEqual([]);
    expect(symptomsOf('alarm')).toEqual([]);
    expect(symptomsOf('reversing-no-interlock')).toEqual([]);
    expect(symptomsOf('nc-stop')).toEqual([]);
    expect(symptomsOf('no-stop')).toEqual([]);
  });
  it('names an open alarm wire and an NO stop that no longer stops', () => {
    expect(symptomsOf('alarm-wire-open')).toEqual(['does-not-start']);
    expect(symptomsOf('no-stop-wire-open')).toEqual(['stays-on']);
  });
  it('sees that two interlocked contactors pressed at once depend on which is faster', () => {
    expect(symptomsOf('start-stop-seal-in')).toContain('depends-on-order');
  });
});

const HEAD = `format: 1
stock:
  snap: {kind: gate, contact: {ratings: [5 A 250 V AC]}}
  bell: {kind: cable, gauge: 20 AWG, cores: 2, insulation: 150 V}
  cord: {kind: cable, gauge: 14 AWG, cores: 3, insulation: 600 V}
`;

/** A shop with gates a b c on one loop, K1 switching the line of X1; `edit` spoils it. */
function shop(edit: (s: string) => string = (s) => s): string {
  return edit(`${HEAD}parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A, regulation: regulated}
  K1: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {ratings: [30 A 240 V AC]}}
  D1: {kind: diode, current: 1 A, reverse: 1000 V}
  a: {from: snap}
  b: {from: snap}
  c: {from: snap}
  P1: {kind: plug, pattern: NEMA 5-20, volts: 120 V AC}
  X1: {kind: outlet, pattern: NEMA 5-20}
  fan: {kind: motor, power: 1.5 hp, volts: 120 V AC, plugged-into: X1}
runs:
  - {cable: bell, length: 2 m, cores: {red: [PS1.+, a.COM], white: [PS1.-, K1.A2]}}
  - {cable: bell, length: 4 m, cores: {red: [a.COM, b.COM], white: [a.NO, b.NO]}}
  - {cable: bell, length: 4 m, cores: {red: [b.COM, c.COM], white: [b.NO, c.NO]}}
  - {cable: bell, length: 5 m, cores: {white: [c.NO, K1.A1]}}
  - {cable: bell, length: 5 cm, cores: {stripe: [D1.K, K1.A1], plain: [D1.A, K1.A2]}}
  - {cable: cord, length: 2 m, cores: {black: [P1.L, K1.COM], white: [P1.N, X1.N], green: [P1.PE, X1.PE]}}
  - {cable: cord, length: 10 cm, cores: {black: [K1.NO, X1.L]}}
`);
}

const seen = (text: string): string[] => [...judge(text).symptoms].sort();
const put =
  (from: string, to: string) =>
  (s: string): string => {
    if (!s.includes(from)) throw new Error(`no ${from}`);
    return s.replace(from, to);
  };

describe('a shop worked by hand', () => {
  it('runs on any gate and only then', () => {
    const o = judge(shop());
    expect(o.combinations).toBe(8);
    expect(o.targets.map((t) => [t.name, t.wrong])).toEqual([['fan', 0]]);
    expect(o.targets[0]!.states.filter((s) => s.runs)).toHaveLength(7);
    expect(seen(shop())).toEqual([]);
  });
  it('a gate on NC starts it when shut', () => {
    const o = judge(shop(put('[c.NO, K1.A1]', '[c.NC, K1.A1]')));
    // white feeds c.NO, the coil hangs on c.NC: it runs whenever c is shut, and c open joins NO, not NC
    expect(o.targets[0]!.wrong).toBe(1 + 4);
    expect([...o.symptoms].sort()).toEqual(['does-not-start', 'does-not-stop']);
  });
  it('a break contact runs it when the supply is dead', () => {
    expect(seen(shop(put('K1.NO, X1.L', 'K1.NC, X1.L')))).toEqual([
      'does-not-start',
      'does-not-stop',
      'runs-on-dead-supply',
    ]);
  });
  it('a suppressor the wrong way round shorts the supply', () => {
    const text = shop(
      put('stripe: [D1.K, K1.A1], plain: [D1.A, K1.A2]', 'stripe: [D1.K, K1.A2], plain: [D1.A, K1.A1]'),
    );
    expect(seen(text)).toEqual(['diode-conducts', 'does-not-start', 'supply-shorted']);
  });
  it('a built-in diode fed backwards', () => {
    const text = shop((s) =>
      put(
        'resistance: 155 ohm',
        'resistance: 155 ohm, suppressor: diode',
      )(s)
        .replace('[PS1.-, K1.A2]', '[PS1.-, K1.A1]')
        .replace('[c.NO, K1.A1]', '[c.NO, K1.A2]')
        .replace('D1.K, K1.A1', 'D1.K, K1.A2')
        .replace('D1.A, K1.A2', 'D1.A, K1.A1'),
    );
    expect(seen(text)).toEqual(['does-not-start', 'reversed', 'supply-shorted']);
  });
  it('two coils in series reach half the voltage', () => {
    const text = shop((s) =>
      s
        .replace(
          '  D1:',
          '  K2: {kind: relay, coil: {rated: 12 V DC, resistance: 155 ohm}, contact: {}}\n  D1:',
        )
        .replace('white: [PS1.-, K1.A2]', 'white: [PS1.-, K2.A2]')
        .replace('plain: [D1.A, K1.A2]', 'plain: [K2.A1, K1.A2]')
        .replace('stripe: [D1.K, K1.A1], ', ''),
    );
    expect(seen(text)).toEqual(['does-not-start']);
  });
  it('the supply behind the contact that it feeds never starts', () => {
    expect(seen(shop(put('limit: 1 A,', 'limit: 1 A, fed-from: X1,')))).toEqual(['does-not-start']);
    expect(seen(shop(put('limit: 1 A,', 'limit: 1 A, fed-from: P1,')))).toEqual([]);
  });
  it('a relay that breaks its own coil chatters', () => {
    const text = shop((s) =>
      s
        .replace('contact: {ratings: [30 A 240 V AC]}', 'contact: {}, poles: [{form: make}, {form: break}]')
        .replace('K1.COM', 'K1.1.COM')
        .replace('K1.NO', 'K1.1.NO')
        .replace('white: [c.NO, K1.A1]', 'white: [c.NO, K1.2.COM], red: [K1.2.NC, K1.A1]'),
    );
    expect(seen(text)).toEqual(['chatters', 'does-not-start']);
  });
  it('an unwanted seal-in stays on', () => {
    const text = shop((s) =>
      s
        .replace('contact: {ratings: [30 A 240 V AC]}', 'contact: {}, poles: [{form: make}, {form: make}]')
        .replace('K1.COM', 'K1.1.COM')
        .replace('K1.NO', 'K1.1.NO')
        .replace('white: [c.NO, K1.A1]', 'white: [c.NO, K1.A1], red: [c.COM, K1.2.COM]')
        .replace('stripe: [D1.K, K1.A1]', 'stripe: [D1.K, K1.A1], red: [K1.2.NO, K1.A1]'),
    );
    expect(seen(text)).toEqual(['stays-on']);
  });
  it('a block in the loop, and one that is not', () => {
    const bin = put('  P1:', '  bin: {kind: cutout}\n  P1:');
    const intent = (s: string): string => `${s}intent:\n  fan: {runs-on: [a, b, c], blocked-by: [bin]}\n`;
    const wired = put('white: [PS1.-, K1.A2]', 'white: [PS1.-, bin.COM], blue: [bin.NC, K1.A2]');
    expect(seen(intent(wired(bin(shop()))))).toEqual([]);
    expect(seen(intent(bin(shop())))).toEqual(['block-ignored']);
    expect(seen(wired(bin(shop())))).toEqual(['stops-without-cause']);
  });
});

describe('mains', () => {
  const cores = 'black: [P1.L, K1.COM], white: [P1.N, X1.N], green: [P1.PE, X1.PE]';
  it('breaking the neutral leaves the line live', () => {
    const text = shop((s) =>
      put(cores, 'black: [P1.L, X1.L], white: [P1.N, K1.COM], green: [P1.PE, X1.PE]')(s),
    );
    expect(seen(put('K1.NO, X1.L', 'K1.NO, X1.N')(text))).toEqual(['line-not-switched']);
  });
  it('line and neutral, earth and neutral', () => {
    expect(
      seen(shop((s) => s.replace('K1.NO, X1.L', 'K1.NO, X1.N').replace('[P1.N, X1.N]', '[P1.N, X1.L]'))),
    ).toEqual(['line-neutral-swapped']);
    expect(seen(shop(put(', green: [P1.PE, X1.PE]', '')))).toEqual(['earth-broken']);
    expect(seen(shop(put('{black: [K1.NO, X1.L]}', '{black: [K1.NO, X1.L], bare: [X1.N, X1.PE]}')))).toEqual([
      'neutral-earthed',
    ]);
    expect(seen(shop(put('{black: [K1.NO, X1.L]}', '{black: [K1.NO, X1.L], bare: [X1.L, X1.N]}')))).toContain(
      'mains-shorted',
    );
    expect(
      seen(
        shop(put('white: [P1.N, X1.N], green: [P1.PE, X1.PE]', 'green: [P1.PE, X1.PE], w: [P1.PE, X1.N]')),
      ),
    ).toEqual(['does-not-start', 'earth-as-return']);
  });
  it('a gate in the line', () => {
    const text = shop((s) =>
      s.replace('[P1.L, K1.COM]', '[P1.L, c.COM]').replace('red: [b.COM, c.COM], ', ''),
    );
    expect(seen(text)).toEqual(expect.arrayContaining(['mains-meets-low-voltage', 'mains-through-gate']));
  });
  it('two legs, one of them switched, and a mains coil on gates', () => {
    const two = (s: string): string =>
      s
        .replaceAll('NEMA 5-20', 'NEMA 6-20')
        .replaceAll('120 V AC', '240 V AC')
        .replace('P1.L,', 'P1.L1,')
        .replace('[P1.N, X1.N]', '[P1.L2, X1.L2]')
        .replace('X1.L]', 'X1.L1]');
    expect(seen(shop(two))).toEqual(['line-not-switched']);
    const coil = shop((s) =>
      s
        .replace('rated: 12 V DC, resistance: 155 ohm', 'rated: 120 V AC, power: 3 VA')
        .replace('PS1.+, a.COM', 'P1.L, a.COM')
        .replace('PS1.-, K1.A2', 'P1.N, K1.A2')
        .replace('stripe: [D1.K, K1.A1], plain: [D1.A, K1.A2]', 'x: [D1.K, PS1.+]'),
    );
    expect(judge(coil).targets[0]!.wrong).toBe(0);
    expect(seen(coil)).toEqual(['mains-through-gate']);
  });
});

describe('three phases and two supplies', () => {
  const three = `${HEAD}parts:
  PS1: {kind: supply, output: 24 V DC, limit: 1 A}
  Q: {kind: relay, coil: {rated: 24 V DC}, contact: {}, poles: [{form: make, marks: [1, 2]}, {form: make, marks: [3, 4]}, {form: make, marks: [5, 6]}]}
  a: {from: snap}
  P1: {kind: plug, volts: 400 V AC, phases: 3}
  fan: {kind: motor, power: 3 kW, volts: 400 V AC}
runs:
  - {cable: bell, length: 1 m, cores: {r: [PS1.+, a.COM], w: [PS1.-, Q.A2]}}
  - {cable: bell, length: 1 m, cores: {w: [a.NO, Q.A1]}}
  - {cable: cord, length: 1 m, cores: {u: [P1.L1, Q.1], v: [P1.L2, Q.3], w: [P1.L3, Q.5], pe: [P1.PE, fan.PE]}}
  - {cable: cord, length: 1 m, cores: {u: [Q.2, fan.L1], v: [Q.4, fan.L2], w: [Q.6, fan.L3]}}
`;
  it('a contactor breaks all three, or leaves one live', () => {
    expect(seen(three)).toEqual([]);
    expect(seen(three.replace('[Q.6, fan.L3]', '[Q.5, fan.L3]'))).toEqual(['line-not-switched']);
    expect(seen(three.replace('[Q.6, fan.L3]', '[Q.4, fan.L3]'))).toEqual(['does-not-start']);
  });
  it('a coil between two phases and between phase and neutral', () => {
    const on = (rated: string, to: string): string =>
      three.replace('24 V DC}, contact', `${rated}}, contact`).replace('PS1.+', 'P1.L1').replace('PS1.-', to);
    expect(judge(on('400 V AC', 'P1.L2')).targets[0]!.wrong).toBe(0);
    expect(judge(on('230 V AC', 'P1.N')).targets[0]!.wrong).toBe(0);
    expect(judge(on('400 V AC', 'P1.N')).targets[0]!.wrong).toBe(1);
  });
  it('a second supply side by side, its poles alike or crossed', () => {
    const two = (cores: string): string =>
      three
        .replace('parts:', 'parts:\n  PS2: {kind: battery, output: 18 V DC}')
        .replace('runs:', `runs:\n  - {cable: bell, length: 1 m, cores: {${cores}}}`);
    expect(seen(two('r: [PS2.+, PS1.+], w: [PS2.-, PS1.-]'))).toEqual([]);
    expect(seen(two('r: [PS2.+, PS1.-], w: [PS2.-, PS1.+]'))).toEqual(['does-not-start', 'supply-shorted']);
  });
});

describe('boards, timers, selectors', () => {
  const board = (input: string, join: string): string =>
    `${HEAD}parts:
  PS1: {kind: supply, output: 5 V DC, limit: 1 A}
  M: {kind: board, supply: 5 V DC, input: ${input}, contact: {}}
  a: {from: snap}
intent: {M: {runs-on: [a]}}
runs:
  - {cable: bell, length: 1 m, cores: {r: [PS1.+, M.VCC], w: [PS1.-, M.GND]}}
  - {cable: bell, length: 1 m, cores: {r: [${join}, a.COM], w: [a.NO, M.IN]}}
`;
  it('a board takes its input low or high', () => {
    expect(seen(board('low', 'PS1.-'))).toEqual([]);
    expect(seen(board('high', 'PS1.+'))).toEqual([]);
    expect(seen(board('low', 'PS1.+'))).toEqual(['does-not-start']);
    expect(
      seen(
        board('high', 'PS1.+')
          .replace('PS1.+, M.VCC', 'PS1.-, M.VCC')
          .replace('PS1.-, M.GND', 'PS1.+, M.GND'),
      ),
    ).toEqual(['does-not-start', 'reversed']);
  });
  it('a timer with a dry trigger needs both feed and trigger', () => {
    const text = `${HEAD}parts:
  PS1: {kind: supply, output: 24 V AC, limit: 40 VA}
  T: {kind: timer, function: off-delay, time: 10 s, coil: {rated: 24 V AC}, contact: {}}
  a: {from: snap}
runs:
  - {cable: bell, length: 1 m, cores: {r: [PS1.~1, T.A1], w: [PS1.~2, T.A2]}}
  - {cable: bell, length: 1 m, cores: {r: [T.T1, a.COM], w: [a.NO, T.T2]}}
intent: {T: {runs-on: [a]}}
`;
    expect(seen(text)).toEqual([]);
    expect(seen(text.replace('a.NO', 'a.NC'))).toEqual(['does-not-start', 'does-not-stop']);
  });
  it('a selector counts its positions', () => {
    const text = `${HEAD}parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  K: {kind: relay, coil: {rated: 12 V DC}, contact: {}}
  a: {from: snap}
  mode: {kind: selector, positions: [auto, off, hand], rest: auto}
runs:
  - {cable: bell, length: 1 m, cores: {r: [PS1.+, mode.COM], w: [PS1.-, K.A2]}}
  - {cable: bell, length: 1 m, cores: {r: [mode.auto, a.COM], w: [a.NO, K.A1]}}
  - {cable: bell, length: 1 m, cores: {r: [mode.hand, K.A1]}}
intent: {K: {runs-on: [[a, mode.auto], mode.hand], blocked-by: [mode.off]}}
`;
    const o = judge(text);
    expect(o.combinations).toBe(6);
    expect([...o.symptoms]).toEqual([]);
  });
});

describe('mutants', () => {
  it('gives each mistake once, all of them plans, none the plan itself', () => {
    const all = mutants(shop());
    expect(new Set(all.map((m) => m.name)).size).toBe(all.length);
    expect(all.length).toBeGreaterThan(40);
    expect(all.some((m) => m.name.startsWith('tab: c.NO to c.NC') && m.touched.join() === 'c')).toBe(true);
    for (const m of all) expect(judge(m.text).combinations).toBe(8);
  });
  it('judges ten gates and all their mutants in a few seconds', () => {
    const names = [...'abcdefghij'];
    const text = `${HEAD}parts:
  PS1: {kind: supply, output: 12 V DC, limit: 1 A}
  K1: {kind: relay, coil: {rated: 12 V DC}, contact: {}}
${names.map((n) => `  ${n}: {from: snap}`).join('\n')}
runs:
  - {cable: bell, length: 1 m, cores: {r: [PS1.+, a.COM], w: [PS1.-, K1.A2]}}
${names
  .slice(1)
  .map(
    (n, i) =>
      `  - {cable: bell, length: 1 m, cores: {r: [${names[i]}.COM, ${n}.COM], w: [${names[i]}.NO, ${n}.NO]}}`,
  )
  .join('\n')}
  - {cable: bell, length: 1 m, cores: {r: [j.NO, K1.A1]}}
intent: {K1: {}}
`;
    const judged = () => {
      const all = mutants(text).slice(0, 60);
      const harmful = all.filter((m) => judge(m.text).harmful).length;
      expect(harmful).toBeGreaterThan(40);
    };
    expect(secondsOfWork(judged)).toBeLessThan(20);
  }, 40_000);
});
