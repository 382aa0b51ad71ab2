/** Whether a control contact is rated for the coil it feeds. */

import type { Contact, CurrentKind, PilotCode, Practice } from '../plan/device-figures.ts';
import { rounded } from '../text/numbers.ts';
import { categoryVolts, contactAt } from './category-volts.ts';
import { type ContactJudgement, compare, judgement, STATED, type Verdict } from './judgement.ts';
import { best, countingRatings, type Evidence, ratingText, resistiveMaking } from './making.ts';
import type { Figure } from './motor.ts';
import * as tables from './table-files.ts';

export interface PilotDuty {
  readonly contact: Contact;
  /** V of the coil's circuit */
  readonly volts: number;
  readonly kind: CurrentKind;
  readonly practice: Practice;
  /** A while the coil holds, and on AC while it pulls in */
  readonly holding?: Figure;
  readonly inrush?: Figure;
  /** VA while holding, all coils on the contact together */
  readonly holdingVA?: number;
}

/** What a code stands for at one voltage, A. */
export interface PilotRating {
  readonly make: number;
  readonly break: number;
  readonly basis: string;
}

interface Coded {
  readonly kind: CurrentKind;
  readonly most: number;
  readonly thermal: number;
  readonly makeVA: number;
  readonly breakVA: number;
  /** A up to `full` V; above it the VA hold */
  readonly make: number;
  readonly break: number;
  readonly full: number;
}

/** DC codes of the same tables: A at 125 V and VA; thermal 2.5 A and 1 A. */
const DIRECT = {
  Q300: { thermal: 2.5, amps: 0.55, va: 69 },
  R300: { thermal: 1, amps: 0.22, va: 28 },
} as const;

const BASIS = 'pilot duty by NEMA ICS 5, UL 508 and IEC 60947-5-1 Table A.1';

function coded(code: PilotCode): Coded {
  const most = Number(code.slice(1));
  if (code === 'Q300' || code === 'R300') {
    const { thermal, amps, va } = DIRECT[code];
    return { kind: 'dc', most, thermal, makeVA: va, breakVA: va, make: amps, break: amps, full: 125 };
  }
  const row = tables.pilotDuty().rows.find((r) => r.code === code)!;
  const { thermal, makeVA, breakVA } = row;
  return { kind: 'ac', most, thermal, makeVA, breakVA, make: row.make120, break: row.break120, full: 120 };
}

/**
 * Amperes a pilot-duty code makes and breaks at `volts`: VA over volts above 120 V (125 V on DC), the figures of
 * that voltage below it. NEMA ICS 5, UL 508, IEC 60947-5-1 Table A.1; that the amperes stay below 120 V is from
 * memory. Undefined for the other kind of current and above the volts in the code.
 */
export function pilotRating(code: PilotCode, volts: number, kind: CurrentKind): PilotRating | undefined {
  const c = coded(code);
  if (c.kind !== kind || volts > c.most) return undefined;
  if (volts <= c.full) return { make: c.make, break: Math.min(c.break, c.thermal), basis: BASIS };
  return {
    make: Math.min(c.make, c.makeVA / volts),
    break: Math.min(c.break, c.thermal, c.breakVA / volts),
    basis: BASIS,
  };
}

interface Uses {
  readonly holds: readonly Evidence[];
  readonly makes: readonly Evidence[];
}

/** Figures meant for coils: the code, AC-15 (AC-14 up to 72 VA) or DC-13. */
function meantForCoils({ contact: stated, volts, kind, holdingVA }: PilotDuty): Uses {
  const contact = contactAt(stated, volts);
  const holds: Evidence[] = [];
  const makes: Evidence[] = [];
  const add = (ratingUsed: string, hold: number, multiple: number, make: number, basis: string) => {
    holds.push({ amps: hold, ratingUsed, multiple: 1, basis });
    makes.push({ amps: make, ratingUsed, multiple, basis });
  };
  const code = contact.pilot === undefined ? undefined : pilotRating(contact.pilot, volts, kind);
  if (code !== undefined)
    add(`pilot duty ${contact.pilot}`, code.break, code.make / code.break, code.make, code.basis);
  const own = kind === 'ac' ? contact.ac15 : contact.dc13;
  if (own !== undefined) {
    const category = kind === 'dc' ? 'DC-13' : holdingVA !== undefined && holdingVA > 72 ? 'AC-15' : 'AC-14';
    const row = tables.utilization().rows.find((r) => r.category === category && r.test === 'normal')!;
    const basis = `${row.standard} ${row.table}: ${category} ${row.break === row.make ? 'makes and breaks' : `makes ${row.make} times and breaks ${row.break} times`} its rating`;
    add(
      `${rounded(own, 4)} A ${kind === 'ac' ? 'AC-15' : 'DC-13'}`,
      row.break * own,
      row.make,
      row.make * own,
      basis,
    );
  }
  return { holds, makes };
}

