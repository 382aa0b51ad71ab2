/** Disjoint sets with path halving; elements are numbered in the order they are added. */
export class UnionFind {
  private readonly parent: number[] = [];

  constructor(count = 0) {
    for (let i = 0; i < count; i++) this.parent.push(i);
  }

  /** The same sets, to be joined further. */
  copy(): UnionFind {
    const copy = new UnionFind();
    for (const x of this.parent) copy.parent.push(x);
    return copy;
  }

  add(): number {
    this.parent.push(this.parent.length);
    return this.parent.length - 1;
  }

  find(x: number): number {
    let at = x;
    while (this.parent[at] !== at) {
      this.parent[at] = this.parent[this.parent[at]!]!;
      at = this.parent[at]!;
    }
    return at;
  }

  /** Joins two sets; the lower root wins, so results do not depend on call order alone. Returns true if they were apart. */
  union(x: number, y: number): boolean {
    const a = this.find(x);
    const b = this.find(y);
    if (a === b) return false;
    if (a < b) this.parent[b] = a;
    else this.parent[a] = b;
    return true;
  }

  joined(x: number, y: number): boolean {
    return this.find(x) === this.find(y);
  }
}
