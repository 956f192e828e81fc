/** One row of a table becomes a piece, or the reason why it does not. */
import type { Club } from '../club/club.ts';
import type { ImportedPiece } from '../club/piece.ts';
import { Ask, type Doubt, MemberError } from '../errors.ts';
import { type CalendarDay, timeAt } from '../measure/day.ts';
import { readPrice } from '../measure/money.ts';
import type { Nanograms } from '../measure/units.ts';
import { unitsTold } from '../measure/units-told.ts';
import { readWeight, type Weight, type WeightReader } from '../measure/weight.ts';
import type { Cut } from '../trade/cuts.ts';
import type { Bone, CutKey } from '../trade/keys.ts';
import { WEIGHT_NAMES, type WeightName } from '../yield/piece.ts';
import { askIfDoubtful, refuseImpossible } from '../yield/plausible.ts';
import { readSaved } from '../yield/saved.ts';
import { blame } from './blame.ts';
import {
  readBone,
  readCount,
  readCurrency,
  readCutCell,
  readDayCell,
  readGradeCell,
  readPumped,
  readStyleCell,
  readText,
  readWrap,
} from './cells.ts';
import type { Field, RowTexts } from './fields.ts';
import { readMemberId, readPieceId } from './ids.ts';
import { remembering } from './remembering.ts';
import { readStatus } from './status.ts';
import type { Survey } from './survey.ts';
import { typedTexts, type Untyped } from './typed-texts.ts';

/** What reading a row depends on, beside its texts. */
export interface RowSettings {
  club: Club;
  /** UTC milliseconds. */
  now: number;
  today: CalendarDay;
  /** Whose piece it is where the row does not say; null: a row must say. */
  member: string | null;
  /** Whether there can be such a member. */
  isMember: (id: string) => boolean;
  survey: Survey;
  /** The club's own cuts. */
  ownCuts: readonly CutKey[];
}

/** Why a row is no piece, and the column that it is about, if it is about one. */
export interface RowProblem {
  field: Field | null;
  problem: MemberError | Ask;
}

/** `unitsTaken`: some bare number was taken to be in the club's units, since nothing in its row named any. */
export type RowRead = { piece: ImportedPiece; unitsTaken: boolean } | RowProblem;

/** Reads what one cell holds; null where it is empty, or a dash. */
type Tell = <Value>(field: Field, read: (text: string) => Value) => Value | null;

type Weights = Partial<Record<WeightName, Weight>>;

/** What is worked out once for many rows. */
interface Known {
  noonOf: (day: CalendarDay) => number;
  readCut: (text: string) => Cut;
}

const NOTHING = '-';
const NO_PANS: ReadonlyMap<string, Nanograms> = new Map();
const NOON = 12;
const EVERY_DOUBT: ReadonlySet<Doubt> = new Set<Doubt>(['size', 'trim', 'gain', 'gap']);
const NO_DOUBT: ReadonlySet<Doubt> = new Set();

/**
 * A reader of rows: gives each its piece, with the given id where the row has none of its own.
 * @example rowReader(settings)({ cut: 'packer', bought: '14.83 lb', trim: '2:9.4' }, 'r1').piece.trim // 1_173_670_257_375
 */
export function rowReader(settings: RowSettings): (texts: RowTexts, id: string) => RowRead {
  const noons = new Map<CalendarDay, number>();
  const noonOf = (day: CalendarDay): number => {
    const noon = noons.get(day) ?? timeAt(day, NOON, settings.club.zone);
    noons.set(day, noon);
    return noon;
  };
  const readCut = remembering((text) => readCutCell(text, settings.ownCuts));
  return (texts, id) => {
    let reading: Field | null = null;
    const tell: Tell = (field, read) => {
      reading = field;
      const text = texts[field];
      return text === undefined || text === NOTHING ? null : read(text);
    };
    try {
      const piece = readPiece(texts, id, settings, tell, { noonOf, readCut });
      return { piece, unitsTaken: takesUnits(texts) };
    } catch (problem) {
      if (!(problem instanceof MemberError || problem instanceof Ask)) throw problem;
      return { field: blame(problem) ?? reading, problem };
    }
  };
}