/** What a contact carries and makes for coils, A; undefined where nothing printed serves this voltage and kind. */
export interface ControlAmps {
  readonly carries: number;
  readonly makes: number;
}

/** By the rating for coils where there is one, else by the general one: as `judgePilot`, for a gate or a stop. */
export function controlAmps(duty: PilotDuty): ControlAmps | undefined {
  const special = meantForCoils(duty);
  const { holds, makes } = special.holds.length > 0 ? special : general(duty);
  const [carries, made] = [best(holds)?.amps, best(makes)?.amps];
  return carries === undefined ? undefined : { carries, makes: made ?? carries };
}

/** A resistive or general-use rating: its amperes held, and on AC 1.5 times them made. */
function general({ contact, volts, kind }: PilotDuty): Uses {
  const ratings = countingRatings(contact, volts, kind);
  const holds = ratings.map((r) => ({
    amps: r.amps,
    ratingUsed: ratingText(r),
    multiple: 1,
    basis: STATED,
  }));
  return { holds, makes: ratings.map(resistiveMaking) };
}

/**
 * Judges a control contact against the coils behind it: voltage, holding current (A) and on AC the current while
 * pulling in (A). The rating for coils decides where there is one, else the general one. A missing figure is a
 * cannot-tell.
 */
export function judgePilot(duty: PilotDuty): ContactJudgement[] {
  const special = meantForCoils(duty);
  const uses = special.holds.length > 0 ? special : general(duty);
  const voltage = judgeVolts(duty);
  if (voltage.verdict === 'fail') return [voltage];
  const judged = [voltage, judgeAmps('running', duty.holding, best(uses.holds))];
  if (duty.kind === 'ac') judged.push(judgeAmps('starting', duty.inrush, best(uses.makes)));
  return judged;
}

function judgeAmps(
  aspect: 'running' | 'starting',
  needed: Figure | undefined,
  most: Evidence | undefined,
): ContactJudgement {
  const verdict: Verdict =
    needed === undefined || most?.amps === undefined ? 'cannot-tell' : compare(needed, most.amps);
  return judgement(aspect, verdict, {
    needed: needed?.amps,
    found: most?.amps,
    ratingUsed: most?.ratingUsed ?? '',
    multiple: most?.multiple ?? 1,
    basis: [needed?.basis, most?.basis].filter((b) => b !== undefined).join('; '),
    // the current while pulling in follows from the VA while holding, so that one field settles both
    missing: most === undefined ? 'contact.ratings' : 'coil.power',
  });
}

/** Up to this many V a contact rated for the other kind of current is a doubt, not a failure; parts data, common practice. */
const GENTLE = 30;

function judgeVolts({ contact, volts, kind }: PilotDuty): ContactJudgement {
  const code = contact.pilot === undefined ? undefined : coded(contact.pilot);
  // a figure of category AC-15 or DC-13 that names no volts holds at the voltage of the circuit
  const field = kind === 'ac' ? 'ac15' : 'dc13';
  const category = contact[field];
  const named = categoryVolts(contact, volts).map((c) => ({ ...c, basis: STATED }));
  const marked = [
    ...named,
    ...(category === undefined || contact.upTo?.[field] !== undefined
      ? []
      : [
          {
            kind,
            volts,
            text: `${rounded(category, 4)} A ${kind === 'ac' ? 'AC-15' : 'DC-13'}`,
            basis: STATED,
          },
        ]),
    ...(code === undefined
      ? []
      : [{ kind: code.kind, volts: code.most, text: `pilot duty ${contact.pilot}`, basis: BASIS }]),
    ...[...contact.ratings, ...contact.motor].map((r) => ({
      kind: r.kind,
      volts: r.volts,
      text: 'amps' in r ? ratingText(r) : `${rounded(r.horsepower, 4)} hp ${rounded(r.volts, 4)} V`,
      basis: STATED,
    })),
  ];
  const own = marked.filter((m) => m.kind === kind).sort((a, b) => b.volts - a.volts)[0];
  const shown = own ?? marked[0];
  const gentle = own === undefined && volts <= GENTLE;
  const verdict: Verdict =
    shown === undefined || gentle
      ? 'cannot-tell'
      : own !== undefined && (own.volts >= volts || ('serves' in own && own.serves))
        ? 'pass'
        : 'fail';
  return judgement('voltage', verdict, {
    needed: volts,
    found: own?.volts ?? (shown === undefined ? undefined : 0),
    unit: 'V',
    ratingUsed: shown?.text ?? '',
    basis:
      shown === undefined
        ? 'no rating stated'
        : own === undefined
          ? `stated for ${shown.kind.toUpperCase()} only, used on ${kind.toUpperCase()}`
          : shown.basis,
    missing: 'contact.ratings',
  });
}
