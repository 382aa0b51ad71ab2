/** `pullin explain [ID]` */
import type { Block } from '../report/blocks.ts';
import { nearest } from '../text/nearest-name.ts';
import type { Session } from './io.ts';
import type { Verb } from './line/verb.ts';
import { jsonOption, widthOption } from './options.ts';
import { type LookOptions, print, printJson } from './print.ts';
import { Problem } from './status.ts';

interface ExplainOptions extends LookOptions {
  readonly json?: boolean;
}

async function run(id: string | undefined, options: ExplainOptions, session: Session): Promise<void> {
  const explanations = await session.stages.explanations();
  const { allCautions } = await import('./late/all.ts');
  const cautions = allCautions();
  const report = await import('./late/all.ts');
  const tell = (value: unknown, document: Block[]) =>
    options.json ? printJson(value, session) : print(document, options, session);

  if (id === undefined)
    return tell([...explanations, ...cautions], report.indexDocument(explanations, cautions));
  const wanted = id.toLowerCase();
  const explanation = explanations.find((e) => e.id.toLowerCase() === wanted);
  const caution = cautions.find((c) => c.id.toLowerCase() === wanted);
  if (explanation !== undefined) await tell(explanation, report.explanationDocument(explanation));
  else if (caution !== undefined) await tell(caution, report.cautionDocument(caution));
  else {
    const begun = <T extends { readonly id: string }>(all: readonly T[]) =>
      all.filter((e) => e.id.toLowerCase().startsWith(wanted));
    const [found, told] = [begun(explanations), begun(cautions)];
    if (wanted !== '' && found.length + told.length > 0)
      return tell([...found, ...told], report.indexDocument(found, told));
    const near = nearest(
      wanted,
      [...explanations, ...cautions].map((e) => e.id),
    );
    const hint = near === undefined ? '"pullin explain" lists them all' : `did you mean ${near}?`;
    throw new Problem(`there is no finding or caution called "${id}"; ${hint}`);
  }
}

export function addExplain(program: Verb, session: Session): void {
  program
    .command('explain')
    .summary('tell what a finding means')
    .description('Tells what a finding or a caution means, with its source; without ID, lists them all.')
    .argument('[id]', 'name of a finding or caution, as printed in brackets')
    .addOption(jsonOption('it'))
    .addOption(widthOption())
    .ends({
      notes: ['The beginning of a name lists what begins so.'],
      statuses: { pass: 'told', unreadable: 'nothing is called so, or begins so' },
      examples: ['pullin explain gate-on-wrong-tab', 'pullin explain coil'],
    })
    .action((id: string | undefined, options: ExplainOptions) => run(id, options, session));
}
