/** One's own pieces in words: shown, listed, mended, taken back. */
import type { CalendarDay } from '../../measure/day.ts';
import type { Show } from '../../measure/show.ts';
import type { Nanograms } from '../../measure/units.ts';
import type { CutKey, GradeKey } from '../../trade/keys.ts';
import type { Measure } from '../../yield/measure.ts';
import type { WeightName } from '../../yield/piece.ts';
import { quote } from '../quote.ts';
import { pieces as counted } from './counts.ts';
import { gradeName, inside } from './names.ts';
import { PARTS } from './parts.ts';

/** What is compared: losing less is the better side of each. */
const LOST_LESS: Record<Measure, string> = {
  trim: 'It lost less to the knife than',
  cooking: 'It lost less in the heat than',
  carving: 'It lost less at the board than',
  plate: 'More of it got to the plate than of',
};

export const pieces = (show: Show) => ({
  place: ({
    measure,
    lostMore,
    others,
    cut,
    grade,
  }: {
    measure: Measure;
    lostMore: number;
    others: number;
    cut: CutKey;
    grade: GradeKey | null;
  }) =>
    `${LOST_LESS[measure]} ${show.count(lostMore)} of the ${show.count(others)} other ${grade === null ? '' : `${gradeName(grade)} `}${inside(cut)} pieces here.`,
  bothAverages: ({ mean, pooled }: { mean: number; pooled: number }) =>
    `The club: ${show.share(mean)} of the average piece, ${show.oneDecimal(pooled * 100)} of every 100 ${show.form.units}.`,
  /** Said to everyone, with the manager's reason. */
  setAside: ({ why }: { why: string | null }) =>
    `Set aside by a manager${why === null ? '' : `: ${quote(why)}`}. It is kept, but in no figure.`,
  listAside: ({ pieces }: { pieces: readonly { seq: number; why: string | null }[] }) =>
    `Set aside by a manager, in no figure: ${pieces.map(({ seq, why }) => `~~${show.count(seq)}~~${why === null ? '' : ` ${quote(why)}`}`).join(', ')}.`,
  listAsideShare: () => 'aside',
  alone: ({ cut }: { cut: CutKey }) => `No other ${inside(cut)} here to compare it with yet.`,
  changed: ({
    day,
    name,
    before,
    after,
  }: {
    day: CalendarDay;
    name: WeightName;
    before: Nanograms | null;
    after: Nanograms | null;
  }) =>
    `Mended ${show.day(day)}: ${PARTS[name]} ${before === null ? 'not weighed' : show.weight(before)}, now ${after === null ? 'not weighed' : show.weight(after)}.`,
  list: ({ count }: { count: number }) =>
    count === 0
      ? 'You have no pieces here yet. Weigh one in with `/weigh`.'
      : `Your newest pieces: ${counted(show, count)}.`,
  listHead: { piece: () => '', trim: () => 'Off', plate: () => 'Plate' },
  listName: ({ seq, cut }: { seq: number; cut: string }) => `${show.count(seq)} ${cut}`,
  listHow: () => 'See one with `/piece show piece:`, mend it with `/piece fix piece:`.',
  notWeighed: () => '-',
  takeBackAsk: ({ seq, cut, day }: { seq: number; cut: CutKey; day: CalendarDay }) =>
    `Take piece ${show.count(seq)} back, your ${inside(cut)} of ${show.day(day)}?`,
  takeBackWhat: () =>
    'It leaves every figure for good, and its weights are deleted. To change a weight, mend it instead.',
  takeBackPress: ({ seq }: { seq: number }) => `Take piece ${show.count(seq)} back`,
  takenBack: ({ seq }: { seq: number }) => `Piece ${show.count(seq)} is taken back.`,
  wasTakenBack: () => 'This piece was taken back by its member, and is in no figure any more.',
});
