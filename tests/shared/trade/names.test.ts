/** What clubs type for every cut of the catalogue: short names, trade names, other spellings, slips, item numbers. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Ask, MemberError } from '../../../shared/errors.ts';
import { CUTS } from '../../../shared/trade/cuts.ts';
import { cutNamed, readCut } from '../../../shared/trade/look-up.ts';
import { matchingCuts } from '../../../shared/trade/matching-cuts.ts';
import { SHARED_NAMES } from '../../../shared/trade/shared-names.ts';
import { outcome } from '../measure/reading.ts';

const read = (text: string) => outcome(() => readCut(text, 'cut'));

/** What was asked, by key; null where it was not. */
const asked = (text: string): readonly (string | null)[] | null => {
  const found = read(text);
  return found instanceof Ask
    ? found.readings.map(({ label }) => (label.code === 'cut' ? label.values.cut : null))
    : null;
};

/** Cut -> what is typed for it, parted by ` | `. */
const TYPED: Readonly<Record<string, string>> = {
  'beef/brisket-whole':
    'packer | PACKER | whole packer | full packer | Packer brisket | whole brisket | a whole brisket | the packer | beef packer | packer  brisket | packr | 119 | IMPS 120 | #120 | item no. 120',
  'beef/brisket-flat':
    'flat | Flats | brisket flat | flat cut | first cut | first cut brisket | 120a | beef flat | brisket-flat | brsket flat',
  'beef/brisket-point':
    'point | point cut | deckle | brisket point | second cut brisket | brisket deckle | 120B',
  'beef/chuck-roll': 'chuck roll | chuckroll | Chuck Rolls | neck-off chuck roll | 116A | beef chuck roll',
  'beef/chuck-eye': 'chuck eye | chuck eye roll | mock ribeye | chuck-eye roast | 116d',
  'beef/chuck-blade': 'blade roast | chuck roast | 7-bone roast | pot roast | chuckie | seven bone roast',
  'beef/clod': 'clod | shoulder clod | clod heart | beef clod | cross rib roast | 114',
  'beef/flat-iron': 'flat iron | flatiron | top blade | oyster blade | feather blade',
  'beef/denver': 'denver | Denver roast | denver steak | under blade roast | zabuton',
  'beef/chuck-short-ribs':
    'chuck short ribs | chuck ribs | boneless short ribs | 130 | English cut short ribs',
  'beef/short-ribs':
    'short ribs | Short Rib | beef short ribs | jacob’s ladder | jacobs ladder | galbi | 123',
  'beef/plate-ribs':
    'plate ribs | dino ribs | dinosaur ribs | beef plate ribs | three-bone plate ribs | 123A',
  'beef/back-ribs': 'beef back ribs | beef baby backs | texas back ribs | 124',
  'beef/rib-roast':
    'prime rib | standing rib roast | rib roast | bone-in prime rib | Prime Rib Roast | usda prime rib | fore rib | rib of beef | 109 | bone in ribeye',
  'beef/ribeye-roll':
    'ribeye | rib eye | rib-eye roll | boneless prime rib | scotch fillet | cube roll | lip-on ribeye | 112A | boneless rib roast',
  'beef/strip-loin':
    'strip loin | striploin | New York strip | ny strip | top loin | Kansas City strip | contre-filet | 180 | strip roast',
  'beef/short-loin': 'short loin | porterhouse | t-bone | T-bone roast | 174',
  'beef/tenderloin':
    'tenderloin | beef tenderloin | beef fillet | fillet of beef | chateaubriand | PSMO | filet mignon | 189a | tenderlion',
  'beef/top-sirloin': 'top sirloin | top butt | sirloin butt | sirloin roast | 184 | beef top butt',
  'beef/picanha':
    'picanha | Picaña | picana | top sirloin cap | sirloin cap | coulotte | culotte | rump cap | rump cover | 184D',
  'beef/tri-tip': 'tri-tip | tri tip | TRITIP | triangle roast | maminha | 185C | 185d | tri-tips | trip-tip',
  'beef/flap': 'flap | flap meat | bavette | sirloin flap | 185A',
  'beef/flank': 'flank | flank steak | London broil | 193',
  'beef/skirt-outside': 'outside skirt | entraña | entrana | fajita skirt | 121C',
  'beef/skirt-inside': 'inside skirt | inside skirt steak | 121D',
  'beef/hanger': 'hanger | hanger steak | onglet | hanging tender | butcher’s steak | butchers steak',
  'beef/top-round': 'top round | inside round | topside | pit beef round | 169',
  'beef/bottom-round': 'bottom round | outside round | silverside | rump roast',
  'beef/eye-of-round': 'eye of round | eye round | eye round roast | 171C',
  'beef/knuckle': 'sirloin tip | knuckle | round tip | thick flank | 167',
  'beef/steamship-round': 'steamship round | steamship | baron of beef',
  'beef/shank': 'beef shank | beef shin | thor’s hammer | shin of beef',
  'beef/oxtail': 'oxtail | oxtails | ox tail | beef tail',
  'beef/cheeks': 'beef cheeks | beef cheek | ox cheek | cachete',
  'beef/tongue': 'beef tongue | tongue | lengua | ox tongue',
  'pork/butt':
    'butt | Butts | boston butt | Boston Butt | boston-butts | boston | pork butt | pork shoulder butt | boneless pork butt | bone-in butt | fresh pork butt | 406 | 406A | bostn butt | boston blade',
  'pork/picnic':
    'picnic | picnic ham | picnic shoulder | pork picnic | pernil | 405 | 405a | bone-in picnic | picnic roast',
  'pork/shoulder-whole': 'whole shoulder | full shoulder | whole pork shoulder | 403 | whole shoulders',
  'pork/collar': 'collar | pork collar | money muscle | coppa | pork neck',
  'pork/spareribs':
    'spares | spareribs | spare ribs | Spare-Ribs | side ribs | pork spares | pork spare ribs | slab of spareribs | rack of spares | 416 | sparerib',
  'pork/st-louis-ribs':
    'St. Louis ribs | st louis ribs | St Louis | saint louis ribs | st. louis style ribs | st louis cut ribs | slc ribs | 416A | stlouis ribs',
  'pork/back-ribs':
    'baby backs | baby back ribs | Babybacks | babyback ribs | back ribs | pork back ribs | loin ribs | loin back ribs | bbr | 422 | baby back',
  'pork/rib-tips': 'rib tips | tips | pork rib tips | 416B',
  'pork/country-ribs': 'country ribs | country style ribs | country-style pork ribs | csr',
  'pork/loin':
    'pork loin | boneless pork loin | loin of pork | rack of pork | pork rack | center-cut pork loin | 410 | 413',
  'pork/tenderloin': 'pork tenderloin | pork fillet | pork filet | 415',
  'pork/belly': 'belly | pork belly | pork bellies | side pork | skin-on belly | 408',
  'pork/fresh-ham': 'fresh ham | ham | green ham | leg of pork | pork leg | 401',
  'pork/hocks': 'hocks | ham hocks | pork knuckle | pork shank | schweinshaxe | Eisbein',
  'pork/jowl': 'jowl | hog jowl | guanciale | pork jowls',
  'pork/cheeks': 'pork cheeks | pig cheeks',
  'pork/whole-hog': 'whole hog | hog | whole pig | the whole hog | roasting pig | 400A',
  'pork/suckling-pig': 'suckling pig | lechon | lechón | cochinillo | spanferkel',
  'lamb/shoulder': 'lamb shoulder | shoulder of lamb | square-cut shoulder | lamb’s shoulder | 207',
  'lamb/leg':
    'leg of lamb | lamb leg | gigot | boneless leg of lamb | butterflied leg of lamb | leg of lmab | 233A',
  'lamb/rack': 'rack of lamb | lamb rack | frenched rack | 204',
  'lamb/loin': 'lamb loin | saddle of lamb | saddle | loin of lamb',
  'lamb/shanks': 'lamb shank | lamb shanks | lamb foreshank',
  'lamb/breast': 'lamb breast | breast of lamb | lamb belly | 209',
  'lamb/ribs': 'lamb ribs | Denver ribs | lamb spareribs | lamb riblets',
  'lamb/neck': 'lamb neck | neck of lamb',
  'lamb/whole': 'whole lamb | lamb on a spit | cordero',
  'lamb/mutton-quarter': 'mutton | mutton shoulder | leg of mutton',
  'goat/shoulder': 'goat shoulder | shoulder of goat | kid shoulder',
  'goat/leg': 'goat leg | leg of goat | leg of kid',
  'goat/ribs': 'goat ribs | goat rack',
  'goat/neck': 'goat neck',
  'goat/whole': 'goat | whole goat | cabrito | capretto',
  'veal/breast': 'veal breast | breast of veal | veal brisket',
  'veal/shoulder': 'veal shoulder | veal chuck',
  'veal/leg': 'veal leg | leg of veal',
  'veal/rack': 'veal rack | rack of veal | 306',
  'veal/loin': 'veal loin | loin of veal',
  'veal/shanks': 'veal shank | osso buco | ossobuco | osso bucco',
  'poultry/turkey-whole': 'turkey | Turkeys | whole turkey | a turkey | tom turkey | frozen turkey | turky',
  'poultry/turkey-breast': 'turkey breast | bone-in turkey breast | boneless turkey breast | turkey crown',
  'poultry/turkey-legs': 'turkey leg | turkey legs | turkey drumsticks',
  'poultry/turkey-thighs': 'turkey thigh | turkey thighs',
  'poultry/chicken-whole':
    'chicken | whole chicken | spatchcock chicken | fryer | yardbird | beer can chicken',
  'poultry/chicken-halves': 'half chicken | chicken halves | split chicken',
  'poultry/chicken-quarters': 'leg quarters | chicken quarters | chicken legs',
  'poultry/chicken-thighs': 'thighs | chicken thighs | chicken thigh | boneless chicken thighs',
  'poultry/chicken-drumsticks': 'drumsticks | chicken drumsticks | drums',
  'poultry/chicken-wings': 'wings | chicken wings | wing',
  'poultry/chicken-breast': 'chicken breast | chicken breasts',
  'poultry/capon': 'capon | capons',
  'poultry/duck-whole': 'duck | whole duck | duckling | peking duck',
  'poultry/duck-breast': 'duck breast | magret',
  'poultry/goose-whole': 'goose | geese | whole goose',
  'poultry/guinea-fowl': 'guinea fowl | guinea hen',
  'poultry/cornish-hen': 'cornish hen | cornish game hens | poussin',
  'game/venison-leg': 'venison leg | haunch of venison | venison haunch | deer leg | haunch',
  'game/venison-shoulder': 'venison shoulder | deer shoulder',
  'game/venison-loin': 'backstrap | venison backstrap | deer backstraps | saddle of venison',
  'game/venison-neck': 'venison neck | deer neck',
  'game/boar-shoulder': 'wild boar shoulder | boar shoulder | feral hog shoulder',
  'game/boar-leg': 'wild boar leg | boar ham',
  'game/boar-loin': 'wild boar loin | boar rack',
  'game/boar-ribs': 'wild boar ribs | boar ribs',
  'game/bison-brisket': 'bison brisket | buffalo brisket',
  'game/bison-ribs': 'bison short ribs | bison ribs',
  'game/elk-roast': 'elk | elk roast',
  'game/rabbit': 'rabbit | whole rabbit',
  'poultry/pheasant': 'pheasant | whole pheasant',
};
const ROWS = Object.entries(TYPED).flatMap(([key, texts]) =>
  texts.split(' | ').map((text) => [text, key] as const),
);

