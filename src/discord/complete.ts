/** Completing an option while it is typed: quick, or not at all. */
import { setTimeout as wait } from 'node:timers/promises';
import type { AutocompleteInteraction } from 'discord.js';
import type { Choice, Desk } from '../../shared/chat/request.ts';
import type { Log } from '../log.ts';
import { clip } from '../text/clip.ts';
import { completionOf, sceneOf } from './ask.ts';
import { isTooLate } from './give-up.ts';
import { LIMITS } from './limits.ts';

/** The platform takes completions for three seconds; a typist looks for less. */
const PATIENCE_MS = 2000;

/** Answers with what the desk offers; with nothing where it fails or takes too long. Does not throw. */
export async function complete(
  interaction: AutocompleteInteraction,
  { desk, log, now }: { desk: Pick<Desk, 'complete'>; log: Log; now: number },
): Promise<void> {
  const facts = { interaction: interaction.id, club: interaction.guildId };
  const scene = sceneOf(interaction, now);
  const done = new AbortController();
  const late = wait(PATIENCE_MS, [], { signal: done.signal }).catch(() => []);
  let offered: readonly Choice[] = [];
  try {
    if (scene) offered = await Promise.race([desk.complete(completionOf(interaction, scene)), late]);
  } catch (error) {
    log.error({ ...facts, err: error }, 'could not complete');
  }
  done.abort();
  // A value that is cut would be another value.
  const choices = offered
    .filter(({ label, value }) => label !== '' && value !== '' && value.length <= LIMITS.optionChoice)
    .slice(0, LIMITS.completions)
    .map(({ label, value }) => ({ name: clip(label, LIMITS.optionChoice), value }));
  try {
    await interaction.respond(choices);
  } catch (error) {
    if (isTooLate(error)) log.info({ ...facts, code: error.code }, 'typed on before it was completed');
    else log.error({ ...facts, err: error }, 'could not send completions');
  }
}
