import { sayMoved } from '../../circuit/input-words.ts';
import { deadSupplies } from '../../study/dead-supplies.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
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
  followsFrom: [],
  goneByOneMove: true,
};

export const runsOnDeadSupply: Check = { entry, find };

function find(study: Study): Finding[] {
  return deadSupplies(study)
    .filter((d) => d.runsOn)
    .map(({ target, dead, moved }) => {
      const latched = study.circuit.relays.filter((r) => r.latch !== undefined).map((r) => r.part);
      const stays = latched.length > 0;
      return found(study.plan, entry, {
        parts: [target, ...dead],
        message: `${target} runs when ${listOf(dead)} is dead`,
        why: stays
          ? `With no volts from ${listOf(dead)} and ${sayMoved(study.circuit, moved)} ${listOf(latched)} stays as it was, and nothing else breaks the way of the load.`
          : `With no volts from ${listOf(dead)} and ${sayMoved(study.circuit, moved)} the load is fed through a contact that is closed at rest.`,
        fix: stays
          ? `Let ${listOf(latched)} feed the coil of a plain relay from the same supply, and the load hang on that one's make contact.`
          : 'Feed the load through the make contact (NO), so that a dead supply stops it.',
        basis: entry.basis,
        twin: { alike: dead.join() },
      });
    });
}
