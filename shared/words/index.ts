/** Every sentence a member reads, by language. */
import { languageOf } from '../measure/locale.ts';
import { type Form, type Show, shows } from '../measure/show.ts';
import { own } from '../own.ts';
import { english } from './en/index.ts';

/** All words, bound to the form in which figures are printed for their reader. Other languages satisfy English's type. */
export type Speech = ReturnType<typeof english>;

/** A language: its words for one reader. */
export type Language = (show: Show) => Speech;

type Languages = Readonly<Record<string, Language>>;

/** By BCP 47 language, the part before the first hyphen. */
const LANGUAGES: Languages = { en: english };

/** Some thousand functions each: bound once a form, of which a host meets a few. */
const MOST_BOUND = 200;
const bound = new WeakMap<Languages, Map<string, Speech>>();

/**
 * The words for a reader; a language that is not there yet is answered in English, with its own number form.
 * @example speak({ locale: 'de', units: 'kg' }).show.share(0.174) // '17,4 %'
 */
export function speak(form: Form, languages: Languages = LANGUAGES): Speech {
  const known = bound.get(languages) ?? new Map<string, Speech>();
  bound.set(languages, known);
  const key = `${form.locale} ${form.units} ${form.currency ?? ''}`;
  const speech = known.get(key) ?? (own(languages, languageOf(form.locale)) ?? english)(shows(form));
  if (known.size >= MOST_BOUND) known.clear();
  known.set(key, speech);
  return speech;
}
