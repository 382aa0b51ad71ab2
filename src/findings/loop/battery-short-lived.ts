import type { BatteryPart } from '../../plan/part-types.ts';
import { shortLived, WEEK_HOURS, WORKING_WEEK_HOURS } from '../../ratings/battery.ts';
import { statesFeeding } from '../../study/coil-rows.ts';
import type { Electrics } from '../../study/electrics.ts';
import type { Study } from '../../study/study.ts';
import { ampsText, rounded } from '../../text/numbers.ts';
import type { Check, FindingEntry } from '../entry.ts';
import { found } from '../finding.ts';
import type { Finding } from '../report-model.ts';

const entry: FindingEntry = {
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
  followsFrom: [],
};

export const batteryShortLived: Check = { entry, find };

/** Ways of starting a relay that are tried; they differ by ohms of wire only. */
const FEW = 8;

/** A below which nothing flows: what is left then is the rounding of the solver. */
const NO_AMPS = 1e-6;

/** Hours with a gate open, and hours at rest, from the stated capacity. */
function find(study: Study): Finding[] {
  const own = study.electrics;
  if (!own) return [];
  return [...study.plan.parts.values()]
    .filter((p): p is BatteryPart => p.kind === 'battery')
    .flatMap((p) => lifeOf(study, own, p));
}

function lifeOf(study: Study, own: Electrics, battery: BatteryPart): Finding[] {
  const source = own.circuit.sources.find((s) => s.part === battery.name);
  if (!source || battery.capacity === undefined) return [];
  const draw = (moved: readonly number[]): number => {
    const standing = own.situations.at(moved);
    if (!standing?.alive[source.index]) return 0;
    const amps = own.solveSource(source, standing, 'nominal').sourceAmps(source).re;
    return amps > NO_AMPS ? amps : 0;
  };
  const states = own.circuit.relays.flatMap((r) => statesFeeding(own, r).slice(0, FEW));
  const running = Math.max(0, ...states.map(draw));
  const resting = draw([]);
  const life = shortLived(battery.capacity, running, resting);
  if (life.enough) return [];
  const flat = life.restingHours !== undefined && life.restingHours < WEEK_HOURS * 1.5;
  return [
    found(study.plan, entry, {
      parts: [battery.name],
      at: battery.where.get('capacity') ?? battery.at,
      message: flat
        ? `${battery.name} is flat in ${rounded(life.restingHours! / 24, 2)} days with all gates shut`
        : `${battery.name} lasts about ${rounded(life.runningHours ?? 0, 2)} h with a gate open`,
      why: `${running > 0 ? `An open gate takes ${ampsText(running)}` : 'No gate takes current'}${resting > 0 ? `, rest takes ${ampsText(resting)}` : ''}; of ${battery.capacity} Ah about 60 % can be used before the volts sag. A working week is taken as ${WORKING_WEEK_HOURS} h.${flat ? ' What draws at rest sits before the gates.' : ''}`,
      fix: `${battery.name} does not hold what a week takes.`,
      figures: [
        {
          name: 'hours with a gate open',
          value: life.runningHours === undefined ? null : rounded(life.runningHours, 3),
          unit: 'h',
        },
        {
          name: 'hours at rest',
          value: life.restingHours === undefined ? null : rounded(life.restingHours, 3),
          unit: 'h',
        },
      ],
      basis: entry.basis,
    }),
  ];
}
