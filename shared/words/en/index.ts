/** English: one file a subject, every sentence a function of typed values. */
import type { Show } from '../../measure/show.ts';
import { averages } from './averages.ts';
import { cautions } from './cautions.ts';
import { choices, commands } from './commands.ts';
import { desk } from './desk.ts';
import { errors } from './errors.ts';
import { help } from './help.ts';
import { mine } from './mine.ts';
import { pictures } from './pictures.ts';
import { pieces } from './pieces.ts';
import { platform } from './platform.ts';
import { labels, questions } from './questions.ts';
import { trade } from './trade.ts';
import { weighing } from './weighing.ts';

export const english = (show: Show) => ({
  show,
  averages: averages(show),
  cautions: cautions(show),
  choices: choices(),
  commands: commands(),
  desk: desk(show),
  errors: errors(show),
  help: help(show),
  labels: labels(show),
  mine: mine(show),
  pictures: pictures(show),
  pieces: pieces(show),
  platform: platform(show),
  questions: questions(show),
  trade: trade(show),
  weighing: weighing(show),
});
