import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/compiled.ts'],
    setupFiles: ['tests/properties.ts'],
    pool: 'forks',
    // Modules are loaded once a worker instead of once a file: none of ours holds anything that a test changes.
    isolate: false,
    // All cores: on two, the default would leave one idle.
    maxWorkers: '100%',
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // What comes a moment later comes later still on a busy machine.
    expect: { poll: { timeout: 10_000, interval: 20 } },
  },
});
