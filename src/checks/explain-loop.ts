/** Questions 4 and 5: the coil, and what feeds and switches it. */
import { type Documented, extract } from './explain-entry.ts';

export const explainLoop: readonly Documented[] = [
  {
    id: 'coil-kind',
    title: 'AC on a DC coil, or DC on an AC coil',
    severity: 'warning',
    question: 4,
    base: 'dc-chain',
    meaning:
      'The coil and the supply are of different kinds. A DC coil on AC hums and lets its contacts chatter until they weld; an AC coil on DC draws several times its current and burns within minutes. Both may seem to work at the bench.',
    wrong: '      rated: 12 V AC',
    right: '      rated: 12 V DC',
    basis: 'relay makers’ application guidance, several agree',
  },
  {
    id: 'coil-too-low',
    title: 'too few volts for the coil to pull in',
    severity: 'fault',
    question: 4,
    base: 'battery',
    meaning:
      'What the supply gives is below what the coil needs to pull in. The relay stays out, or pulls in on one day and not on another. With AC the coil draws several times its holding current while it moves, and a small transformer sags just then.',
    wrong: extract('      rated: 24 V DC', '      resistance: 640 ohm'),
    right: extract('      rated: 12 V DC', '      resistance: 160 ohm'),
    basis: 'pull-in as printed on the relay, or the usual must-operate figure',
  },
  {
    id: 'coil-too-high',
    title: 'more volts than the coil stands for long',
    severity: 'warning',
    question: 4,
    base: 'battery',
    meaning:
      'The coil works, and cooks: it gets more volts than its maker allows for long. It is too hot to touch after an hour, and its winding fails in time. Unregulated adapters give well above their label when lightly loaded. Where the plan does not state the most the coil stands, it is a caution.',
    wrong: extract('      rated: 6 V DC', '      resistance: 40 ohm'),
    right: extract('      rated: 12 V DC', '      resistance: 160 ohm'),
    basis: 'continuous coil voltage 110 % of rated unless the maker states more (makers’ data)',
  },
  {
    id: 'coil-holds-in',
    title: 'leakage keeps the relay in',
    severity: 'fault',
    question: 4,
    base: 'dc-chain',
    meaning:
      'With all gates shut some current still passes through the coil, by way of a lamp across a switch. It is too little to pull the relay in and enough to keep it in, so the load does not stop. Put the lamp across the coil.',
    wrong: extract('  - {link: [pilot.1, feed]}', '  - {link: [pilot.2, call]}'),
    right: extract('  - {link: [pilot.1, K1.A1]}', '  - {link: [pilot.2, K1.A2]}'),
    basis: 'Ohm’s law over the joined parts, ideal wires',
  },
  {
    id: 'coil-in-series',
    title: 'the coil shares the supply with another part in line',
    severity: 'fault',
    question: 4,
    base: 'dc-chain',
    meaning:
      'A lamp or another coil lies in the wire to this coil, and each gets part of the volts. The lamp glows faintly and the relay does not pull in. Put the two side by side.',
    wrong: extract(
      '  - {cable: bell, length: 20 cm, cores: {white: [call, pilot.1]}}',
      '  - {link: [pilot.2, K1.A1]}',
    ),
    right: extract(
      '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
      '  - {link: [pilot.1, K1.A1]}',
      '  - {link: [pilot.2, K1.A2]}',
    ),
    basis: 'Ohm’s law over the joined parts, ideal wires',
  },
  {
    id: 'coil-unsuppressed',
    title: 'nothing quenches the coil when the switch opens',
    severity: 'caution',
    question: 4,
    base: 'battery',
    meaning:
      'A DC coil kicks back when its current is cut, and the last gate switch to open takes the arc. It works for months; then a switch sticks or stops conducting. A diode at the coil, band to the + side, takes the kick.',
    wrong: 'suppressor: none',
    right: 'suppressor: diode',
    basis: 'relay makers’ application guidance, several agree',
  },
  {
    id: 'polarity-reversed',
    title: 'a part with + and - is fed the wrong way round',
    severity: 'fault',
    question: 4,
    base: 'battery',
    meaning:
      'A coil with a built-in diode, a board or an indicator gets + where - belongs. A coil with a diode is a short circuit that way: the fuse blows or the adapter cuts out as soon as a gate opens. Most such relays want + on A1.',
    wrong: extract('  - {link: [barB, K1.A2]}', '  - {link: [minus, K1.A1]}'),
    right: extract('  - {link: [barB, K1.A1]}', '  - {link: [minus, K1.A2]}'),
    basis: 'common practice',
  },
  {
    id: 'supply-shorted',
    title: 'a gate joins the two poles of the supply',
    severity: 'warning',
    question: 5,
    base: 'battery',
    meaning:
      'In some position of the switches a wire leads from one pole of the supply to the other with no coil in it. Opening that gate blows the fuse or makes the adapter cut out, and every other gate is dead meanwhile. The two tabs of a gate switch belong in one conductor of the loop.',
    wrong: '{red: [barA, lathe.COM], black: [minus, lathe.NO]}',
    right: '{red: [barA, lathe.COM], black: [barB, lathe.NO]}',
    basis: 'common practice',
  },
  {
    id: 'supplies-joined',
    title: 'two supplies feed one loop',
    severity: 'warning',
    question: 5,
    base: 'two-collectors',
    meaning:
      'Both poles of two supplies are joined. They never give exactly the same volts, so one pushes current into the other; one runs hot, and two limited supplies together are no longer limited. Use one that is big enough, or join one pole only.',
    wrong: extract(
      '  - {link: [plus, plus2]}',
      '  - {cable: bell, length: 2 m, cores: {red: [PS2.+, plus2], black: [PS2.-, minus]}}',
    ),
    right: '  - {cable: bell, length: 2 m, cores: {red: [PS2.+, plus2], black: [PS2.-, minus]}}',
    basis: 'NEC 725.121(B) (2020)',
  },
  {
    id: 'supply-not-limited',
    title: 'nothing limits the current into a pinched cable',
    severity: 'caution',
    question: 5,
    base: 'battery',
    meaning:
      'The supply can drive far more current than thin wire stands, and no fuse sits next to it. A cable pinched by a machine then glows. A battery always needs a fuse at its post; an adapter marked Class 2 or limited needs none.',
    wrong: '  - {cable: twin, length: 2 m, cores: {red: [BAT.+, barA], black: [BAT.-, minus]}}',
    right: extract(
      '  - {cable: twin, length: 15 cm, cores: {red: [BAT.+, F1.1]}}',
      '  - {cable: twin, length: 2 m, cores: {red: [F1.2, barA], black: [BAT.-, minus]}}',
    ),
    basis:
      'NEC 725.121(A) (2020; 725.60 in 2023), Chapter 9 Tables 11(A), 11(B); IEC 60364-4-41 clause 414.3',
  },
  {
    id: 'supply-overloaded',
    title: 'the coils draw more than the supply gives',
    severity: 'fault',
    question: 5,
    base: 'ac-contactor',
    meaning:
      'Everything that can be in at once draws more than the supply is made for. It sags, and the contactor hums without closing, or it overheats. AC coils count with what they draw at pull-in. Above 80 % of the limit it is a caution.',
    wrong: 'limit: 10 VA',
    right: 'limit: 40 VA',
    basis: 'common practice',
  },
  {
    id: 'coil-shorted',
    title: 'both coil ends are on one conductor',
    severity: 'warning',
    question: 5,
    base: 'dc-chain',
    meaning:
      'A wire joins the two ends of the coil. The relay never pulls in, and the gate that is opened puts the poles of the supply together. Look for a jumper meant for the neighbouring terminal.',
    wrong: '{link: [K1.A1, K1.A2]}',
    right: '{link: [D1.A, K1.A2]}',
    basis: 'common practice',
  },
  {
    id: 'diode-backwards',
    title: 'the diode at the coil is the wrong way round',
    severity: 'warning',
    question: 5,
    base: 'dc-chain',
    meaning:
      'The diode conducts when the coil is fed and shorts the supply. The adapter cuts out or the diode burns through at the first opening of a gate. The band belongs on the + side of the coil; on an AC coil a diode is wrong either way round.',
    wrong: extract('  - {link: [D1.A, K1.A1]}', '  - {link: [D1.K, K1.A2]}'),
    right: extract('  - {link: [D1.K, K1.A1]}', '  - {link: [D1.A, K1.A2]}'),
    basis: 'relay makers’ application guidance, several agree',
  },
  {
    id: 'switch-overloaded',
    title: 'the coil current is above the switch’s rating',
    severity: 'fault',
    question: 5,
    base: 'dc-chain',
    meaning:
      'A gate switch has to carry or make more than is printed on it for this kind of current. Its contacts burn and in the end weld, and the load does not stop. Use a stronger switch, or a small relay between the gates and the contactor.',
    wrong: 'contact: {ratings: [0.5 A 125 V AC, 0.05 A 30 V DC], least: 10 mA 5 V DC}',
    right: 'contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 10 mA 5 V DC}',
    basis: 'rating as printed; making up to 1.5 times, IEC 60947-4-1 Table 7, AC-1',
  },
  {
    id: 'switch-kind-unrated',
    title: 'no rating for this kind of current is stated',
    severity: 'doubt',
    question: 5,
    base: 'dc-chain',
    meaning:
      'The switch states only AC ratings and the loop is DC, or the reverse. DC does not quench its own arc, so a switch good for 5 A AC may be good for far less DC. Read the other rating off the switch or its sheet and put it in.',
    wrong: 'contact: {ratings: [5 A 250 V AC], least: 10 mA 5 V DC}',
    right: 'contact: {ratings: [5 A 250 V AC, 3 A 30 V DC], least: 10 mA 5 V DC}',
    basis: 'switch makers’ data: DC and AC ratings differ',
  },
  {
    id: 'switch-underloaded',
    title: 'too little current to keep the switch clean',
    severity: 'caution',
    question: 5,
    base: 'board',
    meaning:
      'Silver contacts need a certain current to break the film that grows on them. Below it the switch works when new and becomes unreliable after a damp winter. Boards and small relays want switches with gold contacts.',
    wrong: 'least: 100 mA 5 V DC',
    right: 'least: 1 mA 5 V DC',
    basis: 'least current as printed on the switch',
  },
  {
    id: 'coil-current-unknown',
    title: 'how much the coil draws is not stated',
    severity: 'doubt',
    question: 5,
    base: 'three-phase',
    meaning:
      'Without the current or power of the coil neither the supply nor the switches can be judged. The resistance of an AC coil does not give it: that is only its copper, and the iron does most of the holding back. The VA are printed on the coil or in its sheet.',
    wrong: 'coil: {rated: 24 V AC, resistance: 12 ohm, pull-in: 17 V, drop-out: 6 V, most: 30 V}',
    right:
      'coil: {rated: 24 V AC, power: 7 VA, power-factor: 0.3, inrush: 45 VA, pull-in: 17 V, drop-out: 6 V, most: 30 V}',
    basis: 'a missing figure is never a pass',
  },
];
