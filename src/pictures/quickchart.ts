/** Lets a chart host of one's own draw; what it does not draw well and in time is drawn here. */
import { GROUND } from '../../shared/pictures/palette.ts';
import type { Draw, Picture } from '../../shared/pictures/picture.ts';
import type { Log } from '../log.ts';
import { forQuickChart } from './for-quickchart.ts';

const WITHIN_MS = 5000;
/** Many times what our pictures take. */
const MOST_BYTES = 4_000_000;
const DENSITY = 2;
/** A host that is down must not hold up each picture until it is found to be so. */
const FAILURES_IN_A_ROW = 3;
const REST_MS = 60_000;
const PNG = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);

export interface QuickChartOptions {
  /** The host's address: `http://localhost:3400`, with or without a path. */
  url: string;
  /** Draws what the host does not. */
  otherwise: Draw;
  log: Log;
  /** For the whole answer, 5 s if not told. */
  withinMs?: number;
  /** How long a host that failed again and again is left alone, a minute if not told. */
  restMs?: number;
}

/** The request's body. */
async function bodyOf(picture: Picture): Promise<string> {
  // Loaded for those alone who have a host of their own.
  const { default: quickChartModule } = await import('quickchart-js');
  // Its types describe another build of it: here the class itself is the module's default.
  const QuickChart = quickChartModule as unknown as typeof quickChartModule.default;
  const chart = new QuickChart()
    // As text: given as an object, a string in it that is marked as a function would be sent as code.
    .setConfig(JSON.stringify(forQuickChart(picture)))
    .setVersion('4')
    .setWidth(picture.width)
    .setHeight(picture.height)
    .setDevicePixelRatio(DENSITY)
    .setBackgroundColor(GROUND)
    .setFormat('png');
  return JSON.stringify(chart.getPostData());
}

/** The answer's bytes; stops reading, and lets go of the connection, where there are too many. */
async function bytesOf(body: AsyncIterable<Uint8Array>): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let size = 0;
  for await (const part of body) {
    size += part.length;
    if (size > MOST_BYTES) throw new Error(`more than ${MOST_BYTES} bytes`);
    parts.push(part);
  }
  return Buffer.concat(parts, size);
}

async function ask(url: URL, picture: Picture, withinMs: number): Promise<Uint8Array> {
  const answer = await fetch(url, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: await bodyOf(picture),
    // What is sent is for this host alone.
    redirect: 'error',
    signal: AbortSignal.timeout(withinMs),
  });
  if (!answer.ok || answer.body === null) {
    await answer.body?.cancel();
    // With a wrong chart, the host draws its complaint as a picture: the status alone tells.
    throw new Error(`status ${answer.status}`);
  }
  const bytes = await bytesOf(answer.body);
  if (!PNG.every((byte, at) => bytes[at] === byte)) throw new Error('no PNG');
  return bytes;
}

/** What fetch says is that it failed; why, its cause knows. */
function reasonOf(problem: unknown): string {
  if (!(problem instanceof Error)) return String(problem);
  const { message, cause } = problem;
  const code = cause instanceof Error && 'code' in cause ? ` (${String(cause.code)})` : '';
  return `${message}${code}`;
}

/** Draws at the host; a picture that fails there, in any way, is drawn by `otherwise`, with one line in the log. */
export function drawAt({
  url,
  otherwise,
  log,
  withinMs = WITHIN_MS,
  restMs = REST_MS,
}: QuickChartOptions): Draw {
  const chartUrl = new URL('chart', url.endsWith('/') ? url : `${url}/`);
  let failures = 0;
  let restUntil = Number.NEGATIVE_INFINITY;
  return async (picture) => {
    if (performance.now() < restUntil) return otherwise(picture);
    try {
      const bytes = await ask(chartUrl, picture, withinMs);
      failures = 0;
      return bytes;
    } catch (problem) {
      log.warn({ picture: picture.name, why: reasonOf(problem) }, 'the chart host failed: drawn here');
      failures += 1;
      if (failures >= FAILURES_IN_A_ROW) {
        failures = 0;
        restUntil = performance.now() + restMs;
        log.warn(
          { restMs, todo: 'look whether QUICKCHART_URL is right and the host is up' },
          'the chart host failed again and again: left alone for a while',
        );
      }
      return otherwise(picture);
    }
  };
}
