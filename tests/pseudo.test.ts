/** Nothing that a member reads is hard-wired: in a pseudo-language all of it stands in brackets, or is a figure. */
import { describe, expect, test } from 'vitest';
import type { Form, Reply } from '../shared/chat/reply.ts';
import { play } from '../src/rehearsal/line.ts';
import { outsideBrackets, pseudo } from './pseudo.ts';
import { rehearse } from './rehearsing.ts';

/** Units and currencies are part of a figure; so is the name of a month, which is the locale's. */
const FIGURES = /\b(?:lb|oz|kg|g|in all|USD|EUR|Jul)\b/g;
/** What the script's members typed themselves. */
const OWN = /Corner store|fat|kidneys/g;

/** Member-readable texts, each with where it stands. */
function textsOf(reply: Reply, where = ''): [string, string][] {
  const {
    answer,
    lines = [],
    table = [],
    small = [],
    actions = [],
    picture,
    privately,
    tell,
    welcome,
  } = reply;
  return [
    [`${where}answer`, answer],
    ...lines.map((text): [string, string] => [`${where}line`, text]),
    ...table.flat().map((text): [string, string] => [`${where}cell`, text]),
    ...small.map((text): [string, string] => [`${where}small print`, text]),
    ...actions.flatMap((action): [string, string][] => [
      [`${where}${action.kind}`, action.label],
      ...(action.kind === 'menu'
        ? action.choices.map(({ label }): [string, string] => [
            `${where}choice of ${action.id.action}`,
            label,
          ])
        : []),
    ]),
    ...(picture === undefined ? [] : [[`${where}alt text`, picture.alt] as [string, string]]),
    ...(picture === undefined
      ? []
      : pictureTexts(picture.config).map((text): [string, string] => ['picture', text])),
    ...(privately === undefined ? [] : textsOf(privately, 'privately: ')),
    ...(tell === undefined ? [] : textsOf(tell.reply, 'told: ')),
    ...(welcome === undefined ? [] : textsOf(welcome, 'welcome: ')),
  ];
}

/** The notes and the labels of a chart's configuration. */
function pictureTexts(config: unknown, key = ''): string[] {
  if (typeof config === 'string')
    return key === 'text' || key === 'labels' || key === 'label' ? [config] : [];
  if (Array.isArray(config)) return config.flatMap((inner) => pictureTexts(inner, key));
  if (typeof config !== 'object' || config === null) return [];
  return Object.entries(config).flatMap(([name, inner]) => pictureTexts(inner, name));
}

/** What a form says; its values are what was typed. */
const formTexts = ({ title, inputs }: Form): [string, string][] => [
  ['form title', title],
  ...inputs.flatMap(({ name, label, hint }): [string, string][] => [
    [`label of ${name}`, label],
    ...(hint === undefined ? [] : [[`hint of ${name}`, hint] as [string, string]]),
  ]),
];

const hardWired = (texts: readonly [string, string][]): string[] =>
  texts
    .filter(([, text]) => /\p{Letter}/u.test(outsideBrackets(text).replace(FIGURES, '').replace(OWN, '')))
    .map(([where, text]) => `${where}: ${text}`);

