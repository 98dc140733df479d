import { describe, expect, it } from 'vitest';
import { listScoreMonths } from '../../../src/pack/pages/score-months.ts';
import { planMediaFiles } from '../../../src/pack/plan-media.ts';
import { buildFakeWeek } from '../fake-week.ts';
import { findAll, readText, renderPages } from '../render-pages.ts';

const renderScore = (...options: Parameters<typeof buildFakeWeek>) => {
  const page = renderPages(buildFakeWeek(...options)).get('score.html');
  if (page === undefined) throw new Error('No score.');
  return page;
};

describe('renderScorePage', () => {
  it('draws the month and says the same nights in words, with dates and gestures', () => {
    const page = renderScore();
    expect(findAll(page, '.score')).toHaveLength(2);
    const nights = findAll(page, '.score-list').flatMap((list) => readText(list).match(/Eau \w+ \d+ · /g) ?? []);
    expect(nights).toHaveLength(29);
    expect(findAll(page, '.score-list').map(readText)[0]).toMatch(
      /Eau noire 1 · Tue 14 JulLift one hand\. (The Moon|A \w+ Moon)/,
    );
  });

  it('says from which side of the equator the Moon is seen', () => {
    expect(readText(renderScore())).toContain('seen from 41° south.');
    const place = { latitudeDegrees: 48.4, longitudeDegrees: 0, elevationMetres: 0, timeZone: 'UTC' };
    expect(readText(renderScore({ school: { place } }))).toContain('seen from 48° north.');
  });

  it('gives two sheets for each month the week lies in: figures that face you, and as you see your own hands', () => {
    const lessons = [{ head: { day: 'monday' } }, { head: { day: 'friday' } }] as const;
    const page = renderScore({ plan: { begins: '2026-08-10' }, lessons });
    const captions = [
      'The figures face you: their right hand is on your left.',
      'As you see your own hands: right is on the right.',
    ];
    const sheets = findAll(page, '.score');
    expect(sheets).toHaveLength(4);
    for (const [index, sheet] of sheets.entries()) expect(readText(sheet)).toContain(captions[index % 2]);
    const labels = findAll(page, '.score-frame').map(({ properties }) => String(properties['ariaLabel']));
    expect(new Set(labels).size).toBe(4);
    expect(findAll(page, 'h2').map(readText)).toEqual([
      'Mois du gel: The same as a list',
      'Mois du vent: The same as a list',
    ]);
  });

  it('brackets the week from its first lesson to its last, days without a lesson too', () => {
    const page = renderScore({ lessons: [{ head: { day: 'monday' } }, { head: { day: 'thursday' } }] });
    const [bracket] = findAll(page, '.score-week');
    const moons = findAll(page, 'g').flatMap(
      ({ properties }) => /^translate\(([\d.]+) [\d.]+\)$/.exec(String(properties['transform']))?.[1] ?? [],
    );
    const pitch = Number(moons[1]) - Number(moons[0]);
    // Monday to Thursday are four nights.
    expect(Math.round(Number(bracket?.properties['width']) / pitch)).toBe(4);
    expect(findAll(page, '.score-week')).toHaveLength(1);
  });

  it('shows the author’s own picture in place of a drawing, and packs it', () => {
    const picture = {
      file: 'wave.png',
      packName: 'picture-1.png',
      widthPx: 9,
      heightPx: 9,
      bytes: new Uint8Array([1]),
      credit: 'Ana',
    };
    const wave = { move: 'hold', cue: 'Lift one hand.', seated: 'The same, seated.', picture } as const;
    const week = buildFakeWeek({ gestures: { gestures: { wave } } });
    const page = renderPages(week).get('score.html');
    if (page === undefined) throw new Error('No score.');
    const images = findAll(page, 'image');
    expect(images).toHaveLength(58);
    expect(images[0]?.properties['href']).toBe('images/picture-1.png');
    expect(readText(page)).toContain('Pictures: Ana');
    const packed = planMediaFiles(week, new Map()).filter(({ path }) => path.startsWith('images/'));
    expect(packed).toEqual([{ path: 'images/picture-1.png', content: picture.bytes }]);
  });

  it('lets the paper be chosen without a script', () => {
    const page = renderScore();
    const [box] = findAll(page, 'input');
    expect(box?.properties).toMatchObject({ type: 'checkbox', id: 'on-a4' });
    expect(findAll(page, 'script')).toEqual([]);
  });
});

describe('codes to recordings', () => {
  const terms = { credit: 'The children of Room 4', permission: 'for this school only' };

  it('have no sheet where the content names no address', () => {
    expect(findAll(renderScore(), '.score-codes')).toEqual([]);
  });

  it('stand once for each address, with what is heard there, the address in words, and the terms', () => {
    const spokenNames = new Map([
      [1, { link: 'https://recordings.example/1', ...terms }],
      [2, { link: 'https://recordings.example/1', ...terms }],
      [3, { link: 'https://recordings.example/3', ...terms }],
      [4, { ...terms }],
      // The fake months have 29 nights: this one does not come.
      [30, { link: 'https://recordings.example/30', ...terms }],
    ]);
    const entries = findAll(renderScore({ calendar: { spokenNames } }), '.code-entry');
    expect(entries.map(readText)).toEqual([
      'Eau noire 1 · Eau noire 2To be heard at https://recordings.example/1 (leaves this pack)Recording: The children of Room 4 · for this school only',
      'Eau noire 3To be heard at https://recordings.example/3 (leaves this pack)Recording: The children of Room 4 · for this school only',
    ]);
    for (const entry of entries) expect(findAll({ type: 'root', children: [entry] }, '.code')).toHaveLength(1);
  });

  it('stand for whole runs too', () => {
    const drummed = { link: 'https://recordings.example/run', ...terms, tempoBeatsPerMinute: 60, firstBeatSeconds: 2 };
    const [entry] = findAll(renderScore({ gestures: { recordings: { 'slow drum': drummed } } }), '.code-entry');
    expect(entry && readText(entry)).toContain('Gesture sequence: slow drum');
  });
});

describe('listScoreMonths', () => {
  it('keeps the nights of a group together and names the dates taught', () => {
    const [month] = listScoreMonths(buildFakeWeek());
    expect(month?.groups.map(({ name, nights }) => [name, nights.length])).toEqual([
      ['Eau noire', 10],
      ['Eau claire', 10],
      ['Eau basse', 9],
    ]);
    expect(month).toMatchObject({ firstDate: '2026-07-14', lastDate: '2026-08-11' });
    expect(month?.taught).toEqual(['2026-07-27', '2026-07-29']);
  });
});
