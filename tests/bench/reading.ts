/** Reading a weight, beside a bare regular expression that reads only one form of it. */
import { readWeight } from '../../shared/measure/weight.ts';
import { median, milliseconds } from './measure.ts';
import type { Row } from './table.ts';

const TEXTS = ['14.83 lb', '2 lb 9.4 oz', '2:9.4', '6720 g', '14 3/4 lb', '8.41 lb + 7.96 lb'];
const PLAIN = /^(\d+(?:\.\d+)?)\s*(lb|kg|g|oz)$/;
const TOGETHER = 120;

export async function reading(): Promise<Row> {
  const reader = {
    option: 'trim',
    units: 'lb',
    decimals: 'decimal',
    decimalMark: '.',
    pans: new Map(),
  } as const;
  const each = async (work: (text: string) => unknown) => {
    const took = await median(300, () => {
      for (let index = 0; index < TOGETHER; index++) work(TEXTS[index % TEXTS.length] ?? '');
    });
    return milliseconds(took / TOGETHER);
  };
  return {
    what: 'reading a weight',
    figure: await each((text) => readWeight(text, reader)),
    beside: `a bare pattern and Number: ${await each((text) => Number(PLAIN.exec(text)?.[1]))}`,
  };
}
