/** Drawing belongs to the work of an answer, but an answer never waits for it for long, nor fails with it. */
import type { Picture } from '../../shared/pictures/picture.ts';
import type { Log } from '../log.ts';
import type { DrawInTurn } from '../pictures/turns.ts';
import type { Drawn } from './render.ts';

export interface Drawing {
  draw: DrawInTurn;
  /** After this many milliseconds the text stays alone. */
  withinMs: number;
  log: Log;
}

/** Draws the pictures of a message; one that fails or takes too long is written down and missing in what is returned. */
export async function drawAll(pictures: readonly Picture[], drawing: Drawing): Promise<Drawn> {
  const drawn = new Map<Picture, Uint8Array>();
  await Promise.all(
    pictures.map(async (picture) => {
      const bytes = await drawInTime(picture, drawing);
      if (bytes) drawn.set(picture, bytes);
    }),
  );
  return drawn;
}

async function drawInTime(picture: Picture, { draw, withinMs, log }: Drawing): Promise<Uint8Array | null> {
  const over = new AbortController();
  const late = new Promise<null>((resolve) => over.signal.addEventListener('abort', () => resolve(null)));
  const timer = setTimeout(() => over.abort(), withinMs);
  try {
    const bytes = await Promise.race([late, draw(picture, over.signal)]);
    if (!bytes) log.warn({ picture: picture.name, withinMs }, 'a picture took too long: the text went alone');
    return bytes;
  } catch (error) {
    log.error({ picture: picture.name, err: error }, 'a picture could not be drawn: the text went alone');
    return null;
  } finally {
    clearTimeout(timer);
  }
}
