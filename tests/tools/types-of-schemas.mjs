// Writes the types of what `--json` prints from the zod schemas that describe it, each with its description as its comment.
// The schemas stay the one place where a report is described, and no type of zod's stands in what others import.
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { FILES } from './type-files.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Lists of words that have a name of their own. */
async function wordLists() {
  const { FINDING_IDS } = await import('../../src/findings/finding-ids.ts');
  const { ANSWERS, LEVELS, SEVERITIES, VERDICTS } = await import('../../src/findings/report-words.ts');
  const { END_METHODS } = await import('../../src/lists/end-methods.ts');
  const words = 'src/findings/report-words.ts';
  const lists = [
    [FINDING_IDS, { from: 'src/findings/finding-ids.ts', name: 'FindingId' }],
    [SEVERITIES, { from: words, name: 'Severity' }],
    [LEVELS, { from: words, name: 'Level' }],
    [ANSWERS, { from: words, name: 'Answer' }],
    [VERDICTS, { from: words, name: 'Verdict' }],
    [END_METHODS, { from: 'src/lists/end-methods.ts', name: 'EndMethod' }],
  ];
  return new Map(lists.map(([list, type]) => [list.join('\n'), type]));
}

const comment = (text) => (text === undefined ? '' : `/** ${text.replaceAll('*/', '* /')} */\n`);

/** Writes one schema as a type; `known` has the types that stand by name, by the definition of their schema. */
class Writer {
  imports = new Map();

  constructor(known, words) {
    this.known = known;
    this.words = words;
  }

  /** The name of a type, imported where it stands in another file. */
  named({ from, name }) {
    if (from !== undefined) this.imports.set(name, from);
    return name;
  }

  type(schema) {
    const known = this.known.get(schema._zod.def);
    return known === undefined ? this.whole(schema) : this.named(known);
  }

  /** The type itself, even where it has a name. */
  whole(schema) {
    const { def } = schema._zod;
    const write = Writer.WRITE[def.type];
    if (write === undefined) throw new Error(`no type is known for a schema of ${def.type}`);
    return write.call(this, def);
  }

  static WRITE = {
    string: () => 'string',
    number: () => 'number',
    boolean: () => 'boolean',
    literal: ({ values }) => values.map((v) => JSON.stringify(v)).join(' | '),
    enum({ entries }) {
      const list = this.words.get(Object.values(entries).join('\n'));
      return list === undefined
        ? Object.values(entries)
            .map((v) => JSON.stringify(v))
            .join(' | ')
        : this.named(list);
    },
    array({ element }) {
      const type = this.type(element);
      return `readonly ${/^\w+$/.test(type) ? type : `(${type})`}[]`;
    },
    nullable({ innerType }) {
      return `${this.type(innerType)} | null`;
    },
    union({ options }) {
      return options.map((o) => `\n${comment(o.description)}| ${this.type(o)}`).join('');
    },
    record({ valueType }) {
      return `Readonly<Record<string, ${this.type(valueType)}>>`;
    },
    tuple({ items }) {
      return `readonly [${items.map((item) => this.type(item)).join(', ')}]`;
    },
    object({ shape }) {
      return this.fields(Object.entries(shape));
    },
  };

  fields(entries) {
    return `{\n${entries.map(([key, schema]) => this.field(key, schema)).join('\n')}\n}`;
  }

  /** The fields of a schema that has all those of `base`, without them. */
  beyond(base, schema) {
    const inherited = base._zod.def.shape;
    const { shape } = schema._zod.def;
    const other = Object.keys(inherited).filter((key) => inherited[key] !== shape[key]);
    if (other.length > 0) throw new Error(`not as in the schema that it is to have all fields of: ${other}`);
    return this.fields(Object.entries(shape).filter(([key]) => !(key in inherited)));
  }

  field(key, schema) {
    const { def, traits } = schema._zod;
    const left = def.type === 'optional';
    const orNothing = traits.has('$ZodExactOptional') ? '' : ' | undefined';
    const type = left ? `${this.type(def.innerType)}${orNothing}` : this.type(schema);
    return `${comment(schema.description)}readonly ${key}${left ? '?' : ''}: ${type};`;
  }
}

function declared(writer, name, schema, base) {
  if (base !== undefined)
    return `interface ${name} extends ${writer.type(base)} ${writer.beyond(base, schema)}`;
  const text = writer.whole(schema);
  return schema._zod.def.type === 'object' ? `interface ${name} ${text}` : `type ${name} = ${text};`;
}

function relative(from, to) {
  const [here, there] = [from.split('/').slice(0, -1), to.split('/')];
  while (here[0] === there[0]) {
    here.shift();
    there.shift();
  }
  return here.length === 0 ? `./${there.join('/')}` : `${'../'.repeat(here.length)}${there.join('/')}`;
}

function formatted(text, file) {
  const biome = `${root}node_modules/@biomejs/biome/bin/biome`;
  return execFileSync(process.execPath, [biome, 'check', '--write', `--stdin-file-path=${file}`], {
    cwd: root,
    input: text,
    encoding: 'utf8',
    stdio: ['pipe', 'pipe', 'ignore'],
  });
}

/** Every file of types by its path, as it ought to stand. */
export async function typeFiles() {
  await import('./typescript-loader.mjs');
  const words = await wordLists();
  const shared = {
    ...(await import('../../src/findings/report-schema.ts')),
    ...(await import('../../src/findings/changes-schema.ts')),
    ...(await import('../../src/lists/length-schema.ts')),
  };
  const files = new Map();
  for (const [file, { about, schemas, names, elsewhere, fieldsOf = {} }] of Object.entries(FILES)) {
    const all = { ...shared, ...(await import(`../../${schemas}`)) };
    const known = new Map([
      ...Object.entries(elsewhere).map(([key, type]) => [all[key]._zod.def, type]),
      ...Object.entries(names).map(([key, name]) => [all[key]._zod.def, { name }]),
    ]);
    const writer = new Writer(known, words);
    const types = Object.entries(names).map(([key, name]) => {
      const schema = all[key];
      return `${comment(schema.description)}export ${declared(writer, name, schema, all[fieldsOf[key]])}`;
    });
    const imports = [...writer.imports].map(
      ([name, from]) => `import type { ${name} } from '${relative(file, from)}';`,
    );
    const head = `/**\n * ${about}\n * Made from \`${schemas.split('/').at(-1)}\` by \`npm run generate\`; changes go there.\n */`;
    files.set(file, formatted([head, ...imports, '', types.join('\n\n'), ''].join('\n'), file));
  }
  return files;
}
