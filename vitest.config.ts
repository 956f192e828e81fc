import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/properties.ts'],
    pool: 'forks',
    // All cores: on two, the default would leave one idle.
    maxWorkers: '100%',
    testTimeout: 20_000,
    // What comes a moment later comes later still on a busy machine.
    expect: { poll: { timeout: 10_000, interval: 20 } },
  },
});
