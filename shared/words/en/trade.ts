/** What cuts, grades and styles are called. */
import type { Show } from '../../measure/show.ts';
import type { Units } from '../../measure/units.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { Bone, CutKey, StyleKey, Wrap } from '../../trade/keys.ts';
import { short } from './counts.ts';
import { gradeName } from './names.ts';

const STYLES: Readonly<Record<string, string>> = {
  'brisket/thick': 'fat over 1/4 in (6 mm)',
  'brisket/quarter': 'fat 1/4 in (6 mm)',
  'brisket/thin': 'fat 1/8 in (3 mm) or less',
  'butt/as-bought': 'as bought',
  'butt/cap-off': 'fat cap off',
  'butt/squared': 'squared for contest',
  'ribs/membrane': 'membrane only',
  'ribs/squared': 'squared',
  'ribs/bare': 'squared and bare',
};

export const BONES: Record<Bone, string> = { in: 'bone in', out: 'boneless' };
const WRAPS: Record<Wrap, string> = { none: 'unwrapped', paper: 'paper', foil: 'foil', boat: 'boat' };

export const trade = (show: Show) => ({
  cut: (key: CutKey) => cutOf(key).name,
  grade: gradeName,
  style: (key: StyleKey) => STYLES[key] ?? key,
  bone: (bone: Bone) => BONES[bone],
  wrap: (wrap: Wrap) => WRAPS[wrap],
  /** A band of weights, in its own unit. */
  band: ({ low, high, unit }: { low: number; high: number; unit: Units }) =>
    `${short(show, low)} to ${short(show, high)} ${unit}`,
  notTold: () => 'not told',
});
