import { flood, neighbours } from '../../circuit/graph.ts';
import { contactPairs, elementPairs } from '../../circuit/sides.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';
import { neutralToEarth } from './earth-joins.ts';
import { mainsSources } from './rail-reach.ts';

const entry: FindingEntry = {
  id: 'earth-as-return',
  title: 'the earth wire carries working current',
  severity: 'danger',
  question: 1,
  base: 'iec-star',
  meaning:
    'A coil or load sits between the line and earth, with the earth wire as its way home. It works, until the earth wire breaks somewhere: then all the metal beyond the break is live through that coil. Take its return to the neutral.',
  wrong: '{cable: panel, length: 30 cm, cores: {black: [Q1.A2, B1.PE]}}',
  right: '{cable: panel, length: 30 cm, cores: {blue: [Q1.A2, Q1.3]}}',
  basis: 'NEC 250.6, 300.3(B) (from memory); BS 7671 clause 543.1 (from memory)',
  followsFrom: [],
};

export const earthAsReturn: Check = { entry, find };

/** Parts between a mains conductor and earth, with any contacts or parts in line with them. */
function find(study: Study): Finding[] {
  return returningByEarth(study).map((part) =>
    found(study.plan, entry, {
      parts: [part],
      message: `${part} works between a mains conductor and earth`,
      why: 'The protective conductor carries its working current; metal parts go live when that conductor breaks.',
      fix: `Return ${part} to the neutral, or use one made for line-to-line voltage.`,
      basis: entry.basis,
      twin: {
        alike: '',
        several: (names) => ({
          message: `${listOf(names)} work between a mains conductor and earth`,
          fix: `Return ${listOf(names)} to the neutral, or use ones made for line-to-line voltage.`,
        }),
      },
    }),
  );
}

/** Names of parts whose current goes home by the earth. Where neutral is joined to earth, what returns by both is not of them. */
function returningByEarth(study: Study): string[] {
  const { circuit, sides } = study;
  const pins = mainsSources(circuit).flatMap((s) => s.rails);
  const pinNets = new Set(pins.map((r) => r.net));
  const contacts = neighbours(contactPairs(circuit));
  const from = (live: boolean) =>
    flood(
      pins.filter((r) => r.live === live).map((r) => r.net),
      contacts,
      sides.bareEarth,
    );
  const [line, neutral] = [from(true), from(false)];
  // What contacts join to earth, up to the pins of the plug.
  const earthed = flood(sides.bareEarth, contacts, pinNets);
  for (const net of pinNets) earthed.delete(net);
  const fed = flood(pinNets, neighbours([...contactPairs(circuit), ...elementPairs(circuit)]), earthed);
  const neutralJoined = neutralToEarth(study) !== undefined;

  const returns = (earth: number, other: number): boolean => {
    if (!earthed.has(earth) || earthed.has(other) || !fed.has(other)) return false;
    if (sides.bareEarth.has(earth)) return true;
    if (neutralJoined && neutral.has(earth)) return false;
    // A line that a contact puts on earth is a short; only another line then drives current through the part.
    return !line.has(earth) || line.has(other);
  };
  const parts = elements(study).filter(({ a, b }) => returns(a, b) || returns(b, a));
  return [...new Set(parts.map((e) => e.part))];
}

function elements({ circuit }: Study): { part: string; a: number; b: number }[] {
  return [
    ...circuit.passives,
    ...circuit.diodes.filter((d) => !d.builtIn).map((d) => ({ part: d.part, a: d.anode, b: d.cathode })),
  ];
}
