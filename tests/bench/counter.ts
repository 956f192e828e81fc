/** The desk over the bench's store, as the bot puts it together, and who stands before it. */
import { commands } from '../../commands/index.ts';
import type { Reply } from '../../shared/chat/reply.ts';
import type { Desk, Scene } from '../../shared/chat/request.ts';
import type { Store } from '../../shared/club/store.ts';
import { openDesk } from '../../src/answer/desk.ts';
import { openExchange } from '../../src/exchange/open.ts';
import { openFindings } from '../../src/findings/open.ts';
import { type Log, SILENT } from '../../src/log.ts';
import { attached } from '../../src/rehearsal/attachment.ts';
import { openStore } from '../../src/store/open.ts';
import type { BenchClub } from './clubs.ts';
import type { BenchCut } from './cuts.ts';
import { LAST_DAY } from './large-store.ts';
import type { Question } from './questions.ts';

export interface Counter {
  store: Store;
  desk: Desk;
  /** Throws where there is no answer. */
  ask(club: BenchClub, member: string, question: Pick<Question, 'command' | 'options'>): Promise<Reply>;
  /** Weighs in a usual piece, another one each time. */
  weighIn(club: BenchClub, member: string, cut: BenchCut): Promise<Reply>;
  close(): Promise<void>;
}

const NOON_MS = 12 * 3_600_000;
/** Above the store's, and above those of a run before. */
let interactions = BigInt(Date.now()) * 1_000_000n;

export const sceneOf = ({ id: club }: BenchClub, member: string): Scene => ({
  ...{ club, member, manager: true },
  ...{ locale: 'en-US', clubLocale: 'en-US', now: LAST_DAY + NOON_MS },
});

export async function openCounter(url: string): Promise<Counter> {
  const store = await openStore(url);
  const findings = openFindings(store, url);
  const exchange = openExchange({ attachment: attached, isMember: () => true });
  const log: Log = { ...SILENT, error: (about: object) => console.error(about) };
  const desk = openDesk({ store, findings, exchange, commands, log });

  const ask: Counter['ask'] = async (club, member, { command, options }) => {
    interactions += 1n;
    const scene = sceneOf(club, member);
    const answer = await desk.answer({
      ...scene,
      kind: 'command',
      id: String(interactions),
      command,
      options,
    }).answer;
    if (answer.kind !== 'reply' || answer.failed !== undefined)
      throw new Error(`/${command} has no answer: ${JSON.stringify(answer)}`);
    return answer.reply;
  };
  let weighed = 0;
  return {
    store,
    desk,
    ask,
    weighIn: (club, member, { typed, pounds, trim }) => {
      weighed += 1;
      const bought = pounds * (1 + (weighed % 40) / 200);
      const options = {
        cut: typed,
        bought: `${bought.toFixed(2)} lb`,
        trim: `${(bought * trim).toFixed(2)} lb`,
        price: '4.99/lb',
      };
      return ask(club, member, { command: 'weigh', options });
    },
    close: async () => {
      await findings.close();
      await store.close();
    },
  };
}
