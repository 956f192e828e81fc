/** What is promised of the statistics, on more clubs than in every run of the tests; `npm run calibrate` draws thousands. */
import { expectLines } from './expect-lines.ts';

expectLines(50_000);
