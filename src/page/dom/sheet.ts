/** The drawing of the page in one state. */
import type { StateView } from '../../machine/state-view.ts';

export class Sheet {
  private readonly svg = document.querySelector('.sheet svg');

  /** `tap` is called with the part whose symbol was tapped. */
  constructor(tap: (part: string) => void) {
    this.svg?.addEventListener('click', (event) => {
      const target = event.target instanceof Element ? event.target.closest('[data-tap]') : null;
      const part = target?.getAttribute('data-tap');
      if (part != null) tap(part);
    });
  }

  show(view: StateView): void {
    this.each('path[data-core]', 'data-core', (core) => view.live.has(core), 'live');
    this.each(
      '.way[data-way]',
      'data-way',
      (way) => {
        const [common, other] = way.split(' ');
        return view.made(common ?? '', other ?? '');
      },
      'is-made',
    );
    for (const contact of this.svg?.querySelectorAll('.contact') ?? [])
      contact.classList.toggle('is-made', contact.querySelector('.way.is-made') !== null);
    const on = new Set([
      ...view.relays.filter((r) => r.in).map((r) => r.part),
      ...view.loads.filter((l) => l.runs).map((l) => l.part),
      ...view.lamps.filter((l) => l.lit).map((l) => l.part),
    ]);
    this.each(
      '.coil[data-part], .load[data-part], .lamp[data-part]',
      'data-part',
      (part) => on.has(part),
      'on',
    );
  }

  private each(selector: string, attribute: string, is: (value: string) => boolean, name: string): void {
    for (const element of this.svg?.querySelectorAll(selector) ?? [])
      element.classList.toggle(name, is(element.getAttribute(attribute) ?? ''));
  }
}
