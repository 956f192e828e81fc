/** Every command, by hand: a command that is not here is not there. */
import type { Command } from '../shared/chat/command.ts';
import { average } from './average.ts';
import { help } from './help.ts';
import { mineHabits } from './mine/habits.ts';
import { minePans } from './mine/pans.ts';
import { mineUnits } from './mine/units.ts';
import { weigh } from './weigh/index.ts';

export const commands: readonly Command[] = [weigh, average, mineUnits, minePans, mineHabits, help];
