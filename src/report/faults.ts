/** The single-fault table: a summary, and a row for each failure, the gravest first. */
import type { FaultRow, FaultTable } from '../meter/faults/table-model.ts';
import { type Block, heading, list, paragraph, table, WRITTEN } from './blocks.ts';
import { toldBlocks } from './told.ts';

/** Severity classes, in the order of the table, as heads of its parts. */
const CLASSES: readonly (readonly [FaultRow['severity'], string, string])[] = [
  [
    'danger',
    'Danger',
    'mains lies where it must not or stays where it should go, an earth is lost, or a load goes on though it is stopped',
  ],
  [
    'worse',
    'The worse way',
    'a load runs when it should not, or stands still where the plan has it go on when a supply fails',
  ],
  [
    'loss',
    'Loss of function',
    'a load stands still when it should run, or runs where that is the lesser evil',
  ],
  ['nuisance', 'Nuisance', 'only lamps, relays or outlets differ'],
  ['none', 'Nothing seen', 'the machine does all it should'],
];

/** Failures of one class that the text lists where not all are asked for. */
const MOST = 40;

const INTRO =
  'What each single failure would do once it is built as planned, one at a time. Columns are those of a failure mode and effects table (IEC 60812). Failures stand the gravest first and within a class the likeliest first; how likely is rough, from public failure-mode tables and common practice, and is no figure of this shop.';

const STAYS =
  'It counts failures of what the plan shows, and not how often they come. What nobody sees at the machine is found by a test alone: see "pullin meter".';

/** With `all`, failures that nothing at the machine shows and that do no harm stand in the text as well. */
export function faultsDocument(faults: FaultTable, all: boolean): Block[] {
  const { rows, summary } = faults;
  return [
    heading(1, `Single failures: ${faults.title}`, { only: WRITTEN }),
    ...toldBlocks(faults.check, 'The failures are of the plan as it stands.'),
    paragraph(INTRO, { only: WRITTEN }),
    list('dash', summaryLines(summary), { only: WRITTEN, close: true }),
    ...CLASSES.flatMap(([severity, name, meaning]) =>
      classBlocks(
        name,
        meaning,
        rows.filter((r) => r.severity === severity),
        severity !== 'none',
        all,
      ),
    ),
    paragraph(STAYS, { only: WRITTEN }),
  ];
}

/** One table of everything, for programs. */
export function faultsTable({ rows }: FaultTable): Block[] {
  return [
    table(rows, [
      { head: 'item', of: (r) => r.item },
      { head: 'failure mode', of: (r) => r.failureMode },
      { head: 'failure effect', of: (r) => r.effect },
      { head: 'detection', of: (r) => r.detection },
      { head: 'severity class', of: (r) => r.severity },
      { head: 'compensating provision', of: (r) => provisionOf(r) ?? '' },
    ]),
  ];
}

function summaryLines(summary: FaultTable['summary']): string[] {
  const { failures, off, on, silent } = summary;
  const classes = CLASSES.map(([severity, name]) => `${summary[severity]} ${name.toLowerCase()}`);
  return [
    `${failures} single failures were tried in every position that a person would try. Each is in one class: ${classes.join(', ')}.`,
    `Counted over all classes, and a failure may do both or neither: ${off} keep a load off that should run; ${on} make one run, or go on, that should not.`,
    `${silent} show in nothing at the machine, those of other classes with them: an earth that is lost, say.`,
  ];
}

/** What takes a failure away; of a danger it is told that nothing does. */
function provisionOf({ provision, severity }: FaultRow): string | undefined {
  return provision ?? (severity === 'danger' ? 'none was found that passes' : undefined);
}

function classBlocks(
  name: string,
  meaning: string,
  rows: readonly FaultRow[],
  harms: boolean,
  all: boolean,
): Block[] {
  if (rows.length === 0) return [];
  const head = heading(2, `${name} (${rows.length})`, { only: WRITTEN });
  if (!harms && !all)
    return [
      head,
      paragraph(`${rows.length} failures with which ${meaning}; --all lists them.`, {
        only: WRITTEN,
        close: true,
      }),
    ];
  return [
    head,
    paragraph(`In this class ${meaning}.`, { only: WRITTEN, close: true }),
    list(
      'dash',
      rows.slice(0, all ? rows.length : MOST).map((r) => ({
        text: r.failureMode,
        more: [
          `effect: ${r.effect}`,
          `detection: ${r.detection}`,
          ...(provisionOf(r) === undefined ? [] : [`provision: ${provisionOf(r)}`]),
        ],
      })),
      { only: ['text'] },
    ),
    ...(rows.length > MOST && !all
      ? [paragraph(`and ${rows.length - MOST} more; --all lists them.`, { only: ['text'] })]
      : []),
    table(
      rows,
      [
        { head: 'item', of: (r) => r.item },
        { head: 'failure mode', of: (r) => r.failureMode },
        { head: 'failure effect', of: (r) => r.effect },
        { head: 'detection', of: (r) => r.detection },
        { head: 'compensating provision', of: (r) => provisionOf(r) ?? '' },
      ],
      { only: ['markdown'] },
    ),
  ];
}
