/** `/average`: the club's figures, by cut or by grade within a cut. */
import { type Command, command } from '../shared/chat/command.ts';
import { groupsBy, wholeGroup } from '../shared/club/group.ts';
import { averageOfCut, averagesByCut } from '../shared/replies/averages.ts';
import { MEASURES } from '../shared/yield/measure.ts';
import { choice, cut } from './options.ts';

export const average: Command = command({
  name: 'average',
  audience: () => 'club',
  options: { cut: cut(), measure: choice(MEASURES) },
  form: () => ['cut', 'measure'],
  run: async ({ store, say }, given) => {
    const measure = given.measure ?? 'trim';
    const columns = await store.columns(given.cut ?? null, measure);
    // What came off raw is told before any brine matters: injected pieces are apart from the heat on.
    const apart = measure === 'trim' ? null : await store.columns(given.cut ?? null, measure, true);
    const injected =
      apart === null || apart.count === 0 ? null : wholeGroup(apart, measure, given.cut ?? null);
    const whole = wholeGroup(columns, measure, given.cut ?? null);
    return given.cut
      ? averageOfCut(
          {
            measure,
            cut: given.cut,
            columns,
            whole,
            injected,
            grades: groupsBy(columns, measure, columns.grade),
          },
          say,
        )
      : averagesByCut(
          { measure, columns, whole, injected, cuts: groupsBy(columns, measure, columns.cut) },
          say,
        );
  },
});
