/** A plan as YAML text: in brackets or lines, sometimes with anchors, tags, merge keys and line endings nobody uses. */
import type { Dice } from './dice.ts';
import { isMap, type Node } from './grammar.ts';

const PLAIN = /^[A-Za-z0-9][\w.+~/%° -]*$/;

/** Chances of what is seldom written. */
interface Oddness {
  readonly quotes: number;
  readonly anchors: number;
  readonly tags: number;
}

class Writer {
  readonly #anchors: string[] = [];

  constructor(
    private readonly dice: Dice,
    private readonly odd: Oddness,
  ) {}

  scalar(value: string | number | boolean | null): string {
    if (value === null) return this.dice.of(['null', '~', '']);
    if (typeof value !== 'string') return String(value);
    if (PLAIN.test(value) && !value.endsWith(' ') && !this.dice.chance(this.odd.quotes)) return value;
    return JSON.stringify(value);
  }

  /** Something before a value: a tag or an anchor. */
  #before(): string {
    let before = '';
    if (this.dice.chance(this.odd.tags))
      before += `${this.dice.of(['!!str', '!!map', '!!int', '!x', '!!binary', '!<tag:x>', '!!set'])} `;
    if (this.dice.chance(this.odd.anchors)) {
      const name = `a${this.#anchors.length % 7}`;
      this.#anchors.push(name);
      before += `&${name} `;
    }
    return before;
  }

  flow(node: Node): string {
    if (this.#anchors.length > 0 && this.dice.chance(this.odd.anchors))
      return `*${this.dice.of(this.#anchors)} `;
    const before = this.#before();
    if (Array.isArray(node)) return `${before}[${node.map((n) => this.flow(n)).join(', ')}]`;
    if (isMap(node))
      return `${before}{${node.pairs.map(([k, v]) => `${this.scalar(k)}: ${this.flow(v)}`).join(', ')}}`;
    return `${before}${this.scalar(node)}`;
  }

  /** Behind a key or a dash. */
  block(node: Node, indent: string, depth: number): string {
    if (depth > 1 && this.dice.chance(0.6)) return ` ${this.flow(node)}\n`;
    const step = `${indent}  `;
    const before = this.#before();
    if (isMap(node) && node.pairs.length > 0) {
      const merge =
        this.#anchors.length > 0 && this.dice.chance(this.odd.anchors)
          ? `${step}<<: *${this.dice.of(this.#anchors)}\n`
          : '';
      return ` ${before}\n${merge}${node.pairs.map(([k, v]) => `${step}${this.scalar(k)}:${this.block(v, step, depth + 1)}`).join('')}`;
    }
    if (Array.isArray(node) && node.length > 0)
      return ` ${before}\n${node.map((v) => `${step}-${this.block(v, step, depth + 1)}`).join('')}`;
    return ` ${before}${this.flow(node)}\n`;
  }
}

/** The text of a plan; nothing of it need be readable. */
export function yamlText(node: Node, dice: Dice): string {
  const plain = dice.chance(0.9);
  const odd = plain
    ? { quotes: 0.05, anchors: 0, tags: 0 }
    : { quotes: 0.4, anchors: dice.of([0, 0.03, 0.2]), tags: dice.of([0, 0, 0.05]) };
  const writer = new Writer(dice, odd);
  let text = isMap(node)
    ? node.pairs.map(([k, v]) => `${writer.scalar(k)}:${writer.block(v, '', 0)}`).join('')
    : writer.block(node, '', 0);
  if (plain) return text;
  if (dice.chance(0.1)) text = text.replaceAll('\n', '\r\n');
  if (dice.chance(0.05)) text = text.replaceAll('\n', '\r');
  if (dice.chance(0.1)) text = `\ufeff${text}`;
  if (dice.chance(0.05)) text = `${text}---\n${text}`;
  if (dice.chance(0.05)) text = `%YAML 1.1\n---\n${text}...\n`;
  if (dice.chance(0.05)) text = text.replaceAll('  ', '\t');
  return text;
}
