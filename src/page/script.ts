/** What runs in the browser: a move of a gate, and everything that follows from it. */
import type { StateView } from '../machine/state-view.ts';
import { Walk } from '../machine/walk.ts';
import type { Plan } from '../plan/plan.ts';
import { Study } from '../study/study.ts';
import { Buttons, type Moves } from './dom/buttons.ts';
import { Chips } from './dom/chips.ts';
import { byData, byId } from './dom/find.ts';
import { Linked } from './dom/linked.ts';
import { Rows } from './dom/rows.ts';
import { Sheet } from './dom/sheet.ts';
import { type PageData, unpackChanges, unpackPlan } from './unpack.ts';
import { type Said, stepWords } from './words.ts';

/** One of the plans of the page, with what shows its states. */
class Version {
  readonly walk: Walk;
  readonly rows: Rows;
  readonly sheet: Sheet;
  readonly linked: Linked;
  /** times that the power was put on again, and moves since then, that its machine has seen */
  powered = 0;
  made = 0;

  constructor(
    readonly as: 'drawn' | 'mended',
    plan: Plan,
    { arming, links, moved }: Pick<PageData['drawn'], 'arming' | 'links' | 'moved'>,
    tap: (part: string) => void,
  ) {
    this.walk = new Walk(Study.of(plan), arming);
    this.rows = new Rows(as);
    this.sheet = new Sheet(as, tap);
    this.linked = new Linked(as, this.sheet.svg, links, moved, new Set(this.walk.inputs.map((i) => i.part)));
  }
}

class Page implements Moves {
  private readonly drawn: Version;
  private readonly mended: (() => Version) | undefined;
  private current: Version;
  private readonly buttons = new Buttons(this);
  private readonly chips = new Chips((part) => this.current.linked.find(part));
  private before: StateView | undefined;
  /** where everything stood when power came on last, and after each move since: what holds itself depends on it */
  private start: readonly number[] = [];
  private moves: (readonly number[])[] = [];
  private powered = 0;

  constructor({ drawn, mended }: PageData) {
    const tap = (part: string) => this.tap(part);
    this.drawn = new Version('drawn', unpackPlan(drawn.plan), drawn, tap);
    this.current = this.drawn;
    let made: Version | undefined;
    this.mended =
      mended &&
      (() => {
        made ??= new Version('mended', unpackChanges(drawn.plan, mended.plan), mended, tap);
        return made;
      });
    for (const [as, buttons] of byData('shows', byId('answers')))
      for (const b of buttons) b.addEventListener('click', () => this.turnTo(as));
    document.addEventListener('keydown', (event) => {
      if (event.key === 'Escape') this.current.linked.clear();
    });
    this.show('Everything at rest');
  }

  toggle(input: number): void {
    const { walk } = this.current;
    const { part, kind, position } = walk.inputs[input]!;
    const isThere = walk.moved.includes(input);
    // A selector stays where it is turned to; it leaves by being turned elsewhere.
    if (kind !== 'selector' || !isThere) this.move(() => walk.toggle(input));
    const { on, off } = this.buttons.words(input);
    this.show(`${part} ${kind === 'selector' ? `at ${position}` : isThere ? off : on}`);
  }

  release(part: string): void {
    this.move(() => this.current.walk.release(part));
    this.show(`${part} at ${this.restOf(part)}`);
  }

  toRest(): void {
    this.move(() => this.current.walk.moveTo([]));
    this.show('Everything back at rest');
  }

  repower(): void {
    const { current } = this;
    current.walk.repower();
    this.start = current.walk.moved;
    this.moves = [];
    this.powered++;
    Object.assign(current, { powered: this.powered, made: 0 });
    this.before = undefined;
    this.show('Power off and on');
  }

  private move(make: () => void): void {
    make();
    this.moves.push(this.current.walk.moved);
    this.current.made = this.moves.length;
  }

  /** Shows the other plan, after the same moves. */
  private turnTo(as: string): void {
    if (as === this.current.as || this.mended === undefined) return;
    this.current.linked.clear();
    // What is not seen has no size, and frames are laid round what is drawn.
    document.body.dataset.shows = as;
    const next = as === 'mended' ? this.mended() : this.drawn;
    this.current = next;
    if (next.powered !== this.powered) {
      next.walk.moveTo(this.start);
      next.walk.repower();
      Object.assign(next, { powered: this.powered, made: 0 });
    }
    for (; next.made < this.moves.length; next.made++) next.walk.moveTo(this.moves[next.made]!);
    for (const [name, buttons] of byData('shows', byId('answers')))
      for (const b of buttons) b.setAttribute('aria-pressed', String(name === next.as));
    this.before = undefined;
    this.show(next.as === 'mended' ? 'As mended' : 'As drawn');
  }

  /** A tap in the drawing moves a gate, and turns a selector to its next position. */
  private tap(part: string): void {
    const { walk } = this.current;
    const own = walk.inputs.filter((i) => i.part === part).map((i) => i.index);
    const next = own[own.findIndex((i) => walk.moved.includes(i)) + 1];
    if (walk.inputs[own[0] ?? -1]?.kind !== 'selector') {
      if (own[0] !== undefined) this.toggle(own[0]);
    } else if (next === undefined) this.release(part);
    else this.toggle(next);
  }

  private restOf(part: string): string {
    const found = [...document.querySelectorAll<HTMLElement>('[data-rest]')].find(
      (b) => b.dataset.rest === part,
    );
    return found?.querySelector('.name')?.textContent ?? 'rest';
  }

  private show(head: string): void {
    const { walk, rows, sheet } = this.current;
    const view = walk.view();
    say(stepWords(head, this.before, view, (part) => walk.contactsTo(part)));
    this.before = view;
    const { moved, inputs } = walk;
    this.buttons.show(moved, new Set(moved.map((i) => inputs[i]!.part)));
    this.chips.show(view);
    rows.show(view, moved);
    sheet.show(view);
  }
}

function say(said: readonly Said[]): void {
  byId('said').replaceChildren(
    ...said.map(({ text, wrong }) => {
      const p = document.createElement('p');
      p.textContent = wrong ? `! ${text}` : text;
      p.className = wrong ? 'wrong' : '';
      return p;
    }),
  );
}

try {
  new Page(JSON.parse(byId('plan-data').textContent ?? '') as PageData);
} catch (error) {
  say([{ text: `This page could not work out the plan: ${String(error)}`, wrong: true }]);
}
