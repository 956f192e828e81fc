/** Every finding, by name. */
import { findAverages } from './averages.ts';
import { findBeside } from './beside.ts';
import { findBoard } from './board.ts';
import { findDinner } from './dinner.ts';
import { findFactor } from './factor-debate.ts';
import { findMember } from './member.ts';
import { findOffered } from './offered.ts';
import { findSize } from './size-debate.ts';
import { findStanding } from './standing.ts';
import { findWaiting } from './waiting.ts';
import { findWeighed } from './weighed.ts';

/** Finding functions by the name that commands ask for; each is pure, and its result plain data. */
export const FINDINGS = {
  averages: findAverages,
  beside: findBeside,
  board: findBoard,
  dinner: findDinner,
  factor: findFactor,
  member: findMember,
  offered: findOffered,
  size: findSize,
  standing: findStanding,
  waiting: findWaiting,
  weighed: findWeighed,
} as const;

/** The name of a finding. */
export type FindingName = keyof typeof FINDINGS;

/** What a finding is asked. */
export type Asked<Name extends FindingName> = Parameters<(typeof FINDINGS)[Name]>[1];

/** What a finding says. */
export type Found<Name extends FindingName> = ReturnType<(typeof FINDINGS)[Name]>;

/** Asks what a club's pieces say: from memory where its cut was not written to since. */
export type Find = <Name extends FindingName>(name: Name, asked: Asked<Name>) => Promise<Found<Name>>;
