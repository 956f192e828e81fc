/** What grades are called. A grade is a proper name. */
import type { GradeKey } from '../../trade/keys.ts';
import { capital } from './capitals.ts';

const canadian = (name: string): string => `Canada ${name === 'prime' ? 'Prime' : name.toUpperCase()}`;

interface GradeWords {
  /** As its label says it. */
  label(name: string): string;
  /** Where grades of other scales stand beside it. */
  full(name: string): string;
}

/** By scale. */
const GRADES: Readonly<Record<string, GradeWords>> = {
  usda: { label: capital, full: (name) => `USDA ${capital(name)}` },
  'usda-lamb': { label: capital, full: (name) => `USDA ${capital(name)}, lamb` },
  'usda-veal': { label: capital, full: (name) => `USDA ${capital(name)}, veal` },
  canada: { label: canadian, full: canadian },
  jmga: { label: (name) => name.toUpperCase(), full: (name) => `Japan ${name.toUpperCase()}` },
  bms: { label: (name) => `BMS ${name}`, full: (name) => `Japan BMS ${name}` },
  ausmeat: { label: (name) => `Marble score ${name}`, full: (name) => `AUS-MEAT marble score ${name}` },
};

const worded = (key: GradeKey, form: keyof GradeWords): string => {
  const [scale = '', name = ''] = key.split('/');
  return GRADES[scale]?.[form](name) ?? key;
};

/** `Choice`, `Canada AAA`, `BMS 8`: a grade as its label says it. */
export const gradeName = (key: GradeKey): string => worded(key, 'label');

/** `USDA Prime`: a grade among those of other scales. */
export const gradeInFull = (key: GradeKey): string => worded(key, 'full');
