/** `/club set`: changing how this club likes its figures. Takes effect at once. */
import { type Command, command } from '../../shared/chat/command.ts';
import type { Given } from '../../shared/chat/option.ts';
import type { Club } from '../../shared/club/club.ts';
import { guessClub } from '../../shared/club/guess.ts';
import { dayAt } from '../../shared/measure/day.ts';
import { UNITS } from '../../shared/measure/units.ts';
import { clubSettings, type SettingName } from '../../shared/replies/club-settings.ts';
import { GRADE_COUNTRIES } from '../../shared/trade/grades.ts';
import { choice } from '../options.ts';
import { currency, locale, margin, month, scaleError, zone } from './options.ts';

const options = {
  margin: margin(),
  'scale-error': scaleError(),
  units: choice(UNITS),
  currency: currency(),
  zone: zone(),
  grades: choice(GRADE_COUNTRIES),
  season: month(),
  locale: locale(),
} as const;

/** Which setting each option sets. */
const SETTINGS = {
  margin: 'margin',
  'scale-error': 'scaleError',
  units: 'units',
  currency: 'currency',
  zone: 'zone',
  grades: 'gradeCountry',
  season: 'seasonStart',
  locale: 'locale',
} as const satisfies Record<keyof typeof options, SettingName>;

export const clubSet: Command = command({
  name: 'club set',
  managers: true,
  audience: () => 'member',
  options,
  form: () => ['margin', 'scale-error', 'units', 'currency'],
  run: async ({ store, club, now, today, say }, given) => {
    const told = changesIn(given, club);
    const changed = Object.keys(told) as SettingName[];
    if (changed.length === 0) return clubSettings(club, { today, changed }, say);
    // Only what was told: another manager may be changing something else at this moment.
    const kept = await store.change(told);
    return clubSettings(kept, { today: dayAt(now, kept.zone), changed }, say);
  },
});

/** What was told; a dash takes a setting back to what clubs of this locale are taken to be like. */
function changesIn(given: Given<typeof options>, club: Club): Partial<Pick<Club, SettingName>> {
  const usual = guessClub(club.id, given.locale ?? club.locale);
  const names = Object.keys(SETTINGS) as (keyof typeof SETTINGS)[];
  return Object.fromEntries(
    names
      .filter((name) => given[name] !== undefined)
      .map((name) => [SETTINGS[name], given[name] ?? usual[SETTINGS[name]]]),
  );
}
