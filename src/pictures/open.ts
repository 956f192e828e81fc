/** Who draws, as the environment says. */
import type { Draw } from '../../shared/pictures/picture.ts';
import type { Environment } from '../environment.ts';
import type { Log } from '../log.ts';
import { draw } from './local.ts';
import { drawAt } from './quickchart.ts';

export function openDraw({ PICTURES, QUICKCHART_URL: url }: Environment, log: Log): Draw {
  return PICTURES === 'quickchart' && url !== undefined ? drawAt({ url, otherwise: draw, log }) : draw;
}
