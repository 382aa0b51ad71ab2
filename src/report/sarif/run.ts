/** The log (3.13) and its one run (3.14), in two pieces: what is known beforehand, and what when all plans are done. */
import type { Caution } from '../../findings/report-model.ts';
import { descriptorOf, driver } from './tool.ts';
import { type Artifact, artifactLocation, BASE, levelOf, message } from './words.ts';

const SCHEMA = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/** The log with a run that has no results yet; `results` is the last of its properties. */
export function sarifLog(version: string) {
  return {
    $schema: SCHEMA,
    version: '2.1.0',
    runs: [
      {
        tool: { driver: driver(version) },
        originalUriBaseIds: {
          [BASE]: { description: message('The folder that pullin was started in.') },
        },
        columnKind: 'utf16CodeUnits',
        results: [],
      },
    ],
  };
}

/** How the run ended. */
export interface SarifEnd {
  /** each with what became of it, in the order named */
  readonly plans: readonly { readonly artifact: Artifact; readonly fate: string }[];
  /** plans that were named */
  readonly named: number;
  readonly notifications: readonly object[];
  /** each once, with the artifacts that it is told of */
  readonly cautions: readonly { readonly caution: Caution; readonly of: readonly number[] }[];
  readonly exitCode: number;
  readonly exitCodeDescription: string;
  /** whether every plan that was checked got a report */
  readonly whole: boolean;
  readonly signal: string | undefined;
}

/** What follows the results. Cautions are no results: they hold whatever was found, and say nothing of a line. */
export function sarifEnd(end: SarifEnd) {
  const artifacts: object[] = [];
  for (const { artifact, fate } of end.plans)
    artifacts[artifact.index] = {
      ...(artifact.uri === null
        ? { description: message('standard input'), roles: ['analysisTarget', 'standardStream'] }
        : { location: artifactLocation(artifact), roles: ['analysisTarget'] }),
      mimeType: 'application/yaml',
      properties: { verdict: fate },
    };
  const stdin = end.plans.find(({ artifact }) => artifact.uri === null)?.artifact;
  const left = end.named - end.plans.length;
  const cut = {
    descriptor: descriptorOf('interrupted'),
    level: 'error' as const,
    message: message(`The run was cut short; ${left} of ${end.named} plans were not checked.`),
  };
  return {
    artifacts,
    invocations: [
      {
        executionSuccessful: end.whole && left === 0,
        exitCode: end.exitCode,
        exitCodeDescription: end.exitCodeDescription,
        ...(end.signal === undefined ? {} : { exitSignalName: end.signal }),
        ...(stdin === undefined ? {} : { stdin: artifactLocation(stdin) }),
        toolExecutionNotifications: left === 0 ? end.notifications : [...end.notifications, cut],
      },
    ],
    properties: {
      cautions: end.cautions.map(({ caution: { id, level, text, basis }, of }) => ({
        id,
        severity: level,
        level: levelOf(level),
        text: message(text).text,
        basis,
        artifacts: of,
      })),
    },
  };
}
