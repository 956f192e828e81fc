/** Texts of any characters at all, halves of them included. */
import fc from 'fast-check';

/** As `unit: 'binary'`, which takes a second and 150 MB to make a list of them all. */
const anyCharacter = fc.integer({ min: 0, max: 0x10ffff }).map((code) => String.fromCodePoint(code));

export const anyText = (maxLength?: number): fc.Arbitrary<string> =>
  fc.string({ unit: anyCharacter, ...(maxLength === undefined ? {} : { maxLength }) });
