/** The clubs of the bench's store: one very large, the others by a long tail. The same ones each time. */
import { BENCH_CUTS, type BenchCut } from './cuts.ts';

export interface BenchClub {
  id: string;
  pieces: number;
  members: readonly string[];
  shops: readonly string[];
  /** The one that most of its pieces are of first. */
  cuts: readonly BenchCut[];
}

export interface StoreSize {
  pieces: number;
  clubs: number;
}

/** Of all pieces a tenth is the largest club's. */
const LARGEST = 0.1;
const PIECES_A_MEMBER = 100 / 3;
const FEWEST_MEMBERS = 3;
const PIECES_A_SHOP = 500;
const FEWEST_SHOPS = 3;

/** As long as the platform's numbers. */
const FIRST_CLUB = 1_100_000_000_000_000_000n;
const FIRST_MEMBER = 1_200_000_000_000_000_000n;
const APART = 1_000_003n;

export function benchClubs({ pieces, clubs }: StoreSize): BenchClub[] {
  const largest = Math.round(pieces * LARGEST);
  // Of 900,000 pieces in 1,999 clubs the second largest has some 30,000, the last some 35.
  const weights = Array.from({ length: clubs - 1 }, (_, rank) => (rank + 11) ** -1.3);
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const others = weights.map((weight) => Math.max(1, Math.round(((pieces - largest) * weight) / sum)));
  return [largest, ...others].map(clubOf);
}

function clubOf(pieces: number, rank: number): BenchClub {
  const members = Math.max(FEWEST_MEMBERS, Math.round(pieces / PIECES_A_MEMBER));
  const shops = Math.max(FEWEST_SHOPS, Math.round(pieces / PIECES_A_SHOP));
  const first = rank % BENCH_CUTS.length;
  return {
    id: String(FIRST_CLUB + BigInt(rank) * APART),
    pieces,
    members: Array.from({ length: members }, (_, member) => memberOf(rank, member)),
    shops: Array.from({ length: shops }, (_, shop) => `Market ${shop + 1}`),
    cuts: [...BENCH_CUTS.slice(first), ...BENCH_CUTS.slice(0, first)],
  };
}

const memberOf = (club: number, member: number): string =>
  String(FIRST_MEMBER + BigInt(club * 10_000 + member) * APART);
