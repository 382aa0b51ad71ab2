/** The order of the test files: the dearest long ones begin, so that none is left to run alone at the end beside an idle core. */
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Those that take 15 s and more; what is missing here only comes later. */
const DEAREST = [
  'page/browser',
  'cli/many/workers',
  'findings/unsaid/left-out',
  'cli/json',
  'cli/hunt-terminal',
  'repair/judged',
  'cli/self/completion',
  'fuzz/fuzz',
  'meter/short-sheets',
  'findings/monotone/monotone',
  'repair/remedies/followed',
  'cli/escaping',
  'fuzz/cases',
  'study/nominal',
  'cli/new-terminal',
  'cli/degenerate',
  'logic/random',
  'plan/use/fields-used',
  'meter/hunt/simulated',
  'draw/browser',
  'meter/faults/effects',
  'repair/mend',
  'lists/size/size',
  'page/bench',
  'meter/meter-sheet',
  'edit/grow-examples',
].map((name) => `/tests/${name}.long.test.ts`);

const rank = ({ moduleId }: TestSpecification): number => {
  const at = DEAREST.findIndex((end) => moduleId.endsWith(end));
  return at < 0 ? DEAREST.length : at;
};

export class DearestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}
