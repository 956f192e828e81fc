/** What can't be is refused; what can be read well enough but looks wrong is asked, with the likely slip to press. */
import { Ask, type Doubt, MemberError, type Reading } from '../errors.ts';
import { NANOGRAMS, type Nanograms } from '../measure/units.ts';
import { type Cut, cutOf } from '../trade/cuts.ts';
import type { CutKey } from '../trade/keys.ts';
import { isOwnCut } from '../trade/own-cuts.ts';
import { type Weighed, type WeightName, weightsOf } from './piece.ts';

/** Part, and the whole that it can't outweigh. */
const WHOLES: readonly [WeightName, readonly WeightName[]][] = [
  ['bagged', ['bought']],
  ['left', ['bagged', 'bought']],
  ['scraps', ['cooked', 'bought']],
  ['served', ['cooked']],
];

/** @throws MemberError where a part outweighs its whole, nothing is left to cook, or more was saved than came off. */
export function refuseImpossible(piece: Weighed): void {
  for (const option of ['bought', 'bagged', 'left', 'cooked'] as const) {
    if (piece[option] === 0) throw new MemberError('weight-zero', { option });
  }
  for (const [part, wholes] of WHOLES) {
    const whole = wholes.find((name) => piece[name] !== null);
    const weight = piece[part];
    const of = whole === undefined ? null : piece[whole];
    if (whole !== undefined && weight !== null && of !== null && weight > of) {
      throw new MemberError('part-above-whole', { part, weight, whole, of });
    }
  }
  const whole = piece.bagged ?? piece.bought;
  if (piece.trim !== null && piece.trim >= whole)
    throw new MemberError('nothing-left', { trim: piece.trim, of: whole });
  refuseContradictions(piece);
}

function refuseContradictions(piece: Weighed): void {
  const { trim } = weightsOf(piece);
  const saved = piece.saved.reduce((sum, part) => sum + part.weight, 0) as Nanograms;
  if (trim !== null && saved > trim) throw new MemberError('saved-above-trim', { saved, trim });
  const { cooked, scraps, served } = piece;
  if (cooked !== null && scraps !== null && served !== null && !agree(scraps + served, cooked)) {
    throw new MemberError('parts-off', { scraps, served, cooked, sum: (scraps + served) as Nanograms });
  }
}

/**
 * Two weighings of the same meat agree within a hundredth, or an ounce where that is more.
 * @param one nanograms, as is `other`
 * @example agree(10 lb, 10 lb 1 oz) // true
 */
export const agree = (one: number, other: number): boolean =>
  Math.abs(one - other) <= Math.max(NANOGRAMS.oz, Math.max(one, other) / 100);

/** @throws MemberError where one of these weights is known already: it is changed only when the piece is named. */
export function refuseOverwriting(piece: Weighed & { seq: number }, names: readonly WeightName[]): void {
  const known = weightsOf(piece);
  for (const option of names) {
    const weight = known[option];
    if (weight !== null) throw new MemberError('already-weighed', { seq: piece.seq, option, weight });
  }
}

/** What was weighed, with the texts as typed: a reading may move one to another option. */
export type Doubtable = Weighed & { typed: Readonly<Record<string, string>> };

/**
 * @param before the piece as it is kept: a doubt that it raised just so was settled then, and is not raised again
 * @throws Ask for the first doubt about the piece that the member has not settled.
 */
export function askIfDoubtful(
  piece: Doubtable,
  cut: CutKey,
  settled: ReadonlySet<Doubt>,
  before: (Doubtable & { cut: CutKey }) | null = null,
): void {
  for (const [doubt, ask] of Object.entries(DOUBTS) as [WeightDoubt, FindDoubt][]) {
    const question = settled.has(doubt) ? null : ask(piece, cutOf(cut));
    const known = question === null || before === null ? null : ask(before, cutOf(before.cut));
    // The message holds the code and every value, so the same one is the same question.
    if (question !== null && question.message !== known?.message) throw takingBack(question, before);
  }
}

/** A weight that a reading drops is taken back, with a dash, where the piece has it already. */
function takingBack({ code, values, readings }: Ask, before: Weighed | null): Ask {
  const kept = (name: string) => before !== null && (before[name as WeightName] ?? null) !== null;
  const set = (reading: Reading) =>
    Object.entries(reading.set).map(([name, value]) => [name, value === null && kept(name) ? '-' : value]);
  return new Ask(
    code,
    values,
    readings.map((reading) => ({ ...reading, set: Object.fromEntries(set(reading)) })),
  );
}

type FindDoubt = (piece: Doubtable, cut: Cut) => Ask | null;

/** The doubts that the weights alone raise. */
type WeightDoubt = Exclude<Doubt, 'unusual'>;

