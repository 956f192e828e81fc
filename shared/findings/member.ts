/** One member beside the club, or beside another member: levels drawn towards the club, and what is between them. */
import { sift } from '../club/sift.ts';
import { contrastBetween, contrastWithClub, type MemberContrast } from '../statistics/member-contrast.ts';
import type { Verdict } from '../statistics/verdict.ts';
import type { Measure } from '../yield/measure.ts';
import { type Usual, usualOf } from './debate.ts';
import type { About, Looked } from './finding.ts';
import {
  asRead,
  type DrawnIn,
  levelOf,
  type MemberModel,
  type Missing,
  memberModel,
} from './member-model.ts';

/** About one cut and measure: one member beside another, or beside the rest. */
export interface AskedMember extends About {
  member: string;
  /** Null: beside the rest of the club. */
  other: string | null;
  /** What is too small to argue about, in shares. */
  margin: number;
  /** The club's own: what a piece usually costs is told in it. */
  currency: string;
}

/** A member's pieces that count, and their level where the model has one. */
export interface OwnLevel {
  pieces: number;
  level: DrawnIn | null;
}

/** In shares at the club's typical share, as a member reads them: above 0 the member has more. */
export interface Difference {
  difference: number;
  low: number;
  high: number;
  df: number;
  /** `early` below three pieces of either. */
  verdict: Verdict | 'early';
}

/** Where a member stands. Levels are fractions of a typical piece, as a member reads them. */
export interface FoundMember {
  own: OwnLevel;
  /** Null beside the club. */
  other: OwnLevel | null;
  /** Null without a model, or where either has no piece. */
  between: Difference | null;
  /** A typical piece of the club; null without a model. */
  club: DrawnIn | null;
  pieces: number;
  members: number;
  waiting: number;
  missing: Missing | null;
  usual: Usual;
}

/** Levels drawn towards the club, and what is between the two; without estimates and pieces that wait. */
export function findMember({ plain }: Looked, asked: AskedMember): FoundMember {
  const { measure, member, other, margin } = asked;
  const { counted, waiting } = sift(plain);
  const modelled = memberModel(counted);
  const { model, members, rows, missing } = modelled;
  const [own, theirs] = [members.indexOf(member), other === null ? null : members.indexOf(other)];
  const found =
    model === null
      ? null
      : theirs === null
        ? contrastWithClub(model, own, margin)
        : contrastBetween(model, own, theirs, margin);
  return {
    own: ownLevel(modelled, own, measure),
    other: theirs === null ? null : ownLevel(modelled, theirs, measure),
    between: found === null ? null : differenceRead(found, measure),
    club: model === null ? null : asRead(measure, levelOf(model, null)),
    pieces: rows.count,
    members: members.length,
    waiting: waiting.count,
    missing,
    usual: usualOf(rows, asked.currency),
  };
}

const ownLevel = ({ model, counts }: MemberModel, code: number, measure: Measure): OwnLevel => ({
  pieces: counts[code] ?? 0,
  level: model === null || code < 0 ? null : asRead(measure, levelOf(model, code)),
});

const OTHER_WAY: Readonly<Partial<Record<Difference['verdict'], Verdict>>> = { less: 'more', more: 'less' };

/** Who loses less keeps more: of a yield the difference and its ends turn round. */
function differenceRead(
  { difference, low, high, df, verdict }: MemberContrast,
  measure: Measure,
): Difference {
  if (measure === 'trim') return { difference, low, high, df, verdict };
  // From 0 rather than by the sign: the figures have no -0.
  return {
    difference: 0 - difference,
    low: 0 - high,
    high: 0 - low,
    df,
    verdict: OTHER_WAY[verdict] ?? verdict,
  };
}
