/** The kinds of options that commands share: how each is read, completed and refused. */
import type { Option, Suggestion } from '../shared/chat/option.ts';
import type { Audience } from '../shared/chat/request.ts';
import { readSentFile, type SentFile } from '../shared/chat/sent-file.ts';
import { MemberError } from '../shared/errors.ts';
import type { CalendarDay } from '../shared/measure/day.ts';
import { readDay } from '../shared/measure/read-day.ts';
import { decimalMark } from '../shared/measure/show.ts';
import { foldName } from '../shared/trade/fold-name.ts';
import { oneLine } from '../shared/words/quote.ts';

/** A day of the club's calendar. */
export const day = (): Option<CalendarDay> => ({
  kind: 'text',
  extra: true,
  read: (text, { option, today, locale }) =>
    readDay(text, { option, today, decimalMark: decimalMark(locale) }),
});

/** One of a few fixed values: the platform offers them in its menu; case, spaces and plurals do not matter. */
export const choice = <const Value extends string>(choices: readonly Value[]): Option<Value> => ({
  kind: 'text',
  choices,
  read: (text, { option }) => {
    const found = choices.find((one) => foldName(one) === foldName(text));
    if (found === undefined) throw new MemberError('choice-unknown', { option, read: text, choices });
    return found;
  },
});

/** Yes or no, as the platform's menu gives it. */
export const yesNo = (): Option<boolean> => ({
  kind: 'yes-no',
  read: (text, { option }) => {
    const choices = ['yes', 'no'];
    const typed = text.trim().toLowerCase();
    if (!choices.includes(typed)) throw new MemberError('choice-unknown', { option, read: text, choices });
    return typed === 'yes';
  },
});

/** Who sees the answer of a command with an option `quiet`. It is known before any option is read. */
export const clubUnlessQuiet = ({ quiet }: Readonly<Record<string, string>>): Audience =>
  quiet?.trim().toLowerCase() === 'yes' ? 'member' : 'club';

/** A whole number from `low` to `high`, both included. */
export const count = (low: number, high: number): Option<number> => ({
  kind: 'text',
  read: (text, { option }) => {
    const read = /^\s*#?(\d{1,9})\s*$/.exec(text)?.[1];
    const value = Number(read);
    if (read === undefined || value < low || value > high) {
      throw new MemberError('number-unreadable', { option, read: text, low, high });
    }
    return value;
  },
});

/** A file that was attached. */
export const sentFile = (): Option<SentFile> => ({
  kind: 'file',
  read: (text, { option }) => {
    const file = readSentFile(text);
    if (file === null) throw new MemberError('file-unreadable', { option, read: text });
    return file;
  },
});

/** An id stands in an answer as a mention does, without backticks: so there is no markup in it, and no end of it. */
const PERSON = /^(?:<@!?(?<mention>[\w-]{1,40})>|@?(?<id>[\w-]{1,40}))$/;
/** Not somebody, but all. */
const ALL = /^(?:everyone|here)$/i;
const MARKED = /^[_-]|[_-]$/;

/** A member of the club: as the platform's menu gives one, or as a mention is typed. */
export const person = (): Option<string> => ({
  kind: 'member',
  read: (text, { option }) => {
    const { mention, id } = PERSON.exec(text.trim())?.groups ?? {};
    const read = mention ?? id;
    if (read === undefined || ALL.test(read) || MARKED.test(read))
      throw new MemberError('person-unreadable', { option, read: text });
    return read;
  },
});

/** A piece by the number people see; the member's newest are offered. */
export const piece = (): Option<number> => ({
  ...count(1, 999_999_999),
  complete: async (typed, { pieces, say }) =>
    matching(
      typed,
      (await pieces()).map((one) => ({ label: say.weighing.pieceChoice(one), value: String(one.seq) })),
    ),
});

/** Text that is kept as typed, on one line and without what nobody sees: it stands in menus by itself. */
export const words = (limit: number): Option<string> => ({
  kind: 'text',
  read: (text, { option }) => {
    const read = oneLine(text);
    if (read === '') throw new MemberError('text-empty', { option });
    if (read.length > limit) throw new MemberError('text-too-long', { option, length: read.length, limit });
    return read;
  },
});

/** Where it was bought: the club's own shops are offered. */
export const shop = (): Option<string> => ({
  ...words(60),
  extra: true,
  complete: async (typed, { shops }) => matchingNames(typed, await shops()),
});

/** The names that hold what was typed. */
export const matchingNames = (typed: string, names: readonly string[]): Suggestion[] =>
  matching(
    typed,
    names.map((name) => ({ label: name, value: name })),
  );

/** The suggestions that hold what was typed, in their words or in what they write. */
export const matching = (typed: string, suggestions: readonly Suggestion[]): Suggestion[] =>
  suggestions.filter(
    ({ label, value }) =>
      foldName(label).includes(foldName(typed)) || foldName(value).includes(foldName(typed)),
  );
