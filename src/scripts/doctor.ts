/** `npm run doctor`: looks at all that the bot needs, a line each, and says what to do where something is wrong. */
import { type Finding, find, lineOf, wrong } from '../doctor/finding.ts';
import { type Environment, readEnvironment } from '../environment.ts';
import { messageOf } from '../problem.ts';

const findings = await examine();
for (const finding of findings) console.log(withoutToken(lineOf(finding)));
process.exitCode = findings.some(({ state }) => state === 'wrong') ? 1 : 0;

async function examine(): Promise<Finding[]> {
  let environment: Environment;
  try {
    environment = readEnvironment();
  } catch (problem) {
    return [await find('settings', () => wrong(messageOf(problem)))];
  }
  // Each is loaded when its turn comes: one that can't be loaded is a finding too.
  const parts: readonly (readonly [string, () => Promise<Finding[]>])[] = [
    ['machine', async () => (await import('../doctor/machine.ts')).examineMachine(environment)],
    ['store', async () => (await import('../doctor/store.ts')).examineDatabase(environment)],
    ['pictures', async () => (await import('../doctor/pictures.ts')).examinePictures(environment)],
    ['platform', async () => (await import('../doctor/platform.ts')).examinePlatform(environment)],
  ];
  const found: Finding[] = [];
  for (const [what, look] of parts) found.push(...(await lookSafely(what, look)));
  return found;
}

async function lookSafely(what: string, look: () => Promise<Finding[]>): Promise<Finding[]> {
  try {
    return await look();
  } catch (problem) {
    return [
      await find(what, () => {
        throw problem;
      }),
    ];
  }
}

/** Nothing that is looked at should say it; this makes sure. */
function withoutToken(line: string): string {
  const token = process.env.DISCORD_TOKEN ?? '';
  return token === '' ? line : line.replaceAll(token, '[token]');
}
