/** Lengths of time, in milliseconds. Moments are UTC milliseconds, whose days are all of the same length. */

/** A minute. */
export const MINUTE_MS = 60_000;

/** An hour. */
export const HOUR_MS = 60 * MINUTE_MS;

/** A day: 86,400,000. */
export const DAY_MS = 24 * HOUR_MS;
