/**
 * Every table. `club_id` leads each key and index, and a club that is deleted takes all of its rows along.
 * Times are UTC milliseconds, weights whole nanograms. After a change: `npm run generate`, and read the SQL.
 */
import { sql } from 'drizzle-orm';
import {
  check,
  foreignKey,
  index,
  integer,
  primaryKey,
  real,
  sqliteTable,
  text,
  uniqueIndex,
} from 'drizzle-orm/sqlite-core';
import type { CalendarDay } from '../../shared/measure/day.ts';
import type { Currency } from '../../shared/measure/money.ts';
import { type Nanograms, UNITS } from '../../shared/measure/units.ts';
import { BONES, type CutKey, type GradeKey, type StyleKey, WRAPS } from '../../shared/trade/keys.ts';
import { json } from './json.ts';
import {
  DECIMALS,
  doubtsShape,
  PRICE_BASES,
  partShape,
  presetsShape,
  readingsShape,
  savedShape,
  textsShape,
} from './shapes.ts';

/** Raw column names: in a rebuilt table they need no renaming. */
const holds = (name: string, condition: string) => check(name, sql.raw(condition.replace(/\s+/g, ' ')));

/** Whole, since SQLite would keep a fraction in an integer column as it is. */
const whole = (column: string, least: number) =>
  holds(`${column}_whole`, `${column} is null or (typeof(${column}) = 'integer' and ${column} >= ${least})`);

const clubId = () =>
  text('club_id')
    .notNull()
    .references(() => club.id, { onDelete: 'cascade' });

const nanograms = (name: string) => integer(name).$type<Nanograms>();

export const club = sqliteTable(
  'club',
  {
    id: text('id').primaryKey(),
    zone: text('zone').notNull(),
    currency: text('currency').$type<Currency>().notNull(),
    locale: text('locale').notNull(),
    units: text('units', { enum: UNITS }).notNull(),
    gradeCountry: text('grade_country').notNull(),
    margin: real('margin').notNull().default(0.02),
    scaleError: real('scale_error').notNull().default(0.02),
    seasonStart: integer('season_start').notNull(),
    welcomedAt: integer('welcomed_at'),
    leftAt: integer('left_at'),
  },
  () => [
    holds('club_margin', 'margin > 0 and margin < 1'),
    holds('club_scale_error', 'scale_error >= 0 and scale_error < 1'),
    holds('club_season_start', 'season_start between 1 and 12'),
  ],
);

export const member = sqliteTable(
  'member',
  {
    club: clubId(),
    id: text('id').notNull(),
    units: text('units', { enum: UNITS }),
    labelDecimals: text('label_decimals', { enum: DECIMALS }),
    scaleDecimals: text('scale_decimals', { enum: DECIMALS }),
    presets: json('presets', presetsShape).notNull(),
    hidden: integer('hidden', { mode: 'boolean' }).notNull(),
  },
  (t) => [primaryKey({ columns: [t.club, t.id] })],
);

export const pan = sqliteTable(
  'pan',
  {
    club: clubId(),
    member: text('member_id').notNull(),
    /** The name in lower case: SQLite's own folding knows ASCII only. */
    key: text('key').notNull(),
    name: text('name').notNull(),
    weight: nanograms('weight_ng').notNull(),
  },
  (t) => [primaryKey({ columns: [t.club, t.member, t.key] }), whole('weight_ng', 0)],
);

/** All that is told of a piece. Null in every column only once it was removed. */
const told = () => ({
  member: text('member_id'),
  postedAt: integer('posted_at'),
  day: text('day').$type<CalendarDay>(),
  cut: text('cut').$type<CutKey>(),
  grade: text('grade').$type<GradeKey>(),
  style: text('style').$type<StyleKey>(),
  bone: text('bone', { enum: BONES }),
  wrap: text('wrap', { enum: WRAPS }),
  shop: text('shop'),
  note: text('note'),
  pieces: integer('pieces'),
  bought: nanograms('bought_ng'),
  bagged: nanograms('bagged_ng'),
  trim: nanograms('trim_ng'),
  left: nanograms('left_ng'),
  added: nanograms('added_ng'),
  cooked: nanograms('cooked_ng'),
  scraps: nanograms('scraps_ng'),
  served: nanograms('served_ng'),
  saved: json('saved', savedShape).notNull(),
  /** In ten-thousandths of the currency's unit. */
  priceAmount: integer('price_amount'),
  priceBasis: text('price_basis', { enum: PRICE_BASES }),
  priceCurrency: text('price_currency').$type<Currency>(),
  priceText: text('price_text'),
  pumped: integer('pumped', { mode: 'boolean' }).notNull(),
  approximate: integer('approximate', { mode: 'boolean' }).notNull(),
  typed: json('typed', textsShape).notNull(),
  confirmedAt: integer('confirmed_at'),
  setAsideAt: integer('set_aside_at'),
  setAsideWhy: text('set_aside_why'),
});

