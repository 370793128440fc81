// Who may import whom. Imports point down only; `npm run check` enforces it, type-only imports too.
// Each rule is proven by tests/checks/layers.test.ts, which breaks it.

/** What each folder may see besides itself, of ours (first list) and of the libraries (second). Null: any library of package.json. */
const layers = {
  shared: { from: '^shared/', ours: [], libraries: ['zod', 'temporal-polyfill', 'temporal-spec', 'temporal-utils'], node: false },
  engine: {
    from: '^src/engine/',
    ours: ['^shared/'],
    libraries: ['astronomy-engine', 'polyclip-ts', 'temporal-polyfill', 'temporal-spec'],
    node: false,
  },
  planner: { from: '^src/planner/', ours: ['^shared/'], libraries: ['temporal-polyfill', 'temporal-spec'], node: false },
  reports: {
    from: '^src/reports/',
    ours: ['^shared/'],
    libraries: ['pdfkit', 'fontkit', 'csv-stringify', 'csv-parse', 'ical-generator', 'temporal-polyfill', '@fontsource'],
    node: true,
  },
  migrations: { from: '^migrations/', ours: [], libraries: ['kysely'], node: false },
  services: {
    from: '^src/services/',
    ours: ['^shared/', '^src/(engine|planner|reports)/', '^src/store/store[.]ts$'],
    libraries: null,
    node: true,
  },
  store: {
    from: '^src/store/',
    ours: ['^shared/', '^src/(engine|planner|reports)/', '^migrations/', '^src/services/needs[.]ts$'],
    libraries: null,
    node: true,
  },
  platform: {
    from: '^src/platform/',
    ours: ['^shared/', '^src/(engine|planner|reports)/', '^src/services/needs[.]ts$', '^src/store/store[.]ts$'],
    libraries: null,
    node: true,
  },
  application: {
    from: '^src/application/',
    ours: ['^shared/', '^src/(engine|planner|reports|services|store|platform)/', '^migrations/', '^resources/'],
    libraries: null,
    node: true,
  },
  main: { from: '^src/main/', ours: ['^shared/', '^src/(application|platform)/'], libraries: ['electron'], node: true },
  'web-host': { from: '^src/web-host/', ours: ['^shared/', '^src/(application|platform)/'], libraries: [], node: true },
  cli: { from: '^src/cli/', ours: ['^shared/', '^src/(application|platform)/'], libraries: ['zod'], node: true },
  preload: { from: '^src/preload/', ours: ['^shared/contract/'], libraries: ['electron'], node: false },
  renderer: { from: '^src/renderer/', ours: ['^shared/'], libraries: null, node: false },
  packaging: { from: '^src/packaging/', ours: ['^package[.]json$'], libraries: [], node: true },
  bootstrap: { from: '^src/bootstrap/', ours: [], libraries: [], node: true },
};

const package_ = (name) => `(^|/)node_modules/${name.replace('/', '[/]')}(/|$)`;

const forbidden = Object.entries(layers).flatMap(([name, { from, ours, libraries, node }]) => {
  const rules = [
    {
      name: `${name}-looks-down`,
      comment: `${from} may import ${ours.length === 0 ? 'nothing of ours but itself' : `itself and ${ours.join(' ')}`}`,
      severity: 'error',
      from: { path: from },
      to: { path: '^(shared|src|migrations|tests|resources)/', pathNot: [from, ...ours] },
    },
  ];
  if (!node)
    rules.push({
      name: `${name}-without-node`,
      comment: `${from} must not use a Node API`,
      severity: 'error',
      from: { path: from },
      to: { dependencyTypes: ['core'] },
    });
  if (libraries !== null)
    rules.push({
      name: `${name}-libraries`,
      comment: `${from} may use ${libraries.join(', ') || 'no library'}`,
      severity: 'error',
      from: { path: from },
      to: { path: '(^|/)node_modules/', pathNot: libraries.map(package_) },
    });
  return rules;
});

module.exports = {
  forbidden: [
    ...forbidden,
    { name: 'no-cycles', comment: 'no import leads back to where it began', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'no-missing-file',
      comment: 'every import leads to a file or a library',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'no-libraries-for-work-only',
      comment: 'what ships does not need a library that is only there for building and testing',
      severity: 'error',
      from: { path: '^(shared|src|migrations)/' },
      to: {
        dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'],
        dependencyTypesNot: ['type-only'],
        pathNot: [package_('electron'), package_('vite')],
      },
    },
    {
      name: 'database-in-the-store-only',
      comment: 'SQLite and its query builder are known to the store and the migrations alone',
      severity: 'error',
      from: { path: '^(shared|src)/', pathNot: '^src/store/' },
      to: { path: [package_('better-sqlite3'), package_('kysely')] },
    },
    {
      name: 'pages-in-the-renderer-only',
      comment: 'React and drawing libraries are known to the renderer alone',
      severity: 'error',
      from: { path: '^(shared|src|migrations)/', pathNot: '^src/renderer/' },
      to: { path: [package_('react'), package_('react-dom'), package_('recharts')] },
    },
  ],
  options: {
    doNotFollow: { path: '(^|/)node_modules/' },
    exclude: { path: '^(out|dist|demo-output)/' },
    tsPreCompilationDeps: true,
    moduleSystems: ['es6', 'cjs'],
    enhancedResolveOptions: {
      extensions: ['.ts', '.tsx', '.js', '.cjs', '.json'],
      conditionNames: ['import', 'node', 'default', 'types'],
      exportsFields: ['exports'],
    },
  },
};
