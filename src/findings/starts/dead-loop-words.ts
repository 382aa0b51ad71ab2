import { kindAndNames, listOf } from '../../text/word-list.ts';
import type { CauseWords } from './dead-cause-words.ts';
import type { DeadLoopCause } from './departures/dead-loop-cause.ts';

/** `moved` says what was opened in vain. */
export function deadLoopWords(cause: DeadLoopCause, target: string, moved: string): CauseWords {
  switch (cause.kind) {
    case 'wrong-tab':
      return wrongTabWords(cause.move);
    case 'supply-not-fed':
      return supplyWords(cause);
    case 'several-plugs':
    case 'mains-open':
      return { parts: [target], ...mainsWords(cause, target) };
    case 'fuse-loose':
      return {
        what: `${kindAndNames('fuse', [cause.fuse])} is wired at one end only`,
        why: `${cause.terminal} has nothing on it.`,
        fix: `Land the core on ${cause.terminal}.`,
        parts: [cause.fuse],
        terminals: [],
      };
    case 'loop-open':
      return {
        what: 'the circuit does not close',
        why: `It stays off with ${moved}.`,
        fix: 'Trace the loop from the supply through a gate to the coil and back.',
        parts: [target],
        terminals: [],
      };
    default:
      return { parts: [cause.relay], ...coilWords(cause, moved) };
  }
}

type Of<K extends DeadLoopCause['kind']> = Extract<DeadLoopCause, { kind: K }>;

function wrongTabWords({ part, from, to }: Of<'wrong-tab'>['move']): CauseWords {
  return {
    what: `${part} is wired on ${from} where ${to} is wanted`,
    why: `With that core on ${part}.${to} every load does what is meant, in all states.`,
    fix: `Move the core from ${part}.${from} to ${part}.${to}.`,
    parts: [part],
    terminals: [`${part}.${from}`, `${part}.${to}`],
  };
}

function supplyWords({ supply, feed, byItself }: Of<'supply-not-fed'>): CauseWords {
  const usual = { parts: [supply], terminals: [] };
  return byItself
    ? {
        ...usual,
        what: `${kindAndNames('supply', [supply])} is fed through the contact it has to close`,
        why: `${supply} takes its mains from ${feed}, which is live only when the relay has pulled in already.`,
        fix: `Feed ${supply} from the line ahead of the contact.`,
      }
    : {
        ...usual,
        what: `${kindAndNames('supply', [supply])} is not fed`,
        why: `${supply} takes its mains from ${feed}, and no plug's line and neutral arrive there.`,
        fix: `Bring line and neutral to ${supply}.`,
      };
}

function mainsWords(cause: Of<'several-plugs' | 'mains-open'>, target: string): Omit<CauseWords, 'parts'> {
  if (cause.kind === 'several-plugs')
    return {
      what: 'its conductors come from different plugs',
      why: `${[...cause.plugs].map(([t, plug]) => `${t} comes from ${plug}`).join(', ')}.`,
      fix: `Bring every conductor of ${target} from one plug.`,
      terminals: [...cause.plugs.keys()],
    };
  const open = cause.terminals;
  return {
    what: `the relay pulls in, yet ${listOf(open)} ${open.length > 1 ? 'do' : 'does'} not reach the plug`,
    why: 'A conductor or contact is missing on the mains side.',
    fix: `Trace ${listOf(open)} back through the contact to the plug.`,
    terminals: open,
  };
}

function coilWords(
  { kind, relay, terminals }: Of<'coil-loose' | 'coil-open' | 'coil-on-one-pole' | 'coil-not-energised'>,
  moved: string,
): Omit<CauseWords, 'parts'> {
  const many = terminals.length > 1;
  switch (kind) {
    case 'coil-loose':
      return {
        what: `${listOf(terminals)} ${many ? 'have nothing on them' : 'has nothing on it'}`,
        why: `The coil of ${relay} has a loose end.`,
        fix: `Land the missing core on ${terminals[0]}.`,
        terminals: [],
      };
    case 'coil-open':
      return {
        what: `${listOf(terminals)} ${many ? 'do' : 'does'} not reach the supply`,
        why: `With ${moved} no path leads from ${listOf(terminals)} to a pole of the supply.`,
        fix: `Trace the core on ${terminals[0]} back to the supply and close the gap.`,
        terminals,
      };
    case 'coil-on-one-pole':
      return {
        what: `both ends of the coil of ${relay} are on one pole of the supply`,
        why: `${listOf(terminals)} meet the same pole with ${moved}.`,
        fix: `One end of ${relay} belongs on each pole of the supply.`,
        terminals,
      };
    case 'coil-not-energised':
      return {
        what: `${relay} does not pull in, though both ends of its coil reach the supply`,
        why: `Its supply is dead or of another kind, too few volts are left for it, or its trigger or input stays open, with ${moved}.`,
        fix: `Measure between ${listOf(terminals)} with a gate open, and look at what triggers ${relay}.`,
        terminals,
      };
  }
}
