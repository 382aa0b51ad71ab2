/** The tables of the page in one state. */
import type { LoadView, RelayView, StateView } from '../../machine/state-view.ts';
import { voltsText } from '../coil-words.ts';
import { byData, byId, fill } from './find.ts';

export class Rows {
  private readonly relays = byData('relay');
  private readonly loads = byData('load');
  private readonly supplies = byData('supply');
  private readonly lamps = byData('lamp');
  private readonly wires: Map<string, HTMLElement[]>;
  private readonly truth: Map<string, HTMLElement[]>;

  /** `as` is the plan whose states are shown. */
  constructor(as: string) {
    this.wires = byData('core', byId('wires'), as);
    this.truth = byData('moved', document, as);
  }

  show(view: StateView, moved: readonly number[]): void {
    const wanted = new Map(view.loads.map((l) => [l.part, l]));
    for (const r of view.relays) for (const row of this.relays.get(r.part) ?? []) this.relay(row, r, wanted);
    for (const l of view.loads)
      for (const row of this.loads.get(l.part) ?? []) {
        fill(row, 'now', l.runs ? 'runs' : 'stands', isWrong(l));
        fill(row, 'wants', wants(l, 'to run', 'to stand'));
      }
    for (const s of view.supplies)
      for (const row of this.supplies.get(s.part) ?? [])
        fill(row, 'now', s.tripped ? 'shorted, off' : s.limited ? 'on, at its limit' : s.on ? 'on' : 'off');
    for (const l of view.lamps)
      for (const row of this.lamps.get(l.part) ?? []) fill(row, 'now', l.lit ? 'lit' : 'dark');
    for (const [core, rows] of this.wires)
      for (const row of rows) {
        if (row.classList.contains('is-live') === view.live.has(core)) continue;
        fill(row, 'live', view.live.has(core) ? 'live' : '');
        row.classList.toggle('is-live', view.live.has(core));
      }
    this.mark(view, moved);
  }

  private relay(row: HTMLElement, r: RelayView, wanted: ReadonlyMap<string, LoadView>): void {
    const meant = wanted.get(r.part);
    const wrongWay = r.volts !== null && r.volts < 0 && voltsText(r.volts) !== '0 V';
    fill(row, 'volts', r.volts === null ? '' : `${voltsText(r.volts)}${wrongWay ? ', wrong way round' : ''}`);
    fill(row, 'needs', r.needs === null ? '' : voltsText(r.needs));
    fill(row, 'now', r.in ? 'in' : 'out', meant !== undefined && isWrong(meant));
    fill(row, 'wants', meant === undefined ? '' : wants(meant, 'in', 'out'));
  }

  /** Marks the row of the truth table that has these inputs moved, alone or among the states it stands for; what is held from before may differ from it. */
  private mark(view: StateView, moved: readonly number[]): void {
    const now = moved.join();
    for (const [key, rows] of this.truth)
      for (const row of rows) {
        const here = key.split(';').includes(now);
        if (!here && !row.classList.contains('is-here')) continue;
        row.classList.toggle('is-here', here);
        if (here) row.setAttribute('aria-current', 'true');
        else row.removeAttribute('aria-current');
        fill(row, 'here', !here ? '' : this.fits(view, row) ? 'now' : 'now, with what is held from before');
      }
  }

  private fits(view: StateView, row: HTMLElement): boolean {
    const cells = byData('column', row);
    const shows = (part: string, word: string) =>
      [word, 'chatters'].includes(cells.get(part)?.[0]?.textContent ?? '');
    const names = new Set(view.relays.map((r) => r.part));
    return (
      view.relays.every((r) => shows(r.part, r.in ? 'in' : 'out')) &&
      view.loads.every((l) => names.has(l.part) || shows(l.part, l.runs ? 'runs' : 'off'))
    );
  }
}

const isWrong = (l: LoadView) => l.wanted !== null && l.wanted !== l.runs;

function wants(l: LoadView, yes: string, no: string): string {
  return l.wanted === null ? 'either' : l.wanted ? yes : no;
}
