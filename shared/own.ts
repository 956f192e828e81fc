/** Looking up what somebody typed. */

/**
 * What a table holds under a key; not what every object has, as `constructor`.
 * @example own({ de: 'insgesamt' }, 'toString') // undefined
 */
export const own = <Value>(table: Readonly<Record<string, Value>>, key: string): Value | undefined =>
  Object.hasOwn(table, key) ? table[key] : undefined;