/** Long enough to see every kind of answer. A line may be a question or a refusal: what it says is read all the same. */
const SCRIPT = `
/weigh cut:packer bought:14.83 trim:2:9.4 price:4.99/lb style:quarter
select The grade: Choice
/weigh cooked:7 lb 11 oz scraps:12 oz
/weigh
submit cut: Boston butt bought: 8.41 lb + 7.96 lb shop: Corner store
press 2 pieces
select Bone: Bone in
press Fix it
submit trim: 1 lb 4 oz
/weigh cut:packer bought:148 lb
press It is
/weigh cut:packer bought:14.10
press 14 lb 10 oz
/weigh cut:packer bought:14.8
press Always decimals
/weigh cut:packer bought:14 lb price:4.99 grade:lovely
press $4.99/lb
/weigh cut:brisket bought:12 lb
press Brisket flat
/weigh bought:12 lb
press Another cut
/weigh cut:packer bought:14 lb trim:9 lb
press 9 lb was left
/weigh cut:packer bought:14 lb trim:2 lb left:11 lb
press 1 lb was bag juice
/weigh cut:packer bought:14 lb trim:2 lb left:13 lb
/weigh cut:packer bought:14 lb trim:3 lb saved:tallow 1.8 @2, grind 4 oz
press 1 lb 8 oz
/weigh cut:butt bought:4 kg trim:0 cooked:4.2 kg
press Tell what
submit added: 400 g
/weigh cut:butt bought:4 kg trim:0 cooked:4.2 kg
press Nothing was
/mine pans name:blue pan weight:14.2 oz
/weigh cut:packer bought:14 lb trim:3 lb pan:blue pan
/weigh cooked:9 lb scraps:1 lb pan:blue pan
press Under each
press Another piece
select Choose: 1
/weigh cut:packer bought:about 14.5 lb
/weigh cut:dragon bought:14 lb
/weigh cut:packer
/weigh cut:packer bought:14 stone
press Fix it
/weigh cut:packer bought:14 lb trim:14 lb
/weigh cut:packer bought:14 lb cooked:8 lb scraps:9 lb
/weigh cut:packer bought:14 lb date:7/4
press Jul 4
/weigh cut:packer bought:14 lb date:tomorrow
/weigh cut:packer bought:2 Pfund
/weigh cut:packer bought:2 lb 17 oz
/weigh cut:packer bought:14 lb style:lovely
/weigh cut:turkey bought:14 lb style:thin
/weigh cut:packer bought:14 lb pieces:0
/weigh cut:packer bought:14 lb wrap:silk
/weigh piece:999 trim:1 lb
/weigh quiet:yes
@bo /weigh cooked:8 lb
@bo /weigh piece:1 cooked:8 lb
@bo /weigh cut:packer bought:12 lb trim:2 lb grade:select
@bo /weigh cooked:6 lb served:5 lb
/piece parts
/piece parts piece:1 portion:6 oz
/piece parts bought:12 lb price:6.65/lb parts:fat 3 lb, kidneys 1 lb @6.10 usable:7 lb cooked:6 lb scraps:1 lb portion:5 oz portions:40 again:7.15/lb
/piece parts bought:12 lb parts:fat 3 lb, kidneys 1 lb loss:1 lb pieces:2 portion:5 oz
/piece parts bought:12 lb parts:fat 3 lb usable:10 lb
press Fix it
/average
/average cut:packer
/average cut:packer measure:cooking
/average cut:butt measure:cooking
/average cut:tri-tip measure:carving
/average measure:plate
/average measure:cost
/weigh cut:flank bought:2 lb trim:2 oz cooked:1.5 lb served:1.4 lb price:8.99/lb
/weigh cut:flank bought:2 lb trim:2 oz cooked:1.5 lb served:1.3 lb price:EUR 8/lb
/weigh cut:flank bought:2 lb trim:2 oz cooked:1.5 lb served:1.3 lb
@bo /weigh cut:flank bought:2 lb trim:3 oz cooked:1.4 lb served:1.2 lb price:9/lb
@bo /weigh cut:flank bought:2 lb trim:3 oz price:9/lb
/average cut:flank measure:cost
/average cut:flank measure:cooking
/average measure:cost
/board cut:flank ranking:value
/average measure:lovely
press Fix it
/mine season
press Show the club
/mine season season:last
@ines /weigh cut:spares bought:4 lb trim:0.4 lb cooked:3 lb served:2.6 lb
@ines /weigh cut:spares bought:4 lb trim:0.44 lb cooked:3 lb served:2.5 lb
@ines /weigh cut:spares bought:4 lb trim:0.42 lb cooked:3 lb served:2.55 lb
@bo /weigh cut:spares bought:4 lb trim:0.7 lb cooked:3 lb served:2.2 lb
@bo /weigh cut:spares bought:4 lb trim:0.74 lb cooked:3 lb served:2.1 lb
@bo /weigh cut:spares bought:4 lb trim:0.68 lb cooked:3 lb served:2.25 lb
@mara /weigh cut:spares bought:4 lb trim:0.5 lb cooked:3 lb served:2.4 lb
@mara /weigh cut:spares bought:4 lb trim:0.55 lb
@mara /weigh cut:spares bought:4 lb trim:0.52 lb
@tom /weigh cut:spares bought:4 lb trim:0.3 lb cooked:3 lb served:2.7 lb
/board cut:spares
press Where am I?
/board cut:spares ranking:trim season:year
/board cut:spares
select Another ranking, for you alone: Most pieces
/board cut:turkey
/board ranking:most
@tom /board ranking:most
press Where am I?
/board ranking:lovely
press Fix it
@bo /compare cut:spares
@tom /compare
@bo /compare cut:Boston butt
/compare member:@bo cut:spares
@bo press Yes, show both
/compare member:@tom cut:spares
@tom press No thanks
/shop cut:spares one:3.5 lb @ 3.49 two:3.6 lb @ 3.29
press Show the club
@bo /shop cut:packer one:14.2 lb @ 5.49 choice two:14 lb @ 5.59 prime three:8 lb @ 8.99 choice flat four:13 lb for 66 select
@bo press Bought it
/shop cut:packer one:14.2 lb @ 5.49 choice style:thin
/shop cut:packer one:14 lb @ 5.49 choice two:13 lb @ 5.49 choice
/shop cut:packer card:yes
/shop cut:packer
/shop one:14 lb @ 5.49
/shop cut:packer one:14 lb
/shop cut:packer one:14 lb 5.49
press $5.49 in all
/feed people:40 children:6 cut:packer second:Boston butt portion:sandwiches
/feed people:12 cut:spares
/feed have:3 lb people:12 cut:spares portion:5 oz
/feed cut:packer
/compare member:@nobody
/compare member:some body
/mine units
/mine units units:kg
/mine units units:stone
press Fix it
/mine pans
/mine pans name:blue pan
press Fix it
/mine pans weight:1 lb
/mine pans remove:blue pan
/mine pans remove:blue pan
/mine habits label:ounces scale:decimal price-unit:kg
/mine habits label:lovely
press Fix it
/help
/help topic:weights
/help topic:prices
/help topic:figures
/help topic:safety
/help topic:privacy
/help topic:managers
/help topic:lovely
press Fix it
@ines! /club show
@ines! /club set
@ines! /club set margin:2.5 scale-error:3 grades:Canada season:April
@ines! /club set margin:much
@ines! press Fix it
@ines! /club waiting
@ines! /club aside piece:1 why:weighed in its tray
@ines! /club aside
@ines! select Look at one: 1
@ines! press Take back in
@ines! press Set aside
@ines! submit why: weighed in its tray
/piece list
/piece show piece:1
@bo /club show
@tom /mine hide
@tom press Hide me
@tom /mine erase
@tom press Erase here
@tom submit sure: 999
@tom press Fix it
@tom /mine erase where:everywhere sure:1
@tom /mine leave
@mara /mine leave
@mara press Leave
/average cut:spares by:member
@ines! /club erase member:@bo
@ines! press Erase them
@ines! /club erase
@ines! press Erase the club
@ines! complete /club set currency:
@ines! complete /club set season:
@ines! complete /club set zone:
complete /weigh cut:
complete /weigh cut:packer grade:
complete /weigh cut:packer style:`;

