/** `/average`: the club's figures, by cut, or of one cut apart by grade, style, shop and so on. */
import { type Command, command } from '../shared/chat/command.ts';
import type { Given } from '../shared/chat/option.ts';
import { type GroupFigures, groupsBy, wholeGroup } from '../shared/club/group.ts';
import { FACTORS, type FactorName, type Filter, narrowed } from '../shared/club/narrow.ts';
import type { Columns } from '../shared/club/store.ts';
import { MemberError } from '../shared/errors.ts';
import { averaged } from '../shared/replies/averages.ts';
import { cutOf } from '../shared/trade/cuts.ts';
import { gradeOfSpecies } from '../shared/trade/grades.ts';
import { MEASURES, type Measure, setsInjectedApart } from '../shared/yield/measure.ts';
import { choice, cut, grade, shop, style } from './options.ts';
import { styleOf } from './weigh/told.ts';

const options = {
  cut: cut(),
  measure: choice(MEASURES),
  by: choice(FACTORS),
  grade: { ...grade(), extra: false as const },
  style: style(),
  bone: choice(['in', 'out']),
  shop: { ...shop(), extra: false as const },
  wrap: choice(['none', 'paper', 'foil', 'boat']),
} as const;

export const average: Command = command({
  name: 'average',
  audience: () => 'club',
  options,
  form: () => ['cut', 'measure', 'by', 'grade'],
  run: async ({ store, say }, given) => {
    const measure = given.measure ?? 'trim';
    const cutKey = given.cut ?? null;
    const by: FactorName = given.by ?? (cutKey === null ? 'cut' : 'grade');
    const filter = filterOf(given);
    // Shares of unlike cuts average to nothing: without a cut there is only one question.
    if (cutKey === null && (by !== 'cut' || Object.keys(filter).length > 0))
      throw new MemberError('cut-to-average', {});
    const rows = async (injected: boolean) =>
      narrowed(await store.columns(cutKey, measure, injected), filter);
    const columns = await rows(false);
    const apart = setsInjectedApart(measure) ? await rows(true) : null;
    return averaged(
      {
        measure,
        cut: cutKey,
        by,
        filter,
        columns,
        whole: wholeGroup(columns, measure, cutKey),
        injected: apart === null || apart.count === 0 ? null : wholeGroup(apart, measure, cutKey),
        groups: grouped(columns, measure, by),
      },
      say,
    );
  },
});

/** Months follow each other; everything else stands by how many pieces there are. */
function grouped(columns: Columns, measure: Measure, by: FactorName): GroupFigures[] {
  const groups = groupsBy(columns, measure, columns[by]);
  return by === 'month'
    ? groups.toSorted((one, other) => ((one.key ?? '') < (other.key ?? '') ? -1 : 1))
    : groups;
}

function filterOf({
  cut: cutKey,
  grade: gradeKey,
  style: styleText,
  bone,
  shop: shopName,
  wrap,
}: Given<typeof options>): Filter {
  return {
    ...(gradeKey ? { grade: cutKey ? gradeOfSpecies(gradeKey, cutOf(cutKey).species) : gradeKey } : {}),
    ...(styleText && cutKey ? { style: styleOf(styleText, cutKey) } : {}),
    ...(bone ? { bone } : {}),
    ...(shopName ? { shop: shopName } : {}),
    ...(wrap ? { wrap } : {}),
  };
}
