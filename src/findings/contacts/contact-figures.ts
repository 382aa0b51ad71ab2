import type { Study } from '../../study/study.ts';
import { roundedOrNull } from '../../text/numbers.ts';
import type { ContactFigures } from '../report-model.ts';
import { spareWords, withEditions } from './contact-words.ts';
import { decisive, type JudgedContact } from './judged-contact.ts';
import { judgedContacts } from './judged-contacts.ts';

/** The report's row for every contact that switches a load or feeds a coil. */
export function contactFigures(study: Study): ContactFigures[] {
  return judgedContacts(study).map(figuresOf);
}

/** The row of one contact: what stands against it, or else what decides that it serves. */
export function figuresOf(g: JudgedContact): ContactFigures {
  const worst =
    g.judged.find((j) => j.verdict === 'fail') ?? g.judged.find((j) => j.verdict === 'cannot-tell');
  const used = worst ?? decisive(g);
  return {
    relay: g.part.name,
    pole: g.pole,
    load: g.loads.join(', '),
    running: roundedOrNull(g.currents.running?.amps),
    starting: roundedOrNull(g.currents.starting?.amps),
    ratingUsed: used?.ratingUsed || null,
    multiple: roundedOrNull(used?.multiple),
    verdict: worst ? (worst.verdict === 'fail' ? 'no' : 'cannot tell') : 'yes',
    basis: withEditions(used?.basis ?? '') || 'no rating stated',
  };
}

/** The answer of question 6 where all is well: the contact with the least to spare and its figure. */
export function leastToSpare(study: Study): string | undefined {
  const shares = judgedContacts(study).flatMap((g) => {
    const j = decisive(g);
    if (j?.needed === undefined || !j.found) return [];
    return [{ share: j.needed / j.found, words: spareWords(g, j, j.found) }];
  });
  return shares.sort((a, b) => b.share - a.share)[0]?.words;
}
