/** False passes: mistakes in a right example, of which the oracles and the check must think alike. */
import { readFileSync } from 'node:fs';
import { doubles, sample, singles } from '../../oracles/corpus/corpus.ts';
import { Ground } from '../../oracles/corpus/judgement.ts';
import type { Mutant } from '../../oracles/corpus/mutant.ts';
import { sheetOf, withLink } from '../../oracles/corpus/sheet.ts';
import { tryOne } from '../../oracles/corpus/tally.ts';
import { Dice } from './dice.ts';
import type { Finding } from './trial.ts';

const grounds = new Map<string, Ground>();

function groundOf(file: string): Ground {
  const known = grounds.get(file) ?? new Ground(readFileSync(file, 'utf8'));
  grounds.set(file, known);
  return known;
}

/** A core laid a second time beside itself: it joins what is joined, so nothing may turn on it. */
function doubled(text: string, dice: Dice): Mutant {
  const sheet = sheetOf(text);
  const core = dice.of(sheet.cores);
  const [a, b] = core.ends.map((end) => end.written) as [string, string];
  const again = withLink(sheet, a, b);
  return {
    name: `${a} to ${b} a second time`,
    kind: 'a core a second time',
    family: 'wiring',
    text: again,
    touched: { parts: [], cores: [], lines: [] },
    sheet: sheetOf(again),
  };
}

/** One to five mistakes on top of each other. */
function mistaken(text: string, dice: Dice): Mutant {
  const seed = dice.below(2 ** 31);
  const rounds = dice.of([0, 1, 1, 2]);
  if (rounds === 0) return dice.chance(0.5) ? doubled(text, dice) : sample(singles(text), 1, seed)[0]!;
  let mutant: Mutant | undefined;
  for (let i = 0; i < rounds; i++) mutant = doubles(mutant?.text ?? text, 1, seed + i)[0] ?? mutant;
  return dice.chance(0.2) || mutant === undefined ? doubled(mutant?.text ?? text, dice) : mutant;
}

/** What the oracles and the check do not agree on; nothing where they do, or where the oracles cannot say. */
export function judgedFinding(file: string, seed: number): Finding[] {
  const ground = groundOf(file);
  const mutant = mistaken(ground.text, new Dice(seed, 0));
  const { outcome, judged, verdict, found } = tryOne(file, mutant, ground);
  const wrong = outcome === 'missed' || (outcome === 'false alarm' && mutant.family !== 'data');
  if (!wrong) return [];
  const told = JSON.stringify({ mutant: mutant.name, kind: mutant.kind, judged, verdict, found });
  return [
    {
      kind: outcome,
      where: `${outcome === 'missed' ? judged.symptoms[0] : found[0]}`,
      call: ['check', '-'],
      told: `${told}\n${mutant.text}`,
    },
  ];
}
