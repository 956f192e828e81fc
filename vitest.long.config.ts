import { defineConfig } from 'vitest/config';

/** What measures the bot's times has the machine to itself, once all others are done. */
const ALONE = ['tests/wire/load.long.ts'];

const common = {
  pool: 'forks',
  // All cores: on two, the default would leave one idle.
  maxWorkers: '100%',
  testTimeout: 300_000,
  hookTimeout: 60_000,
  expect: { poll: { timeout: 10_000, interval: 20 } },
} as const;

/** Faults, load and fuzz: minutes rather than seconds. */
export default defineConfig({
  test: {
    globalSetup: ['tests/compiled.ts'],
    projects: [
      { test: { ...common, name: 'beside', include: ['tests/**/*.long.ts'], exclude: ALONE } },
      { test: { ...common, name: 'alone', include: ALONE, sequence: { groupOrder: 1 } } },
    ],
  },
});
