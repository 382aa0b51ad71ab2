/** Bands and frames behind the cores and symbols of a drawing, which leave its own lines as they are. */

/** px of the drawing between a symbol and its frame */
const ROUND = 5;

/** Elements of a drawing that stand for parts and for cores. */
export class Places {
  private readonly parts = new Map<string, SVGGraphicsElement[]>();
  private readonly cores = new Map<string, SVGGraphicsElement>();

  constructor(private readonly svg: SVGSVGElement) {
    for (const g of svg.querySelectorAll<SVGGraphicsElement>('.symbols [data-part]')) {
      const part = g.getAttribute('data-part') ?? '';
      const others = this.parts.get(part) ?? [];
      // A coil within its symbol is the same place.
      if (!others.some((other) => other.contains(g))) this.parts.set(part, [...others, g]);
    }
    for (const path of svg.querySelectorAll<SVGGraphicsElement>('path[data-core]'))
      this.cores.set(path.getAttribute('data-core') ?? '', path);
  }

  symbols(part: string): readonly SVGGraphicsElement[] {
    return this.parts.get(part) ?? [];
  }

  core(id: string): SVGGraphicsElement | undefined {
    return this.cores.get(id);
  }

  /** A copy of a core's line with a class of its own. */
  band(id: string, name: string): SVGElement | undefined {
    const d = this.cores.get(id)?.getAttribute('d');
    return d == null ? undefined : this.made('path', { class: name, d });
  }

  /** A frame round each symbol of a part. */
  frames(part: string, name: string): SVGElement[] {
    return this.symbols(part).map((symbol) => {
      const box = symbol.getBBox();
      const moved = symbol.transform.baseVal.consolidate()?.matrix;
      const within = symbol.parentElement?.closest('[data-part]') as SVGGraphicsElement | null | undefined;
      const outer = within?.transform.baseVal.consolidate()?.matrix;
      return this.made('rect', {
        class: name,
        x: String(box.x + (moved?.e ?? 0) + (outer?.e ?? 0) - ROUND),
        y: String(box.y + (moved?.f ?? 0) + (outer?.f ?? 0) - ROUND),
        width: String(box.width + 2 * ROUND),
        height: String(box.height + 2 * ROUND),
      });
    });
  }

  private made(tag: string, attributes: Readonly<Record<string, string>>): SVGElement {
    const element = document.createElementNS(this.svg.namespaceURI, tag) as SVGElement;
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    return element;
  }
}