/** Labels of this language stand in brackets, which a press must name as well. */
const inBrackets = (line: string): string =>
  line.replace(/^((?:@\S+ )?)(press|select) (.*)$/, (_, who, verb, rest) =>
    verb === 'press' ? `${who}press ⟦${rest}` : `${who}select ⟦${rest.replace(': ', ': ⟦')}`,
  );

describe('in a pseudo-language', () => {
  test('brackets are told from what stands outside', () => {
    expect(outsideBrackets('⟦a ⟦b⟧ c⟧, 2 lb; ⟦d⟧.')).toBe(', 2 lb; .');
    expect(hardWired([['answer', '⟦a⟧ and more']])).toEqual(['answer: ⟦a⟧ and more']);
    expect(hardWired([['answer', '⟦a⟧; 17.4 %, $6.04, 2 lb 9.4 oz']])).toEqual([]);
  });

  test('everything that a member reads stands in brackets', async () => {
    const { stage } = await rehearse({ languages: { en: pseudo } });
    const found: string[] = [];
    let read = 0;
    for (const line of SCRIPT.trim().split('\n')) {
      const outcome = await play(stage, inBrackets(line));
      const texts =
        outcome.kind === 'choices'
          ? outcome.choices.map(({ label }): [string, string] => ['completion', label])
          : outcome.kind !== 'answer'
            ? []
            : outcome.answer.kind === 'form'
              ? formTexts(outcome.answer.form)
              : textsOf(outcome.answer.reply);
      read += texts.length;
      found.push(...hardWired(texts).map((text) => `${line} -> ${text}`));
    }
    expect(found).toEqual([]);
    expect(read).toBeGreaterThan(1000);
  });
});
