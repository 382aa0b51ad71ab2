/** What runs in the browser: a move of a gate, and everything that follows from it. */
import type { StateView } from '../machine/state-view.ts';
import { Walk } from '../machine/walk.ts';
import { Study } from '../study/study.ts';
import { Buttons, type Moves } from './dom/buttons.ts';
import { byId } from './dom/find.ts';
import { Rows } from './dom/rows.ts';
import { Sheet } from './dom/sheet.ts';
import { type PageData, unpackPlan } from './unpack.ts';
import { type Said, stepWords } from './words.ts';

class Page implements Moves {
  private readonly walk: Walk;
  private readonly buttons = new Buttons(this);
  private readonly rows = new Rows();
  private readonly sheet = new Sheet((part) => this.tap(part));
  private before: StateView | undefined;

  constructor({ plan, arming }: PageData) {
    this.walk = new Walk(Study.of(unpackPlan(plan)), arming);
    this.show('Everything at rest');
  }

  toggle(input: number): void {
    const { part, kind, position } = this.walk.inputs[input]!;
    const isThere = this.walk.moved.includes(input);
    // A selector stays where it is turned to; it leaves by being turned elsewhere.
    if (kind !== 'selector' || !isThere) this.walk.toggle(input);
    const { on, off } = this.buttons.words(input);
    this.show(`${part} ${kind === 'selector' ? `at ${position}` : isThere ? off : on}`);
  }

  release(part: string): void {
    this.walk.release(part);
    this.show(`${part} at ${this.restOf(part)}`);
  }

  toRest(): void {
    this.walk.moveTo([]);
    this.show('Everything back at rest');
  }

  repower(): void {
    this.walk.repower();
    this.before = undefined;
    this.show('Power off and on');
  }

  /** A tap in the drawing moves a gate, and turns a selector to its next position. */
  private tap(part: string): void {
    const own = this.walk.inputs.filter((i) => i.part === part).map((i) => i.index);
    const next = own[own.findIndex((i) => this.walk.moved.includes(i)) + 1];
    if (this.walk.inputs[own[0] ?? -1]?.kind !== 'selector') {
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
    const view = this.walk.view();
    say(stepWords(head, this.before, view, (part) => this.walk.contactsTo(part)));
    this.before = view;
    const { moved, inputs } = this.walk;
    this.buttons.show(moved, new Set(moved.map((i) => inputs[i]!.part)));
    this.rows.show(view, moved);
    this.sheet.show(view);
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
