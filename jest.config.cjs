/** @type {import('jest').Config} */
module.exports = {
  testEnvironment: 'node',
  // What Jest's context shares with the process stays whole.
  testEnvironmentOptions: { globalsCleanup: 'off' },
  roots: ['<rootDir>/src', '<rootDir>/test'],
  testMatch: ['**/*.spec.ts', '**/*.spec.tsx'],
  // Node loads the specs and what they import (docs/decisions/0045-node-loads-the-specs.md).
  runtime: '<rootDir>/test/runner/node-runtime.cjs',
  transform: {},
  testSequencer: '<rootDir>/test/runner/long-first.cjs',
  testTimeout: 60000,
  // What past files made stays in a worker's heap: a worker grown past this is ended and made anew.
  // With a limit named, jest runs no file in its own process, where none could be ended.
  workerIdleMemoryLimit: '1GB',
  maxWorkers: 2,
};
