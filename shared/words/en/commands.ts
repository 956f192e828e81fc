/** What commands and their options say of themselves in the platform's menu: at most 100 characters each. */

export const commands = () => ({
  weigh: {
    description: () => 'Weigh a piece in: what was bought, what came off, what came off the heat',
    options: {
      cut: () => 'What it is: packer, Boston butt, spares ...',
      bought: () => 'The weight on the label: 14.83 lb, 6.72 kg, 14 lb 13 oz',
      trim: () => 'What the knife took off: 2 lb 9.4 oz, or 2:9.4',
      left: () => 'Or what was left to cook, instead of what came off',
      price: () => 'The price: 4.99/lb, or 74.00 in all',
      cooked: () => 'Off the heat: after the rest, unwrapped, drained',
      scraps: () => 'Thrown away after cooking: bone, fat, gristle',
      served: () => 'Or what was on the plate, before sauce',
      grade: () => 'The grade on the label',
      style: () => 'How much fat you left on: choose before you see a figure',
      bone: () => 'Bone in, or boneless',
      pieces: () => 'How many pieces were bought and weighed together (1)',
      bagged: () => 'Out of its bag, patted dry: the juice is then told apart',
      added: () => 'Injection or brine that it took up',
      pumped: () => 'Whether its label says that it was injected or pumped: a group of its own',
      saved: () => 'Trimmings you kept: tallow 1 lb 2 oz @3, grind 12 oz',
      wrap: () => 'What it was wrapped in',
      shop: () => 'Where it was bought',
      pan: () => 'The pan it was weighed in: its weight is taken off',
      pans: () => 'How many of those pans (1)',
      date: () => 'The day it was bought, if not today: yesterday, 4 July',
      note: () => 'A note to yourself',
      quiet: () => 'Answer me alone',
      piece: () => 'Add to, or mend, this piece: its number; - takes a weight back',
    },
  },
  piece: { description: () => 'Your pieces: see, mend, take back, list' },
  'piece show': {
    description: () => 'One piece, and its place in the club',
    options: { piece: () => 'Its number; without it, your newest' },
  },
  'piece fix': {
    description: () => 'Mend a piece of yours: the form with all that you typed',
    options: { piece: () => 'Its number; without it, your newest' },
  },
  'piece remove': {
    description: () => 'Take a piece of yours back',
    options: { piece: () => 'Its number; without it, your newest' },
  },
  'piece list': { description: () => 'Your newest pieces' },
  average: {
    description: () => "The club's figures: by cut, or of one cut by grade, shop, month and so on",
    options: {
      cut: () => 'One cut; without it, every cut',
      measure: () => 'What to average: what came off raw, kept in the heat, kept at the board, on the plate',
      by: () => 'What to tell apart: grade, fat left on, size, shop, wrap, bone, month, member',
      grade: () => 'Only this grade',
      style: () => 'Only with this much fat left on',
      bone: () => 'Only bone in, or only boneless',
      shop: () => 'Only from this shop',
      wrap: () => 'Only wrapped so',
      since: () => 'Only from this day on: 1 June, 2026-06-01',
    },
  },
  'mine units': {
    description: () => 'Pounds or kilos: what your bare numbers mean and how I answer you',
    options: { units: () => 'Pounds or kilos' },
  },
  'mine pans': {
    description: () => 'Your pans: weigh them once, and I take them off',
    options: {
      name: () => 'What you call it: blue pan',
      weight: () => 'What it weighs empty',
      remove: () => 'A pan to forget',
    },
  },
  'mine habits': {
    description: () => 'What I take for granted from you',
    options: {
      label: () => 'What 14.8 on a shop label means to you',
      scale: () => 'What 2.9 on your own scale means to you',
      'price-unit': () => 'What a bare price like @ 4.99 is per',
    },
  },
  mine: { description: () => 'Your own settings' },
  help: {
    description: () => 'How it works, with lines to copy',
    options: { topic: () => 'What about' },
  },
});

/** Words for fixed choices, by option and value. */
export const choices = () => ({
  bone: { in: () => 'Bone in', out: () => 'Boneless' },
  wrap: { none: () => 'Not wrapped', paper: () => 'Paper', foil: () => 'Foil', boat: () => 'Foil boat' },
  units: { lb: () => 'Pounds and ounces', kg: () => 'Kilos and grams' },
  'price-unit': { lb: () => 'A pound', kg: () => 'A kilo' },
  label: { decimal: () => 'Decimals: 14.8 lb', ounces: () => 'Ounces: 14 lb 8 oz', ask: () => 'Ask me' },
  scale: { decimal: () => 'Decimals: 2.9 lb', ounces: () => 'Ounces: 2 lb 9 oz', ask: () => 'Ask me' },
  measure: {
    trim: () => 'What came off raw',
    cooking: () => 'Kept in the heat',
    carving: () => 'Kept at the board',
    plate: () => 'On the plate',
  },
  by: {
    cut: () => 'By cut',
    grade: () => 'By grade',
    style: () => 'By the fat left on',
    bone: () => 'By bone',
    size: () => 'By size',
    shop: () => 'By shop',
    wrap: () => 'By wrap',
    month: () => 'By month',
    member: () => 'By member',
  },
  topic: {
    start: () => 'First steps',
    weights: () => 'How to write weights',
    prices: () => 'How to write prices',
    figures: () => 'What the figures mean',
    safety: () => 'Safe handling',
    privacy: () => 'What is kept',
  },
});
