/** The drawing of the page in one state. */
import type { StateView } from '../../machine/state-view.ts';
import { terminalKey } from '../../plan/terminal-key.ts';
import { isOf } from './find.ts';

/** An element of the drawing with what it stands for. */
interface Standing {
  readonly element: Element;
  readonly of: string;
}

export class Sheet {
  readonly svg: SVGSVGElement | undefined;
  private readonly cores: readonly Standing[];
  private readonly contacts: readonly { readonly element: Element; readonly ways: readonly Way[] }[];
  private readonly figures: readonly Standing[];

  /** `as` is the plan that is drawn; `tap` is called with the part whose symbol was tapped. */
  constructor(as: string, tap: (part: string) => void) {
    this.svg = [...document.querySelectorAll<SVGSVGElement>('.sheet svg')].find((svg) => isOf(as, svg));
    this.cores = this.all('path[data-core]', 'data-core');
    this.figures = this.all('.coil[data-part], .load[data-part], .lamp[data-part]', 'data-part');
    const ways = this.all('.way[data-way]', 'data-way').map(wayOf);
    const contacts = new Map<Element, Way[]>();
    for (const way of ways) {
      const contact = way.element.closest('.contact') ?? way.element;
      contacts.set(contact, [...(contacts.get(contact) ?? []), way]);
    }
    this.contacts = [...contacts].map(([element, own]) => ({ element, ways: own }));
    this.svg?.addEventListener('click', (event) => {
      const target = event.target instanceof Element ? event.target.closest('[data-tap]') : null;
      const part = target?.getAttribute('data-tap');
      if (part != null) tap(part);
    });
  }

  show(view: StateView): void {
    for (const { element, of } of this.cores) element.classList.toggle('live', view.live.has(of));
    for (const { element, ways } of this.contacts) {
      let some = false;
      for (const way of ways) {
        const made = view.made(way.common, way.other);
        way.element.classList.toggle('is-made', made);
        some ||= made;
      }
      if (element.classList.contains('contact')) element.classList.toggle('is-made', some);
    }
    const on = new Set([
      ...view.relays.filter((r) => r.in).map((r) => r.part),
      ...view.loads.filter((l) => l.runs).map((l) => l.part),
      ...view.lamps.filter((l) => l.lit).map((l) => l.part),
    ]);
    for (const { element, of } of this.figures) element.classList.toggle('on', on.has(of));
  }

  private all(selector: string, attribute: string): Standing[] {
    return [...(this.svg?.querySelectorAll(selector) ?? [])].map((element) => ({
      element,
      of: element.getAttribute(attribute) ?? '',
    }));
  }
}

/** One way through a contact: between which terminals, `PART.TERMINAL`. */
interface Way {
  readonly element: Element;
  readonly common: string;
  readonly other: string;
}

function wayOf({ element, of }: Standing): Way {
  const part = element.closest('[data-part]')?.getAttribute('data-part') ?? '';
  const [common, other] = of.split(' ').map((terminal) => terminalKey(part, terminal));
  return { element, common: common ?? '', other: other ?? '' };
}
