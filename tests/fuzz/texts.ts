/** What members might type: what is meant, nearly so, thrown together, or written to do harm. */
import fc from 'fast-check';
import { anyText } from '../any-text.ts';

/** Stands in every text that is written to do harm, and nowhere else. */
export const CANARY = 'Zq7';

const MEANT = {
  cut: ['packer', 'Boston butt', 'flat', 'pork loin', 'spares', 'ribeye', 'chuck roll', 'lamb leg'],
  weight: ['14.83 lb', '8 lb 4 oz', '2:9.4', '6720 g', '6,72 kg', '14.8', '2.5', '0', '14 3/4 lb', '~9 lb'],
  price: ['4.99/lb', '$4.99', '$4.99 €', '4,99 €/kg', '12 in all', '@ 3.49', '5', '0'],
  parts: ['fat 2 lb, lean 1 lb @ 3.99/lb', 'bone 1 lb @ 0', 'flank: 1 lb 12 oz', '300 g fat; 2 lb trim'],
  label: ['14.83 lb @ 4.99/lb Choice', '12 lb @ 3.99/lb', '6 kg @ 9,90/kg flat', '13 lb Prime'],
  grade: ['Choice', 'prime', 'Select', 'R3', 'none'],
  day: ['today', 'yesterday', '2026-07-01', '4 July', '7/4', 'last Sunday'],
  number: ['1', '2', '12', '128', '-1', '1e3'],
  choice: ['yes', 'no', 'trim', 'cooking', 'plate', 'lb', 'kg', 'here', 'everywhere', 'csv', 'foil', 'in'],
  name: ['blue pan', 'corner shop', 'remove', 'Market hall', '-', 'size', 'ines', 'bo'],
} as const;
/** What a place expects. */
export type Kind = keyof typeof MEANT;

const meant = fc.constantFrom<string>(...Object.values(MEANT).flat());

const TOKENS =
  '1 2 9.4 14.8 100 720 1,234 0 . , \' : / - + ~ # @ lb oz kg g € $ for ( ) % x ½ – and about " “ ` | * _ \\'.split(
    ' ',
  );
const jumbled = fc
  .array(fc.constantFrom(...TOKENS, ' ', ' ', '\n'), { maxLength: 14 })
  .map((all) => all.join(''));

const HARM: readonly string[] = [
  `@everyone ${CANARY}`,
  `@here ${CANARY} <@&100000000000000001> <@100000000000000002> <#100000000000000003>`,
  `**${CANARY}** __x__ ~~y~~ ||z|| > q`,
  `[${CANARY}](https://shop.invalid)`,
  `\`${CANARY}\` \`\`\`js\n${CANARY}\n\`\`\``,
  `\u02cb${CANARY}\uff40`,
  `${CANARY}\u202e lb 41 \u2066x\u2069`,
  `a\n# ${CANARY}\n-# ${CANARY}\r\n> ${CANARY}`,
  `${CANARY}\u0000\u200b\u2060\u00ad\u2028`,
  `${CANARY}\ud83d`,
  `=HYPERLINK("https://shop.invalid";"${CANARY}")`,
  `${CANARY} ${'\u0301'.repeat(30)}`,
  `undefined NaN [object Object] ${CANARY}`,
  `__proto__ constructor ${CANARY}`,
  `<t:0:R> <:x:100000000000000004> </weigh:1> ${CANARY}`,
];
const harmful = fc.oneof(
  fc.constantFrom(...HARM),
  fc.tuple(meant, fc.constantFrom(...HARM)).map(([good, bad]) => `${good} ${bad}`),
  fc.tuple(fc.constantFrom(...HARM), meant).map(([bad, good]) => `${bad} ${good}`),
  fc.constant(`${CANARY} ${'x'.repeat(3990)}`),
);

/** Any text, of which half is as it should be somewhere. */
export const anyTyped: fc.Arbitrary<string> = fc.oneof(
  { weight: 5, arbitrary: meant },
  { weight: 2, arbitrary: jumbled },
  { weight: 3, arbitrary: harmful },
  { weight: 1, arbitrary: anyText(60) },
  { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 60 }) },
);

/** A text for a place where one of these is expected: one, two run together, or any. */
export function typedFor(...kinds: readonly Kind[]): fc.Arbitrary<string> {
  const one = fc.constantFrom<string>(...kinds.flatMap((kind) => [...MEANT[kind]]));
  return fc.oneof(
    { weight: 6, arbitrary: one },
    { weight: 1, arbitrary: fc.tuple(one, one).map((both) => both.join(' ')) },
    { weight: 2, arbitrary: anyTyped },
  );
}
