/**
 * A check as SARIF 2.1.0 (OASIS Standard, 27 March 2020, with Errata 01): this folder knows its objects, and must not
 * know streams. Clause numbers are those of the standard.
 */
import type { Level, Severity } from '../../findings/report-words.ts';
import { printable } from '../../text/escape.ts';

export type SarifLevel = 'error' | 'warning' | 'note';

/**
 * The level of a result (3.27.10) goes with the verdict, so that whoever stops at errors stops where `check` ends with 1: what
 * fails a plan is an error, the signal word "warning" too, since it may hurt somebody; what cannot be decided is a warning.
 * It is never of the kind `open` (3.27.9), whose level would be `none`, which many readers leave out.
 */
const LEVELS: Readonly<Record<Severity, SarifLevel>> = {
  danger: 'error',
  warning: 'error',
  fault: 'error',
  doubt: 'warning',
  caution: 'note',
  notice: 'note',
};

export function levelOf(severity: Severity | Level): SarifLevel {
  return LEVELS[severity];
}

/** A message (3.11): no placeholder (3.11.5) and no link (3.11.6) can come of what a person typed, and no escape code. */
export function message(text: string): { readonly text: string } {
  return { text: printable(text).replace(/[{}]/g, '$&$&').replace(/\]\(/g, '] (') };
}

/** The folder that relative names of files start from (3.14.14); where it lies is nobody's business. */
export const BASE = 'WORKINGDIRECTORY';

/** Where a plan stands among the artifacts of the run (3.14.15); standard input has no name. */
export interface Artifact {
  readonly index: number;
  /** relative to the folder that the command was started in, or absolute; percent-encoded */
  readonly uri: string | null;
}

/** An artifact location (3.4). */
export function artifactLocation({ index, uri }: Artifact) {
  if (uri === null) return { index };
  return uri.startsWith('file:') ? { uri, index } : { uri, uriBaseId: BASE, index };
}
