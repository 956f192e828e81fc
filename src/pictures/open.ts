/** Who draws, as the environment says. */
import type { Draw } from '../../shared/pictures/picture.ts';
import type { Environment } from '../environment.ts';
import type { Log } from '../log.ts';
import { drawElsewhere } from './elsewhere.ts';
import { drawAt } from './quickchart.ts';

export function openDraw({ PICTURES, QUICKCHART_URL: url }: Environment, log: Log): Draw {
  const draw = drawElsewhere({ log });
  return PICTURES === 'quickchart' && url !== undefined ? drawAt({ url, otherwise: draw, log }) : draw;
}