test('every cut is among them, with three hundred names and more', () => {
  expect(Object.keys(TYPED).toSorted()).toEqual(CUTS.map(({ key }) => key as string).toSorted());
  expect(new Set(ROWS.map(([text]) => text)).size).toBeGreaterThan(300);
});

test.each(ROWS)('%j is %s', (text, key) => {
  expect(read(text)).toBe(key);
  expect(cutNamed(text)?.key).toBe(key);
});

describe('a name of several cuts is asked, the likeliest first', () => {
  test.each(Object.entries(SHARED_NAMES))('%j', (name, keys) => {
    expect(asked(name)).toEqual(keys);
    expect(keys.length).toBeGreaterThan(1);
    expect(keys.length).toBeLessThanOrEqual(5);
    expect(cutNamed(name)).toBeNull();
  });

  test.each([
    ['Ribs', 'pork/spareribs'],
    ['shoulders', 'pork/butt'],
    ['sholder', 'pork/butt'],
    ['briskett', 'beef/brisket-whole'],
    ['boneless pork shoulder', 'pork/butt'],
    ['fresh pork shoulder', 'pork/butt'],
    ['skirts', 'beef/skirt-outside'],
  ])('%j, %s first', (text, key) => {
    expect(asked(text)?.[0]).toBe(key);
  });

  test('but not what is never sold so', () => {
    expect(asked('boneless pork shoulder')).not.toContain('pork/shoulder-whole');
    expect(read('boneless spareribs')).toBeInstanceOf(MemberError);
    expect(read('bone-in tri-tip')).toBeInstanceOf(MemberError);
  });
});

