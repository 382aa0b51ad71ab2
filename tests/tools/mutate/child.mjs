// Runs test files of the copy, one after another in one thread, in the order in which they are named, and tells its parent
// each test as it begins, the first that fails, and what each file took.
import { startVitest } from 'vitest/node';

process.once('message', async ({ project, files, bail }) => {
  const tell = (message) => process.send(message);
  const place = new Map(files.map((file, i) => [file, i]));
  const placeOf = (spec) => place.get(spec.moduleId.slice(process.cwd().length + 1)) ?? files.length;
  class InTheirOrder {
    shard = (specs) => specs;
    sort = (specs) => specs.sort((a, b) => placeOf(a) - placeOf(b));
  }
  let why;
  const fails = (failed, errors) => {
    why = errors?.[0]?.message;
    tell({ failed, why });
  };
  const reporter = {
    onTestCaseReady: (test) => tell({ begins: test.id }),
    onTestCaseResult: (test) => {
      const { state, errors } = test.result();
      if (state === 'failed') fails(test.fullName, errors);
    },
    onTestModuleEnd: (module) => {
      if (module.state() === 'failed') fails(module.relativeModuleId, module.errors());
      const tests = [...module.children.allTests()].map((test) => ({
        id: test.id,
        name: test.fullName,
        ms: test.meta().ms ?? test.diagnostic()?.duration ?? 0,
        reached: test.meta().reached ?? [],
        noticed: test.meta().noticed ?? [],
      }));
      tell({
        file: module.relativeModuleId,
        ok: module.ok(),
        why,
        ms: tests.reduce((sum, t) => sum + t.ms, module.diagnostic().collectDuration),
        outside: module.meta().reached ?? [],
        tests,
      });
    },
  };
  const flags = { pool: 'threads', maxWorkers: 1, isolate: false, testTimeout: 60_000 };
  const vitest = await startVitest('test', files, {
    ...{ run: true, watch: false, project: [project], bail: bail ? 1 : 0, ...flags },
    ...{ reporters: [reporter], sequence: { sequencer: InTheirOrder }, passWithNoTests: true },
  });
  tell({ ended: true });
  await vitest?.close();
  process.exit();
});
