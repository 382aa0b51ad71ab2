// Which bell wire does for the boat shop of Saltmarsh Lane? Puts each gauge into the plan, asks for the verdict, and reads what a
// meter would show at the coil with each gate open. Run it where pullin is installed: node use-from-a-script.mjs [PLAN]
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { applyEdits, check, mend, NotAnswered, planWith, readMeter, study } from 'pullin';

const file = process.argv[2] ?? fileURLToPath(new URL('saltmarsh-lane.yaml', import.meta.url));
const text = readFileSync(file, 'utf8');
const GAUGES = ['20 AWG', '24 AWG', '28 AWG', '32 AWG', '36 AWG'];

/** Findings that keep a plan from passing; a caution or a notice does not. */
const GRAVE = ['danger', 'warning', 'fault', 'doubt'];

/** What one meter shows at the coil of K1 with this gate open. */
function atTheCoil(shop, gate) {
  try {
    const { volts } = readMeter(shop, { positions: { open: [gate] }, between: ['K1.A1', 'K1.A2'] });
    return volts === null ? 'no figure' : `${volts.toFixed(2)} V`;
  } catch (error) {
    // The plan has no K1, or no such gate; what is a mistake of ours goes on.
    if (error instanceof NotAnswered) return error.message;
    throw error;
  }
}

for (const gauge of GAUGES) {
  const changed = planWith(text, file, [`bell=${gauge}`]);
  if (!changed.ok) {
    console.error([...changed.problems, ...changed.errors.map((e) => e.message)].join('\n'));
    process.exit(2);
  }
  // One study serves every question about this plan.
  const shop = study(changed.plan);
  const report = check(shop);
  const gates = [...changed.plan.parts.values()].filter((part) => part.kind === 'gate');
  const read = gates.map(({ name }) => `${name} ${atTheCoil(shop, name)}`);
  // Only `pass` is one: `cannot-tell` says that a figure is missing.
  const behind = report.findings.filter(({ severity }) => GRAVE.includes(severity)).map(({ id }) => id);
  const why = behind.length === 0 ? '' : ` (${behind.join(', ')})`;
  console.log(`${gauge}: ${report.verdict}${why}; ${read.join(', ')}`);
}

// A plan that is wired wrong: the text of its file with the first repair in it. Nothing is written.
const wrong = text.replace('planer.NO', 'planer.NC');
const plan = planWith(wrong, file, []);
if (plan.ok) {
  const [repair] = mend(study(plan.plan)).repairs;
  const mended = repair && applyEdits(wrong, plan.plan, repair.edits);
  if (mended && 'text' in mended) console.log(`${repair.words.join(' ')} The file is then as it was: ${mended.text === text}`);
}
