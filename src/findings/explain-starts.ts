/** Questions 2 and 3: does every gate start its load, and does it stop when all are shut? */
import { type Documented, extract } from './explanation-entry.ts';

export const explainStarts: readonly Documented[] = [
  {
    id: 'loop-dead',
    title: 'no gate starts the load',
    severity: 'fault',
    question: 2,
    base: 'dc-chain',
    meaning:
      'Whatever is opened, the load stays off. One thing that all gates share is missing: the supply is not fed, or is fed through the very contact it has to close; a coil end or a fuse is loose. The message names that one thing.',
    wrong: '{cable: bell, length: 2 m, cores: {red: [PS1.+, feed]}}',
    right: '{cable: bell, length: 2 m, cores: {red: [PS1.+, feed], white: [PS1.-, K1.A2]}}',
    basis: 'common practice',
  },
  {
    id: 'gate-dead',
    title: 'opening this gate does nothing',
    severity: 'fault',
    question: 2,
    base: 'dc-chain',
    meaning:
      'Opened by itself, this gate does not start its load, while others do. The message says why: the two outer tabs were used, both cores sit on one conductor, the feed or the return ends on the way, or a diode points the wrong way. The switch still clicks, so the fault is easily missed until that machine is used alone.',
    wrong: '{red: [planer.COM, router.NO], white: [planer.NO, router.NC]}',
    right: '{red: [planer.COM, router.COM], white: [planer.NO, router.NO]}',
    basis: 'common practice',
  },
  {
    id: 'gate-on-wrong-tab',
    title: 'a core sits on NC and belongs on NO, or the reverse',
    severity: 'fault',
    question: 2,
    base: 'dc-chain',
    meaning:
      'Moving one core from one tab to the other mends every fault in starting and stopping, which the check proves by solving the circuit with the core moved. With this gate shut the load runs at once, and opening it is what stops it. On most switches the tabs read COM, NO, NC in small print; the order differs from maker to maker.',
    wrong: '{red: [planer.COM, router.COM], white: [planer.NO, router.NC]}',
    right: '{red: [planer.COM, router.COM], white: [planer.NO, router.NO]}',
    basis: 'common practice',
  },
  {
    id: 'gates-in-series',
    title: 'it takes more than one open gate to start',
    severity: 'fault',
    question: 2,
    base: 'battery',
    meaning:
      'The switches lie in line, one behind the other, so no gate starts the load by itself. Wire them side by side: one core joins all the COM tabs, the other all the NO tabs.',
    wrong: extract(
      '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM]}}',
      '  - {cable: twin, length: 9 m, cores: {red: [bandsaw.NO, lathe.COM], black: [barB, lathe.NO]}}',
    ),
    right: extract(
      '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM], black: [barB, bandsaw.NO]}}',
      '  - {cable: twin, length: 9 m, cores: {red: [barA, lathe.COM], black: [barB, lathe.NO]}}',
    ),
    basis: 'common practice',
  },
  {
    id: 'gate-stops-load',
    title: 'opening one more gate stops the load',
    severity: 'fault',
    question: 2,
    base: 'battery',
    meaning:
      'The load runs with one gate open and stops when a second is opened as well. That is how two stair switches work one lamp, and it is wrong here. Use COM and NO of every switch and leave NC empty.',
    wrong: extract(
      '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM], black: [barB, lathe.COM]}}',
      '  - {cable: twin, length: 9 m, cores: {red: [bandsaw.NO, lathe.NC], black: [bandsaw.NC, lathe.NO]}}',
    ),
    right: extract(
      '  - {cable: twin, length: 7 m, cores: {red: [barA, bandsaw.COM], black: [barB, bandsaw.NO]}}',
      '  - {cable: twin, length: 9 m, cores: {red: [barA, lathe.COM], black: [barB, lathe.NO]}}',
    ),
    basis: 'common practice',
  },
  {
    id: 'stops-without-cause',
    title: 'something not meant to stop the load stops it',
    severity: 'fault',
    question: 2,
    base: 'ac-contactor',
    meaning:
      'A switch or cut-out that the intent does not name keeps the load from running. Either it was wired in by mistake, or it is wanted and the intent forgot it: then name it under blocked-by.',
    wrong: 'collector: {runs-on: [lathe, bandsaw]}',
    right: 'collector: {runs-on: [lathe, bandsaw], blocked-by: [bin]}',
    basis: 'common practice',
  },
  {
    id: 'chatters',
    title: 'a relay breaks its own coil and buzzes',
    severity: 'fault',
    question: 2,
    base: 'seal-in',
    meaning:
      'The coil is fed through a contact that opens when the relay pulls in. It pulls in, cuts itself off, drops out and begins again, many times a second; it buzzes, and its contacts burn. Use the contact that closes on pulling in (14, not 12).',
    wrong: '{link: [CR.12, CR.A1]}',
    right: '{link: [CR.14, CR.A1]}',
    basis: 'common practice',
  },
  {
    id: 'depends-on-order',
    title: 'the outcome depends on what moves first',
    severity: 'fault',
    question: 2,
    base: 'two-collectors',
    meaning:
      'From one and the same position of the gates the load sometimes runs and sometimes does not, according to which relay or gate moved first. Here each relay locks the other out, so the shared gate starts whichever is quicker that day. Take the contacts of one relay out of the coil circuit of the other.',
    wrong: extract(
      '  - {link: [line1, K2.31]}',
      '  - {link: [K2.32, K1.A1]}',
      '  - {link: [line2, K1.31]}',
      '  - {link: [K1.32, K2.A1]}',
    ),
    right: extract('  - {link: [line1, K1.A1]}', '  - {link: [line2, K2.A1]}'),
    basis: 'common practice',
  },
  {
    id: 'loose-end',
    title: 'a terminal or a part is joined to nothing',
    severity: 'caution',
    question: 2,
    base: 'dc-chain',
    meaning:
      'A terminal that the part cannot do without has no core on it, or a part of the plan is wired to nothing. The rest may well work without it, as here, where the diode hangs on one leg and quenches nothing.',
    wrong: '  - {link: [D1.K, K1.A1]}',
    right: extract('  - {link: [D1.K, K1.A1]}', '  - {link: [D1.A, K1.A2]}'),
    basis: 'common practice',
  },
  {
    id: 'intent-missing',
    title: 'the plan does not say what a load is meant to do',
    severity: 'doubt',
    question: 2,
    base: 'two-collectors',
    meaning:
      'The intent speaks of some loads and leaves this one out, or there is nothing to start at all. Whether it does right cannot be told. Add a line for it.',
    wrong: '  chips: {runs-on: [rip-saw, wide-belt]}',
    right: extract(
      '  chips: {runs-on: [rip-saw, wide-belt]}',
      '  fines: {runs-on: [edge-sander, wide-belt]}',
    ),
    basis: 'limit of the method',
  },
  {
    id: 'undecided',
    title: 'the circuit is too involved to decide',
    severity: 'doubt',
    question: 2,
    base: 'eleven-relays',
    meaning:
      'Every state of the circuit is looked at, and this one has too many relays that feed back on one another. Nothing is guessed in that case. Split it into plans that do not share relays.',
    wrong: '{link: [K11.NO, K1.A1]}',
    right: '{link: [K11.NO, lamp.1]}',
    basis: 'limit of the method',
  },
  {
    id: 'break-is-silent',
    title: 'a broken core looks like a gate that is never opened',
    severity: 'notice',
    question: 2,
    base: 'one-gate',
    meaning:
      'The switches make the circuit, so a break anywhere in the loop is the same as a shut gate and nothing reports it. It shows when somebody saws without extraction. Open every gate in turn once a month and listen.',
    wrong: extract(
      '  - {cable: bell, length: 5 m, cores: {red: [feed, bandsaw.COM], white: [call, bandsaw.NO]}}',
      '  - {cable: bell, length: 4 m, cores: {red: [bandsaw.COM, planer.COM], white: [bandsaw.NO, planer.NO]}}',
      '',
      'intent:',
      '  collector: {runs-on: [bandsaw, planer]}',
    ),
    right: extract(
      '  - {cable: bell, length: 5 m, cores: {red: [feed, bandsaw.COM], white: [call, bandsaw.NO]}}',
      '',
      'intent:',
      '  collector: {runs-on: [bandsaw]}',
    ),
    basis: 'common practice',
  },
  {
    id: 'ring-hides-break',
    title: 'a break in a ring goes unnoticed',
    severity: 'notice',
    question: 2,
    base: 'dc-chain',
    meaning:
      'A loop closed into a ring works from both ends, so one break in it changes nothing that anybody sees. A second break then takes out every gate between the two. Leave a link that can be opened, and measure each core all the way round from there.',
    wrong: extract(
      '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
      '  - {cable: bell, length: 6 m, cores: {red: [router.COM, feed], white: [router.NO, call]}}',
    ),
    right: '  - {cable: bell, length: 20 cm, cores: {white: [call, K1.A1]}}',
    basis: 'common practice of ring-wired alarm loops',
  },
  {
    id: 'runs-with-all-shut',
    title: 'the load runs with every gate shut',
    severity: 'fault',
    question: 3,
    base: 'dc-chain',
    meaning:
      'The load starts as soon as there is power. The two conductors of the loop are joined somewhere, or the load hangs on the contact that is closed at rest. Here the cores of one cable are crossed at the last gate, so its COM tab joins them for good.',
    wrong: '{red: [planer.COM, router.COM], white: [planer.NO, router.COM]}',
    right: '{red: [planer.COM, router.COM], white: [planer.NO, router.NO]}',
    basis: 'common practice',
  },
  {
    id: 'runs-without-cause',
    title: 'something not meant to start the load starts it',
    severity: 'fault',
    question: 3,
    base: 'two-collectors',
    meaning:
      'An input that the intent does not name for this load starts it. A shared gate wired straight to two lines joins them for as long as it is open, and then the gate of the one machine starts the collector of the other. A diode into each line keeps them apart.',
    wrong: extract('  - {link: [D1.A, line1]}', '  - {link: [D1.A, line2]}'),
    right: extract('  - {link: [D1.K, line1]}', '  - {link: [D2.K, line2]}'),
    basis: 'common practice',
  },
  {
    id: 'block-ignored',
    title: 'the load runs although something ought to stop it',
    severity: 'danger',
    question: 3,
    base: 'ac-contactor',
    meaning:
      'A stop, a bin-full switch or another cut-out is in its blocking position and the load runs all the same. It was put into one branch only, and the other gates go round it. Its break contact belongs in line with the coil, ahead of everything that can start the load.',
    wrong: extract(
      '  - {cable: stat, length: 8 m, cores: {red: [T1.~1, go], white: [bin.NC, bandsaw.COM]}}',
      '  - {cable: stat, length: 5 m, cores: {red: [go, bin.COM], white: [back, bandsaw.NO]}}',
    ),
    right: extract(
      '  - {cable: stat, length: 8 m, cores: {red: [T1.~1, bin.COM], white: [bin.NC, go]}}',
      '  - {cable: stat, length: 5 m, cores: {red: [go, bandsaw.COM], white: [back, bandsaw.NO]}}',
    ),
    basis: 'NEC 430.74; IEC 60204-1 clause 9.2 (from memory); common practice',
  },
  {
    id: 'stays-on',
    title: 'once started, it does not stop',
    severity: 'fault',
    question: 3,
    base: 'seal-in',
    meaning:
      'A relay holds itself in, and shutting the gates does not break its holding path. Here the holding contact was taken from the contactor, which any gate pulls in: after the first gate the fan runs on until STOP. Take it from the relay that START works.',
    wrong: extract('  - {link: [armed, Q1.13]}', '  - {link: [Q1.14, CR.A1]}'),
    right: extract('  - {link: [armed, CR.11]}', '  - {link: [CR.14, CR.A1]}'),
    basis: 'common practice',
  },
  {
    id: 'runs-on-dead-supply',
    title: 'the load runs when the low-voltage supply is dead',
    severity: 'danger',
    question: 3,
    base: 'iec-star',
    meaning:
      'The load hangs on a contact that is closed at rest. When the adapter is unplugged or dies, the motor starts by itself and no gate stops it. Feed it through the contact that closes on pulling in.',
    wrong: '{cable: panel, length: 30 cm, cores: {black: [K1.NC, Q1.A1]}}',
    right: '{cable: panel, length: 30 cm, cores: {black: [K1.NO, Q1.A1]}}',
    basis: 'IEC 60204-1 clause 9.4 (from memory); common practice',
  },
  {
    id: 'stops-on-dead-supply',
    title: 'the load stops when the supply is dead, though it should run on',
    severity: 'fault',
    question: 3,
    base: 'dc-chain',
    meaning:
      'The intent asks that the load runs while the low-voltage supply is dead, and this circuit needs that supply to run. Only a break contact keeps a load on without it. In most shops the load ought to stop; then say so.',
    wrong: 'collector: {runs-on: [bandsaw, planer, router], if-supply-fails: running}',
    right: 'collector: {runs-on: [bandsaw, planer, router], if-supply-fails: stopped}',
    basis: 'IEC 60204-1 clause 9.4 (from memory); common practice',
  },
  {
    id: 'break-starts-load',
    title: 'a broken wire in the loop starts the load',
    severity: 'caution',
    question: 3,
    base: 'one-gate',
    meaning:
      'The relay is held in while all gates are shut and lets go when one opens. A broken wire, a loose joint or a dead supply does the same, and the load starts with nobody near it. Keep it only where running extraction is the wanted answer to a fault.',
    wrong: extract(
      '  - {cable: wire, length: 60 cm, cores: {black: [K1.NC, X1.L]}}',
      '  - {cable: bell, length: 5 m, cores: {red: [feed, bandsaw.COM], white: [call, bandsaw.NC]}}',
    ),
    right: extract(
      '  - {cable: wire, length: 60 cm, cores: {black: [K1.NO, X1.L]}}',
      '  - {cable: bell, length: 5 m, cores: {red: [feed, bandsaw.COM], white: [call, bandsaw.NO]}}',
    ),
    basis: 'common practice',
  },
];
