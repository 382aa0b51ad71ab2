// Blocks of a Markdown document that are made from the code. A block stands between two markers, each on its own line:
//
//   <!-- run: pullin check examples/wrong/x.yaml | lines 1-20 -->   the command and its real output, cut to the range
//   <!-- run: pullin check examples/x.yaml | question 4 -->         what a report has under one question
//   <!-- run: pullin check --format sarif x.yaml | 12 lines from "results" -->   so many from the first that has it
//   <!-- run: node examples/x.mjs -->                               a script of the examples and its real output
//   <!-- list: findings -->                                         a table of all findings; also: cautions, parts, maps, dependencies
//   <!-- end -->
//
// Markers inside a fenced block are text, not markers.

import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { dependencies } from './dependencies.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

const START = /^<!-- (run|list): (.+) -->$/;
const END = '<!-- end -->';

/** The document with every block made anew. `pullin` runs a command; `sources` see `list`. */
export async function rebuild(text, document, pullin, sources) {
  const out = [];
  const lines = text.split('\n');
  let fence = '';
  for (let i = 0; i < lines.length; i++) {
    const line = lines[i];
    out.push(line);
    const ticks = /^ {0,3}(`{3,}|~{3,})/.exec(line)?.[1];
    if (ticks !== undefined) {
      if (fence === '') fence = ticks;
      else if (ticks.startsWith(fence)) fence = '';
      continue;
    }
    const start = fence === '' ? START.exec(line) : null;
    if (start === null) continue;
    const end = lines.indexOf(END, i + 1);
    const next = lines.findIndex((other, at) => at > i && START.test(other));
    if (end < 0 || (next >= 0 && next < end))
      throw new Error(`${document}:${i + 1}: no ${END} after this marker`);
    const [, kind, what] = start;
    try {
      out.push(...(kind === 'run' ? await output(what, pullin) : list(what, sources)), END);
    } catch (error) {
      throw new Error(`${document}:${i + 1}: ${error.message}`);
    }
    i = end;
  }
  return out.join('\n');
}

async function output(what, pullin) {
  const [command, range] = what.split(' | ').map((part) => part.trim());
  const words = [...command.matchAll(/'([^']*)'|([^'\s]+)/g)].map(([, quoted, plain]) => quoted ?? plain);
  const [program, ...args] = words;
  const isScript = program === 'node' && args.length === 1 && /^examples\/[\w-]+\.mjs$/.test(args[0]);
  if (!(isScript || program === 'pullin') || /["\\$]/.test(command))
    throw new Error(`"${command}" is no plain pullin command`);
  const { status, text } = isScript ? script(args) : await pullin(args);
  // `check` may show how a plan with typing errors is answered; any other refusal is a slip in the document.
  if (status === 2 && args[0] !== 'check') throw new Error(`${command} was refused: ${text.trim()}`);
  const shown = cut(text.replace(/\n$/, '').split('\n'), range);
  const longest = Math.max(2, ...shown.map((line) => /^`*/.exec(line)[0].length));
  const fence = '`'.repeat(longest + 1);
  return [`${fence}console`, `$ ${command}`, ...shown, fence];
}

/** What a script of the examples prints; it imports the library as built. */
function script(args) {
  return { status: 0, text: execFileSync(process.execPath, args, { cwd: root, encoding: 'utf8' }) };
}

/** Lines FROM to TO, counted from one; what is left out shows as one mark. */
function cut(lines, range) {
  if (range === undefined) return lines;
  const asked = /^question ([1-7])$/.exec(range)?.[1];
  if (asked !== undefined) return question(lines, asked);
  const [, count, text] = /^(\d+) lines from (.+)$/.exec(range) ?? [];
  if (text !== undefined) {
    const first = lines.findIndex((line) => line.includes(text));
    if (first < 0) throw new Error(`the output has no ${text}`);
    return cut(lines, `lines ${first + 1}-${first + Number(count)}`);
  }
  const [, from, to] = /^lines (\d+)-(\d+)$/.exec(range) ?? [];
  if (from === undefined)
    throw new Error(`"${range}" is no range; it reads: lines 1-20, question 4, or 9 lines from TEXT`);
  const first = Number(from);
  const last = Number(to);
  if (first < 1 || first > last || first > lines.length)
    throw new Error(`${range}: the output has ${lines.length}`);
  return [
    ...(first > 1 ? ['…'] : []),
    ...lines.slice(first - 1, last),
    ...(last < lines.length ? ['…'] : []),
  ];
}

