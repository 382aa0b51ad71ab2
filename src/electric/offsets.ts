import type { Phasor } from './network.ts';

/**
 * Nodes tied together by ideal sources and joints: one unknown potential a group, and each member's offset from it.
 * V(a) - V(b) is exact inside a group, however stiff the source.
 */
export class Offsets {
  private readonly parent: Int32Array;
  private readonly re: Float64Array;
  private readonly im: Float64Array;

  constructor(count: number) {
    this.parent = Int32Array.from({ length: count }, (_, i) => i);
    this.re = new Float64Array(count);
    this.im = new Float64Array(count);
  }

  /** The group's node; afterwards `offset(node)` is relative to it. */
  find(node: number): number {
    let root = node;
    while (this.parent[root] !== root) root = this.parent[root]!;
    // Halfway nodes are hung on the root, last one first, so that each offset is summed once.
    const way: number[] = [];
    for (let at = node; this.parent[at] !== root && at !== root; at = this.parent[at]!) way.push(at);
    for (const at of way.reverse()) {
      const up = this.parent[at]!;
      this.re[at]! += this.re[up]!;
      this.im[at]! += this.im[up]!;
      this.parent[at] = root;
    }
    return root;
  }

  offset(node: number): Phasor {
    this.find(node);
    return { re: this.re[node]!, im: this.im[node]! };
  }

  /**
   * Ties V(a) - V(b) to a value. False when the two were tied already; `difference` then tells to what.
   */
  tie(a: number, b: number, re: number, im: number): boolean {
    const ra = this.find(a);
    const rb = this.find(b);
    if (ra === rb) return false;
    this.parent[ra] = rb;
    this.re[ra] = re + this.re[b]! - this.re[a]!;
    this.im[ra] = im + this.im[b]! - this.im[a]!;
    return true;
  }

  /** V(a) - V(b) of two nodes of one group. */
  difference(a: number, b: number): Phasor {
    const oa = this.offset(a);
    const ob = this.offset(b);
    return { re: oa.re - ob.re, im: oa.im - ob.im };
  }
}
