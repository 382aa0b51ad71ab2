/**
 * The schemas that the package carries, by name, each with the commands whose `--json` it describes. This folder knows what
 * the command tells of itself - shapes, completion, manual - and must not know a plan.
 */
export const SCHEMAS = {
  plan: [],
  report: ['check'],
  table: ['table'],
  read: ['read'],
  mend: ['mend'],
  growth: ['add', 'remove'],
  meter: ['meter'],
  faults: ['faults'],
  hunt: ['hunt'],
  wirelist: ['wirelist'],
  materials: ['materials'],
  size: ['size'],
  explain: ['explain'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type SchemaName = keyof typeof SCHEMAS;

const NAMES = Object.keys(SCHEMAS) as SchemaName[];

/** Every word that `schema` takes: the names, and the commands where they are called otherwise. */
export const SCHEMA_WORDS: readonly string[] = [
  ...new Set(NAMES.flatMap((name) => [name as string, ...SCHEMAS[name]])),
];

/** The schema of that name, or of that command. */
export function schemaNamed(word: string): SchemaName | undefined {
  return NAMES.find((name) => name === word || SCHEMAS[name].some((command) => command === word));
}
