import { sayMoved } from '../../circuit/input-words.ts';
import type { Wanted } from '../../logic/intent.ts';
import type { Study } from '../../study/study.ts';
import { listOf } from '../../text/word-list.ts';
import type { DeadCause, DeadTabs } from './departures/dead-cause.ts';
import type { DeadPath } from './departures/dead-path.ts';
import type { DeadEntry } from './departures/departure.ts';

/** How a cause is told: in a few words, as a reason, as what to do, and where to look. */
export interface CauseWords {
  readonly what: string;
  readonly why: string;
  readonly fix: string;
  readonly parts: readonly string[];
  readonly terminals: readonly string[];
}

export function deadCauseWords(
  study: Study,
  { suspect, state, cause }: DeadEntry,
  wanted: Wanted,
): CauseWords {
  const name = suspect.part;
  const { target } = wanted;
  switch (cause.kind) {
    case 'diode':
      return diodeWords(cause.diode, target);
    case 'in-line':
      return inLineWords(study, name, cause, wanted);
    case 'no-feed':
    case 'stranded':
    case 'no-return':
    case 'open-loop':
      return {
        parts: [],
        terminals: cause.terminals,
        ...pathWords(name, cause, sayMoved(study.circuit, state)),
      };
    default:
      return { parts: [], ...tabWords(name, cause) };
  }
}

function diodeWords(diode: string, target: string): CauseWords {
  return {
    what: `diode ${diode} is the wrong way round`,
    why: `With ${diode} turned every load does what is meant; as it is, it blocks this gate and may let others through.`,
    fix: `Turn ${diode}: its band (K) towards the coil that starts ${target}.`,
    parts: [diode],
    terminals: [`${diode}.A`, `${diode}.K`],
  };
}

function inLineWords(
  { circuit }: Study,
  name: string,
  { others, together }: Extract<DeadCause, { kind: 'in-line' }>,
  { target, entries }: Wanted,
): CauseWords {
  // What stops the load, or starts it only together with a gate, is never gone round.
  const alone = (part: string) => entries.some((e) => e.refs.length === 1 && e.refs[0]!.part === part);
  const alike = [name, ...others].every((part) => alone(part));
  return {
    what: `it lies in line with ${listOf(others)}`,
    why: `It starts ${target} only with ${sayMoved(circuit, together)}.`,
    fix: alike
      ? `Wire ${name} side by side with ${listOf(others)}: COM to the fed core, the other tab to the return core.`
      : `Follow the cores of ${name} from the supply to the coil: they go through ${listOf(others)}, and it starts nothing unless that is moved too. Look at where those cores land, and on which tabs.`,
    parts: others,
    terminals: [],
  };
}

function tabWords(name: string, cause: DeadTabs): Omit<CauseWords, 'parts'> {
  const t = (tab: string) => `${name}.${tab}`;
  switch (cause.kind) {
    case 'unwired':
      return {
        what: 'nothing is wired to it',
        why: `No core lands on ${name}.`,
        fix: `Wire COM and ${cause.right} of ${name} into the loop.`,
        terminals: [],
      };
    case 'com-empty':
      return {
        what: 'COM is empty',
        why: 'NO and NC are never joined to each other; only COM meets either.',
        fix: `Move one core to ${t('COM')} and the other to ${t(cause.right)}.`,
        terminals: cause.landed.map(t),
      };
    case 'one-conductor':
      return {
        what: 'both its cores are on one conductor',
        why: `${t('COM')} and ${t(cause.tab)} are joined already, so the switch changes nothing.`,
        fix: `Take one of the two cores over to the other conductor of the loop.`,
        terminals: [t('COM'), t(cause.tab)],
      };
    case 'com-only':
      return {
        what: 'only COM is wired',
        why: `Neither ${t('NO')} nor ${t('NC')} has a core.`,
        fix: `Land the return core on ${t(cause.right)}.`,
        terminals: [t('COM')],
      };
    case 'wrong-tab':
      return {
        what: `the core is on ${cause.wrong} where ${cause.right} is wanted`,
        why: `${t('COM')} and ${t(cause.wrong)} part when the gate opens.`,
        fix: `Move the core from ${t(cause.wrong)} to ${t(cause.right)}.`,
        terminals: [t(cause.wrong)],
      };
  }
}

function pathWords(
  name: string,
  cause: DeadPath,
  moved: string,
): Omit<CauseWords, 'parts' | 'terminals'> & Partial<Pick<CauseWords, 'parts'>> {
  switch (cause.kind) {
    case 'no-feed':
      return {
        what: 'it has no feed',
        why: `Neither core of ${name} leads to the supply.`,
        fix: 'Carry the fed core on from the joint or gate before it.',
      };
    case 'stranded': {
      const { coil, source } = cause;
      return {
        what: `the return of ${coil} does not come back to ${source}`,
        why: `${name} is fed from ${source}, and the other end of the coil of ${coil} leads to no pole of ${source}.`,
        fix: `Join the minus (or common) of the two supplies, or feed ${name} from the supply that ${coil} returns to.`,
        parts: [coil, source],
      };
    }
    case 'no-return':
      return {
        what: 'its return core leads nowhere',
        why: `From ${listOf(cause.terminals)} no core leads on to a coil; the return core ends somewhere on the way.`,
        fix: 'Carry the return core on through every joint and gate as far as the coil.',
      };
    case 'open-loop':
      return {
        what: 'the loop is open',
        why: `${name} is fed and leads to a coil, yet the circuit does not close with ${moved}.`,
        fix: 'Trace the loop from the supply through this gate to the coil and back.',
      };
  }
}
