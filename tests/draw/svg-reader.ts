/** A strict reader of SVG fragments for tests: it takes nothing that an XML parser would refuse. */
import type { Box, Point } from '../../src/draw/drawing.ts';

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

const TOKEN = /<\/([a-z]+)>|<([a-z]+)((?: [a-z-]+="[^"<]*")*)(\/?)>|([^<>]+)/y;
const ENTITY = /&(amp|lt|gt|quot|#39);/g;
const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

function decoded(text: string): string {
  if (text.replace(ENTITY, '').includes('&')) throw new Error(`a bare & in ${text}`);
  return text.replace(ENTITY, (_, name: string) => ENTITIES[name] ?? '');
}

/** The elements of a fragment under a root of no name. Throws at the first thing that is not well formed. */
export function readSvg(source: string): Element {
  const root: Element = { name: '', attributes: {}, children: [], text: '' };
  const open = [root];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < source.length) {
    const at = TOKEN.lastIndex;
    const token = TOKEN.exec(source);
    if (token === null) throw new Error(`not well formed: ${source.slice(at, at + 60)}`);
    const [, closed, name, typed = '', empty, text] = token;
    const top = open.at(-1)!;
    if (text !== undefined) top.text += decoded(text);
    else if (closed !== undefined) {
      if (open.length === 1 || top.name !== closed) throw new Error(`</${closed}> closes ${top.name}`);
      open.pop();
    } else if (name !== undefined) {
      const pairs = [...typed.matchAll(/ ([a-z-]+)="([^"]*)"/g)].map((m) => [m[1]!, decoded(m[2]!)] as const);
      if (new Set(pairs.map(([key]) => key)).size < pairs.length) throw new Error(`twice: ${typed}`);
      const element = { name, attributes: Object.fromEntries(pairs), children: [], text: '' };
      top.children.push(element);
      if (empty !== '/') open.push(element);
    }
  }
  if (open.length > 1) throw new Error(`${open.at(-1)!.name} is never closed`);
  return root;
}

/** An element and all below it. */
export function all(element: Element): Element[] {
  return [element, ...element.children.flatMap(all)];
}

export function ofClass(element: Element, name: string): Element[] {
  return all(element).filter((e) => e.attributes.class === name);
}

/** Points of a path's absolute M, L and Q. */
export function pathPoints(d: string): Point[] {
  if (!/^M[-\d. LQ]+Z?$/.test(d)) throw new Error(`unknown path ${d}`);
  const numbers = (d.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
  if (numbers.length % 2 === 1) throw new Error(`odd path ${d}`);
  return Array.from({ length: numbers.length / 2 }, (_, i) => ({
    x: numbers[2 * i]!,
    y: numbers[2 * i + 1]!,
  }));
}

/** Corners of what an element draws, without the width of its stroke. */
export function extent({ name, attributes }: Element): Point[] {
  const n = (key: string) => Number(attributes[key]);
  const corners = ({ x, y, width, height }: Box) => [
    { x, y },
    { x: x + width, y: y + height },
  ];
  switch (name) {
    case '':
    case 'g':
      return [];
    case 'path':
      return pathPoints(attributes.d ?? '');
    case 'circle':
      return corners({ x: n('cx') - n('r'), y: n('cy') - n('r'), width: 2 * n('r'), height: 2 * n('r') });
    case 'rect':
      return corners({ x: n('x'), y: n('y'), width: n('width'), height: n('height') });
    case 'text': {
      // Nothing below the base line; seven tenths of the size above it.
      const size = n('font-size');
      return corners({ x: n('x'), y: n('y') - size * 0.7, width: 0, height: size * 0.7 });
    }
    default:
      throw new Error(`no ${name} is drawn`);
  }
}
