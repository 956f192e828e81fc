/** `/club cuts`: a cut that the catalogue lacks, from the list to the plate. */
import { writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { writeActionId } from '../../shared/chat/action-id.ts';
import type { Reply } from '../../shared/chat/reply.ts';
import { picturesOf } from '../../src/discord/render.ts';
import { forQuickChart } from '../../src/pictures/for-quickchart.ts';
import { play as follow } from '../../src/rehearsal/line.ts';
import { rehearse } from '../rehearsing.ts';
import { makeFolder } from '../store/folder.ts';

const ADD = '@ines! /club cuts add:Schäufele species:Pork';
const KEY = 'own/pork/schäufele';
/** The longest name, of the animal with the longest. */
const LONGEST = 'neck and wing tips mixed';

describe('the list', () => {
  test('is told, added to and taken from', async () => {
    const { play } = await rehearse();
    const before = await play('@ines! /club cuts');
    expect(before).toMatchObject({
      audience: 'member',
      figures: { ownCuts: [], added: null, removed: null },
    });
    expect(before.text).toContain('This club has added no cuts of its own.');
    expect((await play(ADD)).figures).toEqual({ ownCuts: [KEY], added: KEY, removed: null });
    expect((await play(ADD)).figures.ownCuts).toEqual([KEY]);
    expect((await play('@ines! /club cuts')).text).toMatch(/Schäufele +Pork/);
    const said = await play('@ines! /club cuts add:Smoked  short-plate species:beef remove:schaufele');
    expect(said.figures).toEqual({
      ownCuts: ['own/beef/smoked-short-plate'],
      added: 'own/beef/smoked-short-plate',
      removed: KEY,
    });
    expect(said.text).not.toContain('Its pieces stay');
  });

  test.each([
    ['add:Schäufele', 'own-cut-species'],
    ['species:Pork', 'own-cut-missing'],
    ['add:Schäufele species:frog', 'choice-unknown'],
    ['add:Packers species:Beef', 'own-cut-known'],
    ['add:ribs species:Pork', 'own-cut-known'],
    ['add:dry-aged plate species:Beef', 'dry-aged'],
    ['add:house plate species:Beef', 'own-cut-twice'],
    ['add:--- species:Beef', 'own-cut-no-letter'],
    ['add:77 species:Beef', 'own-cut-no-letter'],
    [`add:${'x'.repeat(25)} species:Beef`, 'own-cut-too-long'],
    [`add:${'x'.repeat(41)} species:Beef`, 'own-cut-too-long'],
    ['add:@everyone species:Beef', 'own-cut-signs'],
    ['add:<@42> species:Beef', 'own-cut-signs'],
    ['add:**plate** species:Beef', 'own-cut-signs'],
    ['add:`plate` species:Beef', 'own-cut-signs'],
    ['add:pl\u202eate species:Beef', 'own-cut-signs'],
    ['add:pl\u0007ate species:Beef', 'own-cut-signs'],
    ['add:pl/ate species:Beef', 'own-cut-signs'],
    [`add:a${'\u0336'.repeat(9)} species:Beef`, 'own-cut-signs'],
    ['remove:packer', 'own-cut-unknown'],
    ['remove:nothing', 'own-cut-unknown'],
  ])('%s: %s', async (told, code) => {
    const { play, say } = await rehearse();
    await play('@ines! /club cuts add:House plate species:Pork');
    expect((await say(`@ines! /club cuts ${told}`)).error?.code).toBe(code);
    expect((await play('@ines! /club cuts')).figures.ownCuts).toEqual(['own/pork/house-plate']);
  });

  test('says which cut answers to a name', async () => {
    const { say } = await rehearse();
    expect((await say('@ines! /club cuts add:packer species:Beef')).text).toContain('`Whole packer brisket`');
  });

  test('has an end, and is for managers', async () => {
    const { play, say } = await rehearse();
    for (let count = 0; count < 50; count++)
      await play(`@ines! /club cuts add:house cut ${count} species:Game`);
    expect((await say('@ines! /club cuts add:house cut 50 species:Game')).error?.code).toBe('own-cuts-full');
    expect((await play('@ines! /club cuts add:house cut 49 species:Game')).figures.ownCuts).toHaveLength(50);
    expect((await say('@bo /club cuts')).error?.code).toBe('managers-only');
  });
});

describe('a cut of its own', () => {
  test('is weighed in, whatever its size, and averaged, ranked, debated and compared', async () => {
    const { play, say } = await rehearse();
    expect((await say('/weigh cut:Schäufele bought:3 lb')).error?.code).toBe('cut-unknown');
    await play(ADD);
    for (const typed of ['Schäufele', 'schaufele', 'SCHÄUFELE', 'Shäufele', KEY])
      expect((await play(`/weigh cut:${typed} bought:3 lb trim:4 oz`)).figures.cut).toBe(KEY);
    for (const bought of ['2 oz', '300 lb'])
      expect((await play(`/weigh cut:Schäufele bought:${bought}`)).figures.cut).toBe(KEY);
    await play('/weigh cut:Schäufele bought:4 lb trim:6 oz price:4.99/lb bone:in grade:choice');
    const done = await play('/weigh cooked:3 lb', '/weigh scraps:8 oz');
    expect(done.text).toContain('chäufele');
    expect((await play('/piece show')).figures).toMatchObject({ cut: KEY });
    for (const line of [
      '/average',
      '/average cut:Schäufele',
      '/board cut:Schäufele',
      '/compare cut:Schäufele',
    ])
      expect((await play(line)).text).toContain('chäufele');
    for (const line of [
      '/debate cut:Schäufele',
      '/feed people:8 cut:Schäufele',
      '/shop one:3 lb @ 4.99 Schäufele two:3.2 lb @ 4.49 schaufele',
      '/shop cut:Schäufele card:yes',
      '/piece parts parts:fat 4 oz',
      '/mine season',
      '/piece list',
    ])
      expect((await play(line)).ok).toBe(true);
    expect((await say('/weigh cut:Schäufele bought:3 lb style:thick')).text).toContain('Schäufele');
  });

  test('is completed, the others after it', async () => {
    const { play } = await rehearse();
    await play(ADD);
    const first = (await play('complete /weigh cut:')).choices ?? [];
    expect(first).toHaveLength(25);
    expect(first[0]).toEqual({ label: 'Schäufele', value: 'Schäufele' });
    expect((await play('complete /weigh cut:schau')).choices).toEqual([first[0]]);
    expect((await play('complete /weigh cut:pack')).choices).not.toContainEqual(first[0]);
    expect((await play('@ines! complete /club cuts remove:')).choices).toEqual([first[0]]);
  });

  test('that is taken off is offered no more, and its pieces stay', async () => {
    const { play, say } = await rehearse();
    await play(
      ADD,
      '@ines! /club cuts add:House plate species:Beef',
      '/weigh cut:Schäufele bought:3 lb trim:4 oz',
    );
    const gone = await play('@ines! /club cuts remove:Schäufele', '@ines! /club cuts remove:House plate');
    expect(gone.figures).toEqual({ ownCuts: [], added: null, removed: 'own/beef/house-plate' });
    expect((await play('@ines! /club cuts remove:Schäufele')).text).toContain('Its pieces stay');
    expect((await play('complete /weigh cut:schau')).choices).toEqual([]);
    expect((await play('/average cut:Schäufele')).text).toContain('(1 piece, 1 person)');
    expect((await play('/piece fix', 'submit trim:5 oz')).figures.cut).toBe(KEY);
    expect((await say('/weigh cut:House plate bought:3 lb')).error?.code).toBe('cut-unknown');
  });

  test('is no cut of another club', async () => {
    const { play, say } = await rehearse();
    await play(ADD, 'in elsewhere');
    expect((await say('/weigh cut:Schäufele bought:3 lb')).error?.code).toBe('cut-unknown');
    expect((await say(`/weigh cut:${KEY} bought:3 lb`)).error?.code).toBe('own-cut-unknown');
    expect((await play('complete /weigh cut:schau')).choices).toEqual([]);
    expect((await play('@ines! /club cuts')).figures.ownCuts).toEqual([]);
  });

  test('is read in a table where the club has it', async () => {
    const { play } = await rehearse();
    const folder = makeFolder();
    const file = `${folder.path}/table.csv`;
    writeFileSync(file, `cut,bought,trim\n${KEY},3 lb,4 oz\nSchaufele,3.5 lb,5 oz\n`);
    const refused = await play(`@ines! /club import file:${file}`);
    expect(refused.figures).toMatchObject({
      badRows: [{ code: 'own-cut-unknown' }, { code: 'cut-unknown' }],
    });
    await play(ADD, `@ines! /club import file:${file}`, '@ines! press Import 2 pieces');
    expect((await play('/average cut:Schäufele')).text).toContain('2 pieces');
    folder.discard();
  });
});

describe('the longest name', () => {
  test('fits into every button, and no chart host sees it', async () => {
    const { play, stage } = await rehearse({ as: '18446744073709551615' });
    await play(`@18446744073709551615! /club cuts add:${LONGEST} species:Poultry`);
    const weigh = (who: string, count: number) =>
      play(
        `@${who} /weigh cut:${LONGEST} bought:${count + 8} lb trim:${count + 1} oz price:4.99/lb`,
        `@${who} /weigh cooked:${count + 5} lb`,
        `@${who} /weigh scraps:${count + 3} oz`,
      );
    for (let count = 0; count < 9; count++)
      await weigh(['18446744073709551615', '18446744073709551614', 'bo'][count % 3] ?? '', count);
    const lines = [
      `/average cut:${LONGEST}`,
      '/average',
      `/average cut:${LONGEST} by:member measure:carving`,
      `/board cut:${LONGEST} ranking:value season:always`,
      `/debate cut:${LONGEST}`,
      `/debate cut:${LONGEST} question:grade of:cooking`,
      `/compare cut:${LONGEST}`,
      `/compare cut:${LONGEST} member:18446744073709551614`,
      `/shop cut:${LONGEST} one:9 lb @ 4.99 two:9.5 lb @ 4.49`,
      `/shop cut:${LONGEST} one:9 lb @ 4.99 two:9.5 lb @ 4.49 packer`,
      `/shop cut:${LONGEST} card:yes`,
      '/piece show',
      '/piece parts parts:fat 4 oz portion:5 oz',
      '/mine season',
    ];
    let drawn = 0;
    for (const line of lines) {
      const outcome = await follow(stage, line);
      if (outcome.kind !== 'answer' || outcome.answer.kind !== 'reply') throw new Error(line);
      const { reply, failed } = outcome.answer;
      expect([line, failed]).toEqual([line, undefined]);
      const parts: Reply[] = [reply, ...(reply.privately ? [reply.privately] : [])];
      for (const { id } of parts.flatMap(({ actions }) => actions ?? [])) writeActionId(id);
      for (const picture of parts.flatMap(picturesOf)) {
        drawn += 1;
        const sent = JSON.stringify(forQuickChart(picture));
        expect([line, picture.name, /.{0,80}neck.and.wing.{0,20}/i.exec(sent)?.[0]]).toEqual([
          line,
          picture.name,
          undefined,
        ]);
      }
    }
    expect(drawn).toBeGreaterThan(6);
    expect((await play(lines[3] ?? '', 'press Where am I?')).ok).toBe(true);
    expect((await play(lines[0] ?? '', 'press Where are mine?')).ok).toBe(true);
  });
});
