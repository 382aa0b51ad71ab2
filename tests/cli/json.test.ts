/** What `--json` prints, against the schemas that the package ships, judged by a library that knows nothing of ours. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { SCHEMAS, type SchemaName, schemaNamed } from '../../src/cli/self/schema-names.ts';
import { STAGES } from '../../src/cli/stages.ts';
import { example, exampleNames, examplePath } from '../helpers/example-plans.ts';
import { WHOLE } from '../helpers/share.ts';
import { pullin } from './fake-io.ts';

const folder = fileURLToPath(new URL('../../schemas', import.meta.url));
const known = new Map<SchemaName, ValidateFunction>();

/** The schema as shipped. Strict as to its own keywords, so that a misspelt one is no rule that nothing breaks. */
function validator(name: SchemaName): ValidateFunction {
  const validate =
    known.get(name) ??
    new Ajv2020({ strict: 'log', logger: false, allErrors: true }).compile(
      JSON.parse(readFileSync(`${folder}/${name}.schema.json`, 'utf8')),
    );
  known.set(name, validate);
  return validate;
}

async function answerTo(args: readonly string[]): Promise<unknown> {
  const { out, err } = await pullin([...args, '--json'], { stages: STAGES });
  expect(out, err).not.toBe('');
  return JSON.parse(out);
}

function holds(name: SchemaName, value: unknown, where: string): void {
  const validate = validator(name);
  if (!validate(value)) expect.fail(`${where}: ${JSON.stringify(validate.errors?.slice(0, 3))}`);
}

const gatesOf = (name: string) => [...example(name).parts.values()].filter((part) => part.kind === 'gate');

/** How each command is asked of a plan, and every how many of the examples are in the long run. */
const ASKED: readonly [command: string, each: number, args: (plan: string) => readonly string[][]][] = [
  ['check', 4, (name) => [[examplePath(name)]]],
  ['table', 3, (name) => [[examplePath(name)]]],
  [
    'read',
    4,
    (name) => {
      const { terminals } = example(name);
      const ends = [...terminals].flatMap(([part, { names }]) => names.map((t) => `${part}.${t}`));
      const [a, b] = [ends[0]!, ends.at(-1)!];
      return [[examplePath(name)], [examplePath(name), a, b], ['--dead', examplePath(name), a, b]];
    },
  ],
  ['mend', 4, (name) => [[examplePath(name)]]],
  ['wirelist', 4, (name) => [[examplePath(name)], ['--reel', '500m', examplePath(name)]]],
  ['materials', 4, (name) => [[examplePath(name)]]],
  ['meter', 20, (name) => [[examplePath(name)]]],
  ['faults', 36, (name) => [[examplePath(name)]]],
  ['hunt', 12, (name) => [[examplePath(name)], ['--saw', 'all shut: off', examplePath(name)]]],
  ['size', 36, (name) => [[examplePath(name)]]],
  ['add', 12, (name) => [['gate', 'another', '--length', '2 m', '--dry-run', examplePath(name)]]],
  [
    'remove',
    12,
    (name) =>
      gatesOf(name)
        .slice(-1)
        .map((gate) => ['gate', gate.name, '--dry-run', examplePath(name)]),
  ],
];
/** Slow ones whose own short tests hold them to their schema. */
const LONG = new Set(['faults', 'size']);
/**
 * Exit statuses with which a command has nothing to print: a circuit too involved for a table, a plan too dangerous for a
 * hunt, or a load of another name in it, a gate that the rest hangs on.
 */
const MAY_REFUSE: Readonly<Record<string, readonly number[]>> = {
  table: [3],
  hunt: [1, 2],
  add: [2],
  remove: [2],
};

const all = [...exampleNames(), ...exampleNames('wrong')];

describe.each(ASKED.filter(([command]) => WHOLE || !LONG.has(command)))(
  '%s --json',
  (command, each, args) => {
    const schema = schemaNamed(command)!;
    const plans = WHOLE ? all.filter((_, i) => i % each === 0) : ['linnet-garage'];
    it.each(plans)('of %s is as its schema says', async (name) => {
      for (const own of args(name)) {
        const { out, err, status } = await pullin([command, ...own, '--json'], { stages: STAGES });
        // What cannot be told of a plan has no answer, and the exit status says so.
        if (out !== '') holds(schema, JSON.parse(out), `${command} ${own.join(' ')}`);
        else expect(MAY_REFUSE[command], err).toContain(status);
      }
    });
  },
);

