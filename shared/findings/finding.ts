/**
 * What a club's pieces say. Each finding is a pure function of rows and of what was asked, and its result is plain data:
 * so it can be kept until the cut is written to, and computed off the thread that answers.
 */
import type { Columns } from '../club/columns.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Measure } from '../yield/measure.ts';

/** What every finding is about. */
export interface About {
  /** Null: all cuts. */
  cut: CutKey | null;
  measure: Measure;
  /** Another measure of the same pieces that is looked at besides. */
  also?: Measure;
}

/** The rows of a cut and a measure, unsifted. */
export interface Looked {
  plain: Columns;
  /** Pieces that took up brine, where the measure sets them apart; null where it does not. */
  injected: Columns | null;
  /** The rows of the other measure that was asked for, without pieces that took up brine where it sets them apart. */
  also?: Columns | null;
}
