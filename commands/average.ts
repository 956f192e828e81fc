/** `/average`: the club's figures, by cut, or of one cut apart by grade, style, size, shop and so on. */
import { type Command, type Context, command } from '../shared/chat/command.ts';
import type { Given } from '../shared/chat/option.ts';
import type { Reply } from '../shared/chat/reply.ts';
import type { Filter } from '../shared/club/narrow.ts';
import { MemberError } from '../shared/errors.ts';
import {
  APART_BY,
  type ApartBy,
  type AskedAverages,
  type FoundAverages,
} from '../shared/findings/averages.ts';
import { besides } from '../shared/findings/sifted.ts';
import { averaged } from '../shared/replies/averages.ts';
import { cutOf } from '../shared/trade/cuts.ts';
import { gradeOfSpecies } from '../shared/trade/grades.ts';
import { BONES, WRAPS } from '../shared/trade/keys.ts';
import { AVERAGED } from '../shared/yield/measure.ts';
import { cut, grade, style } from './cut-options.ts';
import { choice, day, shop } from './options.ts';
import { pressedCutOrNone, pressedOne } from './pressed.ts';
import { styleOf } from './weigh/told.ts';

const options = {
  cut: cut(),
  measure: choice(AVERAGED),
  by: choice(APART_BY),
  grade: { ...grade(), extra: false as const },
  style: style(),
  bone: choice(BONES),
  shop: { ...shop(), extra: false as const },
  wrap: choice(WRAPS),
  since: { ...day(), extra: false as const },
} as const;

export const average: Command = command({
  name: 'average',
  audience: () => 'club',
  options,
  form: () => ['cut', 'measure', 'by', 'grade'],
  run: (context, given) => {
    const cutKey = given.cut ?? null;
    const by: ApartBy = given.by ?? (cutKey === null ? 'cut' : 'grade');
    const filter = filterOf(given);
    // Shares of unlike cuts average to nothing: without a cut there is only one question.
    const { since: _since, ...values } = filter;
    if (cutKey === null && (by !== 'cut' || Object.keys(values).length > 0))
      throw new MemberError('cut-to-average', {});
    return answer(context, { cut: cutKey, measure: given.measure ?? 'trim', by, filter, mine: null });
  },
  actions: {
    mine: {
      by: 'anyone',
      audience: 'member',
      edits: false,
      run: async (context, { about: [cutKey = '', measure = 'trim', by = 'grade'] }) =>
        answer(context, {
          cut: pressedCutOrNone(cutKey),
          measure: pressedOne(AVERAGED, measure),
          by: pressedOne(APART_BY, by),
          filter: {},
          mine: context.member.id,
        }),
    },
  },
});

async function answer(
  { find, store, club, say }: Context,
  asked: Omit<AskedAverages, 'units'>,
): Promise<Reply> {
  const whole = { ...asked, ...besides(asked.measure, club.currency), units: say.show.form.units };
  const found = await find('averages', whole);
  return averaged(whole, withoutHidden(found, asked, await store.hiddenMembers()), say);
}

/** Whoever asked not to be shown counts in every figure, but has no row or range of their own for others, and no name. */
function withoutHidden(
  found: FoundAverages,
  { by, mine }: Pick<AskedAverages, 'by' | 'mine'>,
  hidden: readonly string[],
): FoundAverages {
  const notShown = new Set(hidden);
  const unseen = (member: string | null) => member !== null && member !== mine && notShown.has(member);
  const { groups, most } = found;
  return {
    ...found,
    most: most !== null && unseen(most.member) ? null : most,
    groups: by === 'member' ? groups.filter(({ figures: { key } }) => !unseen(key)) : groups,
  };
}

function filterOf({
  cut: cutKey,
  grade: gradeKey,
  style: styleText,
  bone,
  shop: shopName,
  wrap,
  since,
}: Given<typeof options>): Filter {
  return {
    ...(gradeKey ? { grade: cutKey ? gradeOfSpecies(gradeKey, cutOf(cutKey).species) : gradeKey } : {}),
    ...(styleText && cutKey ? { style: styleOf(styleText, cutKey) } : {}),
    ...(bone ? { bone } : {}),
    ...(shopName ? { shop: shopName } : {}),
    ...(wrap ? { wrap } : {}),
    ...(since ? { since } : {}),
  };
}
