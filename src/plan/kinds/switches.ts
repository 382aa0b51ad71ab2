/** What a person or an event moves: gates, hand switches, buttons, cut-outs and selectors. */
import * as z from 'zod/mini';
import { twinKey, twinWords } from '../../text/alike.ts';
import { found } from '../issues.ts';
import { nameProblem } from '../names.ts';
import type {
  ButtonPart,
  CutoutPart,
  GatePart,
  PartKind,
  SelectorPart,
  SwitchPart,
  Tab,
} from '../part-types.ts';
import * as q from '../quantity.ts';
import { choice, described, list, number, once, optional, quantity, text } from '../schema-fields.ts';
import { shared, Terminals } from '../terminals.ts';
import { withoutUndefined } from '../without-undefined.ts';
import { buildContact, type ContactFields, contact } from './contact.ts';
import { type Add, common, kind, kindRow } from './kind-row.ts';
import { buildPoles, checkPoles, type PoleFields, pole, poleNames } from './poles.ts';

const TABS = ['COM', 'NO', 'NC'] as const;
const switchFields = (of: PartKind) => ({
  contact: optional(contact()),
  terminals: optional(list(z.enum(TABS), 'The tabs it has, where one is missing: [COM, NO].')),
  ...common(of),
});

/** Several contacts on one handle, as a number or one by one as for relays. */
const switchPoles = () =>
  optional(
    described(
      z.union([
        number(q.poleCount, 'How many, alike.'),
        list(pole(), 'One entry each, as for relays; make closes in the working position.'),
      ]),
      'Its contacts, where it has several on one handle: 2, with terminals 1.COM 1.NO 1.NC 2.COM and so on, or a list as for relays.',
    ),
  );

const gateSchema = once(() =>
  z.strictObject({
    kind: kind('gate', 'A blast gate with its snap switch. Terminals COM NO NC.'),
    'pressed-when': optional(
      choice(
        ['open', 'shut'],
        'The gate position that presses the switch. Left out it is asked for, and the report goes by open.',
      ),
    ),
    ...switchFields('gate'),
  }),
);
const handSwitchSchema = once(() =>
  z.strictObject({
    kind: kind('switch', 'A hand switch or isolator that stays put. Terminals COM NO NC.'),
    poles: switchPoles(),
    ...switchFields('switch'),
  }),
);
const buttonSchema = once(() =>
  z.strictObject({
    kind: kind('button', 'A hand switch that springs back. Terminals COM NO NC.'),
    ...switchFields('button'),
  }),
);
const cutoutSchema = once(() =>
  z.strictObject({
    kind: kind(
      'cutout',
      'A bin-full, thermal, door, overload or emergency-stop contact. Terminals COM NO NC, or 95 96 (break) 97 98 (make).',
    ),
    setting: optional(
      quantity(
        q.amps,
        'Current on the dial of an overload relay; makes the cut-out one that sees the motor stall.',
      ),
    ),
    reset: optional(
      choice(
        ['manual', 'automatic'],
        'How an overload relay goes back after a trip: by its button, or by itself when it has cooled.',
      ),
    ),
    poles: switchPoles(),
    ...switchFields('cutout'),
  }),
);
const selectorSchema = once(() =>
  z.strictObject({
    kind: kind('selector', 'A hand switch of several positions. Terminals COM and one for each position.'),
    positions: list(text('A position.'), 'Its positions, such as [auto, off, hand]; off joins nothing.'),
    rest: optional(text('The position it is taken to be in; default the first.')),
    contact: optional(contact()),
    ...common('selector'),
  }),
);

interface SwitchFields {
  readonly poles?: number | readonly PoleFields[] | undefined;
  readonly kind: string;
  readonly contact?: ContactFields | undefined;
  readonly terminals?: readonly Tab[] | undefined;
}

const tabsOf = (fields: SwitchFields): readonly Tab[] => fields.terminals ?? TABS;

/** The poles of a switch one by one; a number of them have the tabs that the switch has. */
function polesOf({ poles, terminals }: SwitchFields): readonly PoleFields[] | undefined {
  if (typeof poles !== 'number') return poles;
  const has = (tab: Tab) => terminals?.includes(tab) ?? true;
  const form = has('NO') && has('NC') ? 'changeover' : has('NO') ? 'make' : 'break';
  return Array.from({ length: poles }, () => ({ form }));
}

function poleTerminals(poles: readonly PoleFields[], more: readonly string[] = []): Terminals {
  const { names, aliases } = poleNames(poles, false);
  const own = names.flatMap((n) => [n.common, n.make, n.break].filter((name) => name !== undefined));
  return new Terminals([...new Set([...own, ...more])], aliases);
}

const switchTerminals = (fields: SwitchFields): Terminals => {
  const poles = polesOf(fields);
  return poles === undefined ? tabTerminals(fields) : poleTerminals(poles);
};

const tabTerminals = (fields: SwitchFields): Terminals =>
  shared(`${fields.kind} ${tabsOf(fields).join()}`, () => new Terminals(tabsOf(fields)));

