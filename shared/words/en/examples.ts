/** Weights and prices to copy, as this reader would write them. They are made up. */
import { decimalMark, type Show } from '../../measure/show.ts';

/** By unit; the point stands for the reader's own decimal mark. */
const EXAMPLES = {
  lb: {
    bought: '14.83 lb',
    trim: '2 lb 9.4 oz',
    cooked: '7 lb 11 oz',
    scraps: '12 oz',
    price: '4.99/lb',
    gross: '3 lb 2 oz',
    pan: '14.2 oz',
    saved: 'tallow 1 lb 2 oz @3, grind 12 oz',
    parts: 'fat 1 lb 9 oz, short ribs 1 lb @4.60',
    portion: '5 oz',
    label: '14.2 lb @ 5.49 choice',
  },
  kg: {
    bought: '6.72 kg',
    trim: '1180 g',
    cooked: '3.49 kg',
    scraps: '340 g',
    price: '11.95/kg',
    gross: '1420 g',
    pan: '402 g',
    saved: 'tallow 500 g @6.50, grind 340 g',
    parts: 'fat 730 g, short ribs 450 g @9.80',
    portion: '150 g',
    label: '6.4 kg @ 12.10 choice',
  },
} as const;

export type Example = keyof (typeof EXAMPLES)['lb'];

/** @example example(show, 'bought') // `14.83 lb`, or `6,72 kg` */
export const example = ({ form }: Show, what: Example): string =>
  EXAMPLES[form.units][what].replaceAll('.', decimalMark(form.locale));
