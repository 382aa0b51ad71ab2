/** Checks that are still made several at a time. */
import { perStudy } from '../study/per-study.ts';
import type { Study } from '../study/study.ts';
import { checkApart } from './apart/apart.ts';
import { checkSharing } from './apart/shared-boxes.ts';
import type { Check, FindingEntry } from './entry.ts';
import { checkBoxFill } from './mains/box-fill.ts';
import { checkBranch } from './mains/branch.ts';
import { checkCords } from './mains/cords.ts';
import { checkMains } from './mains/mains.ts';
import type { Finding } from './report-model.ts';
import { checkBreaks } from './starts/breaks.ts';
import { checkStarts } from './starts/starts.ts';
import { checkWiring } from './starts/wiring.ts';
import { findWrongTabs } from './starts/wrong-tab.ts';

const GROUPS: readonly ((s: Study) => readonly Finding[])[] = [
  (s) => checkApart(s),
  (s) => checkSharing(s),
  (s) => findWrongTabs(s),
  (s) => checkStarts(s),
  (s) => checkBreaks(s),
  (s) => checkWiring(s),
  (s) => checkMains(s),
  (s) => checkBranch(s),
  (s) => checkBoxFill(s),
  (s) => checkCords(s, s.electrics),
];

const all = perStudy((s) => GROUPS.flatMap((group) => group(s)));

export function grouped(entry: FindingEntry): Check {
  return { entry, find: (s) => all(s).filter((f) => f.id === entry.id) };
}