/** What a report says under one of its questions, which stands there alone on its line; the answers come before. */
function question(lines, number) {
  const first = lines.findIndex((line) => line.startsWith(`${number}. `) && line.endsWith('?'));
  if (first < 0) throw new Error(`the output says nothing more of question ${number}`);
  const after = lines.findIndex(
    (line, i) => i > first && /^(\d\. |Not every |Starting |Taken |Cautions)/.test(line),
  );
  return ['…', ...lines.slice(first, after - 1), '…'];
}

const cell = (text) => String(text).replaceAll('|', '\\|').replace(/\s+/g, ' ');

/** What the lists are made from: `explanations` and `cautions` of the library, the JSON Schema of a plan. */
function list(what, sources) {
  const lists = { findings, cautions, parts, maps, dependencies: () => dependencies(root) };
  if (!Object.hasOwn(lists, what)) throw new Error(`there is no list of ${what}`);
  return ['', ...lists[what](sources), ''];
}

function findings({ explanations }) {
  return [
    '| finding | severity | question | what it is |',
    '|---|---|---|---|',
    ...explanations.map((e) => `| \`${e.id}\` | ${e.severity} | ${e.question} | ${cell(e.title)} |`),
  ];
}

function cautions({ cautions: all }) {
  return [
    '| caution | signal word | text | basis |',
    '|---|---|---|---|',
    ...all.map((c) => `| \`${c.id}\` | ${c.level} | ${cell(c.text)} | ${cell(c.basis)} |`),
  ];
}

/** Keys of an object of the plan schema, each with what its description says. */
function keys({ properties, required = [] }, { $defs }, left = new Set()) {
  return [
    '| key | what it says |',
    '|---|---|',
    ...Object.entries(properties)
      .filter(([key]) => !left.has(key))
      .map(([key, value]) => {
        const { description = '' } = value.$ref ? $defs[value.$ref.split('/').at(-1)] : value;
        return `| \`${key}\`${required.includes(key) ? ' (needed)' : ''} | ${cell(description)} |`;
      }),
    '',
  ];
}

/** A table for each kind of part, from the schema that editors use. */
function parts({ planSchema }) {
  const shared = new Set(['kind', 'marks', 'price', 'names']);
  const kinds = planSchema.properties.parts.additionalProperties.allOf.flatMap(({ then }) =>
    then.properties.kind?.const ? [then] : [],
  );
  return kinds.flatMap((kind) => {
    const { const: name, description } = kind.properties.kind;
    return [`### \`${name}\``, '', description, '', ...keys(kind, planSchema, shared)];
  });
}

/** A table for each of the maps that stand inside a part, and for cables, runs and intents. */
function maps({ planSchema }) {
  const { $defs, properties } = planSchema;
  const { then: linkRun, else: others } = properties.runs.items;
  const { then: alongRun, else: cableRun } = others;
  const named = [
    ['coil', 'of a relay, timer or board', $defs.coil],
    ['contact', 'of whatever switches', $defs.contact],
    ['poles', 'each entry of the list', $defs.pole],
    ['cable', 'in `stock`, or written into a run', cableRun.properties.cable.anyOf[1]],
    ['runs', 'an entry with a cable', cableRun],
    ['runs', 'a short bare jumper', linkRun],
    ['runs', 'a cable along several parts', alongRun],
    ['intent', 'of a load, relay or lamp', properties.intent.additionalProperties.anyOf[0]],
  ];
  return named.flatMap(([name, of, map]) => [`### \`${name}\`: ${of}`, '', ...keys(map, planSchema)]);
}
