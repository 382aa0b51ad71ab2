// Which tests could notice an error, and which of them first.

/** Above this a test file is not run whole, but only those of its tests in which the error changes something, ms. */
const LONG_FILE = 3000;
/** So many milliseconds of tests near the file are run besides: what is kept from one test to the next was reached once. */
const NEAR = 5000;

/** How likely a test file is to notice: 1 for the file of the same name, less for another of the folder, and so on. */
function nearness(source, test) {
  const own = source
    .replace(/^src\//, '')
    .replace(/\.ts$/, '')
    .split('/');
  const of = test
    .replace(/^tests\//, '')
    .replace(/\.test\.ts$/, '')
    .split('/');
  let same = 0;
  while (same < own.length && own[same] === of[same]) same++;
  if (same === own.length) return 1;
  if (same === 0) return 0.15;
  return same === own.length - 1 ? 0.6 : 0.4;
}

/**
 * @param record what each test file reached when no error was switched on
 * @returns the files in the order in which they are to run, with what each is expected to take, and the tests to leave out
 */
export function testsFor(mutant, record) {
  const { id, file: source } = mutant;
  const rows = record.map((row) => {
    const { outside, tests, ms } = row;
    const touched = tests.filter((t) => t.reached.includes(id));
    const whole = outside.includes(id) || mutant.atLoad || ms < LONG_FILE;
    const omitted = whole ? [] : tests.filter((t) => !touched.includes(t));
    const cost = ms - omitted.reduce((sum, t) => sum + t.ms, 0);
    const reaches = outside.includes(id) || touched.length > 0;
    return {
      file: row.file,
      reaches,
      omitted: omitted.map((t) => t.id),
      cost,
      near: nearness(source, row.file),
    };
  });
  rows.sort((a, b) => (a.cost + 100) / a.near - (b.cost + 100) / b.near);
  const sure = rows.filter((r) => r.reaches);
  let left = NEAR;
  const perhaps = rows.filter((r) => {
    if (r.reaches) return false;
    // What is worked out while the sources are loaded can bear on every test.
    if (mutant.atLoad) return true;
    if (r.near < 0.4 || r.cost > left) return false;
    left -= r.cost;
    return true;
  });
  return { files: [...sure, ...perhaps], reached: sure.length > 0 };
}
