/** `/debate`: settles what the club argues about, or says how it stands. */
import { type Command, type Context, command } from '../shared/chat/command.ts';
import type { Reply } from '../shared/chat/reply.ts';
import { DEBATED_FACTORS, type DebatedFactor } from '../shared/findings/factor-debate.ts';
import { type Debate, nothingToDebate, type Question } from '../shared/replies/debate.ts';
import { debateFactor } from '../shared/replies/debate-factor.ts';
import { debateSize } from '../shared/replies/debate-size.ts';
import { cutOf } from '../shared/trade/cuts.ts';
import { gradesFor } from '../shared/trade/grades.ts';
import type { CutKey } from '../shared/trade/keys.ts';
import type { Measure } from '../shared/yield/measure.ts';
import { cut } from './cut-options.ts';
import { choice } from './options.ts';
import { pressedCutOrNone, pressedOne } from './pressed.ts';

const QUESTIONS = ['size', ...DEBATED_FACTORS] as const satisfies readonly Question[];
const OF = ['trim', 'cooking', 'plate'] as const satisfies readonly Measure[];

/** What each question is about, if nobody says: the fat left on and the bone are what comes off, so they meet at the plate. */
const USUALLY_OF: Record<Question, Measure> = {
  size: 'trim',
  grade: 'trim',
  style: 'plate',
  bone: 'plate',
  shop: 'trim',
  wrap: 'cooking',
};
/** Asked of what came off raw these would answer themselves, or ask what comes later. */
const NEVER_OF_TRIM: ReadonlySet<Question> = new Set(['style', 'bone', 'wrap']);
const ONLY_ON_PLATE: ReadonlySet<Question> = new Set(['style', 'bone']);

export const debate: Command = command({
  name: 'debate',
  audience: () => 'club',
  options: { question: choice(QUESTIONS), cut: cut(), of: choice(OF) },
  form: () => ['question', 'cut', 'of'],
  run: (context, { question, cut: cutKey, of }) =>
    answer(context, question ?? 'size', cutKey ?? null, of ?? null),
  actions: {
    question: {
      by: 'owner',
      audience: 'club',
      edits: true,
      run: async (context, { about: [cutKey = '', measure = ''], value }) =>
        answer(
          context,
          pressedOne(QUESTIONS, value ?? 'size'),
          pressedCutOrNone(cutKey),
          pressedOne(OF, measure),
        ),
    },
    cut: {
      by: 'owner',
      audience: 'club',
      edits: true,
      run: async (context, { about: [, measure = '', question = 'size'], value }) =>
        answer(
          context,
          pressedOne(QUESTIONS, question),
          pressedCutOrNone(value ?? ''),
          pressedOne(OF, measure),
        ),
    },
  },
});

async function answer(
  context: Context,
  question: Question,
  asked: CutKey | null,
  of: Measure | null,
): Promise<Reply> {
  const { store, club, member, say } = context;
  const measure = measureOf(question, of);
  const cuts = await store.cuts();
  const debated = { question, measure, club, member: member.id, cuts };
  const whole = (cutKey: CutKey): Debate => ({
    ...debated,
    cut: cutKey,
    questions: questionsOf(cutKey, club.gradeCountry),
  });
  // Unasked, the first of the busiest cuts of which pieces were weighed so far.
  for (const cutKey of asked === null ? cuts.slice(0, MOST_TRIED) : [asked]) {
    const { pieces, reply } = await debatedReply(context, whole(cutKey));
    if (pieces > 0 || asked !== null) return reply;
  }
  return nothingToDebate({ question, measure, cut: null }, say);
}

const MOST_TRIED = 5;

async function debatedReply(
  { find, store, say }: Context,
  debate: Debate,
): Promise<{ pieces: number; reply: Reply }> {
  const { question, cut: cutKey, measure, club } = debate;
  const { margin, scaleError, currency } = club;
  if (question === 'size') {
    const found = await find('size', { cut: cutKey, measure, margin, scaleError, currency });
    const hidden = await store.hiddenMembers();
    // Whoever asked not to be shown is not named either.
    const named = found.nextBest !== null && hidden.includes(found.nextBest.member) ? null : found.nextBest;
    return {
      pieces: found.running.pieces,
      reply: debateSize(debate, { ...found, nextBest: named }, say),
    };
  }
  const found = await find('factor', { cut: cutKey, measure, factor: question, margin, currency });
  return { pieces: found.running.pieces, reply: debateFactor({ ...debate, question }, found, say) };
}

function measureOf(question: Question, of: Measure | null): Measure {
  if (of === null || ONLY_ON_PLATE.has(question)) return USUALLY_OF[question];
  return of === 'trim' && NEVER_OF_TRIM.has(question) ? USUALLY_OF[question] : of;
}

/** Only what a buyer of the cut sees: no grades of pork, no bone where there is no choice. */
function questionsOf(cutKey: CutKey, country: string): Question[] {
  const { species, bone, styles } = cutOf(cutKey);
  const there: Record<DebatedFactor, boolean> = {
    grade: gradesFor(species, country).length > 0,
    style: styles !== null,
    bone: bone === 'both',
    shop: true,
    wrap: true,
  };
  return ['size', ...DEBATED_FACTORS.filter((factor) => there[factor])];
}
