/** Question 1: is mains kept apart from the low-voltage side? */
import { type Documented, extract } from './explanation-entry.ts';

export const explainApart: readonly Documented[] = [
  {
    id: 'mains-meets-low-voltage',
    title: 'mains reaches the low-voltage loop',
    severity: 'danger',
    question: 1,
    base: 'dc-chain',
    meaning:
      'A core or a contact joins a mains conductor to the wire of the gate switches. Every switch, clip and bare tab of the loop can then be live, and the adapter is destroyed. Look where the coil terminals and the power terminals of the relay sit side by side: one core on the wrong row is enough.',
    wrong: '{cable: bell, length: 20 cm, cores: {white: [call, K1.COM]}}',
    right: '{cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
    basis: 'NEC 725.136; IEC 60364-4-41 clause 414.4 (from memory)',
  },
  {
    id: 'mains-through-gate',
    title: 'mains runs through a gate switch or the loop cable',
    severity: 'danger',
    question: 1,
    base: 'dc-chain',
    meaning:
      'A gate switch, or the thin cable of the loop, carries the line of the motor. The switch sits in reach on a moving gate, its tabs are bare, and neither it nor the cable is made for that. The gate switch may only work the coil of a relay at low voltage.',
    wrong: extract(
      '  - {cable: bell, length: 5 m, cores: {red: [K1.NO, router.COM], white: [router.NO, X1.L]}}',
    ),
    right: extract(
      '  - {cable: bell, length: 3 m, cores: {red: [planer.COM, router.COM], white: [planer.NO, router.NO]}}',
      '  - {cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
    ),
    basis: 'NEC 725.136; IEC 60364-4-41 clause 414.4, IEC 60364-5-52 clause 528.1 (from memory)',
  },
  {
    id: 'mains-shorted',
    title: 'line meets neutral, another line or earth',
    severity: 'danger',
    question: 1,
    base: 'dc-chain',
    meaning:
      'In some position of the contacts two mains conductors are joined with no load between them. The breaker trips with a bang, and the contact that closed on it welds or bursts. It may not show at the first switching on: here it happens when the first gate is opened.',
    wrong: '{cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.N]}}',
    right: '{cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
    basis: 'common practice',
  },
  {
    id: 'earth-broken',
    title: 'no unbroken earth from the plug to the metal',
    severity: 'danger',
    question: 1,
    base: 'dc-chain',
    meaning:
      'The green core does not run through from the plug to the outlet, motor or metal box, or it passes a contact or fuse. Everything works as before, so nobody notices; but when a live wire touches the metal, nothing trips and the machine is live. See it with a continuity tester between the earth pin and bare metal, plug out.',
    wrong: '{cable: cord, length: 60 cm, cores: {white: [neutral, X1.N]}}',
    right: '{cable: cord, length: 60 cm, cores: {white: [neutral, X1.N], green: [B1.PE, X1.PE]}}',
    basis: 'NEC 250.110, 250.114, 250.124, 250.148; BS 7671 clause 411.3.1 (partly from memory)',
  },
  {
    id: 'line-not-switched',
    title: 'the load stays live while it is off',
    severity: 'danger',
    question: 1,
    base: 'battery',
    meaning:
      'The contact breaks the neutral, or fewer than all the live conductors. The motor stops, yet its windings and the outlet are still joined to the line, and whoever opens the motor box finds it live. On two live legs behind a plug one pole is a warning; otherwise it is a danger.',
    wrong: extract(
      '  - {cable: flex, length: 2 m, cores: {brown: [P1.L, X1.L], blue: [P1.N, K1.23], green-yellow: [P1.PE, earth]}}',
      '  - {cable: flex, length: 1 m, cores: {blue: [K1.24, X1.N], green-yellow: [earth, X1.PE]}}',
    ),
    right: extract(
      '  - {cable: flex, length: 2 m, cores: {brown: [P1.L, K1.13], blue: [P1.N, K1.23], green-yellow: [P1.PE, earth]}}',
      '  - {cable: flex, length: 1 m, cores: {brown: [K1.14, X1.L], blue: [K1.24, X1.N], green-yellow: [earth, X1.PE]}}',
    ),
    basis: 'NEC 404.2(B), 430.84, 430.85; BS 7671 clause 132.14 (sub-clauses from memory)',
  },
  {
    id: 'line-neutral-swapped',
    title: 'line and neutral change places',
    severity: 'danger',
    question: 1,
    base: 'battery',
    meaning:
      'The outlet has the line where the neutral belongs. The motor runs just as well, but the switch and fuse in whatever is plugged in then sit in the neutral, and the shell of a lamp holder is live. A plug-in socket tester shows it as reversed.',
    wrong: '{brown: [K1.14, X1.N], blue: [K1.24, X1.L], green-yellow: [earth, X1.PE]}',
    right: '{brown: [K1.14, X1.L], blue: [K1.24, X1.N], green-yellow: [earth, X1.PE]}',
    basis: 'NEC 200.11; IEC 60364-6 polarity test (from memory)',
  },
  {
    id: 'neutral-earthed',
    title: 'neutral and earth are joined after the plug',
    severity: 'danger',
    question: 1,
    base: 'dc-chain',
    meaning:
      'The neutral touches the earth wire or the metal box. Part of the motor current then goes home by the earth wire and by every metal part joined to it, and a residual-current or ground-fault breaker trips. The one joint between the two belongs at the service, not in the shop.',
    wrong: extract(
      '  - {link: [neutral, B1.PE]}',
      '  - {cable: cord, length: 60 cm, cores: {white: [neutral, X1.N], green: [B1.PE, X1.PE]}}',
    ),
    right: '  - {cable: cord, length: 60 cm, cores: {white: [neutral, X1.N], green: [B1.PE, X1.PE]}}',
    basis: 'NEC 250.24(A)(5), 250.142(B) (from memory); BS 7671 section 411 (from memory)',
  },
  {
    id: 'earth-as-return',
    title: 'the earth wire carries working current',
    severity: 'danger',
    question: 1,
    base: 'iec-star',
    meaning:
      'A coil or load sits between the line and earth, with the earth wire as its way home. It works, until the earth wire breaks somewhere: then all the metal beyond the break is live through that coil. Take its return to the neutral.',
    wrong: '{cable: panel, length: 30 cm, cores: {black: [Q1.A2, B1.PE]}}',
    right: '{cable: panel, length: 30 cm, cores: {black: [Q1.A2, Q1.3]}}',
    basis: 'NEC 250.6, 300.3(B) (from memory); BS 7671 clause 543.1 (from memory)',
  },
  {
    id: 'low-voltage-earthed',
    title: 'one side of the loop is earthed',
    severity: 'notice',
    question: 1,
    base: 'battery',
    meaning:
      'One pole of the supply is joined to the protective earth. That is common on machines and only noted, as long as the coil sits straight on the earthed pole. With the gate switches between the coil and the earthed pole it is a warning: the bare tab of a switch touching a metal duct then starts the motor.',
    wrong: extract('  - {link: [minus, earth]}', '  - {link: [minus, K1.A2]}'),
    right: '  - {link: [minus, K1.A2]}',
    basis: 'NEC 430.74; IEC 60204-1 clause 9.4.3; NFPA 79 clause 9.1.4',
  },
  {
    id: 'sides-share-box',
    title: 'mains and loop share a box with nothing between',
    severity: 'danger',
    question: 1,
    base: 'dc-chain',
    meaning:
      'One enclosure holds mains terminals and loop wire with no barrier. A loop wire that slips off its screw can land on the line. Fit a fixed divider; where practice is iec, loop cable insulated for the mains voltage inside the box serves as well. If that insulation is not stated, it is a doubt.',
    wrong: 'divider: false',
    right: 'divider: true',
    basis:
      'NEC 725.136(A), (B), (D); IEC 60364-4-41 clause 414.4.2; IEC 60364-5-52 clause 528.1 (from memory)',
  },
  {
    id: 'sides-share-cable',
    title: 'mains and loop share one cable',
    severity: 'danger',
    question: 1,
    base: 'dc-chain',
    meaning:
      'A spare core of the mains cord was used for the loop. When that cord is crushed or chafed, its line core touches the loop core and all the gate switches go live. Give the loop a cable of its own.',
    wrong: '  - {cable: cord, length: 60 cm, cores: {black: [K1.NO, X1.L], white: [call, K1.A1]}}',
    right: extract(
      '  - {cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
      '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
    ),
    basis: 'NEC 725.136(A), 300.3(C)(1); BS 7671 clause 528.1 (partly from memory)',
  },
  {
    id: 'insulation-too-low',
    title: 'the cable is insulated for less than it works at',
    severity: 'danger',
    question: 1,
    base: 'dc-chain',
    meaning:
      'The voltage printed on the sheath is below the voltage the cable carries. The insulation may break down, first where it is bent or warm. Where a mains cable states no figure at all, it is a doubt: read it off the sheath.',
    wrong: 'cord: {kind: cable, gauge: 10 AWG, cores: 3, insulation: 60 V, flexible: true}',
    right: 'cord: {kind: cable, gauge: 10 AWG, cores: 3, insulation: 600 V, flexible: true}',
    basis: 'NEC 310.10 (from memory); IEC 60364-5-52 (from memory)',
  },
  {
    id: 'supply-over-limits',
    title: 'the loop is not low voltage',
    severity: 'danger',
    question: 1,
    base: 'ac-contactor',
    meaning:
      'The supply can rise above 30 V AC or 60 V DC. A small transformer gives a good deal more than its label while no coil is in, and that is what the fingers meet. Bell wire and bare switch tabs belong below those limits.',
    wrong: 'no-load: 34 V',
    right: 'no-load: 25.5 V',
    basis: 'NEC Chapter 9 Tables 11(A), 11(B); IEC 60364-4-41 clause 414.4.5 (limits partly from memory)',
  },
  {
    id: 'phase-order',
    title: 'phases change places',
    severity: 'caution',
    question: 1,
    base: 'three-phase',
    meaning:
      'Two of the three phases are exchanged between the feed and the motor, so the fan turns backwards. A fan that turns backwards still blows, weakly and noisily, and may unscrew its wheel. Exchange two cores at the motor and look at the direction at the first start.',
    wrong:
      '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L3], grey: [Q1.6, fan.L2], green-yellow: [B1.PE, fan.PE]}',
    right:
      '{brown: [Q1.2, fan.L1], black: [Q1.4, fan.L2], grey: [Q1.6, fan.L3], green-yellow: [B1.PE, fan.PE]}',
    basis: 'common practice',
  },
];
