/** Cores whose colour does not suit what they are for, and what is said of them. */
import { netAt } from '../../circuit/terminals.ts';
import type { OutletPart, PlugPart } from '../../plan/part-types.ts';
import type { Cable, Core, Run } from '../../plan/plan.ts';
import { type ColourFault, judgeColour } from '../../ratings/core-colours.ts';
import { type ConductorRole, coreRoles } from '../../study/mains/core-roles.ts';
import { perStudy } from '../../study/per-study.ts';
import type { Study } from '../../study/study.ts';
import { coreFromTo } from '../../text/core-names.ts';
import { runText } from '../../text/run-names.ts';
import { listOf } from '../../text/word-list.ts';
import type { FindingEntry } from '../entry.ts';
import { type Found, found } from '../finding.ts';
import type { Severity } from '../report-words.ts';

export interface MiscolouredCore {
  readonly run: Run;
  readonly core: Core;
  readonly role: ConductorRole;
  readonly fault: ColourFault;
}

interface RunOf {
  readonly run: Run;
  readonly cable: Cable;
  readonly roles: readonly (ConductorRole | undefined)[];
}

/** Every core of a cable whose colour is for something else, in the order of the plan. */
export const miscolouredCores = perStudy((study): readonly MiscolouredCore[] => {
  const roleOf = coreRoles(study);
  const netOf = ({ a }: Core) => netAt(study.circuit, a.part, a.terminal) ?? -1;
  const patterns = [...study.plan.parts.values()].flatMap((p) =>
    p.kind === 'plug' || p.kind === 'outlet' ? ((p satisfies PlugPart | OutletPart).pattern ?? []) : [],
  );
  return study.plan.runs.flatMap((run) => {
    const { cable } = run;
    if (cable === undefined) return [];
    const roles = run.cores.map(roleOf);
    return run.cores.flatMap((core, i) => {
      const role = roles[i];
      const fault = role && faultOf(study, { run, cable, roles }, core, role, patterns);
      // A core of the loop that some other core puts on earth is none of the earth for it.
      const isBond = [core.a, core.b].some((end) => end.terminal === 'PE');
      const isOfLoop =
        role?.use === 'earth' && fault?.what === 'other' && !isBond && study.sides.low.has(netOf(core));
      return role && fault && !isOfLoop ? [{ run, core, role, fault }] : [];
    });
  });
});

function faultOf(
  study: Study,
  own: RunOf,
  { colour, marked }: Core,
  role: ConductorRole,
  patterns: readonly string[],
): ColourFault | undefined {
  return judgeColour({
    practice: study.plan.practice,
    use: role.use,
    cable: own.cable,
    name: colour,
    marked,
    besideNeutral: isBesideNeutral(own, role),
    switchReturn: isSwitchReturn(own, role),
    patterns,
    loop: role.use === 'low-voltage' ? loopOf(study) : undefined,
    besideMains: own.roles.some((r) => r !== undefined && r.use !== 'low-voltage'),
  });
}

const isLine = (role: ConductorRole | undefined): boolean => role?.use === 'line';

/** Its circuit has a neutral, and it lies in no cable of several that holds all the lines of the circuit and no neutral. */
function isBesideNeutral({ cable, roles }: RunOf, role: ConductorRole): boolean {
  if (role.use !== 'line') return true;
  const { sources } = role;
  const rails = sources.flatMap((s) => s.rails);
  if (!rails.some((r) => !r.live)) return false;
  const lives = Math.max(...sources.map((s) => s.rails.filter((r) => r.live).length));
  const whole = cable.cores > 1 && lives > 1 && roles.filter(isLine).length >= lives;
  return !(whole && !roles.some((r) => r?.use === 'neutral'));
}

/** Switched, on a circuit of one line, with the line ahead of the switch in the same cable and no neutral. */
function isSwitchReturn({ roles }: RunOf, role: ConductorRole): boolean {
  if (role.use !== 'line' || !role.switched) return false;
  const oneLine = role.sources.every((s) => s.rails.filter((r) => r.live).length === 1);
  return (
    oneLine && roles.some((r) => r?.use === 'line' && !r.switched) && !roles.some((r) => r?.use === 'neutral')
  );
}

/** The highest volts of a supply of the plan. */
function loopOf({ circuit }: Study): { readonly volts: number; readonly kind: 'ac' | 'dc' } | undefined {
  const low = circuit.sources
    .filter((s) => !s.mains)
    .map((s) => ({ volts: Math.hypot(s.rails[0]!.re, s.rails[0]!.im), kind: s.kind }));
  return low.reduce<(typeof low)[number] | undefined>((a, b) => (a && a.volts >= b.volts ? a : b), undefined);
}

/** What a conductor is called by what it is for. */
function useWords(role: ConductorRole): string {
  if (role.use === 'line') return role.switched ? 'a switched line' : 'a line';
  if (role.use === 'low-voltage') return 'a wire of the low-voltage loop';
  return role.use === 'live' ? 'a live conductor' : role.use === 'earth' ? 'the earth' : 'the neutral';
}

const WHOSE = { earth: 'the earth', neutral: 'the neutral' } as const;

/** `white`, `white or grey`. */
const either = (colours: readonly string[]): string =>
  listOf(colours.slice(0, 3)).replace(/ and ([^ ]+)$/, ' or $1');

/** The finding of one core; those of one use and colour are twins. */
export function miscoloured(
  study: Study,
  entry: FindingEntry,
  { run, core, role, fault }: MiscolouredCore,
  severity: Severity,
): Found {
  const named = coreFromTo({ colour: core.colour, a: core.a.written, b: core.b.written });
  const seen = core.marked === undefined ? '' : `, marked ${core.marked},`;
  const remark =
    fault.remark.length === 0
      ? ''
      : `, or mark it ${either(fault.remark)} at both ends for good and say so with marked-as in ${runText(run)}`;
  return found(study.plan, entry, {
    severity,
    parts: [core.a.part, core.b.part],
    terminals: [core.a, core.b].map((e) => (e.terminal === '' ? e.part : `${e.part}.${e.terminal}`)),
    at: core.at,
    message: `${named}${seen} is ${useWords(role)}`,
    why:
      fault.what === 'taken'
        ? `${fault.colour} is for ${WHOSE[fault.of]} alone; whoever opens the box takes this core for it.`
        : `${WHOSE[fault.of]} has to be ${either(fault.wears)}; in ${fault.colour} it is taken for something else.`,
    fix: `Use a core in ${either(fault.wears)} there${remark}.`,
    basis: fault.basis,
    twin: {
      name: named,
      alike: JSON.stringify([role.use, fault.of, fault.what, core.colour, core.marked ?? '']),
    },
  });
}
