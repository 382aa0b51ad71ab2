/** Reading the runs: their cables, and the terminals each core joins. */

import { runText } from '../text/run-names.ts';
import { expandRuns, type RunEntry } from './along.ts';
import { buildCable, cableSchema } from './cable.ts';
import { type Errors, quoted, type Span } from './errors.ts';
import type { Written } from './feeds.ts';
import { addIssues, found, type Subject } from './issues.ts';
import { unitTyped } from './length-unit.ts';
import { readMarks } from './marks.ts';
import { type Named, type PartReader, shown, some } from './parts.ts';
import type { Cable, Core, Run, TerminalRef } from './plan.ts';
import type { Repeats } from './repeats.ts';
import { runSchema } from './schema.ts';
import { splitTerminalKey } from './terminal-key.ts';
import { terminalHint } from './terminal-words.ts';
import type { Terminals } from './terminals.ts';
import { isTreeMap, type Spots, type Tree, type TreeList, type TreeMap } from './tree.ts';
import { withoutUndefined } from './without-undefined.ts';

/** Longest bare jumper, m. */
const LONGEST_LINK = 0.2;
const NOT_OF_LINKS: ReadonlySet<string> = new Set(['cable', 'cores', 'slack', 'marked-as']);

interface End extends Written {
  readonly written: string;
  /** where the part is named, and where the terminal is: two places in a run along parts */
  readonly at: Span;
  readonly mark: Span;
}
interface RawCore {
  readonly colour: string;
  readonly marked: string | undefined;
  readonly at: Span;
  readonly ends: readonly [End, End];
}
interface RawRun {
  readonly run: Omit<Run, 'cores'>;
  readonly cores: readonly RawCore[];
}

export class RunReader {
  readonly #errors: Errors;
  readonly #spots: Spots;
  readonly #named: Named;
  readonly #parts: PartReader;
  readonly #cables = new Map<TreeMap, Cable | undefined>();
  readonly #runs: RawRun[] = [];
  /** places of terminals that were told to be wrong: a run along parts has one for all of its pieces */
  readonly #wrong = new Set<number>();

  constructor(errors: Errors, spots: Spots, named: Named, parts: PartReader) {
    this.#errors = errors;
    this.#spots = spots;
    this.#named = named;
    this.#parts = parts;
  }

  /** First pass: shapes, cables and part names; terminals wait until the feeds are known. */
  read(list: TreeList, repeats: Repeats): void {
    const context = { errors: this.#errors, spots: this.#spots, groups: this.#named.groups, repeats };
    const entries = expandRuns(list, context);
    if (repeats.full) return;
    for (const entry of entries) {
      const { tree, at } = entry;
      const subject = { name: runText(entry), at, what: 'a run' };
      if (isTreeMap(tree)) this.#run(tree, entry, subject);
      else
        this.#errors.add(
          at,
          `found ${found(tree)}, expected a map such as {cable: bell, length: 2 m, cores: {...}}`,
          subject.name,
        );
    }
  }

  /** The terminals as typed, of both ends of every core. */
  joins(): (readonly [Written, Written])[] {
    return this.#runs.flatMap((run) => run.cores.map((core) => core.ends));
  }

