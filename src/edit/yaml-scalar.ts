/** One word of a plan as YAML has to spell it. */
import { isScalar, isSeq, parseDocument } from 'yaml';

export type Quotes = 'none' | 'single' | 'double';

/** Every scalar stays text, as in reading a plan. */
export const YAML_OPTIONS = {
  uniqueKeys: false,
  strict: true,
  prettyErrors: false,
  schema: 'failsafe',
  merge: false,
  logLevel: 'silent',
  keepSourceTokens: true,
} as const;

/** Read as nothing when they stand without quotes. */
const NOTHING = new Set(['', '~', 'null', 'Null', 'NULL']);

/** Whether the text reads back as itself without quotes; `flow`: inside brackets. */
function plainWorks(text: string, flow: boolean): boolean {
  if (NOTHING.has(text) || /[\r\n]/.test(text)) return false;
  const document = parseDocument(flow ? `[${text}]` : `- ${text}`, YAML_OPTIONS);
  if (document.errors.length > 0 || document.warnings.length > 0) return false;
  const list: unknown = document.contents;
  if (!isSeq(list) || list.items.length !== 1) return false;
  const [item] = list.items;
  return isScalar(item) && item.type === 'PLAIN' && item.value === text && item.anchor === undefined;
}

/** The text as a scalar, in the quotes asked for, or in some where it needs them. */
export function spell(text: string, flow: boolean, quotes: Quotes = 'none'): string {
  if (quotes === 'none' && plainWorks(text, flow)) return text;
  // Only the double form has escapes.
  if (quotes === 'double' || /[^\u0020-\u007e\u00a0-\ud7ff\ue000-\ufffd]/.test(text))
    return JSON.stringify(text);
  return `'${text.replaceAll("'", "''")}'`;
}
