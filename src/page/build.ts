/**
 * The page of one plan, from its report and the browser's code: this folder knows what a page shows and how it answers a
 * move, and must not work out a state itself; it asks the one machine.
 */
import { createHash } from 'node:crypto';
import type { Report } from '../findings/report-model.ts';
import { isArming } from '../machine/intended-state.ts';
import { Walk } from '../machine/walk.ts';
import type { Study } from '../study/study.ts';
import { groupsOf } from './groups.ts';
import { pageHtml } from './html/html.ts';
import { coresChanged, coresNew } from './links.ts';
import type { Mending } from './mending.ts';
import { packChanges, packPlan } from './pack.ts';
import type { PageData } from './unpack.ts';
import { versionOf } from './version.ts';

/** What the build made for the browser: `page-script.js` and `page.css`, as text. */
export interface BrowserFiles {
  readonly script: string;
  readonly style: string;
}

/**
 * One HTML file. `report` is what the check says of the plan; `mending` the plan with its repair, for a page that shows both.
 * Never throws for a plan that was read.
 */
export function pageOf(study: Study, report: Report, files: BrowserFiles, mending?: Mending): string {
  const { plan, circuit } = study;
  const drawn = versionOf(study, report, 'd');
  const mended = mending && { ...versionOf(mending.study, mending.report, 'm'), repair: mending.repair };
  const packed = packPlan(plan);
  const data: PageData = {
    drawn: {
      plan: packed,
      arming: arming(study),
      links: drawn.links,
      moved: mending?.repair.edits.flatMap(coresChanged) ?? [],
    },
    ...(mending &&
      mended && {
        mended: {
          plan: packChanges(packed, packPlan(mending.study.plan)),
          arming: arming(mending.study),
          links: mended.links,
          moved: coresNew(plan, mending.study.plan),
        },
      }),
  };
  return pageHtml(
    {
      drawn,
      ...(mended && { mended }),
      groups: groupsOf(plan, circuit),
      targets: new Walk(study, arming(study)).targets,
    },
    {
      ...files,
      // In a script element nothing but `<` can end the data early.
      data: JSON.stringify(data).replaceAll('<', '\\u003c'),
      policy: policyOf(files),
    },
  );
}

const arming = ({ verified }: Study): boolean => verified !== undefined && isArming(verified);

/** Lets in this script and this style, and nothing from anywhere. */
function policyOf({ script, style }: BrowserFiles): string {
  const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  return [
    "default-src 'none'",
    `style-src ${hash(style)}`,
    `script-src ${hash(script)}`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}
