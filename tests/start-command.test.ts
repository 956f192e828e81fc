import { expect, test } from 'vitest';
import { atTop } from './at-top.ts';
import { HOST_ENVIRONMENT, NODE_FLAGS } from './start-command.ts';

test('the bot starts the same way by npm, in a container and as a service', () => {
  expect(NODE_FLAGS.length).toBeGreaterThan(0);
  const program = [...NODE_FLAGS, '.build/src/main.js'];
  expect(atTop('Dockerfile')).toContain(`CMD ${JSON.stringify(['node', ...program]).replaceAll(',', ', ')}`);
  expect(atTop('deploy/trimtally.service')).toContain(`ExecStart=/usr/bin/node ${program.join(' ')}\n`);
});

test.each(Object.entries(HOST_ENVIRONMENT))('a container and the service set %s', (name, value) => {
  expect(atTop('Dockerfile')).toContain(`ENV ${name}=${value}\n`);
  expect(atTop('deploy/trimtally.service')).toContain(`Environment=${name}=${value}\n`);
});
