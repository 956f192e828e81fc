/** What commands and their options say of themselves in the platform's menu: at most 100 characters each. */

/** What can be told of a piece. */
const weighed = () => ({
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
  bagged: () => 'Out of its bag, patted dry: the juice is then counted by itself',
  added: () => 'Injection or brine that it took up',
  pumped: () => 'Whether its label says that it was injected or pumped: a group of its own',
  saved: () => 'Trimmings you kept: tallow 1 lb 2 oz @3, grind 12 oz',
  wrap: () => 'What it was wrapped in',
  shop: () => 'Where it was bought',
  pan: () => 'The pan it was weighed in: its weight is taken off',
  pans: () => 'How many of those pans (1)',
  date: () => 'The day it was bought, if not today: yesterday, 4 July',
  note: () => 'A note to yourself',
});

export const commands = () => ({
  weigh: {
    description: () => 'Weigh a piece in: what was bought, what came off, what came off the heat',
    options: {
      ...weighed(),
      quiet: () => 'Answer me alone',
      piece: () => 'Add to, or mend, this piece: its number; - takes a weight back',
    },
  },
  piece: { description: () => 'Your pieces: see, cut into parts, mend, take back, list' },
  'piece show': {
    description: () => 'One piece, and its place in the club',
    options: { piece: () => 'Its number; without it, your newest' },
  },
  'piece parts': {
    description: () => 'Cut into parts: what the usable meat and a portion cost, each part at its own worth',
    options: {
      piece: () => 'Its number; without it, and without a bought weight, your newest',
      parts: () => 'Each part, its weight, its worth if any: fat 3 lb, kidneys 1 lb @6.10',
      usable: () => 'What is left to cook or sell; without it, what the parts leave',
      portion: () => 'The size of a portion: 5 oz, 150 g',
      cut: () => 'Of typed weights: what it is',
      bought: () => 'Instead of a piece that is kept: the weight on the label',
      price: () => 'The price: 4.99/lb, or 74.00 in all',
      loss: () => 'Lost in cutting; without it, what the parts and the usable weight leave',
      cooked: () => 'Off the heat: after the rest, unwrapped, drained',
      scraps: () => 'What comes off after cooking: bones, fat, trim',
      served: () => 'Or what was on the plate, before sauce',
      again: () => 'Another price, to see what it does to a portion: 5.49/lb',
      portions: () => 'How many portions you need: tells how much to buy',
      pieces: () => 'How many pieces were bought and cut together (1)',
      quiet: () => 'Answer me alone',
    },
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
      measure: () => 'What to average: came off raw, kept in the heat, kept at the board, on the plate, cost',
      by: () => 'What to tell apart: grade, fat left on, size, shop, wrap, bone, month, member',
      grade: () => 'Only this grade',
      style: () => 'Only with this much fat left on',
      bone: () => 'Only bone in, or only boneless',
      shop: () => 'Only from this shop',
      wrap: () => 'Only wrapped so',
      since: () => 'Only from this day on: 1 June, 2026-06-01',
    },
  },
  compare: {
    description: () => 'You beside the rest of the club, for you alone; or beside one who says yes',
    options: {
      member: () => 'Somebody to compare with: nothing is shown until they say yes',
      cut: () => 'Which cut; without it, the one you have the most pieces of',
    },
  },
  board: {
    description: () => 'Who gets the most to the plate: a ranking that a lucky piece can’t lead',
    options: {
      cut: () => 'Which cut; without it, the one with the most pieces',
      ranking: () => 'What counts: on the plate, what comes off, best value, how many pieces',
      season: () => 'Since when; without it, this season',
    },
  },
  debate: {
    description: () => 'Do bigger pieces lose less? Settles it, or says how it stands',
    options: {
      question: () => 'What about: size, grade, the fat left on, bone, shop, wrap',
      cut: () => 'Which cut; without it, the one that most pieces are of',
      of: () => 'What is lost: to the knife, in the heat, on the way to the plate',
    },
  },
  shop: {
    description: () => 'In the shop: which label is the better buy, by what gets to the plate',
    options: {
      cut: () => 'What they are; a label may name another one itself',
      one: () => 'A label in its own words: 14.2 lb @ 5.49 choice, or 14.2 lb for 77.96',
      two: () => 'Another one: 8 lb @ 3.99 flat prime',
      three: () => 'A third',
      four: () => 'A fourth',
      five: () => 'A fifth',
      style: () => 'How much fat you will leave on; without it, as you usually do',
      card: () => 'A picture to keep: what each shelf price comes to on the plate',
    },
  },
  feed: {
    description: () => 'How much to buy for so many people, or how many it feeds, 9 times in 10',
    options: {
      people: () => 'How many eat, children apart',
      children: () => 'How many children: three quarters of a portion each',
      cut: () => 'What you will cook',
      second: () => 'A second cut: each then makes half of it',
      portion: () => 'sandwiches, plates, or a weight each on the plate: 5 oz, 150 g (plates)',
      have: () => 'What you have already, to see how many it feeds: 14 lb',
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
  'mine season': {
    description: () => 'Your season on one card: pieces, weights, money, your best piece, beside the club',
    options: { season: () => 'Which one; without it, this season' },
  },
  'mine hide': {
    description: () => 'Whether you are shown in boards and pictures; your pieces count either way',
    options: { hidden: () => 'Hidden, or shown' },
  },
  'mine export': {
    description: () => 'Your own pieces as a file, for you alone',
    options: { format: () => 'csv opens in a spreadsheet, json has every figure (csv)' },
  },
  'mine leave': {
    description: () => 'Leave: your pieces count on here, and nobody can tell whose they were',
  },
  'mine erase': {
    description: () => 'Erase all that I keep of you, here or everywhere',
    options: {
      where: () => 'In this club, or in every club that I know you in',
      sure: () => 'To be sure: how many pieces go. Without it I tell you, and ask',
    },
  },
  mine: { description: () => 'Your own season, settings and data' },
  club: {
    description: () => 'For managers: how this club likes its figures, and pieces that need a second look',
  },
  'club show': {
    description: () => "The club's settings: units, money, days, grades, season, what counts as the same",
  },
  'club set': {
    description: () => "Change the club's settings; without options, what there is to set",
    options: {
      margin: () => 'Which difference is worth talking about, in points of share: 2.5',
      'scale-error': () => 'How far scales may be off, in per cent: 2',
      units: () => 'What the club weighs in',
      currency: () => 'What the club pays in, by its three letters: USD',
      zone: () => 'The time zone of its days: America/Chicago, or a city',
      grades: () => 'Whose grades are offered',
      season: () => 'The first month of the season: April, or 4',
      locale: () => 'How days and numbers are written: en-GB',
    },
  },
  'club cuts': {
    description: () => 'Cuts of your own, which the list lacks; without options, those there are',
    options: {
      add: () => 'What it is called: smoked short plate',
      species: () => 'Of what animal',
      remove: () => 'One to take off the list: its pieces stay',
    },
  },
  'club erase': {
    description: () => 'Erase this club, or what I keep of a member who asked for it',
    options: {
      member: () => 'Who asked for it, as when they left; without it, the whole club',
      sure: () => 'To be sure: how many pieces go. Without it I tell you, and ask',
    },
  },
  'club waiting': { description: () => 'Pieces that are unusual here: stand by them, or set them aside' },
  'club import': {
    description: () => 'Bring a table of pieces in: I look first, and keep nothing before you press',
    options: { file: () => 'A CSV file: one row a piece, the first line names the columns' },
  },
  'club export': {
    description: () => 'All pieces of this club as a file, for you alone',
    options: { format: () => 'csv opens in a spreadsheet, json has every figure (csv)' },
  },
  'club fix': {
    description: () => 'Mend a piece of somebody else’s: they are told, with your reason',
    options: {
      piece: () => 'Its number',
      why: () => 'Why, in a few words',
      ...weighed(),
    },
  },
  'club aside': {
    description: () => 'Set a piece aside: kept, but in no figure; without options, what is set aside',
    options: {
      piece: () => 'Its number',
      why: () => 'Why, in a few words: its member is told; - takes it back in',
    },
  },
  help: {
    description: () => 'How it works, with lines to copy',
    options: { topic: () => 'What about' },
  },
});