/** An overload relay's auxiliary contacts, which a cut-out may have instead of tabs. */
const OVERLOAD = ['95', '96', '97', '98'] as const;

function checkSwitch(fields: SwitchFields, add: Add): void {
  if (Array.isArray(fields.poles)) checkPoles({ contact: fields.contact, poles: fields.poles }, add);
  if (fields.terminals !== undefined) checkTabs(fields.terminals, add);
}

function checkTabs(tabs: readonly string[], add: Add): void {
  for (const [index, tab] of tabs.entries()) {
    if (tabs.indexOf(tab) !== index) add(['terminals', index], `terminals: ${tab} stands twice`);
  }
  if (!tabs.includes('COM') || tabs.length < 2) {
    add(['terminals'], 'terminals: expected COM with NO, NC or both, such as [COM, NO]');
  }
}

function checkPositions(fields: z.output<ReturnType<typeof selectorSchema>>, add: Add): void {
  const { positions, rest } = fields;
  if (positions === undefined) return;
  if (positions.length < 2)
    add(['positions'], 'positions: expected three or more, such as [auto, off, hand]');
  const seen = new Map<string, string>();
  for (const [index, position] of positions.entries()) {
    const problem = nameProblem(position);
    if (problem !== undefined) add(['positions', index], `positions: ${problem}`);
    const other = seen.get(twinKey(position));
    if (other !== undefined) {
      const twins =
        other === position
          ? `${position} stands twice`
          : `${position} and ${other} ${twinWords(position, other)}`;
      add(['positions', index], `positions: ${twins}`);
    }
    if (position === 'COM')
      add(['positions', index], 'positions: COM is the common terminal; choose another name');
    seen.set(twinKey(position), position);
  }
  if (rest !== undefined && !positions.includes(rest)) {
    add(
      ['rest'],
      `rest: found ${found(rest)}, expected one of its positions: ${positions.slice(0, 12).join(', ')}`,
    );
  }
}

const switchLike = (fields: SwitchFields) => ({
  contact: buildContact(fields.contact),
  tabs: tabsOf(fields),
});

/** One with several contacts has those in place of tabs. */
function thrown(fields: SwitchFields) {
  const poles = polesOf(fields);
  if (poles === undefined) return switchLike(fields);
  const throws = buildPoles({ contact: fields.contact, poles }, false);
  return { contact: throws[0]?.contact ?? buildContact(fields.contact), tabs: [], throws };
}

export const gate = kindRow<GatePart>()({
  schema: gateSchema,
  terminals: tabTerminals,
  check: checkSwitch,
  build: (fields, base) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      pressedWhen: fields['pressed-when'] ?? 'open',
      ...switchLike(fields),
    }),
  passes: true,
  intent: ['runs-on', 'stopped-by', 'lit-when'],
});

export const handSwitch = kindRow<SwitchPart>()({
  schema: handSwitchSchema,
  terminals: switchTerminals,
  check: checkSwitch,
  build: (fields, base) => withoutUndefined({ ...base, kind: fields.kind, ...thrown(fields) }),
  passes: true,
  intent: ['runs-on', 'blocked-by', 'stopped-by', 'lit-when'],
});

export const button = kindRow<ButtonPart>()({
  schema: buttonSchema,
  terminals: tabTerminals,
  check: checkSwitch,
  build: (fields, base) => withoutUndefined({ ...base, kind: fields.kind, ...switchLike(fields) }),
  passes: true,
  intent: ['runs-on', 'blocked-by', 'stays-on-after', 'stopped-by', 'lit-when'],
});

export const cutout = kindRow<CutoutPart>()({
  schema: cutoutSchema,
  terminals: (fields) => {
    const poles = polesOf(fields);
    if (poles !== undefined) return poleTerminals(poles, OVERLOAD);
    return shared(`cutout ${tabsOf(fields).join()}`, () => new Terminals([...tabsOf(fields), ...OVERLOAD]));
  },
  check: checkSwitch,
  build: (fields, base) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      setting: fields.setting,
      reset: fields.reset,
      ...thrown(fields),
    }),
  passes: true,
  intent: ['blocked-by', 'stopped-by', 'lit-when'],
});

export const selector = kindRow<SelectorPart>()({
  schema: selectorSchema,
  terminals: (fields) => new Terminals(['COM', ...(fields.positions ?? [])]),
  terminalsFrom: 'positions',
  check: (fields, add) => {
    checkPositions(fields, add);
  },
  build: (fields, base) =>
    withoutUndefined({
      ...base,
      kind: fields.kind,
      positions: fields.positions,
      rest: fields.rest ?? fields.positions[0]!,
      contact: buildContact(fields.contact),
    }),
  assumed: ({ rest, positions }, shown) =>
    rest === undefined ? `${shown} names no rest: it is taken to rest in ${positions[0]}.` : undefined,
  passes: true,
  intent: ['runs-on', 'blocked-by', 'stopped-by', 'lit-when'],
});
