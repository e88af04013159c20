/** @type {import('jest').Config} */
module.exports = {
  testEnvironment: 'node',
  roots: ['<rootDir>/src', '<rootDir>/test'],
  testMatch: ['**/*.spec.ts', '**/*.spec.tsx'],
  setupFiles: ['reflect-metadata'],
  extensionsToTreatAsEsm: ['.ts', '.tsx'],
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': '$1' },
  testTimeout: 60000,
  // Module graphs of past files stay in a worker's heap: a worker grown past this is ended and made anew.
  // With a limit named, jest runs no file in its own process, where none could be ended.
  workerIdleMemoryLimit: '1GB',
  maxWorkers: 2,
  transform: {
    '^.+\\.tsx?$': [
      '@swc/jest',
      {
        jsc: {
          parser: { syntax: 'typescript', tsx: true, decorators: true },
          target: 'es2023',
          keepClassNames: true,
          transform: {
            react: { runtime: 'automatic', importSource: 'preact' },
            legacyDecorator: true,
            decoratorMetadata: true,
          },
        },
        module: { type: 'es6' },
      },
    ],
  },
};