describe('the rest', () => {
  it('of explain: all, one, several', async () => {
    holds('explain', await answerTo(['explain']), 'explain');
    holds('explain', await answerTo(['explain', 'gate-on-wrong-tab']), 'explain gate-on-wrong-tab');
    holds('explain', await answerTo(['explain', 'C-UNPLUG']), 'explain C-UNPLUG');
    holds('explain', await answerTo(['explain', 'c']), 'explain c');
    expect(await answerTo(['explain'])).toEqual(
      expect.arrayContaining([expect.objectContaining({ id: 'C-UNPLUG' })]),
    );
  });

  it('of plans that cannot be read', async () => {
    const answer = (await answerTo(['check', 'no-such-plan.yaml', 'nor-this.yaml'])) as unknown[];
    expect(answer).toHaveLength(2);
    for (const one of answer) holds('report', one, 'check');
  });
});

describe('a schema', () => {
  const names = Object.keys(SCHEMAS) as SchemaName[];

  it('is shipped for every name, and no other is', () => {
    const files = readdirSync(folder).filter((file) => file.endsWith('.schema.json'));
    expect(files.sort()).toEqual(names.map((name) => `${name}.schema.json`).sort());
  });

  it('is there for every command that has --json', async () => {
    const { out } = await pullin(['--help']);
    const commands = [...out.slice(out.indexOf('Commands:')).matchAll(/^ {2}([a-z]+)/gm)].map(
      ([, name]) => name!,
    );
    for (const command of commands.filter((name) => name !== 'help')) {
      const words = ['add', 'remove'].includes(command) ? [command, 'gate'] : [command];
      const { out: help } = await pullin([...words, '--help']);
      expect([command, schemaNamed(command) !== undefined]).toEqual([command, /^ {2}--json /m.test(help)]);
    }
  });

  it.each(names.filter((name) => name !== 'plan'))(
    '%s lets no object have a field it does not name',
    (name) => {
      const open: string[] = [];
      const visit = (value: unknown, path: string) => {
        if (typeof value !== 'object' || value === null) return;
        const { type, additionalProperties } = value as { type?: unknown; additionalProperties?: unknown };
        // A map from names to something says what the something is.
        if (type === 'object' && additionalProperties !== false && typeof additionalProperties !== 'object')
          open.push(path);
        for (const [key, inner] of Object.entries(value)) visit(inner, `${path}/${key}`);
      };
      visit(JSON.parse(readFileSync(`${folder}/${name}.schema.json`, 'utf8')), '');
      expect(open).toEqual([]);
    },
  );

  it('refuses what is not its own', async () => {
    const table = (await answerTo(['table', examplePath('linnet-garage')])) as object;
    expect(validator('table')({ ...table, more: 1 })).toBe(false);
    expect(validator('table')({ ...table, rows: undefined })).toBe(false);
    expect(validator('materials')(table)).toBe(false);
  });
});

describe('pullin schema', () => {
  it.each([
    [[], 'plan'],
    [['plan'], 'plan'],
    [['check'], 'report'],
    [['remove'], 'growth'],
    [['wirelist'], 'wirelist'],
  ] as const)('%j prints the file', async (args, name) => {
    const { status, out } = await pullin(['schema', ...args]);
    expect(status).toBe(0);
    expect(out).toBe(readFileSync(`${folder}/${name}.schema.json`, 'utf8'));
  });

  it('knows no other, and says which was meant', async () => {
    expect(await pullin(['schema', 'materails'])).toMatchObject({
      status: 2,
      err: 'pullin: there is no schema called "materails"; did you mean materials?\n',
    });
    const { status, err } = await pullin(['schema', '../package.json']);
    expect(status).toBe(2);
    expect(err).toContain('there are plan, report (check), ');
  });
});
