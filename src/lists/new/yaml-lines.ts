/** Maps and lists as lines of a plan file, in the layout that a person would type. */
import { spell } from '../../edit/yaml-scalar.ts';

export type Value = string | readonly Value[] | { readonly [key: string]: Value | undefined };

/** Columns up to which a part stays on one line. */
const WIDEST = 118;
/** Words that need no look at whether YAML takes them as they are. */
const PLAIN = /^(?!null$)[a-z\d](?:[\w .%/°~+-]*[\w%])?$/i;

function scalar(text: string): string {
  return PLAIN.test(text) ? text : spell(text, true);
}

export function flow(value: Value): string {
  if (typeof value === 'string') return scalar(value);
  if (Array.isArray(value)) return `[${value.map(flow).join(', ')}]`;
  const entries = Object.entries(value).flatMap(([key, inner]) =>
    inner === undefined ? [] : [`${scalar(key)}: ${flow(inner as Value)}`],
  );
  return `{${entries.join(', ')}}`;
}

/** `key: {...}` on one line, or a key a line where it is too long. */
export function entry(key: string, value: Value, indent: string): string[] {
  const line = `${indent}${scalar(key)}: ${flow(value)}`;
  if (line.length <= WIDEST || typeof value === 'string') return [line];
  const inner = `${indent}  `;
  if (Array.isArray(value)) return [`${indent}${scalar(key)}:`, ...value.map((v) => `${inner}- ${flow(v)}`)];
  return [
    `${indent}${scalar(key)}:`,
    ...Object.entries(value).flatMap(([k, v]) => (v === undefined ? [] : entry(k, v as Value, inner))),
  ];
}