function readPiece(
  texts: RowTexts,
  id: string,
  { club, now, today, member, isMember, survey }: RowSettings,
  tell: Tell,
  { noonOf, readCut }: Known,
): ImportedPiece {
  const cut = tell('cut', readCut);
  if (cut === null) throw new MemberError('cut-missing', { bought: texts.bought ?? '' });
  const units = unitsOf(texts) ?? club.units;
  const reader = { units, decimals: 'decimal', decimalMark: survey.decimalMark, pans: NO_PANS } as const;
  const weights = readWeights(tell, reader);
  const { bought } = weights;
  if (bought === undefined) throw new MemberError('bought-missing', { cut: cut.key });
  const currency = tell('currency', readCurrency) ?? club.currency;
  const prices = { units, currency };
  const option = 'saved';
  const price = tell('price', (text) => readPrice(text, { option: 'price', ...prices }));
  const saved = tell('saved', (text) => readSaved(text, { option, ...reader }, { option, ...prices }));
  const day = tell('date', (text) => readDayCell(text, today, survey)) ?? today;
  const status = tell('status', (text) => readStatus(readText('status', text) ?? ''));
  const piece: Untyped = {
    id: tell('piece', readPieceId) ?? id,
    member: tell('member', (text) => knownMember(text, isMember)) ?? member ?? memberMissing(),
    postedAt: noonOf(day),
    day,
    cut: cut.key,
    grade: tell('grade', (text) => readGradeCell(text, cut, club)),
    style: tell('style', (text) => readStyleCell(text, cut)),
    bone: tell('bone', readBone) ?? (texts.bone ? null : boneOf(cut)),
    wrap: tell('wrap', readWrap),
    shop: tell('shop', (text) => readText('shop', text)),
    note: tell('note', (text) => readText('note', text)),
    pumped: tell('pumped', readPumped) === 'yes',
    pieces: tell('pieces', readCount) ?? countOf(bought),
    bought: bought.weight,
    bagged: weights.bagged?.weight ?? null,
    trim: weights.trim?.weight ?? null,
    left: weights.left?.weight ?? null,
    added: weights.added?.weight ?? null,
    cooked: weights.cooked?.weight ?? null,
    scraps: weights.scraps?.weight ?? null,
    served: weights.served?.weight ?? null,
    saved: saved ?? [],
    price,
    approximate: Object.values(weights).some(({ approximate }) => approximate),
    confirmedAt: status?.confirmed ? now : null,
    setAsideAt: status?.aside ? now : null,
    setAsideWhy: status?.why ?? null,
  };
  const whole = { ...piece, typed: typedTexts(piece, weights, texts, currency) };
  refuseImpossible(whole);
  askIfDoubtful(whole, cut.key, status?.confirmed || status?.meant ? EVERY_DOUBT : NO_DOUBT);
  return whole;
}

function readWeights(tell: Tell, reader: Omit<WeightReader, 'option'>): Weights {
  const weights: Weights = {};
  for (const name of WEIGHT_NAMES) {
    const weight = tell(name, (text) => readWeight(text, { option: name, ...reader }));
    if (weight !== null) weights[name] = weight;
  }
  return weights;
}

/** The one system that a row names. */
const unitsOf = (texts: RowTexts) =>
  unitsTold([...WEIGHT_NAMES, 'price' as const].flatMap((name) => texts[name] ?? []));

const takesUnits = (texts: RowTexts): boolean =>
  unitsOf(texts) === null &&
  WEIGHT_NAMES.some((name) => /[1-9]/.test(texts[name] ?? '') && unitsTold([texts[name] ?? '']) === null);

/** @throws MemberError for an id that nobody can have. */
function knownMember(text: string, isMember: (id: string) => boolean): string {
  const id = readMemberId(text);
  if (!isMember(id)) throw new MemberError('csv-member-unknown', { read: text });
  return id;
}

function memberMissing(): never {
  throw new MemberError('csv-member-missing', {});
}

/** As for a piece that is started with `/weigh`: what is sold one way only needs no saying. */
const boneOf = ({ bone }: Cut): Bone | null => (bone === 'both' ? null : bone);

/** `8.41 lb + 7.96 lb`: two pieces together, or one that did not fit on the scale? */
function countOf({ text, summands }: Weight): number {
  if (summands < 2) return 1;
  throw new Ask('two-pieces-or-two-goes', { read: text, summands }, []);
}
