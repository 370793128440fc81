// What lint forbids. Run by `npm run check`; each ban is proven by tests/checks/lint.test.ts.
import js from '@eslint/js';
import tseslint from 'typescript-eslint';

/** Time and chance are inputs: whoever computes gets them handed in. */
const clockAndChance = [
  { selector: "MemberExpression[object.name='Date'][property.name='now']", message: 'Time is an input: no Date.now here.' },
  {
    selector: "MemberExpression[object.name='Math'][property.name='random']",
    message: 'Chance is an input: no Math.random here.',
  },
  { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'Time is an input: no empty new Date() here.' },
  { selector: "CallExpression[callee.name='Date']", message: 'Time is an input: no Date() here.' },
  {
    selector: "MemberExpression[object.name='performance'][property.name='now']",
    message: 'Time is an input: no performance.now here.',
  },
  {
    selector: "MemberExpression[object.property.name='Now'], MemberExpression[property.name='Now']",
    message: 'Time is an input: no Temporal.Now here.',
  },
  { selector: "MemberExpression[object.name='crypto']", message: 'Chance is an input: no crypto here.' },
];

const namedOnly = [
  { selector: 'ExportDefaultDeclaration', message: 'Named exports only.' },
  { selector: "ExportSpecifier[exported.name='default']", message: 'Named exports only.' },
];

/** Folders that compute and must give the same bytes for the same input. */
const pure = ['shared/**/*.ts', 'src/engine/**/*.ts', 'src/planner/**/*.ts', 'src/reports/**/*.ts'];

/** Tools that insist on a default export. */
const configurations = [
  'electron.vite.config.ts',
  'tests/vitest.config.ts',
  'tests/closing-line.ts',
  '.eslint.config.js',
  '.dependency-cruiser.cjs',
];

export default tseslint.config(
  { ignores: ['node_modules', 'out', 'dist', 'demo-output', 'tests/.output'] },
  js.configs.recommended,
  ...tseslint.configs.recommended,
  {
    files: ['**/*.{ts,tsx,js,cjs}'],
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      eqeqeq: 'error',
      'no-eval': 'error',
      'no-implied-eval': 'error',
      'no-new-func': 'error',
      'prefer-const': 'error',
      'no-var': 'error',
      'no-undef': 'off',
      // A defined constant is written with all its digits.
      'no-loss-of-precision': 'off',
      // Files from outside are searched for control characters on purpose.
      'no-control-regex': 'off',
      'no-restricted-syntax': ['error', ...namedOnly],
      // `!` after an index is the project's way to say "in range by construction".
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true },
      ],
      '@typescript-eslint/consistent-type-imports': [
        'error',
        { fixStyle: 'separate-type-imports', disallowTypeAnnotations: false },
      ],
      '@typescript-eslint/no-empty-object-type': ['error', { allowInterfaces: 'with-single-extends' }],
    },
  },
  { files: pure, rules: { 'no-restricted-syntax': ['error', ...namedOnly, ...clockAndChance], 'no-console': 'error' } },
  {
    // A promise that nobody waits for loses its failure. Needs types, so only where promises live.
    files: ['src/{application,services,store,platform,main,preload,web-host,cli}/**/*.ts'],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': 'error',
      '@typescript-eslint/await-thenable': 'error',
    },
  },
  {
    files: ['src/renderer/**/*.{ts,tsx}'],
    languageOptions: { parserOptions: { projectService: true } },
    rules: { '@typescript-eslint/no-floating-promises': 'error' },
  },
  { files: ['**/*.cjs'], rules: { '@typescript-eslint/no-require-imports': 'off' } },
  { files: configurations, rules: { 'no-restricted-syntax': 'off' } },
);
