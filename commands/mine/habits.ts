/** `/mine habits`: what is taken for granted, so that it need not be asked again. */
import { type Command, command } from '../../shared/chat/command.ts';
import { UNITS } from '../../shared/measure/units.ts';
import { habitsTold } from '../../shared/replies/mine.ts';
import { choice } from '../options.ts';

const DECIMALS = ['decimal', 'ounces', 'ask'] as const;

export const mineHabits: Command = command({
  name: 'mine habits',
  audience: () => 'member',
  options: { label: choice(DECIMALS), scale: choice(DECIMALS), 'price-unit': choice(UNITS) },
  form: () => ['label', 'scale', 'price-unit'],
  run: async ({ store, club, member, say }, { label, scale, 'price-unit': priceUnit }) => {
    const told = {
      ...(label ? { labelDecimals: label === 'ask' ? null : label } : {}),
      ...(scale ? { scaleDecimals: scale === 'ask' ? null : scale } : {}),
      ...(priceUnit ? { presets: { ...member.presets, priceUnit } } : {}),
    };
    const now = Object.keys(told).length === 0 ? member : await store.remember(member.id, told);
    return habitsTold(now, now.presets.priceUnit ?? now.units ?? club.units, say);
  },
});
