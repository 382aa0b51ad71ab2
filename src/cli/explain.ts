/** `pullin explain [ID]` */
import type { Command } from 'commander';
import { nearest } from '../text/nearest-name.ts';
import { type Session, widthFor } from './io.ts';
import { Problem } from './status.ts';

async function run(
  id: string | undefined,
  options: { readonly json?: boolean },
  session: Session,
): Promise<void> {
  const explanations = await session.stages.explanations();
  const { allCautions } = await import('../findings/cautions/choose.ts');
  const cautions = allCautions();
  const json = (value: unknown) => session.out.write(`${JSON.stringify(value, null, 2)}\n`);
  const { renderCaution, renderExplanation, renderIndex } = await import('../report/explain.ts');
  const width = widthFor(undefined, session.io.stdout);

  if (id === undefined) {
    if (options.json) json(explanations);
    else session.out.write(renderIndex(explanations, cautions, width));
    return;
  }
  const wanted = id.toLowerCase();
  const explanation = explanations.find((e) => e.id.toLowerCase() === wanted);
  const caution = cautions.find((c) => c.id.toLowerCase() === wanted);
  if (explanation !== undefined) {
    if (options.json) json(explanation);
    else session.out.write(renderExplanation(explanation, width));
  } else if (caution !== undefined) {
    if (options.json) json(caution);
    else session.out.write(renderCaution(caution, width));
  } else {
    const near = nearest(
      wanted,
      [...explanations, ...cautions].map((e) => e.id),
    );
    const hint = near === undefined ? '"pullin explain" lists them all' : `did you mean ${near}?`;
    throw new Problem(`there is no finding or caution called "${id}"; ${hint}`);
  }
}

export function addExplain(program: Command, session: Session): void {
  program
    .command('explain')
    .summary('tell what a finding means')
    .description('Tells what a finding or a caution means, with its source; without ID, lists them all.')
    .argument('[id]', 'name of a finding or caution, as printed in brackets')
    .option('--json', 'print it as JSON')
    .action((id: string | undefined, options: { json?: boolean }) => run(id, options, session));
}
