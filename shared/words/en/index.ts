/** English: one file a subject, every sentence a function of typed values. */
import type { Show } from '../../measure/show.ts';
import { averages } from './averages.ts';
import { board } from './board.ts';
import { book } from './book.ts';
import { cautions } from './cautions.ts';
import { choices } from './choices.ts';
import { club } from './club.ts';
import { commands } from './commands.ts';
import { compare } from './compare.ts';
import { debate } from './debate.ts';
import { desk } from './desk.ts';
import { errors } from './errors.ts';
import { exchange } from './exchange.ts';
import { feed } from './feed.ts';
import { help } from './help.ts';
import { mine } from './mine.ts';
import { pictures } from './pictures.ts';
import { pieces } from './pieces.ts';
import { platform } from './platform.ts';
import { privacy } from './privacy.ts';
import { labels, questions } from './questions.ts';
import { season } from './season.ts';
import { shop } from './shop.ts';
import { trade } from './trade.ts';
import { weighing } from './weighing.ts';
import { yieldTest } from './yield-test.ts';

export const english = (show: Show) => ({
  show,
  averages: averages(show),
  board: board(show),
  book: book(show),
  cautions: cautions(show),
  choices: choices(),
  club: club(show),
  commands: commands(),
  compare: compare(show),
  debate: debate(show),
  desk: desk(show),
  errors: errors(show),
  exchange: exchange(show),
  feed: feed(show),
  help: help(show),
  labels: labels(show),
  mine: mine(show),
  pictures: pictures(show),
  pieces: pieces(show),
  platform: platform(show),
  privacy: privacy(show),
  questions: questions(show),
  season: season(show),
  shop: shop(show),
  trade: trade(show),
  weighing: weighing(show),
  yieldTest: yieldTest(show),
});
