import tseslint from 'typescript-eslint';

/** The language's own rules, type-checked and strict; what is switched off says why. */
export default tseslint.config(
  { ignores: ['dist/', 'coverage/', 'node_modules/', 'data/', '**/*.cjs', 'eslint.config.js'] },
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      // Nest modules are classes that hold nothing but their decorator.
      '@typescript-eslint/no-extraneous-class': ['error', { allowWithDecorator: true }],
      // A number in a sentence or a key is plain; everything else must be made text on purpose.
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // Interfaces of several databases and of Nest are asynchronous even where one answer is at once.
      '@typescript-eslint/require-await': 'off',
      'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
      // Functions take four at most (a review's matter); a constructor lists what its class is given.
      'max-params': ['error', 5],
      // The caller of a reader knows the shape of the rows it asks for.
      '@typescript-eslint/no-unnecessary-type-parameters': 'off',
      // Entities are rows without methods: they may be written as literals and spread.
      '@typescript-eslint/no-unsafe-class-instance-assignment': 'off',
      '@typescript-eslint/no-misused-spread': 'off',
      'max-depth': ['error', 3],
      'no-restricted-syntax': [
        'error',
        { selector: 'TSEnumDeclaration', message: 'Use a union of literals (as const).' },
        { selector: 'ExportDefaultDeclaration', message: 'Export by name.' },
        { selector: 'ExportAllDeclaration', message: 'No barrels: import from where it is written.' },
      ],
    },
  },
  {
    // Constructors list what a class is given; a test file's describe holds many cases; pages are long in markup.
    files: ['**/*.spec.ts', '**/*.spec.tsx', 'test/**', 'bench/**'],
    rules: { 'max-lines-per-function': 'off', '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  {
    // Browser modules have their own libraries: the page's, and the service worker's.
    files: ['src/platform/web/client/**'],
    languageOptions: {
      parserOptions: { projectService: false, project: ['./tsconfig.client.json', './tsconfig.worker.json'] },
    },
  },
  {
    files: ['migrations/**', '**/*.page.tsx'],
    rules: { 'max-lines-per-function': 'off' },
  },
);