describe('a name that is none', () => {
  test.each([
    'tofu',
    'ri',
    'bt',
    'lam',
    '1200',
    '121',
    '12',
    'boneless',
    'bone-in',
    'a',
    'roast',
    '🐖',
    'ribs or brisket',
  ])('%j is refused', (text) => {
    expect(read(text)).toBeInstanceOf(MemberError);
  });

  test('names the cuts that are near', () => {
    const found = read('smoked pork shoulder');
    expect(found).toBeInstanceOf(MemberError);
    expect(found).toMatchObject({
      values: { near: expect.arrayContaining(['pork/shoulder-whole', 'pork/picnic']) },
    });
  });
});

describe('whatever is typed', () => {
  const words = fc.constantFrom(
    ...CUTS.flatMap(({ name, names }) => [name, ...names]).flatMap((name) => name.split(' ')),
    ...'boneless bone-in whole of the a 120 half'.split(' '),
  );
  const texts = fc.oneof(
    fc.string({ maxLength: 40 }),
    fc.string({ unit: 'grapheme', maxLength: 20 }),
    fc.array(words, { maxLength: 5 }).map((some) => some.join(' ')),
  );

  test('a cut, an Ask of two to five or a refusal comes of it, and nothing else', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const found = read(text);
        if (found instanceof Ask) {
          expect(found.readings.length).toBeGreaterThanOrEqual(2);
          expect(found.readings.length).toBeLessThanOrEqual(5);
          const again = found.readings.map(({ set }) => read(String(set.cut)));
          expect(again).toEqual(asked(text));
        } else if (!(found instanceof MemberError)) {
          expect(CUTS.map(({ key }) => key)).toContain(found);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('completion gives each cut once at most', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const found = matchingCuts(text);
        expect(new Set(found).size).toBe(found.length);
      }),
      { numRuns: 200 },
    );
  });
});

