/** The word that says how grave a thing is, in a frame that is the heavier the graver it is. */
import type { Severity } from '../../findings/report-words.ts';
import { paragraph, type Span } from '../../report/blocks.ts';
import { asHtml } from '../../report/forms/html.ts';

/**
 * DANGER, WARNING and CAUTION stand on their safety colours behind the alert sign, a triangle with an exclamation mark, and
 * NOTICE without it (ISO 3864-2, from memory); filled, thick and thin frames say the same without colour.
 */
export function tagOf(severity: Severity): Exclude<Span, string> {
  return { text: severity.toUpperCase(), name: `tag ${severity}` };
}

export function tagHtml(severity: Severity): string {
  return asHtml([paragraph([tagOf(severity)])]).replace(/^<p>|<\/p>$/g, '');
}
