/** Which plan is tried next: from the grammar, from a shape, or a change to one that was tried before. */
import { readdirSync, readFileSync } from 'node:fs';
import { beyondEnumeration } from '../../helpers/example-plans.ts';
import { callsFor } from './commands.ts';
import { Dice } from './dice.ts';
import { planFromGrammar } from './grammar.ts';
import { mutatedPlan, mutatedText } from './mutate.ts';
import { degenerate } from './shapes.ts';
import type { Task } from './worker.ts';
import { yamlText } from './yaml-text.ts';

const root = new URL('../../../', import.meta.url);
const FOLDERS = ['examples/', 'examples/wrong/', 'tests/corpus/', 'tests/findings/bases/'];

/** Plans to begin with; those of many kilobytes would take most of the time. */
const SEEDS: readonly string[] = FOLDERS.flatMap((folder) =>
  readdirSync(new URL(folder, root))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => readFileSync(new URL(folder + name, root), 'utf8')),
).filter((text) => text.length < 6000);

/** Right plans that the oracles know. */
const JUDGED: readonly string[] = readdirSync(new URL('examples/', root))
  .filter((name) => name.endsWith('.yaml'))
  .sort()
  .map((name) => new URL(`examples/${name}`, root).pathname)
  .filter((file) => {
    const text = readFileSync(file, 'utf8');
    return !beyondEnumeration(text) && (text.match(/from: snap/g) ?? []).length <= 8;
  });

/** The task of one number; the same for the same seed and the same plans kept. */
export function taskOf(seed: number, index: number, kept: readonly string[], commands: number): Task {
  const dice = new Dice(seed, index);
  if (dice.chance(0.1))
    return { text: '', calls: [], judged: { file: dice.of(JUDGED), seed: dice.below(2 ** 31) } };
  const text = textOf(dice, kept);
  return { text, calls: callsFor(text, dice, commands) };
}

function textOf(dice: Dice, kept: readonly string[]): string {
  const one = () => (kept.length > 0 && dice.chance(0.6) ? dice.of(kept) : dice.of(SEEDS));
  const way = dice.below(100);
  if (way < 8) return yamlText(planFromGrammar(dice), dice);
  if (way < 25) return degenerate(dice);
  if (way < 90) return mutatedPlan(one(), one(), dice);
  return mutatedText(one(), one(), dice);
}
