/** The volts at each coil with one gate open, as plots. */
import { voltPlots } from '../../report/volt-plots.ts';
import type { PageParts } from './parts.ts';
import { ofEach } from './versions.ts';

/** Empty where no coil has volts that are known. */
export function voltsHtml(parts: PageParts): string {
  const plots = ofEach(parts, ({ report }) => voltPlots(report.coils));
  if (!plots.includes('<figure')) return '';
  return `<section aria-labelledby="h-volts">\n<h2 id="h-volts">Volts at the coils</h2>\n${plots}\n</section>`;
}
