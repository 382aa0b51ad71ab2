/** Contacts: of gates, switches, buttons, cutouts and relays. Each way from a common terminal is a group of its own. */

import type { Pole } from '../../plan/part-types.ts';
import type { DrawnTerminal, Point } from '../drawing.ts';
import { DASHED, dot, line, rect } from '../strokes.ts';
import { changeover } from './changeover.ts';
import type { Form } from './contact-glyphs.ts';
import { wayGroup } from './contact-states.ts';
import { isOverload, type Style, styleOf } from './contact-styles.ts';
import { alongRow, type Frame, inward, JOG, joggedLead, lead, portOf, rowOf, terminal } from './frame.ts';

/** A common terminal with what it is joined to. */
interface Contact {
  readonly common: DrawnTerminal;
  readonly make: DrawnTerminal | undefined;
  readonly break: DrawnTerminal | undefined;
}

/** The pole a symbol stands for: `K1/2` is the second. */
function poleOf(frame: Frame): Pole | undefined {
  const { part, symbol } = frame;
  const poles = 'poles' in part ? part.poles : 'throws' in part ? part.throws : undefined;
  const index = Number(/\/(\d+)$/.exec(symbol.id)?.[1] ?? 1);
  return poles?.find((pole) => pole.index === index);
}

/** A common terminal that another pole shares, and whose place is there: its lead starts in the middle of nowhere. */
function elsewhere(frame: Frame, name: string, other: DrawnTerminal | undefined): DrawnTerminal | undefined {
  if (other === undefined) return undefined;
  const x = frame.cx + inward(other.side) * Math.min(JOG, frame.box.width / 2 - 1);
  return {
    key: `${frame.symbol.part}.${name}`,
    mark: name,
    side: other.side === 'left' ? 'right' : 'left',
    ports: [{ x, y: rowOf(frame, other) }],
  };
}

function contactsOf(frame: Frame): readonly Contact[] {
  const named = (
    common: string,
    make: string | undefined,
    opened: string | undefined,
  ): readonly Contact[] => {
    const others = { make: terminal(frame, make), break: terminal(frame, opened) };
    const drawn = terminal(frame, common) ?? elsewhere(frame, common, others.make ?? others.break);
    return drawn === undefined ? [] : [{ common: drawn, ...others }];
  };
  const pole = poleOf(frame);
  if (pole !== undefined) return named(pole.common, pole.make, pole.break);
  const ordinary = named('COM', 'NO', 'NC');
  if (!isOverload(frame)) return ordinary;
  return [...ordinary, ...named('95', undefined, '96'), ...named('97', '98', undefined)];
}

/** Contacts in the rows of the terminals they lead to, on one bus from the common terminal. */
function inRows(frame: Frame, contact: Contact, style: Style): string {
  const forms: readonly Form[] = ['make', 'break'];
  const ways = forms.flatMap((form) => {
    const other = contact[form];
    return other === undefined ? [] : [{ form, other, y: rowOf(frame, other) }];
  });
  if (ways.length === 0) return '';
  const direction = inward(contact.common.side);
  const busX = frame.cx - direction * Math.min(JOG, frame.box.width / 2 - 1);
  const farX = 2 * frame.cx - busX;
  const drawn = ways.map(({ form, other, y }) => {
    const place = alongRow(frame, y, direction);
    const glyph = style.glyph(place, form);
    const back = joggedLead(frame, other, farX, place(glyph.to, 0));
    const start = place(glyph.from, 0);
    const group = wayGroup(frame, contact.common, other, glyph);
    return { start, ink: back + group };
  });
  return (
    busOf(
      frame,
      contact.common,
      busX,
      drawn.map(({ start }) => start),
    ) + drawn.map(({ ink }) => ink).join('')
  );
}

/** The lead of a common terminal with its branches. */
function busOf(frame: Frame, common: DrawnTerminal, x: number, starts: readonly Point[]): string {
  const [first] = starts;
  if (first === undefined) return '';
  if (starts.length === 1) return joggedLead(frame, common, x, first);
  const rows = starts.map(({ y }) => y);
  const y = rowOf(frame, common);
  const tap = Math.max(Math.min(...rows), Math.min(Math.max(...rows), y));
  const branches = starts.map((start) => line([{ x, y: tap }, { x, y: start.y }, start]));
  return lead(frame, common, { x, y }, { x, y: tap }) + branches.join('') + dot({ x, y: tap });
}

/** y of a contact with one way. */
function contactRow(frame: Frame, contact: Contact): number {
  return rowOf(frame, contact.make ?? contact.break ?? contact.common);
}

/** The dashed link between the arms of an overload relay's two contacts, or the outline of a semiconductor. */
function around(frame: Frame, contacts: readonly Contact[]): string {
  const rows = contacts.map((contact) => contactRow(frame, contact));
  const [first, ...more] = rows;
  if (first === undefined) return '';
  if (frame.symbol.figure === 'static-pole' && frame.options.practice === 'iec') return outline(frame);
  if (frame.options.practice !== 'iec' || more.length === 0) return '';
  const ys = [...rows].sort((a, b) => a - b);
  const direction = inward(contacts[0]?.common.side ?? 'left');
  return ys
    .slice(1)
    .map((y, index) => {
      const above = alongRow(frame, ys[index] ?? y, direction)(-3.4, 3);
      return line([above, { x: above.x, y }], DASHED);
    })
    .join('');
}

/** A box round the valves of all ways. */
function outline(frame: Frame): string {
  const places = frame.symbol.terminals.map((drawn) => alongRow(frame, portOf(frame, drawn).y, 1));
  const corners = places.flatMap((place) => [place(-15, -14), place(15, 14)]);
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return rect({ x: left, y: top, width: Math.max(...xs) - left, height: Math.max(...ys) - top });
}

/** The figure of a part with contacts: gate, switch, button, cutout, pole or static pole. */
export function contactFigure(frame: Frame): string {
  const contacts = contactsOf(frame);
  const top = Math.min(...contacts.map((contact) => contactRow(frame, contact)));
  const drawn = contacts.map((contact) => {
    const style = styleOf(frame, contactRow(frame, contact) === top);
    return style.arm !== undefined && contact.make !== undefined && contact.break !== undefined
      ? changeover(frame, contact.common, contact.make, contact.break, style.arm)
      : inRows(frame, contact, style);
  });
  return drawn.join('') + around(frame, contacts) + strays(frame, contacts);
}

/** Terminals that no contact of the part uses still have their leads, with nothing at the end. */
function strays(frame: Frame, contacts: readonly Contact[]): string {
  const used = new Set(
    contacts.flatMap(({ common, make, break: opened }) =>
      make === undefined && opened === undefined ? [] : [common, make, opened],
    ),
  );
  return frame.symbol.terminals
    .filter((drawn) => !used.has(drawn))
    .map((drawn) => {
      const x = frame.cx - inward(drawn.side) * Math.min(JOG, frame.box.width / 2);
      return lead(frame, drawn, { x, y: rowOf(frame, drawn) });
    })
    .join('');
}
