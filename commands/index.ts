/** Every command, by hand: a command that is not here is not there. */
import type { Command } from '../shared/chat/command.ts';
import { average } from './average.ts';
import { board } from './board.ts';
import { clubAside } from './club/aside.ts';
import { clubCuts } from './club/cuts.ts';
import { clubErase } from './club/erase.ts';
import { clubExport } from './club/export.ts';
import { clubFix } from './club/fix.ts';
import { clubImport } from './club/import.ts';
import { clubSet } from './club/set.ts';
import { clubShow } from './club/show.ts';
import { clubWaiting } from './club/waiting.ts';
import { compare } from './compare.ts';
import { debate } from './debate.ts';
import { feed } from './feed.ts';
import { help } from './help.ts';
import { mineErase } from './mine/erase.ts';
import { mineExport } from './mine/export.ts';
import { mineHabits } from './mine/habits.ts';
import { mineHide } from './mine/hide.ts';
import { mineLeave } from './mine/leave.ts';
import { minePans } from './mine/pans.ts';
import { mineSeason } from './mine/season.ts';
import { mineUnits } from './mine/units.ts';
import { pieceFix } from './piece/fix.ts';
import { pieceList } from './piece/list.ts';
import { pieceParts } from './piece/parts.ts';
import { pieceRemove } from './piece/remove.ts';
import { pieceShow } from './piece/show.ts';
import { shop } from './shop.ts';
import { weigh } from './weigh/index.ts';

export const commands: readonly Command[] = [
  weigh,
  pieceShow,
  pieceParts,
  pieceFix,
  pieceRemove,
  pieceList,
  average,
  compare,
  board,
  debate,
  shop,
  feed,
  mineUnits,
  minePans,
  mineHabits,
  mineSeason,
  mineExport,
  mineHide,
  mineLeave,
  mineErase,
  clubShow,
  clubSet,
  clubCuts,
  clubWaiting,
  clubFix,
  clubAside,
  clubImport,
  clubExport,
  clubErase,
  help,
];
