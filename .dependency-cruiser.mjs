// The house's import rules, each with its reason. Run by .ci/architecture.mjs, which fails when no module was seen.
const room = (...names) => `^src/(${names.join('|')})/`;

/** Rooms from the top down; a room may import from those below its own storey only. */
const storeys = [
  ['cli'],
  ['reports', 'jobs'],
  ['simulation'],
  ['verdict', 'comparison', 'impact', 'endurance', 'rig', 'field'],
  ['documents', 'logs', 'conformance', 'result'],
  ['statistics', 'quantity'],
  ['problem'],
];

const downOnly = storeys.slice(1).map((rooms, i) => ({
  name: `${rooms.join('-')}-import-down-only`,
  comment:
    'Data flow one way; an import that points up would let a report or a command line leak into a number.',
  severity: 'error',
  from: { path: room(...rooms) },
  to: { path: room(...storeys.slice(0, i + 1).flat()) },
}));

export default {
  forbidden: [
    ...downOnly,
    {
      name: 'statistics-stand-alone',
      comment: 'Numbers in, numbers out: the statistics can be checked, and reused, without a tyre in sight.',
      severity: 'error',
      from: { path: room('statistics') },
      to: { path: '^src/', pathNot: room('statistics') },
    },
    {
      name: 'reports-know-results-only',
      comment: 'A reporter is (result, options) → text: what a report needs must be in the result.',
      severity: 'error',
      from: { path: room('reports') },
      to: {
        path: room(
          'jobs',
          'documents',
          'logs',
          'impact',
          'endurance',
          'rig',
          'field',
          'comparison',
          'verdict',
          'simulation',
        ),
      },
    },
    {
      name: 'file-system-in-three-rooms',
      comment:
        'Only the command line, the logs and the documents touch files: the rest is testable with values.',
      severity: 'error',
      from: { path: '^src/', pathNot: room('cli', 'logs', 'documents') },
      to: {
        path: '^(node:)?(fs|fs/promises|child_process|worker_threads|process|os)$',
        dependencyTypes: ['core'],
      },
    },
    {
      name: 'commander-and-colour-in-cli',
      comment: 'Flags belong to the command line alone.',
      severity: 'error',
      from: { path: '^src/', pathNot: room('cli') },
      to: { path: 'node_modules/commander' },
    },
    {
      name: 'no-cycles',
      comment: 'A cycle is two files that are one.',
      severity: 'error',
      from: { path: '^src/' },
      to: { circular: true },
    },
    {
      name: 'no-orphans',
      comment: 'A file that nothing uses is dead, or not wired in yet.',
      severity: 'error',
      from: { orphan: true, path: '^src/', pathNot: '\\.d\\.ts$' },
      to: {},
    },
    {
      name: 'no-test-or-dev-code-in-src',
      comment: 'What ships must not need what is only installed for the work on it.',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^(tests|bench|fixtures)/' },
    },
    {
      name: 'not-to-dev-dependencies',
      comment: 'A fresh machine without dev dependencies must run the program.',
      severity: 'error',
      from: { path: '^src/' },
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    // Without it `import type` is not seen, and half the arrows with it.
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default'] },
  },
};
