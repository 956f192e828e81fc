/** Every finding, by name. */
import { findAverages } from './averages.ts';
import { findBeside } from './beside.ts';

export const FINDINGS = {
  averages: findAverages,
  beside: findBeside,
} as const;

export type FindingName = keyof typeof FINDINGS;
export type Asked<Name extends FindingName> = Parameters<(typeof FINDINGS)[Name]>[1];
export type Found<Name extends FindingName> = ReturnType<(typeof FINDINGS)[Name]>;

/** Asks what a club's pieces say: from memory where its cut was not written to since. */
export type Find = <Name extends FindingName>(name: Name, asked: Asked<Name>) => Promise<Found<Name>>;
