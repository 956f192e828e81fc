/** A club: one chat server, and how it likes its figures. */
import type { Currency } from '../measure/money.ts';
import type { Units } from '../measure/units.ts';

/** A club's settings. It has no name here: only the id of its server. */
export interface Club {
  id: string;
  /** IANA name: decides which calendar day a piece belongs to. */
  zone: string;
  currency: Currency;
  /** BCP 47 */
  locale: string;
  units: Units;
  /** ISO 3166 country whose grades are offered. */
  gradeCountry: string;
  /** The difference in share that the club cares about: 0.02 is two points. */
  margin: number;
  /** Relative weighing error that findings allow for. */
  scaleError: number;
  /** First month of the season, 1 to 12. */
  seasonStart: number;
  /** When the card of the first time was shown; null before. */
  welcomedAt: number | null;
}
