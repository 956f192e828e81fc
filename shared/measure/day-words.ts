/** The words for days and months, in the languages that members type. Without accents, lower case. */

const MONTH_NAMES: readonly string[] = [
  'january januar janner enero',
  'february februar feber febrero',
  'march marz maerz marzo mrz',
  'april abril',
  'may mai mayo',
  'june juni junio',
  'july juli julio',
  'august agosto',
  'september sept septiembre setiembre',
  'october oktober octubre',
  'november noviembre',
  'december dezember diciembre',
];

/** From Sunday, as JavaScript counts. */
const WEEKDAY_NAMES: readonly string[] = [
  'sunday sonntag so domingo',
  'monday montag mo lunes',
  'tuesday dienstag di martes',
  'wednesday mittwoch mi miercoles',
  'thursday donnerstag do jueves',
  'friday freitag fr viernes',
  'saturday samstag sonnabend sa sabado',
];

const SHORTEST_START = 3;

/** Finds which list has `word`: as it is, or as the start (three letters or more) of one of its names. */
function finder(lists: readonly string[]): (word: string) => number | null {
  const names = lists.map((list) => list.split(' '));
  return (word) => {
    const starts = word.length >= SHORTEST_START;
    const found = names.flatMap((list, index) =>
      list.some((name) => name === word || (starts && name.startsWith(word))) ? [index] : [],
    );
    return found.length === 1 ? (found[0] ?? null) : null;
  };
}

const month = finder(MONTH_NAMES);

/** The month (1 to 12) that a name or its start stands for: `jul` is 7, `juni` is 6; null for other words. */
export const monthNamed = (word: string): number | null => {
  const found = month(word);
  return found === null ? null : found + 1;
};

/** The weekday (0, Sunday, to 6) that a name or its start stands for: `sat` is 6; null for other words. */
export const weekdayNamed: (word: string) => number | null = finder(WEEKDAY_NAMES);

/** Words for a day near today: how many days ago it is. */
export const RELATIVE_DAYS: ReadonlyMap<string, number> = new Map([
  ['today', 0],
  ['heute', 0],
  ['hoy', 0],
  ['yesterday', 1],
  ['gestern', 1],
  ['ayer', 1],
  ['vorgestern', 2],
  ['anteayer', 2],
]);
