/** Findings and the drawing, linked both ways: a finding marks what it speaks of, and what is marked leads to its findings. */
import type { Links } from '../links.ts';
import { isOf } from './find.ts';
import { Places } from './halos.ts';
import { intoView } from './into-view.ts';

/** A finding on the page. */
interface Told {
  readonly item: HTMLElement;
  readonly button: HTMLElement | null;
}

export class Linked {
  private readonly places: Places | undefined;
  private readonly told: readonly Told[];
  /** what can be pressed in the drawing, in its order; one of them is reached by Tab, the others by the arrow keys */
  private readonly hits: SVGElement[] = [];
  private chosen: number | undefined;
  private looked: number | undefined;

  /** `inputs` are parts whose symbols already move them when they are tapped. */
  constructor(
    as: string,
    private readonly svg: SVGSVGElement | undefined,
    private readonly links: Links,
    moved: readonly string[],
    inputs: ReadonlySet<string>,
  ) {
    const items = [...document.querySelectorAll<HTMLElement>('[data-finding]')].filter((li) => isOf(as, li));
    this.told = items.map((item) => ({ item, button: item.querySelector<HTMLElement>('.show') }));
    this.told.forEach(({ button }, i) => {
      button?.addEventListener('click', () => this.choose(this.chosen === i ? undefined : i, true));
      button?.addEventListener('focus', () => button.matches(':focus-visible') && this.look(i));
      button?.addEventListener('blur', () => this.look(undefined));
    });
    if (svg === undefined) return;
    this.places = new Places(svg);
    const halos = svg.querySelector('.halos');
    for (const id of moved) halos?.append(...[this.places.band(id, 'moved')].filter((b) => b !== undefined));
    const taps = svg.querySelector('.taps');
    for (const part of inputs)
      for (const frame of this.places.frames(part, 'tap')) {
        frame.setAttribute('data-tap', part);
        taps?.append(frame);
      }
    this.addHits(svg, inputs);
  }

  /** Marks nothing any more. */
  clear(): void {
    this.looked = undefined;
    this.choose(undefined, false);
  }

  /** Scrolls the drawing to a part, and frames it. */
  find(part: string): void {
    this.clear();
    const symbols = this.places?.symbols(part) ?? [];
    const shows = (g: Element) => g.querySelector('.coil, .load') !== null || g.matches('.coil, .load');
    const symbol = symbols.find(shows) ?? symbols[0];
    this.svg?.querySelector('.halos')?.append(...(this.places?.frames(part, 'mark') ?? []));
    if (symbol !== undefined) intoView(symbol);
  }

  private choose(index: number | undefined, scrolls: boolean): void {
    this.chosen = index;
    this.told.forEach(({ item, button }, i) => {
      item.classList.toggle('chosen', i === index);
      button?.setAttribute('aria-pressed', String(i === index));
    });
    this.mark();
    const [parts, cores] = this.links.findings[index ?? -1] ?? [[], []];
    // A symbol is small; a core may run across the whole drawing.
    const symbol = parts.flatMap((part) => this.places?.symbols(part) ?? [])[0];
    const place = symbol ?? this.places?.core(cores[0] ?? '');
    if (scrolls && place !== undefined) intoView(place);
  }

  private look(index: number | undefined): void {
    this.looked = index;
    this.mark();
  }

  private mark(): void {
    const { svg, places } = this;
    for (const old of svg?.querySelectorAll('.halos > .mark') ?? []) old.remove();
    const [parts, cores] = this.links.findings[this.looked ?? this.chosen ?? -1] ?? [[], []];
    if (places === undefined) return;
    svg
      ?.querySelector('.halos')
      ?.append(
        ...cores.map((id) => places.band(id, 'mark')).filter((band) => band !== undefined),
        ...parts.flatMap((part) => places.frames(part, 'mark')),
      );
  }

  private addHits(svg: SVGSVGElement, inputs: ReadonlySet<string>): void {
    const of = new Map<string, number[]>();
    const add = (key: string, i: number) => of.set(key, [...(of.get(key) ?? []), i]);
    this.links.findings.forEach(([parts, cores], i) => {
      for (const part of parts) add(`part ${part}`, i);
      for (const id of cores) add(`core ${id}`, i);
    });
    const group = svg.querySelector('.hits');
    for (const flag of group?.querySelectorAll<SVGElement>('.flag') ?? []) {
      const part = flag.getAttribute('data-flag') ?? '';
      this.addHit(flag, part, of.get(`part ${part}`) ?? []);
    }
    for (const [id, words] of this.links.cores) {
      const band = this.places?.band(id, 'hit');
      if (band !== undefined) this.addHit(band, words, of.get(`core ${id}`) ?? []);
    }
    for (const [key, findings] of of) {
      const part = key.slice('part '.length);
      if (!key.startsWith('part ') || inputs.has(part)) continue;
      for (const frame of this.places?.frames(part, 'hit') ?? []) this.addHit(frame, part, findings);
    }
    // Below the flags, so that a flag beside a core can be hit.
    group?.prepend(...this.hits.filter((h) => !h.classList.contains('flag')));
    this.hits[0]?.setAttribute('tabindex', '0');
    group?.addEventListener('keydown', (event) => this.key(event as KeyboardEvent));
  }

  private addHit(hit: SVGElement, name: string, findings: readonly number[]): void {
    if (findings.length === 0) return;
    hit.setAttribute('role', 'button');
    hit.setAttribute('tabindex', '-1');
    hit.setAttribute('aria-label', `${name}: ${findings.map((i) => this.headOf(i)).join('; ')}`);
    hit.addEventListener('click', () => this.tell(findings));
    this.hits.push(hit);
  }

  private headOf(index: number): string {
    return this.told[index]?.item.querySelector('h3')?.textContent?.replace(/\s+\[.*$/, '') ?? '';
  }

  /** Goes to the first finding of several, and to the next where one of them is chosen already. */
  private tell(findings: readonly number[]): void {
    const next = findings[(findings.indexOf(this.chosen ?? -1) + 1) % findings.length]!;
    this.choose(next, false);
    const { item, button } = this.told[next]!;
    button?.focus({ preventScroll: true });
    intoView(item);
  }

  private key(event: KeyboardEvent): void {
    const at = this.hits.indexOf(event.target as SVGElement);
    if (at < 0) return;
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (step !== undefined) {
      const next = this.hits[(at + step + this.hits.length) % this.hits.length]!;
      this.hits[at]!.setAttribute('tabindex', '-1');
      next.setAttribute('tabindex', '0');
      next.focus();
    } else if (event.key === 'Enter' || event.key === ' ')
      this.hits[at]!.dispatchEvent(new MouseEvent('click', { bubbles: true }));
    else return;
    event.preventDefault();
  }
}
