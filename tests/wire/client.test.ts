/** What the library keeps: it serves thousands of servers, and nobody here looks at their channels and roles. */
import { once } from 'node:events';
import { Events } from 'discord.js';
import { expect, test } from 'vitest';
import { createClient } from '../../src/discord/client.ts';
import { SILENT } from '../../src/log.ts';
import { openStandIn } from './stand-in.ts';

test('of a server its number alone, also of one that it joins later', async () => {
  const platform = await openStandIn();
  const first = platform.addClub();
  const client = createClient(platform.apiUrl, SILENT);
  const kept = () => ({
    servers: client.guilds.cache.map(({ id }) => id),
    channels: client.channels.cache.size,
    roles: client.guilds.cache.reduce((sum, { roles }) => sum + roles.cache.size, 0),
  });
  const ready = once(client, Events.ClientReady);
  await client.login(platform.token);
  await ready;
  expect(kept()).toEqual({ servers: [first.id], channels: 0, roles: 0 });
  const joined = once(client, Events.GuildCreate);
  const second = platform.addClub();
  await joined;
  expect(kept()).toEqual({ servers: [first.id, second.id], channels: 0, roles: 0 });
  await client.destroy();
  await platform.close();
});
