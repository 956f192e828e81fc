/** How a club likes its figures, told to a manager. */
import type { Reply } from '../chat/reply.ts';
import type { Club } from '../club/club.ts';
import type { CalendarDay } from '../measure/day.ts';
import type { Speech } from '../words/index.ts';

/** What a manager may set. */
export type SettingName = Exclude<keyof Club, 'id' | 'welcomedAt'>;

/** What is said besides where a setting changed. */
const BESIDES: Partial<Record<SettingName, 'changesVerdicts' | 'keepsPrices' | 'keepsUnits' | 'keepsDays'>> =
  {
    margin: 'changesVerdicts',
    scaleError: 'changesVerdicts',
    currency: 'keepsPrices',
    units: 'keepsUnits',
    zone: 'keepsDays',
  };

/** `changed`: what was set just now; none where a manager may set something, null where they only look. */
export function clubSettings(
  kept: Club,
  { today, changed }: { today: CalendarDay; changed: readonly SettingName[] | null },
  { club }: Speech,
): Reply {
  const about = club.units(kept);
  const parts = (changed ?? []).map((name) => club.part[name](kept));
  const besides = new Set((changed ?? []).flatMap((name) => BESIDES[name] ?? []));
  const how = changed === null ? [club.settingsHow()] : changed.length === 0 ? [club.setHow()] : [];
  return {
    answer: parts.length === 0 ? about : club.kept({ parts }),
    lines: [
      ...(parts.length === 0 ? [] : [about]),
      club.days({ ...kept, today }),
      club.season(kept),
      club.margin(kept),
      club.scaleError(kept),
    ],
    small: [...[...besides].map((name) => club[name]()), ...how],
    figures: {
      zone: kept.zone,
      currency: kept.currency,
      locale: kept.locale,
      units: kept.units,
      gradeCountry: kept.gradeCountry,
      margin: kept.margin,
      scaleError: kept.scaleError,
      seasonStart: kept.seasonStart,
    },
  };
}
