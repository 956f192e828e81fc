/** The columns of a table of pieces. */

/** In the order in which they are written. */
export const FIELDS = [
  'piece',
  'member',
  'cut',
  'grade',
  'style',
  'bone',
  'pieces',
  'bought',
  'bagged',
  'trim',
  'added',
  'cooked',
  'scraps',
  'served',
  'saved',
  'price',
  'currency',
  'wrap',
  'shop',
  'date',
  'note',
  'status',
] as const;

/** Written after the others, and only where some piece needs them; read wherever they stand. */
export const RARE_FIELDS = ['left', 'pumped'] as const;

/** A column that only some tables have. */
export type RareField = (typeof RARE_FIELDS)[number];

/** A column, by the name under which it is written. */
export type Field = (typeof FIELDS)[number] | RareField;

/** Every column that is read. */
export const ALL_FIELDS: readonly Field[] = [...FIELDS, ...RARE_FIELDS];

/** The texts of one row by column: trimmed, and none that is empty. */
export type RowTexts = Readonly<Partial<Record<Field, string>>>;
