/** Cautions as every form has them: those of every plan first, then what this plan adds. */
import { isStanding } from '../findings/cautions/choose.ts';
import type { Caution } from '../findings/report-model.ts';

interface CautionGroup {
  readonly title: string;
  readonly cautions: readonly Caution[];
}

/** The groups in which there is a caution. */
export function cautionGroups(cautions: readonly Caution[]): CautionGroup[] {
  const groups = [
    { title: 'With every plan', cautions: cautions.filter((c) => isStanding(c.id)) },
    { title: 'With this plan', cautions: cautions.filter((c) => !isStanding(c.id)) },
  ];
  return groups.filter((group) => group.cautions.length > 0);
}
