/** What the heaviest pictures cost, on their thread: beside a bare canvas of the same size. */
import { createCanvas } from '@napi-rs/canvas';
import type { Picture } from '../../shared/pictures/picture.ts';
import { SILENT } from '../../src/log.ts';
import { drawElsewhere } from '../../src/pictures/elsewhere.ts';
import type { BenchClub } from './clubs.ts';
import type { Counter } from './counter.ts';
import { median, milliseconds, percentile, spread, timed, watched } from './measure.ts';
import type { Question } from './questions.ts';
import type { Row } from './table.ts';

const RUNS = 12;
const UNDER_MS = 200;
const HELD_UNDER_MS = 25;
/** Those with the most marks, texts or rows. */
const HEAVIEST = /^\/(?:average by (?:member|month)|board plate|debate \w+|piece show)$/;

export async function drawing(
  counter: Counter,
  club: BenchClub,
  member: string,
  questions: readonly Question[],
): Promise<Row[]> {
  const draw = drawElsewhere({ log: SILENT });
  const rows: Row[] = [];
  let longest = 0;
  for (const question of questions.filter(({ name }) => HEAVIEST.test(name))) {
    const { picture } = await counter.ask(club, member, question);
    if (picture === undefined) continue;
    await draw(picture);
    let times: Float64Array = new Float64Array();
    const { held } = await watched(async () => {
      times = await timed(RUNS, () => draw(picture));
    });
    longest = Math.max(longest, held);
    rows.push({
      what: `the picture of ${question.name}, ${marksOf(picture)} marks`,
      figure: spread(times),
      target: { is: percentile(times, 0.99), under: UNDER_MS, unit: 'ms' },
      beside: `an empty canvas, encoded: ${milliseconds(await emptyCanvas(picture))}`,
    });
  }
  rows.push({
    what: 'event loop held while pictures are drawn',
    figure: milliseconds(longest),
    target: { is: longest, under: HELD_UNDER_MS, unit: 'ms' },
    beside: `${RUNS} of each`,
  });
  return rows;
}

/** Points and bars that its data tell. */
function marksOf({ config }: Picture): number {
  const { datasets } = config.data as unknown as { datasets: { data: unknown[] }[] };
  return datasets.reduce((sum, { data }) => sum + data.length, 0);
}

function emptyCanvas({ width, height }: Picture): Promise<number> {
  return median(RUNS, () => {
    const canvas = createCanvas(2 * width, 2 * height);
    canvas.getContext('2d').fillRect(0, 0, width, height);
    return canvas.encode('png');
  });
}
