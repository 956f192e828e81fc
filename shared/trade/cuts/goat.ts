/** Goat. Its series 11 numbers a cut anew for each style of cutting, so none is told here. */
import type { CutRow } from '../cut.ts';

/** The rows, the most usual first. */
export const GOAT: readonly CutRow[] = [
  {
    key: 'shoulder',
    name: 'Goat shoulder',
    names: 'shoulder of goat, kid shoulder, goat shoulder roast, goat forequarter',
    animal: 'goat, kid',
    bone: 'both',
    raw: ['fat', 'silverskin'],
    pounds: [2, 7],
  },
  {
    key: 'leg',
    name: 'Leg of goat',
    names: 'goat leg, kid leg, goat hind leg, leg of kid',
    animal: 'goat, kid',
    bone: 'both',
    raw: ['fat', 'silverskin'],
    pounds: [2, 8],
  },
  {
    key: 'ribs',
    name: 'Goat ribs',
    names: 'rack of goat, goat rack, goat spareribs, kid ribs',
    animal: 'goat, kid',
    bone: 'in',
    raw: ['fat', 'membrane'],
    pounds: [0.75, 5],
  },
  {
    key: 'neck',
    name: 'Goat neck',
    names: 'neck of goat, kid neck',
    animal: 'goat, kid',
    bone: 'in',
    raw: ['fat'],
    pounds: [0.75, 4],
  },
  {
    key: 'whole',
    name: 'Whole goat',
    names: 'goat, whole kid, cabrito, capretto, spit goat, goat carcass, kid goat, cabrito whole',
    animal: 'goat, kid',
    bone: 'in',
    raw: [],
    pounds: [10, 55],
  },
];
