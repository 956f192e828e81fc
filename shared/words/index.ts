/** Every sentence a member reads, by language. */
import { type Form, type Show, shows } from '../measure/show.ts';
import { english } from './en/index.ts';

/** All words, bound to the form in which figures are printed for their reader. Other languages satisfy English's type. */
export type Speech = ReturnType<typeof english>;
export type Language = (show: Show) => Speech;

/** By BCP 47 language, the part before the first hyphen. */
const LANGUAGES: Readonly<Record<string, Language>> = { en: english };

/** The words for a reader; a language that is not there yet is answered in English, with its own number form. */
export function speak(form: Form, languages: Readonly<Record<string, Language>> = LANGUAGES): Speech {
  const language = languages[form.locale.split('-')[0] ?? ''] ?? english;
  return language(shows(form));
}