const DOUBTS: Record<WeightDoubt, FindDoubt> = {
  size: sizeDoubt,
  gap: gapDoubt,
  trim: trimDoubt,
  gain: gainDoubt,
};

const confirm = (doubt: Doubt, option: string, weight: Nanograms): Reading => ({
  label: { code: 'as-typed', values: { option, weight } },
  set: {},
  confirms: doubt,
});

/** Slips that are easily made with a label: a decimal point lost or gained, the other unit read; likeliest first. */
const SLIPS: readonly { factor: number; form: 'own' | 'kg' | 'lb' }[] = [
  { factor: 1 / 10, form: 'own' },
  { factor: 10, form: 'own' },
  { factor: NANOGRAMS.kg / NANOGRAMS.lb, form: 'kg' },
  { factor: NANOGRAMS.lb / NANOGRAMS.kg, form: 'lb' },
  { factor: 1 / 100, form: 'own' },
  { factor: 100, form: 'own' },
];

/** Outside half the smallest to twice the largest usual piece of the cut, where somebody knows what is usual. */
function sizeDoubt(piece: Weighed, cut: Cut): Ask | null {
  if (isOwnCut(cut.key)) return null;
  const { low, high } = cut.usual;
  const each = piece.bought / piece.pieces;
  if (each >= low / 2 && each <= high * 2) return null;
  const slips = SLIPS.map(({ factor, form }) => ({
    weight: Math.round(piece.bought * factor) as Nanograms,
    form,
  }))
    .filter(({ weight }) => weight / piece.pieces >= low && weight / piece.pieces <= high)
    .slice(0, 2);
  return new Ask('size', { bought: piece.bought, pieces: piece.pieces, cut: cut.key, low, high }, [
    ...slips.map((slip): Reading => ({ label: { code: 'weight', values: slip }, set: { bought: slip } })),
    ...lotReadings(piece, cut),
    confirm('size', 'bought', piece.bought),
  ]);
}

/** Too heavy for one piece, right for a few of them. */
function lotReadings(piece: Weighed, { usual }: Cut): Reading[] {
  const count = Math.round(piece.bought / ((usual.low + usual.high) / 2));
  const fits = piece.pieces === 1 && count >= 2 && count <= 12;
  return fits
    ? [{ label: { code: 'as-pieces', values: { pieces: count } }, set: { pieces: String(count) } }]
    : [];
}

/** What came off and what was left, both told, should make the piece. */
function gapDoubt(piece: Weighed): Ask | null {
  const { trim, left } = piece;
  const of = piece.bagged ?? piece.bought;
  if (trim === null || left === null || agree(trim + left, of)) return null;
  const missing = (of - trim - left) as Nanograms;
  const readings: Reading[] = [
    { label: { code: 'as-came-off', values: { weight: trim } }, set: { left: null } },
    { label: { code: 'as-left', values: { weight: left } }, set: { trim: null } },
  ];
  const asJuice: Reading = {
    label: { code: 'as-juice', values: { juice: missing } },
    set: { bagged: { weight: (trim + left) as Nanograms, form: 'own' } },
  };
  return new Ask(
    'gap',
    { trim, left, of, missing },
    piece.bagged === null && missing > 0 ? [...readings, asJuice] : readings,
  );
}

/** Over half of the piece came off: more likely what was left, typed in the other place. */
function trimDoubt(piece: Doubtable): Ask | null {
  const of = piece.bagged ?? piece.bought;
  const told = piece.trim !== null ? 'trim' : 'left';
  const { trim, left } = weightsOf(piece);
  const weight = piece[told];
  if (weight === null || trim === null || left === null || trim <= of / 2) return null;
  const other = told === 'trim' ? 'left' : 'trim';
  return new Ask('came-off-or-left', { option: told, weight, of }, [
    {
      label: { code: other === 'left' ? 'as-left' : 'as-came-off', values: { weight } },
      set: { [told]: null, [other]: piece.typed[told] ?? { weight, form: 'own' } },
    },
    {
      label: { code: told === 'left' ? 'as-left' : 'as-came-off', values: { weight } },
      set: {},
      confirms: 'trim',
    },
  ]);
}

/** More came off the heat, or on the plate, than went in: something was put in. */
function gainDoubt(piece: Weighed): Ask | null {
  const { cooked: offHeat, served, intoHeat } = weightsOf(piece);
  const cooked = offHeat ?? served;
  const from = intoHeat ?? piece.bagged ?? piece.bought;
  if (cooked === null || cooked <= from) return null;
  return new Ask('gain', { cooked, from }, [
    { label: { code: 'tell-added', values: {} }, set: {}, opens: 'added' },
    { label: { code: 'nothing-added', values: {} }, set: {}, confirms: 'gain' },
  ]);
}
