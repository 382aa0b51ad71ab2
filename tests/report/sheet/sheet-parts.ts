/** A sheet of an example, without its meter sheet, which takes long and has tests of its own. */
import { shownState } from '../../../src/draw/current-shown.ts';
import { drawnState } from '../../../src/draw/drawn-state.ts';
import type { PaperSize } from '../../../src/draw/paper-sizes.ts';
import { toldOf } from '../../../src/findings/verdict-line.ts';
import { METHOD_WORDS } from '../../../src/lists/end-methods.ts';
import { materials } from '../../../src/lists/materials.ts';
import { wireList } from '../../../src/lists/wirelist.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { check } from '../../../src/repair/check.ts';
import type { SheetParts } from '../../../src/report/sheet/parts.ts';
import { Study } from '../../../src/study/study.ts';

export function partsOf(plan: Plan, size: PaperSize = 'a4'): SheetParts {
  const study = Study.of(plan);
  const { circuit, sides } = study;
  const wires = wireList(study, { any: [], own: new Map() });
  if ('tooLong' in wires) throw new Error('no reels were given');
  return {
    plan,
    report: check(study),
    circuit,
    sides,
    shown: shownState(circuit, { made: drawnState(study, []).made }),
    truth: study.truthTable({ all: false }),
    wires,
    methods: METHOD_WORDS,
    materials: materials(study),
    meter: {
      format: 1,
      check: toldOf(study),
      title: plan.title,
      setup: [],
      steps: [],
      detected: 0,
      detectable: 0,
      silent: [],
    },
    size,
  };
}
