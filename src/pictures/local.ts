/** Draws pictures on this machine: nothing leaves it. */
import { type Canvas, createCanvas } from '@napi-rs/canvas';
import {
  BarController,
  BarElement,
  CategoryScale,
  Chart,
  type ChartConfiguration,
  Filler,
  LinearScale,
  LineElement,
  PointElement,
  ScatterController,
} from 'chart.js';
import type { Note } from '../../shared/pictures/notes.ts';
import type { Draw, Picture } from '../../shared/pictures/picture.ts';
import { messageOf } from '../problem.ts';
import { loadFonts } from './fonts.ts';
import { notesPlugin, placedNotes } from './notes.ts';
import type { PlacedLine } from './placement.ts';
import { encodePng } from './png.ts';

// Only what our pictures use; and at once, so that a missing font stops the start and not the first picture.
Chart.register(
  BarController,
  BarElement,
  CategoryScale,
  Filler,
  LinearScale,
  LineElement,
  PointElement,
  ScatterController,
);
loadFonts();

/** Phones show a picture at two pixels or more to a layout pixel. */
const DENSITY = 2;

type ChartItem = ConstructorParameters<typeof Chart>[0];

/** What the picture's data say; drawn by Chart.js, which writes into what it is given. */
function configOf({ config }: Picture): { chart: ChartConfiguration; notes: readonly Note[] } {
  const chart = structuredClone(config) as unknown as ChartConfiguration & {
    options?: { plugins?: { notes?: readonly Note[] } };
  };
  return { chart, notes: chart.options?.plugins?.notes ?? [] };
}

/** Draws the picture, lets `use` look at it, and clears away in any case. */
async function drawn<Result>(
  picture: Picture,
  use: (canvas: Canvas, chart: Chart, notes: readonly Note[]) => Result | Promise<Result>,
): Promise<Result> {
  const canvas = createCanvas(picture.width, picture.height);
  // Chart.js knows the canvas of a browser; this one has all that it asks of it.
  const item = canvas as unknown as ChartItem;
  try {
    const { chart: config, notes } = configOf(picture);
    const chart = new Chart(item, {
      ...config,
      options: { ...config.options, responsive: false, animation: false, devicePixelRatio: DENSITY },
      plugins: [notesPlugin(notes)],
    });
    return await use(canvas, chart, notes);
  } catch (cause) {
    throw new Error(`The picture "${picture.name}" could not be drawn: ${messageOf(cause)}`, { cause });
  } finally {
    // Also after a chart that threw half-way, which is known to Chart.js all the same.
    Chart.getChart(item as Parameters<typeof Chart.getChart>[0])?.destroy();
    // Its pixels, some 6 MB, are no weight to the garbage collector: a dozen of them would wait for it.
    canvas.width = 0;
  }
}

/** Draws a picture as PNG at double density. One that can't be drawn rejects with an error that names it. */
export const draw: Draw = (picture) =>
  drawn(picture, (canvas) => encodePng(canvas.data(), canvas.width, canvas.height));

/** Where the texts of a picture come to stand, in layout pixels. */
export const layOut = (picture: Picture): Promise<readonly PlacedLine[]> =>
  drawn(picture, (_canvas, chart, notes) => placedNotes(chart, notes));
