// Which file may import which, types included. `npm run check:imports` asks.

/** The walk from text to product: a folder of src/ imports folders that stand before it here, and none behind. */
const ORDER = [
  'text',
  'plan',
  'edit',
  'circuit',
  'electric',
  'logic',
  'ratings',
  'study',
  'findings',
  'machine',
  'repair',
  'meter',
  'lists',
  'draw',
  'report',
  'page',
  'library',
  'cli',
];

const onlyUpwards = ORDER.slice(0, -1).map((folder, i) => ({
  name: `${folder}-imports-only-what-stands-before-it`,
  severity: 'error',
  from: { path: `^src/${folder}/` },
  to: { path: `^src/(${ORDER.slice(i + 1).join('|')})/` },
}));

module.exports = {
  forbidden: [
    ...onlyUpwards,
    {
      name: 'every-folder-has-its-place-in-the-order',
      severity: 'error',
      from: {},
      to: { path: `^src/(?!(${ORDER.join('|')})/)[^/]+/` },
    },
    { name: 'no-circle', severity: 'error', from: { path: '^(src|tests)/' }, to: { circular: true } },
    {
      name: 'nothing-imports-the-command-line',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/cli/' },
      to: { path: '^src/cli/' },
    },
    {
      name: 'a-folder-does-not-use-the-library',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^src/index\\.ts$' },
    },
    { name: 'src-knows-no-test', severity: 'error', from: { path: '^src/' }, to: { path: '^tests/' } },
    {
      name: 'what-runs-at-a-user-is-a-dependency',
      comment: 'A package that is only installed for development, or by another package, is missing there.',
      severity: 'error',
      from: { path: '^src/.*\\.ts$' },
      to: {
        dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown', 'npm-optional', 'npm-peer', 'undetermined'],
      },
    },
    {
      name: 'every-import-is-found',
      comment: 'What is built may not be there yet.',
      severity: 'error',
      from: { path: '^(src|tests)/' },
      to: { couldNotResolve: true, pathNot: '/dist/' },
    },
    {
      name: 'only-the-page-and-the-command-line-touch-the-machine',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/(page|cli|build\\.mjs)' },
      to: { dependencyTypes: ['core'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
    },
  },
};
