/** Question 5: what feeds and switches the coil, and the wire between. */
import { type Documented, extract } from './explanation-entry.ts';

export const explainLoop: readonly Documented[] = [
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
      'The supply can drive far more current than thin wire stands, and no fuse sits next to it. A cable pinched by a machine then glows. A battery always needs a fuse at its post; an adapter marked Class 2 or limited needs none. A plan that claims the Class 2 mark for a supply stronger than such a one can be gets this caution too.',
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
      'Everything that can be in at once, lamps and boards with it, draws more than the supply is made for. It sags, and the contactor hums without closing, or it overheats. AC coils count with what they draw at pull-in. Above 80 % of the limit it is a caution; so it is where a transformer is over its rating for the moment of pull-in only, and its sag still leaves every coil enough.',
    wrong: 'limit: 10 VA',
    right: 'limit: 40 VA',
    basis: 'common practice',
  },
  {
    id: 'wire-overloaded',
    title: 'a wire can get more current than it stands',
    severity: 'fault',
    question: 5,
    base: 'battery',
    meaning:
      'Either the coils draw more than the thinnest wire carries, or a fuse or supply lets more than that through when the cable is pinched. The wire then gets hot before anything stops the current. The fuse must not be above what the thinnest wire behind it carries.',
    wrong: '  F1: {kind: fuse, rating: 10 A}',
    right: '  F1: {kind: fuse, rating: 1 A}',
    basis: 'NEC 402.5 (from memory), BS 7671 Table 4F3A; wire thinner than 18 AWG common practice',
  },
  {
    id: 'fuse-too-small',
    title: 'the loop itself blows the fuse',
    severity: 'fault',
    question: 5,
    base: 'battery',
    meaning:
      'With every coil in that can be in together, more current flows than the fuse is made for. It holds for a while and blows one day with two gates open. Fit a slow fuse above that current, but not above what the wire carries.',
    wrong: '  F1: {kind: fuse, rating: 50 mA}',
    right: '  F1: {kind: fuse, rating: 1 A}',
    basis: 'common practice: wire at least as good as the fuse, fuse above the holding current',
  },
  {
    id: 'drop-large',
    title: 'over a tenth of the volts stay in the wire',
    severity: 'caution',
    question: 5,
    base: 'ac-contactor',
    meaning:
      'At the farthest gate the wire and its contacts take more than 10 % of the supply while the coil pulls in. It still works, but the wire is thin for its length and little is left for a weak supply or a tarnished contact. Use the next thicker wire, or a relay that draws less.',
    wrong: 'gauge: 24 AWG',
    right: 'gauge: 18 AWG',
    basis: 'ASTM B258 or IEC 60228 resistance; 10 % is common practice',
  },
  {
    id: 'battery-short-lived',
    title: 'the battery does not last a week',
    severity: 'caution',
    question: 5,
    base: 'battery',
    meaning:
      'What can be used of its capacity does not cover a week: forty hours with a gate open and the rest with all gates shut. A lamp that sits before the gates draws day and night, and empties it over a weekend. Use a bigger battery, a relay that draws less, or a plug-in supply.',
    wrong: 'capacity: 2 Ah',
    right: 'capacity: 17 Ah',
    basis: 'capacity over current; 60 % usable and a week of 40 h are common practice, no source',
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
      'Silver contacts need a certain current to break the film that grows on them. Below it the switch works when new and becomes unreliable after a damp winter. A switch that states no least current is taken to need 10 mA, one with gold contacts 1 mA. Boards and small relays want gold.',
    wrong: 'least: 100 mA 5 V DC',
    right: 'least: 1 mA 5 V DC',
    basis: 'least current as printed on the switch; 10 mA for a switch that states none is common practice',
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