describe('one slip of the finger', () => {
  const names = CUTS.flatMap(({ key, name, names: others }) =>
    [name, ...others].map((one) => ({ key: key as string, name: one.toLowerCase() })),
  ).filter(({ name }) => name.replace(/[^a-z]/g, '').length >= 6 && !/\d/.test(name));
  const slips = fc
    .record({
      named: fc.constantFrom(...names),
      place: fc.nat(),
      letter: fc.constantFrom(...'abcdefghijklmnopqrstuvwxyz'),
      kind: fc.constantFrom('drop' as const, 'change' as const, 'add' as const, 'swap' as const),
    })
    .map(({ named: { key, name }, place, letter, kind }) => {
      const letters = [...name].flatMap((one, at) => (/[a-z]/.test(one) ? [at] : []));
      const at = letters[place % letters.length] ?? 0;
      const next = name.charAt(at + 1);
      return {
        key,
        slip: {
          drop: name.slice(0, at) + name.slice(at + 1),
          change: name.slice(0, at) + letter + name.slice(at + 1),
          add: name.slice(0, at) + letter + name.slice(at),
          swap: /[a-z]/.test(next) ? name.slice(0, at) + next + name.charAt(at) + name.slice(at + 2) : name,
        }[kind],
      };
    });

  test('finds the cut, asks with it, or is the name of another', () => {
    fc.assert(
      fc.property(slips, ({ key, slip }) => {
        const found = read(slip);
        expect(found).not.toBeInstanceOf(MemberError);
        const keys: readonly unknown[] = asked(slip) ?? [found];
        // Five are asked at most; and `loin` with one letter more is still a name of its own.
        if (!keys.includes(key) && keys.length < 5) expect(cutNamed(slip)).not.toBeNull();
      }),
      { numRuns: 1000 },
    );
  });
});

describe('completion', () => {
  test.each([
    ['pack', 'beef/brisket-whole'],
    ['Boston b', 'pork/butt'],
    ['st lou', 'pork/st-louis-ribs'],
    ['pican', 'beef/picanha'],
    ['leg of l', 'lamb/leg'],
    ['prime', 'beef/rib-roast'],
    ['shoulder', 'pork/butt'],
    ['ribs', 'pork/spareribs'],
    ['turkey', 'poultry/turkey-whole'],
    ['venison', 'game/venison-leg'],
  ])('of %j begins with %s', (typed, key) => {
    expect(matchingCuts(typed)[0]?.key).toBe(key);
  });

  test('of nothing is every cut, the most usual of several animals first', () => {
    expect(matchingCuts('')).toEqual(CUTS);
    expect(new Set(CUTS.slice(0, 25).map(({ species }) => species)).size).toBeGreaterThanOrEqual(4);
  });

  test('what starts so stands before what only has it inside', () => {
    const found = matchingCuts('flat').map(({ key }) => key as string);
    expect(found.slice(0, 2).toSorted()).toEqual(['beef/brisket-flat', 'beef/flat-iron']);
  });
});
