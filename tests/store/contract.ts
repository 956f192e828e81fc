/** What every engine of the store must do: each runs this suite. */
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Member } from '../../shared/club/member.ts';
import type { Piece } from '../../shared/club/piece.ts';
import { isInjected } from '../../shared/club/piece.ts';
import type { ClubStore, Draft, Store } from '../../shared/club/store.ts';
import { type CalendarDay, daysBetween } from '../../shared/measure/day.ts';
import { pricePerKg } from '../../shared/measure/money.ts';
import { NANOGRAMS, type Nanograms } from '../../shared/measure/units.ts';
import type { CutKey, GradeKey } from '../../shared/trade/keys.ts';
import { lossOf, MEASURES } from '../../shared/yield/measure.ts';
import { BRISKET, BUTT, lb, NOON, sampleClub, samplePiece, toldArbitrary } from './samples.ts';

export interface Opened {
  store: Store;
  /** Closes it and takes its files away. */
  discard: () => Promise<void>;
}

const by = (interaction: string) => ({ interaction, member: 'ines', at: NOON });

/** `open` gives an empty, migrated store. */
export function storeContract(name: string, open: () => Promise<Opened>): void {
  let opened: Opened;
  let store: Store;
  let club: ClubStore;

  beforeEach(async () => {
    opened = await open();
    store = opened.store;
    club = store.club('a');
    await club.found(sampleClub('a'));
  });
  afterEach(() => opened.discard());

  const started = async (id: string, told: Parameters<typeof samplePiece>[1] = {}): Promise<Piece> => {
    const kept = await club.start(samplePiece(id, told));
    if (kept === null) throw new Error(`${id} was removed`);
    return kept.piece;
  };

  describe(`${name}: clubs`, () => {
    it('founds once, and keeps what was there', async () => {
      expect(await store.club('new').settings()).toBeNull();
      const again = await club.found(sampleClub('a', { zone: 'Europe/Berlin', margin: 0.5 }));
      expect(again).toEqual(sampleClub('a'));
      expect(await club.settings()).toEqual(again);
    });

    it('changes what is given and nothing else', async () => {
      const changed = await club.change({ units: 'kg', welcomedAt: NOON });
      expect(changed).toEqual(sampleClub('a', { units: 'kg', welcomedAt: NOON }));
      expect(await club.change({})).toEqual(changed);
      expect(await club.settings()).toEqual(changed);
    });

    it('is welcomed once, also by two who come at once', async () => {
      const welcomed = await Promise.all([club.welcome(NOON), club.welcome(NOON + 1)]);
      expect(welcomed.filter(Boolean)).toHaveLength(1);
      expect(await club.welcome(NOON + 2)).toBe(false);
      expect([NOON, NOON + 1]).toContain((await club.settings())?.welcomedAt);
    });

    it('refuses to change or fill a club that was never founded', async () => {
      await expect(store.club('new').change({ units: 'kg' })).rejects.toThrow('never founded');
      await expect(store.club('new').start(samplePiece('1'))).rejects.toThrow();
    });

    it('lists those that have not left, and takes back who returns with all it had', async () => {
      await store.club('b').found(sampleClub('b'));
      await started('1');
      await store.left('a', NOON);
      expect(await store.clubs()).toEqual(['b']);
      await store.left('never-there', NOON);
      await store.returned('a');
      expect(await store.clubs()).toEqual(['a', 'b']);
      expect(await club.piece({ seq: 1 })).toMatchObject({ id: '1' });
    });
  });

  describe(`${name}: members`, () => {
    const unknown: Member = {
      id: 'ines',
      units: null,
      labelDecimals: null,
      scaleDecimals: null,
      presets: {},
      hidden: false,
    };

    it('answers for an unknown one without keeping it', async () => {
      expect(await club.member('ines')).toEqual(unknown);
      expect(await club.member('ines')).toEqual(unknown);
    });

    it('remembers what is told and leaves the rest', async () => {
      const presets = { cut: BRISKET, styles: { brisket: 'brisket/thick' as never }, wrap: 'paper' as const };
      await club.remember('ines', { units: 'lb', presets });
      const kept = await club.remember('ines', { hidden: true, labelDecimals: 'ounces' });
      expect(kept).toEqual({ ...unknown, units: 'lb', presets, hidden: true, labelDecimals: 'ounces' });
      expect(await club.member('ines')).toEqual(kept);
    });

    it('keeps pans by name, whatever the case', async () => {
      await club.keepPan('ines', { name: 'Größe L', weight: lb(1) });
      await club.keepPan('ines', { name: 'blue', weight: lb(2) });
      await club.keepPan('ines', { name: 'GRÖße l', weight: lb(3) });
      await club.keepPan('juri', { name: 'blue', weight: lb(9) });
      expect(await club.pans('ines')).toEqual([
        { name: 'blue', weight: lb(2) },
        { name: 'GRÖße l', weight: lb(3) },
      ]);
      expect(await club.removePan('ines', 'BLUE')).toBe(true);
      expect(await club.removePan('ines', 'blue')).toBe(false);
      expect(await club.pans('juri')).toHaveLength(1);
    });
  });

  describe(`${name}: starting`, () => {
    it('gives back exactly what was kept', async () => {
      let id = 0;
      await fc.assert(
        fc.asyncProperty(toldArbitrary, async (told) => {
          id += 1;
          const kept = await club.start(samplePiece(`${id}`, told));
          const whole = {
            ...samplePiece(`${id}`, told),
            seq: id,
            revision: 0,
            confirmedAt: null,
            setAsideAt: null,
            setAsideWhy: null,
          };
          expect(kept).toEqual({ piece: whole, fresh: true });
          expect(await club.piece({ id: `${id}` })).toEqual(whole);
          expect(await club.piece({ seq: id })).toEqual(whole);
        }),
        { numRuns: 60 },
      );
    });

    it('keeps 9 tonnes to the nanogram, and refuses a part of one', async () => {
      const most = (9_000_000 * NANOGRAMS.g - 1) as Nanograms;
      await started('1', { bought: most, served: (most - 1) as Nanograms });
      const found = await club.piece({ id: '1' });
      expect(found?.bought).toBe(8_999_999_999_999_999);
      expect(found?.served).toBe(8_999_999_999_999_998);
      await expect(started('2', { bought: 0.5 as Nanograms })).rejects.toThrow();
      await expect(started('3', { bought: 0 as Nanograms })).rejects.toThrow();
      await expect(started('4', { trim: -1 as Nanograms })).rejects.toThrow();
      await expect(started('5', { pieces: 0 })).rejects.toThrow();
    });

    it('keeps one piece an id, also when it comes twice at once', async () => {
      const twice = await Promise.all([
        club.start(samplePiece('1')),
        club.start(samplePiece('1', { bought: lb(3) })),
      ]);
      expect(twice.map((kept) => kept?.fresh)).toEqual([true, false]);
      expect(twice[1]?.piece).toEqual(twice[0]?.piece);
      expect((await started('2')).seq).toBe(2);
      expect((await club.columns(BRISKET, 'trim')).version).toBe(2);
    });

    it('counts from 1 in each club', async () => {
      const other = store.club('b');
      await other.found(sampleClub('b'));
      await started('1');
      expect((await other.start(samplePiece('1')))?.piece.seq).toBe(1);
      expect((await started('2')).seq).toBe(2);
    });
  });

  describe(`${name}: correcting`, () => {
    it('changes what is returned, once an interaction', async () => {
      const before = await started('1', { grade: 'usda/choice' as GradeKey });
      const kept = await club.correct('1', { ...by('x'), why: 'slip' }, (piece) => {
        expect(piece).toEqual(before);
        return { trim: lb(2), grade: null };
      });
      const after = { ...before, trim: lb(2), grade: null, revision: 1 };
      expect(kept).toEqual({ piece: after, fresh: true });
      const again = await club.correct('1', by('x'), () => {
        throw new Error('must not be asked again');
      });
      expect(again).toEqual({ piece: after, fresh: false });
      expect(await club.piece({ seq: 1 })).toEqual(after);
      expect((await club.correct('1', by('y'), () => ({})))?.piece.revision).toBe(2);
    });

    it('tells which piece an interaction changed, in this club', async () => {
      await started('1');
      await started('2');
      await club.correct('2', by('fix'), () => ({ note: 'lean' }));
      expect((await club.changedBy('fix'))?.id).toBe('2');
      expect(await club.changedBy('1')).toBeNull();
      expect(await store.club('b').changedBy('fix')).toBeNull();
      await club.remove('2', NOON);
      expect(await club.changedBy('fix')).toBeNull();
    });

    it('leaves what never changes, even when it is returned', async () => {
      const before = await started('1');
      const kept = await club.correct('1', by('x'), (piece) => {
        const forged = { ...piece, id: '9', seq: 9, member: 'juri', postedAt: 9, revision: 9, shop: 'north' };
        return forged;
      });
      expect(kept?.piece).toEqual({ ...before, shop: 'north', revision: 1 });
    });

    it('undoes everything when the change throws, and passes on what was thrown', async () => {
      const before = await started('1');
      const { version } = await club.columns(BRISKET, 'trim');
      const thrown = new Error('no');
      const change = () => {
        throw thrown;
      };
      await expect(club.correct('1', by('x'), change)).rejects.toBe(thrown);
      await expect(club.correct('1', by('x'), () => ({ bought: -1 as Nanograms }))).rejects.toThrow();
      expect(await club.piece({ id: '1' })).toEqual(before);
      expect((await club.columns(BRISKET, 'trim')).version).toBe(version);
      expect((await club.correct('1', by('x'), () => ({ shop: 'north' })))?.fresh).toBe(true);
    });

    it('is null for a piece that is not there', async () => {
      expect(await club.correct('1', by('x'), () => ({}))).toBeNull();
    });

    it('raises the version of the cut, and of the one it was', async () => {
      const versions = async () =>
        Promise.all([BRISKET, BUTT, null].map(async (cut) => (await club.columns(cut, 'trim')).version));
      expect(await versions()).toEqual([0, 0, 0]);
      await started('1');
      expect(await versions()).toEqual([1, 0, 1]);
      await club.correct('1', by('x'), () => ({ cut: BUTT }));
      expect(await versions()).toEqual([2, 1, 3]);
      await club.correct('1', by('y'), () => ({ shop: 'north' }));
      expect(await versions()).toEqual([2, 2, 4]);
      await club.remove('1', NOON);
      expect(await versions()).toEqual([2, 3, 5]);
    });
  });

  describe(`${name}: removing`, () => {
    it('leaves the number taken and nothing to find', async () => {
      await started('1', { shop: 'north', trim: lb(2) });
      await started('2', { shop: 'south', trim: lb(2) });
      await club.keepPosted({ piece: '2', channel: 'c', message: 'm' });
      await club.correct('2', by('x'), () => ({ note: 'fat' }));
      expect(await club.remove('2', NOON)).toBe(true);
      expect(await club.remove('2', NOON)).toBe(false);
      expect(await club.piece({ id: '2' })).toBeNull();
      expect(await club.piece({ seq: 2 })).toBeNull();
      expect(await club.correct('2', by('y'), () => ({}))).toBeNull();
      expect(await club.start(samplePiece('2'))).toBeNull();
      expect((await started('3')).seq).toBe(3);
      expect((await club.newest('ines', 9)).map(({ id }) => id)).toEqual(['3', '1']);
      expect((await club.open('ines')).map(({ id }) => id)).toEqual(['3', '1']);
      expect([...(await club.columns(null, 'trim')).seq]).toEqual([1]);
      expect(await club.shops()).toEqual(['north']);
      expect(await club.posted('2')).toHaveLength(1);
    });
  });

  describe(`${name}: finding`, () => {
    it('lists what is not on the plate yet, newest first', async () => {
      await started('raw');
      await started('cooked', { cooked: lb(8) });
      await started('scraps', { scraps: lb(1) });
      await started('carved', { cooked: lb(8), scraps: lb(1) });
      await started('served', { served: lb(7) });
      await started('other', { member: 'juri' });
      expect((await club.open('ines')).map(({ id }) => id)).toEqual(['scraps', 'cooked', 'raw']);
    });

    it('lists at most 25 open ones, and as many newest as asked', async () => {
      for (let at = 1; at <= 30; at += 1) await started(`${at}`);
      const open = await club.open('ines');
      expect(open.map(({ seq }) => seq)).toEqual(Array.from({ length: 25 }, (_, at) => 30 - at));
      expect((await club.newest('ines', 3)).map(({ seq }) => seq)).toEqual([30, 29, 28]);
      expect(await club.newest('juri', 3)).toEqual([]);
    });

    it('lists shops, most used first, at most 100', async () => {
      await started('none');
      for (const shop of ['north', 'south', 'north', 'east'])
        await started(`${shop}${Math.random()}`, { shop });
      expect(await club.shops()).toEqual(['north', 'east', 'south']);
      for (let at = 0; at < 120; at += 1) await started(`s${at}`, { shop: `s${at}` });
      expect(await club.shops()).toHaveLength(100);
    });
  });

  describe(`${name}: columns`, () => {
    it('equal a plain computation from the pieces, in posting order', async () => {
      const actions = fc.array(
        fc.record({
          told: toldArbitrary,
          aside: fc.boolean(),
          removed: fc.boolean(),
          confirmed: fc.boolean(),
        }),
        { minLength: 1, maxLength: 25 },
      );
      let run = 0;
      await fc.assert(
        fc.asyncProperty(actions, async (list) => {
          run += 1;
          club = store.club(`run${run}`);
          await club.found(sampleClub(`run${run}`));
          for (const [at, { told, aside, removed, confirmed }] of list.entries()) {
            await started(`${at}`, told);
            if (confirmed) await club.correct(`${at}`, by('c'), () => ({ confirmedAt: NOON }));
            if (aside)
              await club.correct(`${at}`, by('s'), () => ({ setAsideAt: NOON, setAsideWhy: 'tare' }));
            if (removed) await club.remove(`${at}`, NOON);
          }
          await compare(club, list.length);
        }),
        { numRuns: 25, interruptAfterTimeLimit: 15_000 },
      );
    });

    it('are the same object until the cut is written to', async () => {
      await started('1', { trim: lb(2) });
      const first = await club.columns(BRISKET, 'trim');
      expect(await club.columns(BRISKET, 'trim')).toBe(first);
      await started('2', { cut: BUTT, trim: lb(1) });
      expect(await club.columns(BRISKET, 'trim')).toBe(first);
      await club.correct('1', by('x'), () => ({ trim: lb(3) }));
      const second = await club.columns(BRISKET, 'trim');
      expect(second.version).toBeGreaterThan(first.version);
      expect(second.loss[0]).not.toBe(first.loss[0]);
    });
  });

  describe(`${name}: drafts and cards`, () => {
    const draft: Draft = {
      id: 'd',
      member: 'ines',
      command: 'weigh',
      options: { bought: '14.8' },
      confirmed: ['size'],
      readings: [
        {
          options: { bought: '14.8 lb' },
          confirms: null,
          opens: null,
          remember: { labelDecimals: 'decimal' },
        },
        { options: {}, confirms: 'trim', opens: 'added', remember: null },
      ],
      interaction: '7',
      expiresAt: NOON + 1000,
    };

    it('keeps one reminder a piece and member, and gives each out once when it is due', async () => {
      await started('1');
      await started('2');
      await club.remind({ piece: '1', member: 'ines', dueAt: NOON });
      await club.remind({ piece: '1', member: 'ines', dueAt: NOON + 10 });
      await club.remind({ piece: '2', member: 'ines', dueAt: NOON + 20 });
      expect(await store.dueReminders(NOON + 9)).toEqual([]);
      const first = { club: club.id, piece: '1', member: 'ines', dueAt: NOON + 10 };
      expect(await store.dueReminders(NOON + 10)).toEqual([first]);
      expect(await store.dueReminders(NOON + 10)).toEqual([]);
      expect(await store.dueReminders(NOON + 99)).toEqual([{ ...first, piece: '2', dueAt: NOON + 20 }]);
    });

    it('tells what was changed in a piece, oldest first', async () => {
      await started('1');
      await club.correct('1', { interaction: 'b', member: 'ines', at: NOON }, () => ({ trim: lb(2) }));
      await club.correct('1', { interaction: 'a', member: 'bo', at: NOON + 5, why: 'a slip' }, () => ({
        trim: lb(3),
      }));
      expect(await club.corrections('1')).toEqual([
        { member: 'ines', at: NOON, why: null, before: { trim: null }, after: { trim: lb(2) } },
        { member: 'bo', at: NOON + 5, why: 'a slip', before: { trim: lb(2) }, after: { trim: lb(3) } },
      ]);
      expect(await club.corrections('2')).toEqual([]);
    });

    it('holds a draft until it expires', async () => {
      await club.keepDraft(draft);
      expect(await club.draft('d', NOON)).toEqual(draft);
      expect(await club.draft('d', NOON + 999)).toEqual(draft);
      expect(await club.draft('d', NOON + 1000)).toBeNull();
      expect(await club.draft('e', NOON)).toBeNull();
      await club.keepDraft({ ...draft, confirmed: [], readings: [], expiresAt: NOON + 5000 });
      expect(await club.draft('d', NOON + 1000)).toEqual({
        ...draft,
        confirmed: [],
        readings: [],
        expiresAt: NOON + 5000,
      });
    });

    it('forgets drafts that expired, and only those', async () => {
      await club.keepDraft(draft);
      await club.keepDraft({ ...draft, id: 'later', expiresAt: NOON + 9000 });
      await store.forgetDrafts(NOON + 1000);
      expect(await club.draft('d', NOON)).toBeNull();
      expect(await club.draft('later', NOON)).not.toBeNull();
    });

    it('knows where the cards of a piece are', async () => {
      await started('1');
      const card = { piece: '1', channel: 'c', message: 'm' };
      await club.keepPosted(card);
      await club.keepPosted(card);
      await club.keepPosted({ ...card, message: 'l' });
      expect(await club.posted('1')).toEqual([card, { ...card, message: 'l' }]);
      expect(await club.posted('2')).toEqual([]);
    });
  });
}

