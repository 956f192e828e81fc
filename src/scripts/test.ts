/** `npm test`: types, formatting and lint, then all tests; the last line is `N passed, N failed`. `--long` runs the long ones. */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const long = process.argv.includes('--long');
const report = join(tmpdir(), `trimtally-tests-${process.pid}.json`);

const STEPS: readonly (readonly [string, readonly string[]])[] = long
  ? []
  : [
      ['tsc', ['-p', '.']],
      ['biome', ['check', '.']],
    ];

let passed = 0;
let failed = 0;

for (const [command, parameters] of STEPS) {
  if (run(command, parameters)) passed += 1;
  else failed += 1;
}

const suite = long ? ['--config', 'vitest.long.config.ts'] : [];
const ran = run('vitest', [
  'run',
  ...suite,
  '--reporter=default',
  '--reporter=json',
  `--outputFile=${report}`,
]);
const counts = readCounts();
passed += counts.passed;
// A suite that broke before its tests is a failure too, though it counts none.
failed += counts.failed + (!ran && counts.failed === 0 ? 1 : 0);

console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;

function run(command: string, parameters: readonly string[]): boolean {
  console.log(`> ${command} ${parameters.join(' ')}`);
  return spawnSync(join('node_modules', '.bin', command), parameters, { stdio: 'inherit' }).status === 0;
}

function readCounts(): { passed: number; failed: number } {
  try {
    const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report, 'utf8'));
    return { passed: Number(numPassedTests), failed: Number(numFailedTests) };
  } catch {
    return { passed: 0, failed: 0 };
  } finally {
    rmSync(report, { force: true });
  }
}
