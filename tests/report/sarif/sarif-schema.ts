/**
 * Whether a text is a SARIF log: by the JSON Schema that the standard is published with (draft 4), as the package
 * `@microsoft/jest-sarif` brings it, judged by `ajv`; formats of addresses by `ajv-formats`. Besides, what the standard
 * says in words and no schema can: clauses of SARIF 2.1.0, OASIS Standard.
 */
import schema from '@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json' with { type: 'json' };
import draft04 from 'ajv-draft-04';
import formats from 'ajv-formats';
import { expect } from 'vitest';

export interface Region {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine?: number;
  readonly endColumn?: number;
}
interface Physical {
  readonly artifactLocation: { readonly uri?: string; readonly uriBaseId?: string; readonly index: number };
  readonly region?: Region;
}
export interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly message: { readonly text: string };
  readonly locations: readonly { readonly physicalLocation: Physical }[];
  readonly relatedLocations: readonly {
    readonly message: { readonly text: string };
    readonly physicalLocation: Physical;
  }[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
  readonly fixes?: readonly {
    readonly artifactChanges: readonly {
      readonly replacements: readonly {
        readonly deletedRegion: Required<Region>;
        readonly insertedContent: { readonly text: string };
      }[];
    }[];
  }[];
  readonly properties: { readonly severity: string; readonly parts: readonly string[] };
}
export interface Run {
  readonly tool: {
    readonly driver: {
      readonly version: string;
      readonly rules: readonly {
        readonly id: string;
        readonly defaultConfiguration: { readonly level: string };
      }[];
      readonly notifications: readonly { readonly id: string }[];
    };
  };
  readonly results: readonly Result[];
  readonly artifacts: readonly {
    readonly location?: Physical['artifactLocation'];
    readonly roles: readonly string[];
    readonly properties: { readonly verdict: string };
  }[];
  readonly invocations: readonly {
    readonly executionSuccessful: boolean;
    readonly exitCode: number;
    readonly stdin?: { readonly index: number };
    readonly toolExecutionNotifications: readonly {
      readonly descriptor: { readonly id: string; readonly index: number };
      readonly message: { readonly text: string };
      readonly locations?: readonly { readonly physicalLocation: Physical }[];
    }[];
  }[];
  readonly originalUriBaseIds: Readonly<Record<string, unknown>>;
  readonly columnKind: string;
  readonly properties: {
    readonly cautions: readonly {
      readonly id: string;
      readonly text: string;
      readonly artifacts: number[];
    }[];
  };
}

// Both are CommonJS, whose default export comes as a property of the default export.
const Ajv = (draft04 as unknown as { default: typeof draft04.default }).default;
const addFormats = (formats as unknown as { default: typeof formats.default }).default;
// A pattern of the schema is no regular expression of the newer sort.
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
addFormats(ajv);
const valid = ajv.compile(schema);

/** The one run of a log that is as the standard asks. */
export function runOf(text: string): Run {
  const log = JSON.parse(text) as { readonly version: string; readonly runs: readonly Run[] };
  expect(valid(log) ? [] : valid.errors).toEqual([]);
  expect([log.version, log.runs.length]).toEqual(['2.1.0', 1]);
  const run = log.runs[0]!;
  const { rules, notifications } = run.tool.driver;
  // 3.19.23: a rule is told once; 3.52.4, 3.52.5: an index and an id name the same one.
  expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
  for (const { ruleId, ruleIndex, locations } of run.results) {
    expect(rules[ruleIndex]?.id).toBe(ruleId);
    locationHolds(run, locations[0]!.physicalLocation);
  }
  for (const { descriptor, locations = [] } of run.invocations[0]!.toolExecutionNotifications) {
    expect(notifications[descriptor.index]?.id).toBe(descriptor.id);
    for (const { physicalLocation } of locations) locationHolds(run, physicalLocation);
  }
  // 3.56.3: replacements of one change do not overlap.
  for (const { fixes = [] } of run.results)
    for (const { artifactChanges } of fixes)
      for (const { replacements } of artifactChanges)
        replacements.reduce((before, { deletedRegion: { startLine, endLine } }) => {
          expect(startLine).toBeGreaterThanOrEqual(before);
          return endLine;
        }, 1);
  return run;
}

/** 3.4.5: the artifact at the index has that address; 3.4.4: what a relative one starts from is named in the run. */
function locationHolds(run: Run, { artifactLocation: { uri, uriBaseId, index } }: Physical): void {
  const artifact = run.artifacts[index];
  expect(artifact?.location?.uri).toBe(uri);
  if (uri === undefined) expect(artifact?.roles).toContain('standardStream');
  else if (uriBaseId === undefined) expect(uri).toMatch(/^file:\/\/\//);
  else expect(run.originalUriBaseIds).toHaveProperty(uriBaseId);
}

/** Text between the columns of a region of one line, counted in UTF-16 units (3.14.17, 3.30). */
export function regionText(text: string, { startLine, startColumn, endColumn }: Region): string {
  const line = text.split('\n')[startLine - 1] ?? '';
  return line.slice(startColumn - 1, endColumn === undefined ? undefined : endColumn - 1);
}

/** The text with the first fix of a result in it, by lines and columns alone. */
export function fixed(text: string, { fixes = [] }: Result): string {
  const lines = text.split('\n');
  const offset = (line: number, column: number) =>
    lines.slice(0, line - 1).reduce((sum, { length }) => sum + length + 1, 0) + column - 1;
  const [change] = fixes[0]!.artifactChanges;
  return [...change!.replacements]
    .reverse()
    .reduce(
      (all, { deletedRegion: at, insertedContent }) =>
        all.slice(0, offset(at.startLine, at.startColumn)) +
        insertedContent.text +
        all.slice(offset(at.endLine, at.endColumn)),
      text,
    );
}