/** Checks the columns of every cut and measure against the pieces 1 to `last`. */
async function compare(club: ClubStore, last: number): Promise<void> {
  const seqs = Array.from({ length: last }, (_, at) => at + 1);
  const all = await Promise.all(seqs.map((seq) => club.piece({ seq })));
  const shown = all.filter((piece) => piece !== null).filter(({ setAsideAt }) => setAsideAt === null);
  for (const cut of [BRISKET, BUTT, null] as (CutKey | null)[]) {
    for (const measure of MEASURES) {
      for (const injected of [false, true]) {
        const columns = await club.columns(cut, measure, injected);
        const expected = shown.flatMap((piece) => {
          // Injected pieces are apart, but not before the heat.
          const here =
            (cut === null || piece.cut === cut) && (measure === 'trim' || isInjected(piece) === injected);
          const loss = here && !(measure === 'trim' && injected) ? lossOf(measure, piece) : null;
          return loss === null ? [] : [rowOf(piece, loss.base, loss.loss)];
        });
        const text = (factor: { codes: Int32Array; values: string[] }, at: number) =>
          factor.codes[at] === -1 ? null : factor.values[factor.codes[at] ?? Number.NaN];
        const found = Array.from({ length: columns.count }, (_, at) => ({
          seq: columns.seq[at],
          base: columns.base[at],
          loss: columns.loss[at],
          pieces: columns.pieces[at],
          approximate: columns.approximate[at],
          confirmed: columns.confirmed[at],
          member: text(columns.member, at),
          cut: text(columns.cut, at),
          grade: text(columns.grade, at),
          style: text(columns.style, at),
          bone: text(columns.bone, at),
          shop: text(columns.shop, at),
          wrap: text(columns.wrap, at),
          month: text(columns.month, at),
          day: columns.day[at],
          price: Number.isNaN(columns.pricePerKg[at]) ? null : columns.pricePerKg[at],
          currency: text(columns.currency, at),
        }));
        expect(found).toEqual(expected);
        expect(columns.month.codes).toHaveLength(columns.count);
      }
    }
  }
}

const rowOf = (piece: Piece, base: number, loss: number) => ({
  seq: piece.seq,
  base,
  loss,
  pieces: piece.pieces,
  approximate: piece.approximate ? 1 : 0,
  confirmed: piece.confirmedAt === null ? 0 : 1,
  member: piece.member,
  cut: piece.cut,
  grade: piece.grade,
  style: piece.style,
  bone: piece.bone,
  shop: piece.shop,
  wrap: piece.wrap,
  month: piece.day.slice(0, 7),
  day: daysBetween('1970-01-01' as CalendarDay, piece.day),
  price: piece.price === null ? null : pricePerKg(piece.price, piece.bought),
  currency: piece.price?.currency ?? null,
});
