/** Time zones, as people name them: by their IANA name, or by a city. */
import { isZone } from './day.ts';
import { plainLetters } from './fold.ts';

/** Names that Intl takes but lists under older ones. Source: IANA time zone database, file `backward`. */
const RENAMED = ['Asia/Ho_Chi_Minh', 'Asia/Kathmandu', 'Asia/Kolkata', 'Asia/Yangon', 'Europe/Kyiv'];

/** IANA names, in the order of the alphabet. */
export const ZONES: readonly string[] = [
  ...new Set([...Intl.supportedValuesOf('timeZone'), ...RENAMED, 'UTC']),
].toSorted();

/** Letters and digits alone: `New York` and `new_york` are one. */
const plain = (name: string): string =>
  plainLetters(name)
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}/+-]+/gu, '');
const cityOf = (zone: string): string => plain(zone.slice(zone.lastIndexOf('/') + 1));

/**
 * The zone of that name, or the only one of that city; null for what is neither.
 *
 * @example zoneNamed('europe/berlin') // 'Europe/Berlin'
 * @example zoneNamed('new york') // 'America/New_York'
 */
export function zoneNamed(text: string): string | null {
  const typed = plain(text);
  const whole = ZONES.find((zone) => plain(zone) === typed);
  if (whole !== undefined) return whole;
  const ofCity = ZONES.filter((zone) => cityOf(zone) === typed);
  if (ofCity.length === 1) return ofCity[0] ?? null;
  const name = text.trim();
  return isZone(name) ? name : null;
}

/**
 * Zones whose names hold what was typed, those of `first` before all others.
 *
 * @example zonesLike('york', []) // ['America/New_York']
 */
export function zonesLike(text: string, first: readonly string[]): readonly string[] {
  const typed = plain(text);
  const all = [...new Set([...first, ...ZONES])];
  return all.filter((zone) => plain(zone).includes(typed));
}