  #run(tree: TreeMap, { entry, piece, pieces, wrong = [] }: RunEntry, subject: Subject): void {
    const schema = runSchema();
    const result = schema.safeParse(tree);
    if (!result.success) addIssues(this.#errors, this.#spots, tree, schema, result.error.issues, subject);
    const fields = result.success ? result.data : {};
    const link = 'link' in tree;
    const places = this.#spots.of(tree);
    let cable: Cable | undefined;
    const cores: RawCore[] = [];
    if (link) {
      for (const [key, spot] of places) {
        if (!NOT_OF_LINKS.has(key)) continue;
        this.#errors.add(
          spot.key,
          `${key}: not with link, which is a bare jumper; leave one of them out`,
          subject.name,
        );
      }
      if (fields.length !== undefined && fields.length > LONGEST_LINK + 1e-9) {
        this.#errors.add(
          places.get('length')!.value,
          'length: a link is up to 20 cm (7.5 in); use a cable for more',
          subject.name,
        );
      }
      const spot = places.get('link')!;
      const core = this.#core('link', spot.key, tree.link!, subject, spot.value);
      if (core !== undefined) cores.push(core);
    } else {
      for (const key of ['cable', 'length', 'cores']) {
        const other = piece === undefined ? ', or is {link: [A, B]}' : key === 'length' ? ' or lengths' : '';
        if (!(key in tree || wrong.includes(key)))
          this.#errors.add(subject.at, `a run needs ${key}${other}`, subject.name);
      }
      if (places.has('cable')) cable = this.#cable(tree, subject);
      if (isTreeMap(tree.cores)) cores.push(...this.#cores(tree, cable, subject, places.get('cores')!.key));
    }
    const run = withoutUndefined({
      index: this.#runs.length,
      entry,
      piece,
      pieces,
      at: this.#errors.source.position(subject.at[0]),
      name: fields.name,
      cable,
      length: fields.length,
      unit: fields.length === undefined ? undefined : unitTyped(String(tree.length)),
      route: fields.route,
      slack: fields.slack,
      link,
    });
    this.#runs.push({ run, cores });
  }

  #cores(tree: TreeMap, cable: Cable | undefined, subject: Subject, at: Span): RawCore[] {
    const cores: RawCore[] = [];
    const map = tree.cores as TreeMap;
    const marks = readMarks(this.#errors, this.#spots, tree, subject);
    const places = this.#spots.of(map);
    for (const [colour, spot] of places) {
      if (
        colour === '' ||
        colour.length > 40 ||
        colour !== colour.trim() ||
        quoted(colour) !== `"${colour}"`
      ) {
        this.#errors.add(
          spot.key,
          `cores: found the colour ${quoted(colour)}, expected a plain name of at most 40 characters`,
          subject.name,
        );
      }
      const core = this.#core(`cores.${colour}`, spot.key, map[colour]!, subject, spot.value);
      if (core !== undefined) cores.push({ ...core, marked: marks.get(colour) });
    }
    if (places.size === 0)
      this.#errors.add(at, 'cores: found none, expected a colour and its two terminals', subject.name);
    if (cable !== undefined && places.size > cable.cores) {
      const extra = [...places.values()][cable.cores]!;
      const name = cable.stock === undefined ? 'its cable' : `the cable ${shown(cable.stock)}`;
      this.#errors.add(
        extra.key,
        `cores: found ${places.size} cores, but ${name} has ${cable.cores}`,
        subject.name,
      );
    }
    return cores;
  }

  #core(path: string, at: Span, tree: Tree, subject: Subject, value: Span): RawCore | undefined {
    // What is no list of texts was reported by the schema.
    if (!Array.isArray(tree) || tree.some((item) => typeof item !== 'string')) return undefined;
    if (tree.length !== 2) {
      this.#errors.add(
        value,
        `${path}: found ${tree.length} terminals, expected two, such as [PS1.+, K1.A1]`,
        subject.name,
      );
      return undefined;
    }
    const spots = this.#spots.of(tree);
    const ends = (tree as string[]).map((written, index) => ({
      written,
      at: spots.get(`${index}`)!.value,
      mark: spots.get(`${index}`)!.key,
      ...splitTerminalKey(written),
    }));
    return { colour: path.replace(/^cores\./, ''), marked: undefined, at, ends: [ends[0]!, ends[1]!] };
  }

  #cable(tree: TreeMap, subject: Subject): Cable | undefined {
    const value = tree.cable!;
    const at = this.#spots.of(tree).get('cable')!.value;
    if (typeof value === 'string') {
      const stock = this.#named.stock.get(value);
      if (stock !== undefined && stock.kind === 'cable')
        return this.#spec(stock, { ...subject, name: `stock ${shown(value)}` }, value);
      if (stock !== undefined) {
        this.#errors.add(at, `cable: the stock item ${shown(value)} is no cable (kind: cable)`, subject.name);
        return undefined;
      }
      if (this.#errors.crowded) {
        this.#errors.add(at, `cable: found ${quoted(value)}, expected a cable of the stock`, subject.name);
        return undefined;
      }
      const cables = [...this.#named.stock].filter(([, item]) => item.kind === 'cable').map(([name]) => name);
      const list = cables.length === 0 ? 'stock has no cable' : `stock has the cables ${some(cables)}`;
      this.#errors.add(
        at,
        `cable: found ${quoted(value)}, expected a cable of the stock${this.#errors.hint(value, cables, ';')} ${list}`,
        subject.name,
      );
      return undefined;
    }
    if (!isTreeMap(value)) {
      this.#errors.add(
        at,
        `cable: found ${found(value)}, expected the name of a stock cable, or its data in a map`,
        subject.name,
      );
      return undefined;
    }
    const own = this.#parts.take(value, `${subject.name}, cable`, at, true);
    return own === undefined
      ? undefined
      : this.#spec(own, { ...subject, at, name: `${subject.name}, cable` }, undefined);
  }

  #spec(tree: TreeMap, subject: Subject, stock: string | undefined): Cable | undefined {
    if (this.#cables.has(tree)) return this.#cables.get(tree);
    const schema = cableSchema();
    const result = schema.safeParse(tree);
    const named = { ...subject, what: 'a cable' };
    if (!result.success) addIssues(this.#errors, this.#spots, tree, schema, result.error.issues, named);
    const cable = result.success ? buildCable(result.data, stock) : undefined;
    this.#cables.set(tree, cable);
    return cable;
  }

  /** Second pass: every end resolved to a canonical terminal. */
  resolve(terminals: ReadonlyMap<string, Terminals>): Run[] {
    return this.#runs.map(({ run, cores }) => {
      const resolved: Core[] = [];
      for (const core of cores) {
        const [a, b] = core.ends.map((end) => this.#end(end, terminals, run));
        if (a === undefined || b === undefined) continue;
        if (a.part === b.part && a.terminal === b.terminal) {
          this.#errors.add(
            core.ends[1].at,
            `${core.colour}: both ends are on the terminal ${shown(a.part)}${a.terminal === '' ? '' : `.${a.terminal}`}`,
            runText(run),
          );
          continue;
        }
        resolved.push({
          run: run.index,
          colour: core.colour,
          ...(core.marked !== undefined && { marked: core.marked }),
          a,
          b,
          at: this.#errors.source.position(core.at[0]),
        });
      }
      return { ...run, cores: resolved };
    });
  }

  #end(end: End, terminals: ReadonlyMap<string, Terminals>, run: RawRun['run']): TerminalRef | undefined {
    const subject = runText(run);
    const { parts, groups } = this.#named;
    if (!parts.has(end.part)) {
      const near = this.#errors.hint(end.part, parts.keys()) || `; the parts are ${some(parts.keys())}`;
      const group = groups.get(end.part);
      const text = `${run.piece === undefined ? `found ${quoted(end.written)}` : 'along'}: no part is called ${quoted(end.part)}`;
      const instead =
        group === undefined ? near : `, it stands for the parts ${some(group)}: name one of them`;
      this.#errors.add(end.at, `${text}${instead}`, subject);
      return undefined;
    }
    const own = terminals.get(end.part);
    if (own === undefined) return undefined;
    const joint = own.names[0] === '';
    const terminal = own.find(end.terminal);
    if (terminal !== undefined && joint === !end.written.includes('.')) {
      return { part: end.part, terminal, written: end.written, at: this.#errors.source.position(end.at[0]) };
    }
    if (this.#wrong.has(end.mark[0])) return undefined;
    this.#wrong.add(end.mark[0]);
    const name = shown(end.part);
    const such = `found ${quoted(end.written)}`;
    const add = (text: string): undefined => void this.#errors.add(end.mark, text, subject);
    if (joint) return add(`${such}: a joint has no terminals; write ${name} alone`);
    if (end.terminal === '') return add(`${such} without a terminal; ${name} has ${some(own.names, 24)}`);
    const near = terminalHint(this.#errors, end.terminal, own);
    return add(
      `${such}: ${name} has no terminal ${quoted(end.terminal)}${near} it has ${some(own.names, 24)}`,
    );
  }
}