/** A removed piece keeps its club, id and seq alone: its number is never given again. */
export const piece = sqliteTable(
  'piece',
  {
    club: clubId(),
    id: text('id').notNull(),
    seq: integer('seq').notNull(),
    ...told(),
    removedAt: integer('removed_at'),
    revision: integer('revision').notNull(),
  },
  (t) => [
    primaryKey({ columns: [t.club, t.id] }),
    uniqueIndex('piece_seq').on(t.club, t.seq),
    index('piece_cut').on(t.club, t.cut, t.seq),
    index('piece_member').on(t.club, t.member, t.seq),
    index('piece_shop').on(t.club, t.shop),
    // A few of a great many.
    index('piece_aside').on(t.club, t.seq).where(sql.raw('set_aside_at is not null')),
    holds('piece_seq_whole', "typeof(seq) = 'integer' and seq >= 1"),
    holds(
      'piece_there',
      `removed_at is not null or (member_id is not null and posted_at is not null and day is not null
       and cut is not null and pieces is not null and bought_ng is not null)`,
    ),
    holds(
      'piece_removed',
      `removed_at is null or (saved = '[]' and typed = '{}' and approximate = 0 and pumped = 0 and revision = 0 and
       coalesce(member_id, posted_at, day, cut, grade, style, bone, wrap, shop, note, pieces, bought_ng, bagged_ng,
       trim_ng, left_ng, added_ng, cooked_ng, scraps_ng, served_ng, price_amount, confirmed_at, set_aside_at,
       set_aside_why) is null)`,
    ),
    holds(
      'piece_price',
      `(price_amount is null) = (price_basis is null) and (price_amount is null) = (price_currency is null)
       and (price_amount is null) = (price_text is null)`,
    ),
    whole('pieces', 1),
    whole('bought_ng', 1),
    whole('bagged_ng', 0),
    whole('trim_ng', 0),
    whole('left_ng', 0),
    whole('added_ng', 0),
    whole('cooked_ng', 0),
    whole('scraps_ng', 0),
    whole('served_ng', 0),
    whole('price_amount', 0),
  ],
);

/** Pieces that are on their way in, many together: out of everybody's sight until all of them are there. */
export const staged = sqliteTable(
  'staged',
  {
    club: clubId(),
    batch: text('batch').notNull(),
    position: integer('position').notNull(),
    /** When its batch began. */
    at: integer('at').notNull(),
    id: text('id').notNull(),
    ...told(),
  },
  (t) => [primaryKey({ columns: [t.club, t.batch, t.position] })],
);

export const correction = sqliteTable(
  'correction',
  {
    club: clubId(),
    piece: text('piece_id').notNull(),
    interaction: text('interaction_id').notNull(),
    member: text('member_id').notNull(),
    at: integer('at').notNull(),
    why: text('why'),
    /** The fields that changed, as they were and as they became. */
    before: json('before', partShape).notNull(),
    after: json('after', partShape).notNull(),
  },
  (t) => [
    primaryKey({ columns: [t.club, t.piece, t.interaction] }),
    foreignKey({ columns: [t.club, t.piece], foreignColumns: [piece.club, piece.id] }).onDelete('cascade'),
  ],
);

/** Rises with each write to a cut. */
export const cutVersion = sqliteTable(
  'cut_version',
  {
    club: clubId(),
    cut: text('cut').$type<CutKey>().notNull(),
    version: integer('version').notNull(),
  },
  (t) => [primaryKey({ columns: [t.club, t.cut] })],
);

/** Which piece each of the latest versions of a cut is about; 0: any number of them. */
export const cutChange = sqliteTable(
  'cut_change',
  {
    club: clubId(),
    cut: text('cut').$type<CutKey>().notNull(),
    version: integer('version').notNull(),
    seq: integer('seq').notNull(),
  },
  (t) => [primaryKey({ columns: [t.club, t.cut, t.version] })],
);

/** A cut of the club's own. */
export const ownCut = sqliteTable(
  'own_cut',
  {
    club: clubId(),
    id: text('id').notNull(),
    name: text('name').notNull(),
    species: text('species').notNull(),
  },
  (t) => [primaryKey({ columns: [t.club, t.id] })],
);

export const draft = sqliteTable(
  'draft',
  {
    club: clubId(),
    id: text('id').notNull(),
    member: text('member_id').notNull(),
    command: text('command').notNull(),
    options: json('options', textsShape).notNull(),
    confirmed: json('confirmed', doubtsShape).notNull(),
    readings: json('readings', readingsShape).notNull(),
    interaction: text('interaction_id').notNull(),
    expiresAt: integer('expires_at').notNull(),
  },
  (t) => [primaryKey({ columns: [t.club, t.id] })],
);

/** A reminder goes away when it is taken, so that it is sent once. */
export const reminder = sqliteTable(
  'reminder',
  {
    club: clubId(),
    piece: text('piece_id').notNull(),
    member: text('member_id').notNull(),
    dueAt: integer('due_at').notNull(),
  },
  (t) => [
    primaryKey({ columns: [t.club, t.piece, t.member] }),
    foreignKey({ columns: [t.club, t.piece], foreignColumns: [piece.club, piece.id] }).onDelete('cascade'),
  ],
);

export const posted = sqliteTable(
  'posted',
  {
    club: clubId(),
    piece: text('piece_id').notNull(),
    channel: text('channel_id').notNull(),
    message: text('message_id').notNull(),
  },
  (t) => [
    primaryKey({ columns: [t.club, t.piece, t.channel, t.message] }),
    foreignKey({ columns: [t.club, t.piece], foreignColumns: [piece.club, piece.id] }).onDelete('cascade'),
  ],
);

/** Whose a removed piece was, so that its id goes too when they are erased. */
export const removedPiece = sqliteTable(
  'removed_piece',
  {
    club: clubId(),
    piece: text('piece_id').notNull(),
    member: text('member_id').notNull(),
  },
  (t) => [primaryKey({ columns: [t.club, t.piece] })],
);

/** What the upkeep of the whole file has to remember, in whole numbers. Nothing here says who or which club. */
export const upkeep = sqliteTable('upkeep', {
  name: text('name', { enum: ['erased-since', 'erasures', 'first-version'] }).primaryKey(),
  value: integer('value').notNull(),
});
