/** Faults that are alike: the same mistake at parts that are wired alike. A few of each are tried with everything. */
import { kept, push } from '../../plan/map-entries.ts';
import { partOfKey, splitTerminalKey } from '../../plan/terminal-key.ts';
import type { Fault } from '../fault.ts';
import type { AlikeParts } from './alike-parts.ts';

/** Parts wired alike up to which each is a model. */
const FEW = 3;

export class AlikeFaults {
  /** numbers of the faults that are tried with everything */
  readonly models: readonly number[];
  /** numbers of the others */
  readonly others: readonly number[];
  private readonly classes = new Map<string, number[]>();
  private readonly classOf = new Map<number, string>();

  constructor(
    private readonly faults: readonly Fault[],
    tried: readonly number[],
    private readonly parts: AlikeParts,
  ) {
    const count = new Map<string, number>();
    for (const i of tried) {
      const fault = faults[i]!;
      const shape = this.shapeOf(fault);
      // Several faults of the same parts that look alike go by their order.
      const own = `${shape} ${this.partsOf(fault).join()}`;
      const nth = count.get(own) ?? 0;
      count.set(own, nth + 1);
      const name = `${shape} ${nth}`;
      this.classOf.set(i, name);
      push(this.classes, name, i);
    }
    const models = new Set<number>();
    for (const list of this.classes.values()) {
      const first = list.filter((i) => this.isModel(faults[i]!));
      for (const i of first.length > 0 ? first : list.slice(0, 1)) models.add(i);
    }
    this.models = tried.filter((i) => models.has(i));
    this.others = tried.filter((i) => !models.has(i));
    this.isOne = models;
  }
  private readonly isOne: ReadonlySet<number>;

  /** The others, those of one part together. */
  groups(): readonly (readonly number[])[] {
    const groups = new Map<string, number[]>();
    for (const i of this.others) push(groups, this.repeated(this.faults[i]!) ?? '', i);
    return [...groups.values()];
  }

  /** The models that a fault is like. */
  modelsOf(index: number): readonly number[] {
    return (this.classes.get(this.classOf.get(index)!) ?? []).filter((i) => this.isOne.has(i));
  }

  /** The models that a fault is like to the last figure of its parts and their runs. */
  twinsOf(index: number): readonly number[] {
    const figures = (i: number) =>
      kept(this.figures, i, () =>
        this.partsOf(this.faults[i]!)
          .map((p) => this.parts.figures(p))
          .join(' + '),
      );
    return this.modelsOf(index).filter((i) => figures(i) === figures(index));
  }
  private readonly figures = new Map<number, string>();

  /** Parts of two alike faults that stand for each other. */
  pairs(model: number, other: number): (readonly [string, string])[] {
    const [a, b] = [this.partsOf(this.faults[model]!), this.partsOf(this.faults[other]!)];
    return a.map((part, k) => [part, b[k]!] as const);
  }

  private partsOf({ parts, at }: Fault): string[] {
    return [...new Set([...parts, ...at.map(partOfKey)])];
  }

  /** The likelihood of the mistake, its parts, and which of their terminals it is about. */
  private shapeOf(fault: Fault): string {
    const parts = this.partsOf(fault);
    const place = (key: string) => {
      const { part, terminal } = splitTerminalKey(key);
      return `${parts.indexOf(part)}.${terminal}`;
    };
    const { change } = fault;
    const changed =
      change &&
      [...change.parted.map((p) => p.ends), ...change.joined].map((ends) => ends.map(place).join('-')).join();
    return [
      fault.rank,
      parts.map((p) => this.parts.label(p)).join(' + '),
      fault.at.map(place).join(),
      changed ?? '',
    ].join(' | ');
  }

  /** Of parts wired alike, the faults at the one in the middle. */
  private isModel(fault: Fault): boolean {
    const part = this.repeated(fault);
    if (part === undefined) return true;
    const likes = this.parts.likes(part);
    return likes[likes.length >> 1] === part;
  }

  /** The first part of a fault that many others are wired like. */
  private repeated(fault: Fault): string | undefined {
    return this.partsOf(fault).find((part) => this.parts.likes(part).length > FEW);
  }
}
