/** Which folder may import which. Arrows run one way; see ARCHITECTURE.md. */
const mayUse = {
  engine: [],
  sheets: ['engine'],
  documents: ['engine', 'sheets'],
  intake: ['engine'],
  store: ['engine'],
  examples: ['engine'],
  kernels: ['engine'],
  server: ['engine', 'sheets', 'documents', 'store', 'intake', 'examples', 'kernels'],
  cli: ['engine', 'sheets', 'documents', 'store', 'intake', 'examples', 'kernels', 'server'],
  web: ['engine', 'sheets'],
};
/** Pure libraries that the engine may import: schemas, expressions, calendar, linear programs. */
const enginePackages = ['zod', '@marcbachmann/cel-js', 'temporal-polyfill', 'yalps'];
const layers = Object.keys(mayUse);
const others = (layer) => layers.filter((l) => l !== layer && !mayUse[layer].includes(l)).join('|');
const error = (name, from, to) => ({ name, severity: 'error', from, to });
const test = '[.]test[.]tsx?$|/testing/';
module.exports = {
  forbidden: [
    error('no-cycles', {}, { circular: true }),
    ...layers
      .filter(others)
      .map((l) => error(`${l}-uses-only-what-it-may`, { path: `^${l}/`, pathNot: test }, { path: `^(${others(l)})/` })),
    error(
      'engine-is-pure',
      { path: '^engine/', pathNot: test },
      {
        dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'npm-no-pkg', 'core'],
        pathNot: enginePackages.map((p) => `node_modules/${p}/`),
      },
    ),
    error(
      'engine-folders-meet-at-their-index',
      { path: '^engine/([^/]+)/', pathNot: test },
      { path: '^engine/([^/]+)/(?!index[.]ts$)', pathNot: ['^engine/$1/', '^engine/foundation/'] },
    ),
    error(
      'outside-sees-only-the-engine-face',
      { path: '^(sheets|documents|intake|store|kernels|server|cli|web)/', pathNot: test },
      { path: '^engine/', pathNot: '^engine/index[.]ts$' },
    ),
    error('unresolved', { pathNot: test }, { couldNotResolve: true, pathNot: '^(node:|virtual:)' }),
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'types', 'default'],
    },
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^dist/' },
  },
};
