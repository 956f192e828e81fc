/** What every engine of the store must do: each runs this suite. */
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Draft } from '../../shared/club/draft.ts';
import { hasLeft, type Member } from '../../shared/club/member.ts';
import type { Piece } from '../../shared/club/piece.ts';
import { isInjected } from '../../shared/club/piece.ts';
import type { ClubStore, Store } from '../../shared/club/store.ts';
import { type CalendarDay, dayNumber } from '../../shared/measure/day.ts';
import { moneyNumber, pricePerKg } from '../../shared/measure/money.ts';
import { grams, NANOGRAMS, type Nanograms } from '../../shared/measure/units.ts';
import type { CutKey, GradeKey } from '../../shared/trade/keys.ts';
import { AVERAGED, lossOf } from '../../shared/yield/measure.ts';
import { costsOf } from '../../shared/yield/piece.ts';
import { BRISKET, BUTT, importedPiece, lb, NOON, sampleClub, samplePiece, toldArbitrary } from './samples.ts';

export interface Opened {
  store: Store;
  /** Closes it and takes its files away. */
  discard: () => Promise<void>;
}

/** Of a piece that was only just started. */
const UNSETTLED = { revision: 0, confirmedAt: null, setAsideAt: null, setAsideWhy: null };

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

    it('lists who is hidden, in order, and nobody of another club', async () => {
      await store.club('b').found(sampleClub('b'));
      await store.club('b').remember('tom', { hidden: true });
      expect(await club.hiddenMembers()).toEqual([]);
      for (const id of ['oona', 'ines', 'juri']) await club.remember(id, { hidden: true });
      await club.remember('juri', { hidden: false });
      await club.remember('bo', { units: 'kg' });
      expect(await club.hiddenMembers()).toEqual(['ines', 'oona']);
    });

    it('keeps cuts of its own, which go with the club', async () => {
      const [plate, shoulder] = ['own/beef/short-plate' as CutKey, 'own/pork/schäufele' as CutKey];
      for (const key of [shoulder, plate, shoulder]) await club.keepOwnCut(key);
      expect(await club.ownCuts()).toEqual([plate, shoulder]);
      expect(await store.club('b').ownCuts()).toEqual([]);
      expect(await club.removeOwnCut(plate)).toBe(true);
      expect(await club.removeOwnCut(plate)).toBe(false);
      expect(await club.ownCuts()).toEqual([shoulder]);
      expect((await club.heldInAll()).anything).toBe(true);
      await started('1', { cut: plate });
      await started('2');
      expect(await club.weighedOwnCuts()).toEqual([plate]);
      await club.remove('1', NOON);
      expect(await club.weighedOwnCuts()).toEqual([]);
      await club.eraseClub(NOON);
      expect(await club.ownCuts()).toEqual([]);
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

  describe(`${name}: adding many`, () => {
    const many = (count: number, told: (at: number) => Parameters<typeof importedPiece>[1] = () => ({})) =>
      Array.from({ length: count }, (_, at) => importedPiece(`p${at}`, told(at)));

    it('keeps them in their order after what is there, with all that was settled', async () => {
      await started('1');
      const told = { setAsideAt: NOON, setAsideWhy: 'tare', confirmedAt: NOON - 1, trim: lb(2) };
      const pieces = many(250, (at) => (at === 249 ? told : { bought: lb(10 + at / 100) }));
      expect(await club.addAll(pieces, NOON)).toEqual({ added: 250, there: 0 });
      const found = await club.following(1, 999);
      expect(found).toEqual(pieces.map((piece, at) => ({ ...piece, seq: at + 2, revision: 0 })));
      expect((await started('2')).seq).toBe(252);
    });

    it('gives back exactly what was given', async () => {
      let at = 0;
      await fc.assert(
        fc.asyncProperty(toldArbitrary, async (told) => {
          at += 1;
          const piece = importedPiece(`x${at}`, told);
          await club.addAll([piece], NOON);
          expect(await club.piece({ id: piece.id })).toEqual({ ...piece, seq: at, revision: 0 });
        }),
        { numRuns: 40 },
      );
    });

    it('passes over those that are there, were there, or stand there twice', async () => {
      await started('p1', { bought: lb(99) });
      await started('p2');
      await club.remove('p2', NOON);
      const pieces = [...many(4), importedPiece('p3', { bought: lb(77) })];
      expect(await club.addAll(pieces, NOON)).toEqual({ added: 2, there: 3 });
      expect((await club.following(0, 9)).map(({ id, seq }) => [id, seq])).toEqual([
        ['p1', 1],
        ['p0', 3],
        ['p3', 4],
      ]);
      expect((await club.piece({ id: 'p3' }))?.bought).toBe(lb(14.8));
      expect(await club.addAll(pieces, NOON)).toEqual({ added: 0, there: 5 });
      expect(await club.addAll([], NOON)).toEqual({ added: 0, there: 0 });
    });

    it('knows beforehand which it would pass over', async () => {
      await started('p1');
      await started('p2');
      await club.remove('p2', NOON);
      await store.club('b').found(sampleClub('b'));
      await store.club('b').start(samplePiece('p3'));
      expect(await club.known(['p1', 'p2', 'p2', 'p3', 'p4'])).toBe(2);
      expect(await club.known(many(1200).map(({ id }) => id))).toBe(2);
      expect(await club.known([])).toBe(0);
    });

    it('keeps none where one can not be kept', async () => {
      const bad = many(350, (at) => (at === 349 ? { bought: -1 as Nanograms } : {}));
      await expect(club.addAll(bad, NOON)).rejects.toThrow();
      expect(await club.following(0, 9)).toEqual([]);
      expect(await club.version(null)).toBe(0);
      expect(await club.addAll(many(3), NOON)).toEqual({ added: 3, there: 0 });
      await expect(store.club('new').addAll(many(1), NOON)).rejects.toThrow();
    });

    it('raises the version of each cut once, and of none where nothing was new', async () => {
      const pieces = many(5, (at) => ({ cut: at % 2 === 0 ? BRISKET : BUTT, trim: lb(1) }));
      const versions = async () => [await club.version(BRISKET), await club.version(BUTT)];
      expect((await club.columns(BUTT, 'trim')).count).toBe(0);
      await club.addAll(pieces, NOON);
      expect(await versions()).toEqual([1, 1]);
      expect((await club.columns(BUTT, 'trim')).count).toBe(2);
      await club.addAll(pieces, NOON);
      expect(await versions()).toEqual([1, 1]);
    });

    it('leaves the others their turn, and shows nothing before all is there', async () => {
      const adding = club.addAll(many(600), NOON);
      const counts = new Set<number>();
      let done = false;
      void adding.then(() => {
        done = true;
      });
      let own = 0;
      while (!done) {
        own += 1;
        await started(`own${own}`);
        counts.add((await club.following(0, 9999)).filter(({ id }) => id.startsWith('p')).length);
        await new Promise((resolve) => setImmediate(resolve));
      }
      expect(own).toBeGreaterThan(3);
      expect([...counts].every((count) => count === 0 || count === 600)).toBe(true);
      const all = await club.following(0, 9999);
      expect(all.map(({ seq }) => seq)).toEqual(all.map((_, at) => at + 1));
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

    it('pages through all that is there, set aside or not, in posting order', async () => {
      for (const id of ['1', '2', '3', '4', '5']) await started(id, { member: id });
      await club.remove('2', NOON);
      await club.correct('4', by('x'), () => ({ setAsideAt: NOON }));
      const page = async (seq: number) => (await club.following(seq, 2)).map(({ id }) => id);
      expect([await page(0), await page(3), await page(5)]).toEqual([['1', '3'], ['4', '5'], []]);
      await started('6', { member: '4' });
      await started('7', { member: '4' });
      const own = async (seq: number) => (await club.following(seq, 2, '4')).map(({ id }) => id);
      expect([await own(0), await own(6), await own(7)]).toEqual([['4', '6'], ['7'], []]);
      expect(await club.following(0, 2, '2')).toEqual([]);
    });

    it('lists at most 25 open ones, and as many newest as asked', async () => {
      for (let at = 1; at <= 30; at += 1) await started(`${at}`);
      const open = await club.open('ines');
      expect(open.map(({ seq }) => seq)).toEqual(Array.from({ length: 25 }, (_, at) => 30 - at));
      expect((await club.newest('ines', 3)).map(({ seq }) => seq)).toEqual([30, 29, 28]);
      expect(await club.newest('juri', 3)).toEqual([]);
    });

    it('lists what was set aside, newest first, of all members, without what was taken back in or removed', async () => {
      const aside = { setAsideAt: NOON, setAsideWhy: 'tare' };
      for (const id of ['1', '2', '3', '4', '5']) await started(id, { member: id === '3' ? 'juri' : 'ines' });
      for (const id of ['1', '2', '3', '4']) await club.correct(id, by(`aside ${id}`), () => aside);
      await club.correct('2', by('in'), () => ({ setAsideAt: null, setAsideWhy: null }));
      await club.remove('4', NOON);
      expect((await club.setAside(5)).map(({ id }) => id)).toEqual(['3', '1']);
      expect(await club.setAside(1)).toMatchObject([{ id: '3', ...aside }]);
      expect(await store.club('b').setAside(5)).toEqual([]);
    });

    it('lists a member’s pieces from day to day, in posting order, without what is set aside or removed', async () => {
      const days = ['2026-03-31', '2026-07-04', '2026-01-01', '2025-12-31', '2026-04-01'] as CalendarDay[];
      for (const [at, day] of days.entries()) await started(`${at + 1}`, { day });
      await started('aside', { day: '2026-02-01' as CalendarDay });
      await club.correct('aside', by('a'), () => ({ setAsideAt: NOON, setAsideWhy: 'tare' }));
      await started('gone', { day: '2026-02-01' as CalendarDay });
      await club.remove('gone', NOON);
      await started('other', { day: '2026-02-01' as CalendarDay, member: 'juri' });
      const listed = async (from: string | null, to: string | null) =>
        (await club.ofMember('ines', from as CalendarDay | null, to as CalendarDay | null)).map(
          ({ id }) => id,
        );
      expect(await listed('2026-01-01', '2026-03-31')).toEqual(['1', '3']);
      expect(await listed('2026-04-01', null)).toEqual(['2', '5']);
      expect(await listed(null, '2025-12-31')).toEqual(['4']);
      expect(await listed(null, null)).toEqual(['1', '2', '3', '4', '5']);
      expect((await club.ofMember('juri', null, null)).map(({ member }) => member)).toEqual(['juri']);
    });

    it('lists the cuts of a member’s pieces, most pieces first, without what is set aside or removed', async () => {
      expect(await club.cutsOf('ines')).toEqual([]);
      await started('1');
      await started('2', { cut: BUTT });
      // Of equals the one weighed in last.
      expect(await club.cutsOf('ines')).toEqual([BUTT, BRISKET]);
      await started('3');
      await started('other', { cut: BUTT, member: 'juri' });
      expect(await club.cutsOf('ines')).toEqual([BRISKET, BUTT]);
      await club.correct('3', by('a'), () => ({ setAsideAt: NOON, setAsideWhy: 'tare' }));
      expect(await club.cutsOf('ines')).toEqual([BUTT, BRISKET]);
      await club.remove('2', NOON);
      expect(await club.cutsOf('ines')).toEqual([BRISKET]);
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
            // Read in between, so that what is compared was mended step by step.
            await club.columns(BRISKET, at % 2 === 0 ? 'trim' : 'plate');
            await club.columns(null, 'cooking', at % 3 === 0);
            await started(`${at}`, told);
            if (confirmed) await club.correct(`${at}`, by('c'), () => ({ confirmedAt: NOON }));
            if (aside)
              await club.correct(`${at}`, by('s'), () => ({ setAsideAt: NOON, setAsideWhy: 'tare' }));
            // Also an older one, from the middle of what was read.
            if (at > 2 && confirmed)
              await club.correct(`${at - 2}`, by(`again-${at}`), () => ({ cut: BUTT, cooked: lb(7) }));
            if (removed) await club.remove(`${at}`, NOON);
          }
          await compare(club, list.length);
        }),
        { numRuns: 25, interruptAfterTimeLimit: 15_000 },
      );
    });

    it('know their cuts, the one of most pieces first', async () => {
      expect(await club.cuts()).toEqual([]);
      await started('1', { cut: BUTT });
      await started('2');
      await started('3');
      expect(await club.cuts()).toEqual([BRISKET, BUTT]);
      expect(await club.version(BRISKET)).toBe(2);
      expect(await club.version(null)).toBe(3);
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

  describe(`${name}: leaving`, () => {
    const told = { trim: lb(3), shop: 'north', note: 'for the cousins', typed: { bought: '14.8 lb' } };

    it('keeps the pieces together under one id that is not theirs, with nothing to tell whose they were', async () => {
      await started('1', {
        ...told,
        saved: [{ name: 'fat', weight: lb(1), price: null }],
        postedAt: NOON + 5,
      });
      await started('2', { ...told, cut: BUTT });
      await started('3', { ...told, member: 'juri' });
      await club.correct('1', by('i'), () => ({ note: 'for them', trim: lb(4), setAsideAt: NOON + 7 }));
      await club.remember('ines', { units: 'kg' });
      expect(await club.leave('ines', NOON)).toEqual({ pieces: 2, clubs: 1, cards: [] });

      const [one, two, other] = await Promise.all([1, 2, 3].map((seq) => club.piece({ seq })));
      expect(other).toEqual({ ...samplePiece('3', { ...told, member: 'juri' }), ...UNSETTLED, seq: 3 });
      expect(one && hasLeft(one.member)).toBe(true);
      expect(two?.member).toBe(one?.member);
      expect(one).toMatchObject({ bought: lb(14.8), trim: lb(4), shop: 'north', note: null, typed: {} });
      expect(one?.saved).toEqual([{ name: 'a', weight: lb(1), price: null }]);
      expect([one?.postedAt, one?.setAsideAt]).toEqual([Date.UTC(2026, 6, 4), Date.UTC(2026, 6, 4)]);
      expect(['1', '2']).not.toContain(one?.id);
      const [correction] = await club.corrections(one?.id ?? '');
      expect(correction).toMatchObject({
        member: one?.member,
        before: { trim: lb(3) },
        after: { trim: lb(4) },
        why: null,
      });
      expect(correction?.after).not.toHaveProperty('note');
      expect((await club.member('ines')).units).toBeNull();
      expect(await club.hiddenMembers()).toEqual([one?.member]);
    });

    it('takes a shop along that nobody else named', async () => {
      await started('1', { shop: 'mine alone' });
      await started('2', { shop: 'north' });
      await started('3', { shop: 'north', member: 'juri' });
      await club.leave('ines', NOON);
      const shops = await Promise.all([1, 2, 3].map(async (seq) => (await club.piece({ seq }))?.shop));
      expect(shops).toEqual([null, 'north', 'north']);
    });

    it('changes no weight of anybody', async () => {
      await started('1', told);
      await started('2', { ...told, trim: lb(2), member: 'juri' });
      const before = await club.columns(BRISKET, 'trim');
      await club.leave('ines', NOON);
      const after = await club.columns(BRISKET, 'trim');
      expect(after.version).toBeGreaterThan(before.version);
      expect([after.base, after.loss, after.day, after.seq]).toEqual([
        before.base,
        before.loss,
        before.day,
        before.seq,
      ]);
      expect(after.member.codes).toEqual(before.member.codes);
    });

    it('is calm about somebody unknown, and about a second time', async () => {
      expect(await club.leave('ines', NOON)).toEqual({ pieces: 0, clubs: 0, cards: [] });
      await started('1');
      await club.leave('ines', NOON);
      expect(await club.held('ines')).toEqual({ pieces: 0, anything: false });
      expect((await club.leave('ines', NOON)).clubs).toBe(0);
      const again = await started('1');
      expect(again).toMatchObject({ seq: 2, member: 'ines' });
      await club.leave('ines', NOON);
      const [one, two] = await Promise.all([club.piece({ seq: 1 }), club.piece({ seq: 2 })]);
      expect(one?.member).not.toBe(two?.member);
    });
  });

  describe(`${name}: erasing a member`, () => {
    it('takes all of theirs, tells where cards stood, and gives no number again', async () => {
      await started('1');
      await started('2', { member: 'juri' });
      await started('3');
      await club.remove('3', NOON);
      await club.remember('ines', { hidden: true });
      await club.keepPan('ines', { name: 'blue', weight: lb(1) });
      await club.remind({ piece: '1', member: 'ines', dueAt: NOON });
      await club.keepPosted({ piece: '1', channel: 'c', message: 'm' });
      await club.keepPosted({ piece: '2', channel: 'c', message: 'n' });
      expect(await club.held('ines')).toEqual({ pieces: 1, anything: true });
      expect(await club.eraseMember('ines', NOON)).toEqual({
        pieces: 1,
        clubs: 1,
        cards: [{ channel: 'c', message: 'm' }],
      });
      expect(await club.held('ines')).toEqual({ pieces: 0, anything: false });
      expect(await club.pans('ines')).toEqual([]);
      expect(await club.hiddenMembers()).toEqual([]);
      expect(await store.dueReminders(NOON)).toEqual([]);
      expect(await club.posted('2')).toHaveLength(1);
      expect((await started('1')).seq).toBe(4);
      expect(await club.piece({ seq: 2 })).toMatchObject({ member: 'juri' });
    });

    it('leaves what they mended of others, under no name', async () => {
      await started('1', { member: 'juri' });
      await club.correct('1', by('i'), () => ({ trim: lb(1) }));
      await club.eraseMember('ines', NOON);
      expect(await club.piece({ id: '1' })).toMatchObject({ trim: lb(1), revision: 1 });
      const [correction] = await club.corrections('1');
      expect(correction?.after).toEqual({ trim: lb(1) });
      expect(correction?.member).not.toBe('ines');
    });

    it('forgets the question of another member that names them', async () => {
      const draft: Draft = {
        id: 'd',
        member: 'juri',
        command: 'compare',
        options: { member: '42' },
        confirmed: [],
        readings: [],
        interaction: 'd',
        expiresAt: NOON,
      };
      await club.keepDraft(draft);
      await club.keepDraft({ ...draft, id: 'e', options: { member: '421' } });
      await club.remember('42', {});
      await club.eraseMember('42', NOON);
      expect(await club.draft('d', 0)).toBeNull();
      expect(await club.draft('e', 0)).not.toBeNull();
    });

    it('changes the figures of their cuts, and of no other', async () => {
      await started('1', { trim: lb(1) });
      await started('2', { trim: lb(2), member: 'juri' });
      await started('3', { trim: lb(3), member: 'juri', cut: BUTT });
      const before = await Promise.all([BRISKET, BUTT].map((cut) => club.columns(cut, 'trim')));
      await club.eraseMember('ines', NOON);
      const after = await Promise.all([BRISKET, BUTT].map((cut) => club.columns(cut, 'trim')));
      expect(after.map(({ count }) => count)).toEqual([1, 1]);
      expect(after[0]?.version).toBeGreaterThan(before[0]?.version ?? 0);
      expect(after[1]).toEqual(before[1]);
    });

    it('is done here alone, or everywhere', async () => {
      const other = store.club('b');
      await other.found(sampleClub('b'));
      await store.club('c').found(sampleClub('c'));
      await started('1');
      await other.start(samplePiece('1'));
      await other.start(samplePiece('2', { member: 'juri' }));
      await other.remember('bo', { units: 'lb' });
      expect(await store.everywhere('ines').held()).toEqual([
        { club: 'a', pieces: 1 },
        { club: 'b', pieces: 1 },
      ]);
      await club.eraseMember('ines', NOON);
      expect(await other.piece({ id: '1' })).not.toBeNull();
      expect(await store.everywhere('ines').erase(NOON)).toMatchObject({ pieces: 1, clubs: 1 });
      expect(await store.everywhere('ines').held()).toEqual([]);
      expect(await store.everywhere('ines').erase(NOON)).toEqual({ pieces: 0, clubs: 0, cards: [] });
      expect(await store.everywhere('bo').held()).toEqual([{ club: 'b', pieces: 0 }]);
      expect(await other.piece({ id: '2' })).toMatchObject({ seq: 2 });
    });
  });

  describe(`${name}: erasing a club`, () => {
    it('takes all of it, and nothing of another', async () => {
      const other = store.club('b');
      await other.found(sampleClub('b'));
      await other.start(samplePiece('1'));
      expect(await club.heldInAll()).toEqual({ pieces: 0, anything: false });
      for (const id of ['1', '2', '3']) await started(id);
      await club.correct('1', by('i'), () => ({ trim: lb(1) }));
      await club.keepPosted({ piece: '2', channel: 'c', message: 'm' });
      await club.remove('3', NOON);
      expect(await club.heldInAll()).toEqual({ pieces: 2, anything: true });
      expect(await club.eraseClub(NOON)).toEqual({
        pieces: 2,
        clubs: 1,
        cards: [{ channel: 'c', message: 'm' }],
      });
      expect([await club.settings(), await store.clubs()]).toEqual([null, ['b']]);
      expect(await other.piece({ seq: 1 })).toMatchObject({ id: '1' });
      expect((await club.eraseClub(NOON)).clubs).toBe(0);
    });

    it('has a club of the same id begin anew, with none of the figures that were kept of the old one', async () => {
      await started('1', { trim: lb(1) });
      await started('2', { trim: lb(1), cut: BUTT });
      const versions = await Promise.all([BRISKET, BUTT, null].map((cut) => club.version(cut)));
      await club.columns(BRISKET, 'trim');
      const erasing = club.eraseClub(NOON);
      // Whoever asks meanwhile keeps what they see.
      for (let asks = 0; asks < 20; asks += 1) await club.columns(BRISKET, 'trim');
      await erasing;
      await club.found(sampleClub('a'));
      expect(await started('9', { trim: lb(2) })).toMatchObject({ seq: 1 });
      const [brisket = 0, , all = 0] = versions;
      expect(await club.version(BRISKET)).toBeGreaterThan(brisket);
      expect(await club.version(null)).toBeGreaterThan(all);
      expect((await club.columns(BRISKET, 'trim')).count).toBe(1);
    });

    it('is due 30 days after it was left, and not once it returned', async () => {
      const days = (count: number) => NOON + count * 86_400_000;
      await started('1');
      expect(await store.overdue(days(400))).toEqual([]);
      await store.left('a', NOON);
      expect(await store.overdue(days(30) - 1)).toEqual([]);
      expect(await store.overdue(days(30))).toEqual(['a']);
      expect(await store.overdue(days(7), 7)).toEqual(['a']);
      expect(await store.overdue(days(30), 31)).toEqual([]);
      await store.returned('a');
      expect(await store.overdue(days(400))).toEqual([]);
      expect(await club.piece({ seq: 1 })).not.toBeNull();
    });
  });
}

/** Checks the columns of every cut and measure against the pieces 1 to `last`. */
async function compare(club: ClubStore, last: number): Promise<void> {
  const seqs = Array.from({ length: last }, (_, at) => at + 1);
  const all = await Promise.all(seqs.map((seq) => club.piece({ seq })));
  const shown = all.filter((piece) => piece !== null).filter(({ setAsideAt }) => setAsideAt === null);
  for (const cut of [BRISKET, BUTT, null] as (CutKey | null)[]) {
    for (const measure of AVERAGED) {
      for (const injected of [false, true]) {
        const columns = await club.columns(cut, measure, injected);
        const expected = shown.flatMap((piece) => {
          // Injected pieces are apart, but not before the heat.
          const here =
            (cut === null || piece.cut === cut) && (measure === 'trim' || isInjected(piece) === injected);
          if (!here || (measure === 'trim' && injected)) return [];
          if (measure === 'cost') {
            const { base, loss } = lossOf('plate', piece) ?? { base: grams(piece.bought), loss: Number.NaN };
            return [rowOf(piece, base, loss)];
          }
          const loss = lossOf(measure, piece);
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
        columns.spent.forEach((amount, at) => {
          const piece = shown.find(({ seq }) => seq === columns.seq[at]);
          expect(offSpent(amount, piece)).toBeLessThan(1e-12);
        });
        expect(columns.month.codes).toHaveLength(columns.count);
      }
    }
  }
}

/** How far an amount is from what was spent on a piece, as a part of what was paid and given back. */
function offSpent(amount: number, piece: Piece | null | undefined): number {
  const costs = piece ? costsOf(piece) : null;
  if (costs === null) return Number.isNaN(amount) ? 0 : Number.POSITIVE_INFINITY;
  const size = moneyNumber(costs.paid) + (costs.credit === null ? 0 : moneyNumber(costs.credit));
  return Math.abs(amount - moneyNumber(costs.net)) / (size || 1);
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
  day: dayNumber(piece.day),
  price: piece.price === null ? null : pricePerKg(piece.price, piece.bought),
  currency: piece.price?.currency ?? null,
});
