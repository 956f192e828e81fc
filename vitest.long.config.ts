import { defineConfig } from 'vitest/config';

/** Faults, load and fuzz: minutes rather than seconds. */
export default defineConfig({
  test: {
    include: ['tests/**/*.long.ts'],
    pool: 'forks',
    testTimeout: 300_000,
  },
});
