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
    const whole = wholeGroup(columns, measure, given.cut ?? null);
    return given.cut
      ? averageOfCut(
          { measure, cut: given.cut, columns, whole, grades: groupsBy(columns, measure, columns.grade) },
          say,
        )
      : averagesByCut({ measure, columns, whole, cuts: groupsBy(columns, measure, columns.cut) }, say);
  },
});
