import type { Study } from '../../study/study.ts';
import { mainsBoxes } from './box-contents.ts';

/** What is taken for granted where boxes are counted, for the report's list. */
export function boxFillDefaults(study: Study): string[] {
  return mainsBoxes(study).length === 0
    ? []
    : ['box fill: cable clamps inside (NEC 314.16(B)(2)), earths by the 2020 edition'];
}
