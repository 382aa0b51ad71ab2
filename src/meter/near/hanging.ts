/**
 * What of a network hangs at one net alone. With no supply and no probe in it no current comes by there, whatever else it
 * holds: ends, coils with what lies across them, whole zones whose gates are shut. Found by depth-first search
 * (Hopcroft and Tarjan, Algorithm 447, Communications of the ACM 16, 1973), from the nets that matter outwards.
 */

/** A network as lists of whatever lies between two nets, numbered through. */
export interface Links {
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** numbers of those at each net, one list after the other, and where each list begins */
  readonly at: Int32Array;
  readonly first: Int32Array;
}

export class Hanging {
  /** 1 for what is cut off or open */
  readonly gone: Uint8Array;
  /** what is still there at each net */
  readonly degree: Int32Array;
  /** the net that one which was cut off hung on, else itself */
  private readonly hangsOn: Int32Array;
  /** when the net was met, counted on from search to search, and the least such number that is reached from beyond it */
  private readonly met: Int32Array;
  private readonly low: Int32Array;
  /** nets beyond it, itself with them, and whether any of these matters */
  private readonly size: Int32Array;
  private readonly has: Uint8Array;
  private readonly before: Int32Array;
  /** the link by which it was met */
  private readonly via: Int32Array;
  private readonly next: Int32Array;
  private readonly order: Int32Array;
  private count = 0;

  /** `kept` has 1 for each net that matters. */
  constructor(
    private readonly links: Links,
    readonly kept: Uint8Array,
  ) {
    const { from, first } = links;
    const nets = kept.length;
    const list = () => new Int32Array(nets);
    this.gone = new Uint8Array(from.length);
    this.hangsOn = Int32Array.from({ length: nets }, (_, n) => n);
    this.degree = Int32Array.from({ length: nets }, (_, n) => first[n + 1]! - first[n]!);
    this.met = list();
    this.low = list();
    this.size = list();
    this.has = new Uint8Array(nets);
    this.before = list();
    this.via = list();
    this.next = list();
    this.order = list();
  }

  drop(i: number): void {
    if (this.gone[i] === 1) return;
    const { from, to } = this.links;
    this.gone[i] = 1;
    this.degree[from[i]!]!--;
    this.degree[to[i]!]!--;
  }

  /** Cuts off whatever hangs at one net and has no net that matters. */
  cutOff(): void {
    const { kept, degree, met } = this;
    const start = this.count;
    for (let n = 0; n < kept.length; n++) if (kept[n] === 1 && met[n]! <= start) this.search(n, start);
    for (let n = 0; n < kept.length; n++) if (degree[n]! > 0 && met[n]! <= start) this.search(n, start);
    for (let k = 0; k < this.count - start; ) k += this.cutAt(k);
  }

  /** Cuts off what is met from the k-th net on, where that hangs; how many nets to go on by. */
  private cutAt(k: number): number {
    const v = this.order[k]!;
    const on = this.before[v]!;
    if (on < 0 || this.has[v] === 1 || this.low[v]! < this.met[on]!) return 1;
    const { at, first } = this.links;
    for (let j = k; j < k + this.size[v]!; j++) {
      const n = this.order[j]!;
      this.hangsOn[n] = on;
      for (let i = first[n]!; i < first[n + 1]!; i++) this.drop(at[i]!);
    }
    return this.size[v]!;
  }

  private search(root: number, start: number): void {
    const { from, to, at, first } = this.links;
    const { gone, met, low, via, next } = this;
    this.meet(root, -1, -1, start);
    for (let n = root; ; ) {
      if (next[n]! === first[n + 1]!) {
        const on = this.before[n]!;
        if (on < 0) return;
        if (low[n]! < low[on]!) low[on] = low[n]!;
        this.has[on]! |= this.has[n]!;
        this.size[on]! += this.size[n]!;
        n = on;
        continue;
      }
      const i = at[next[n]!++]!;
      if (gone[i] === 1 || i === via[n]) continue;
      const m = from[i] === n ? to[i]! : from[i]!;
      if (met[m]! <= start) {
        this.meet(m, n, i, start);
        n = m;
      } else if (met[m]! < low[n]!) low[n] = met[m]!;
    }
  }

  private meet(n: number, from: number, via: number, start: number): void {
    this.order[this.count - start] = n;
    this.met[n] = ++this.count;
    this.low[n] = this.count;
    this.size[n] = 1;
    this.has[n] = this.kept[n]!;
    this.before[n] = from;
    this.via[n] = via;
    this.next[n] = this.links.first[n]!;
  }

  /** The net that one hangs on in the end, itself where it was not cut off. */
  end(net: number): number {
    let n = net;
    while (this.hangsOn[n] !== n) n = this.hangsOn[n]!;
    return n;
  }

  /** Whether current may come by a net at all. */
  matters(net: number): boolean {
    return this.degree[net]! > 0 || this.kept[net] === 1;
  }

  /**
   * Whether current may come otherwise where some links are taken out and others put in between two nets each: not while
   * those taken out hung, and those put in join nothing that matters to anything else that does.
   */
  changes(out: readonly number[], into: readonly (readonly [number, number])[]): boolean {
    for (const i of out) if (this.gone[i] === 0) return true;
    const loose = out.flatMap((i) => this.beyond(i) ?? []);
    const groups: number[][] = [];
    for (const [a, b] of into) {
      const ends = [this.endWithout(loose, a), this.endWithout(loose, b)];
      const [first, ...more] = groups.filter((group) => ends.some((n) => group.includes(n)));
      if (first === undefined) groups.push(ends);
      else first.push(...ends, ...more.flatMap((group) => group.splice(0)));
    }
    const live = (n: number) => n >= 0 && this.matters(n);
    return groups.some((group) => {
      const one = group.find(live);
      return group.some((n) => n !== one && live(n));
    });
  }

  /** The net beyond a link that hung and has no way round; undefined for another. */
  private beyond(i: number): number | undefined {
    const { from, to } = this.links;
    const v = [from[i]!, to[i]!].find((n) => this.via[n] === i);
    return v !== undefined && this.low[v]! > this.met[this.before[v]!]! ? v : undefined;
  }

  /** Where a net hangs in the end were everything beyond some nets loose; below 0 for a number of a loose piece. */
  private endWithout(loose: readonly number[], net: number): number {
    const { met, size, hangsOn } = this;
    for (let n = net; ; n = hangsOn[n]!) {
      let top = -1;
      for (const v of loose) {
        const within = met[n]! >= met[v]! && met[n]! < met[v]! + size[v]!;
        if (within && (top < 0 || size[v]! < size[top]!)) top = v;
      }
      if (top >= 0) return -1 - top;
      if (hangsOn[n] === n) return n;
    }
  }
}
