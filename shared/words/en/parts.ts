/** What the weights of a piece are called, as a member reads them. */
import type { WeightName } from '../../yield/piece.ts';

export const PARTS: Record<WeightName, string> = {
  bought: 'bought',
  bagged: 'out of the bag',
  trim: 'came off',
  left: 'left to cook',
  added: 'put in',
  cooked: 'off the heat',
  scraps: 'thrown away',
  served: 'on the plate',
};
