/** The text of a plan file after changes of it. */
import { isScalar } from 'yaml';
import type { Plan } from '../plan/plan.ts';
import { readPlan } from '../plan/read.ts';
import { addition, newLink, newRun } from './add-core.ts';
import type { Edit } from './edits.ts';
import { type Orders, planWith, sortOut, wiringOf, writtenOut } from './expected-plan.ts';
import { removals } from './remove-core.ts';
import { sayings } from './say.ts';
import { PlanText, Refusal, rewritten, spliced } from './text-changes.ts';
import { writeOutRuns } from './write-out.ts';

/** The text of the file after a list of edits, or why it is left as it is, as one sentence. */
export type Applied = { readonly text: string } | { readonly refused: string };

/**
 * The text of a plan file with `edits` made in it. Everything that no edit concerns stays byte by byte. The new text is
 * read again; unless it reads as exactly the wiring wanted and all else as before, the edits are refused.
 */
export function applyEdits(text: string, plan: Plan, edits: readonly Edit[]): Applied {
  try {
    // Offsets count behind the byte order mark, as in reading.
    const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
    const body = text.slice(mark.length);
    const now = readPlan(body, plan.file);
    if (!now.ok || whole(now.plan) !== whole(plan))
      throw new Refusal('the file does not hold the plan that was read from it; it has changed since');
    const orders = sortOut(plan, edits);
    const edited = write(body, plan, orders);
    verify(plan, orders, edited);
    return { text: mark + edited };
  } catch (error) {
    if (error instanceof Refusal) return { refused: sentence(error.message) };
    throw error;
  }
}

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** Ends first, then what goes, then what comes, then words; the text is read anew between, so that no two touch. */
function write(body: string, plan: Plan, { ends, gone, empty, added, said }: Orders): string {
  const open = writtenOut(plan, ends, gone);
  const { text: plainly, itemOf } = writeOutRuns(body, plan, open);
  const file = new PlanText(plainly, itemOf);
  const colours = (run: number) => plan.runs[run]!.cores.map((core) => core.colour);
  for (const run of gone.keys()) {
    const map = empty.has(run) ? undefined : file.cores(run);
    if (map !== undefined && map.items.map((p) => file.keyOf(p.key)).join('\n') !== colours(run).join('\n'))
      throw new Refusal(`the cores of run ${run + 1} are not where the plan says`);
  }
  const fresh = added.map(({ like, metres, colour, from, to }) =>
    like === undefined
      ? newLink(from, to)
      : // As long as that run: in the words that stand there.
        newRun(
          file,
          like,
          plan.runs[like]!.piece,
          metres === plan.runs[like]!.length ? undefined : metres,
          colour,
          from,
          to,
        ),
  );
  let text = spliced(
    plainly,
    ends.map(({ run, core, end, to }) => {
      const { node, flow } = file.end(run, core, end);
      const place = file.plain(node);
      if (
        !isScalar(place) ||
        String(place.value).trimEnd() !== plan.runs[run]!.cores[core]![end].written.trimEnd()
      )
        throw new Refusal(`core ${core + 1} of run ${run + 1} is not where the plan says`);
      return rewritten(plainly, node, flow, to);
    }),
  );
  if (gone.size > 0) text = spliced(text, removals(new PlanText(text, itemOf), gone, empty));
  for (const run of fresh) text = spliced(text, addition(new PlanText(text), run));
  return sayings(text, said);
}

function verify(plan: Plan, orders: Orders, text: string): void {
  const result = readPlan(text, plan.file);
  if (!result.ok) throw new Refusal(`the edited file could not be read: ${result.errors[0]!.message}`);
  const meant = planWith(plan, orders);
  if (wiringOf(result.plan).join('\n') !== wiringOf(meant).join('\n'))
    throw new Refusal('the edited file would not read back as the wiring that was meant');
  if (besides(result.plan) !== besides(meant))
    throw new Refusal(
      'the edits would change how the file reads besides its wiring, such as the phases of a machine',
    );
}

/** Maps as lists, so that they take part in a comparison; `places` keeps lines and columns. */
function flat(value: unknown, places: boolean): string {
  return JSON.stringify(value, (key, inner: unknown) => {
    if (!places && (key === 'at' || key === 'where')) return undefined;
    return inner instanceof Map ? [...inner] : inner;
  });
}

/** The whole plan with every place in the file. */
const whole = ({ terminals: _, ...plan }: Plan) => flat(plan, true);

/** Everything but the wiring and the places in the file. */
const besides = ({ terminals: _, runs: _runs, ...plan }: Plan) => flat(plan, false);
