/** What a plan may hold beside a tidy loop: the unusual, and plain mistakes. */
import { data, type Plot, pick } from './plans-sheet.ts';

type Odd = (plot: Plot, gates: readonly string[]) => void;

const two = (plot: Plot, from: readonly string[]): [string, string] => {
  const a = pick(plot.roll, from);
  const others = from.filter((t) => t !== a);
  return [a, pick(plot.roll, others)];
};

/** Each adds one oddity to a plan whose loop and mains side stand. */
export const ODDITIES: Readonly<Record<string, Odd>> = {
  plain: () => {},
  'unwired parts': (plot) => {
    plot.part('spare-relay', data.relay('12 V DC'));
    plot.part('spare-gate', data.gate(false));
    plot.part('spare-diode', data.diode);
    plot.part('spare-motor', '{kind: motor, volts: 230 V AC, amps: 3 A}');
    plot.part('spare-box', '{kind: box}');
    plot.joint('spare-nut');
  },
  'many cores on one terminal': (plot, gates) => {
    const nut = pick(plot.roll, [`${gates[0]}.COM`, ...plot.low]);
    for (let i = 0; i < 9; i++) {
      const lamp = plot.part(`lamp-${i}`, data.lamp('12 V DC'));
      plot.cable([nut, `${lamp}.1`]);
    }
  },
  'parallel cores': (plot) => {
    const [a, b] = two(plot, plot.low);
    plot.cable([a, b], [a, b]);
    plot.cable([b, a]);
  },
  'both ends on one part': (plot, gates) => {
    const g = pick(plot.roll, gates);
    plot.cable([`${g}.COM`, `${g}.NC`]);
    plot.link(`${g}.NO`, `${g}.NC`);
  },
  'loop on mains': (plot, gates) => {
    plot.cable([`${pick(plot.roll, gates)}.NC`, pick(plot.roll, plot.mains)]);
    plot.cable([pick(plot.roll, plot.low), pick(plot.roll, plot.mains)]);
  },
  'two supplies joined': (plot) => {
    plot.part('PS8', data.supply('12 V DC'));
    plot.part('PS9', data.supply('24 V DC'));
    plot.cable(['PS8.-', 'PS9.-'], ['PS8.+', pick(plot.roll, plot.low)]);
    plot.cable(['PS8.+', 'PS9.+']);
  },
  'a supply fed from the plug': (plot) => {
    plot.part('PS7', `{kind: supply, output: 5 V DC, limit: 1 A, fed-from: P1}`);
    plot.part('H7', data.lamp('5 V DC'));
    plot.cable(['PS7.+', 'H7.1'], ['PS7.-', 'H7.2']);
  },
  'a second machine': (plot) => {
    plot.part('P5', '{kind: plug, volts: 230 V AC, breaker: 10 A}');
    plot.part('X5', '{kind: outlet}');
    plot.part('saw', '{kind: motor, volts: 230 V AC, amps: 4 A, plugged-into: X5}');
    plot.flex(['P5.L', 'X5.L'], ['P5.N', 'X5.N'], ['P5.PE', 'X5.PE']);
  },
  'an island': (plot) => {
    plot.part('BAT5', data.battery);
    plot.part('S5', data.contact('switch'));
    plot.part('R5', data.resistor);
    plot.part('H5', data.led);
    plot.run(['BAT5.+', 'S5.COM']);
    plot.run(['S5.NO', 'R5.1']);
    plot.run(['R5.2', 'H5.A']);
    plot.run(['H5.K', 'BAT5.-']);
  },
  'a lost core': (plot) => {
    plot.cable(two(plot, plot.low));
    plot.cable([pick(plot.roll, plot.low), plot.joint('dead-end')]);
  },
};
