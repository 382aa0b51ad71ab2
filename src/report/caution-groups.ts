/** Cautions as every form has them: in two groups for a page, by signal word for a report. */
import { isStanding } from '../findings/cautions/choose.ts';
import type { Caution } from '../findings/report-model.ts';
import { LEVELS, type Level } from '../findings/report-words.ts';

interface CautionGroup {
  readonly title: string;
  readonly cautions: readonly Caution[];
}

/** Those of every plan first, then what this plan adds; the groups in which there is a caution. */
export function cautionGroups(cautions: readonly Caution[]): CautionGroup[] {
  const groups = [
    { title: 'With every plan', cautions: cautions.filter((c) => isStanding(c.id)) },
    { title: 'With this plan', cautions: cautions.filter((c) => !isStanding(c.id)) },
  ];
  return groups.filter((group) => group.cautions.length > 0);
}

/** Texts that stand together under one signal word. */
interface CautionEntry {
  readonly level: Level;
  readonly texts: readonly string[];
}

/** Signal words of which every text is an entry of its own. */
const APART: ReadonlySet<Level> = new Set(['danger', 'warning']);

/** Gravest first, each text with its name; of the lesser words one entry each. */
export function denseCautions(cautions: readonly Caution[]): CautionEntry[] {
  return LEVELS.flatMap((level) => {
    const texts = cautions.filter((c) => c.level === level).map((c) => `${c.text} [${c.id}]`);
    if (APART.has(level)) return texts.map((text) => ({ level, texts: [text] }));
    return texts.length === 0 ? [] : [{ level, texts }];
  });
}
