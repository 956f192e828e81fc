/** Every command, by hand: a command that is not here is not there. */
import type { Command } from '../shared/chat/command.ts';
import { average } from './average.ts';
import { help } from './help.ts';
import { mineHabits } from './mine/habits.ts';
import { minePans } from './mine/pans.ts';
import { mineUnits } from './mine/units.ts';
import { pieceFix } from './piece/fix.ts';
import { pieceList } from './piece/list.ts';
import { pieceRemove } from './piece/remove.ts';
import { pieceShow } from './piece/show.ts';
import { weigh } from './weigh/index.ts';

export const commands: readonly Command[] = [
  weigh,
  pieceShow,
  pieceFix,
  pieceRemove,
  pieceList,
  average,
  mineUnits,
  minePans,
  mineHabits,
  help,
];
