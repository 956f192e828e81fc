import { defineConfig } from 'vitest/config';

/** Faults, load and fuzz: minutes rather than seconds. */
export default defineConfig({
  test: {
    include: ['tests/**/*.long.ts'],
    pool: 'forks',
    // All cores: on two, the default would leave one idle.
    maxWorkers: '100%',
    testTimeout: 300_000,
    expect: { poll: { timeout: 10_000, interval: 20 } },
  },
});
