import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import { parseCivilDate, renderCivilDate } from '../../src/calendar/day-number.ts';
import { listEclipses } from '../../src/calendar/eclipses.ts';
import { computeEveningSky } from '../../src/calendar/evening-sky.ts';
import type { Place } from '../../src/calendar/rules.ts';
import { getLabelEntry, LABEL_KEYS } from '../../src/content/label-catalogue.ts';
import { createLabels, type Labels } from '../../src/content/labels.ts';
import { parseLabelFile } from '../../src/content/parse-label-file.ts';
import { listDateEclipses, listNightEclipses, listWeekEclipses } from '../../src/directives/eclipse-notice.ts';
import {
  listEclipseCare,
  listEveningCare,
  sayCare,
  sayEclipse,
  sayEvening,
  saySchoolHours,
} from '../../src/directives/sky-words.ts';
import { ESTUARY, samplePlace, sampleRules, utc } from '../calendar/sample-rules.ts';

const DAY_MS = 86_400_000;
const FRENCH_FILE = parseLabelFile({
  path: 'content/labels/fr.yaml',
  text: readFileSync(new URL('../../content/labels/fr.yaml', import.meta.url), 'utf8'),
}).value;

/** How a language speaks of the Sun and of looking, and which sentences may do both: they forbid, or wait for the dark. */
interface Tongue {
  readonly labels: Labels;
  readonly sun: RegExp;
  readonly looking: RegExp;
  readonly harmless: RegExp;
  readonly points: RegExp;
}

const ENGLISH: Tongue = {
  labels: createLabels('en'),
  sun: /\bSun\b|\bsunlight\b|\beclipse of the Sun\b/,
  looking: /\b(?:look|watch|see|seen|find|spot|view|observe|gaze|stare|point|face|follow|admire)\w*/i,
  harmless:
    /^Never look at the Sun or near it\.$|^Look for the star before dawn only, and stop before the Sun is due\.$|\bSun (?:is )?fully down\b|\bit is not looked for by day\.$|^An eclipse of the Sun is followed only when an adult leads, either with certified solar filters or by indirect projection\b|\bafter sunset\b|^Too near the Sun to look for tonight\.$/,
  points: /\b(?:north|south|east|west)\b/,
};

const FRENCH: Tongue = {
  labels: createLabels('fr', FRENCH_FILE),
  sun: /\bSoleil\b/,
  looking: /\b(?:regard|cherch|observ|vois|voir|voyez|vu|guett|repér|admir|contempl|fix|suivez|suivons|suit\b)\p{L}*/iu,
  harmless:
    /^Il ne faut jamais regarder le Soleil, ni tout près de lui\.$|^Ne chercher l’étoile qu’avant l’aube, et s’arrêter avant l’heure du lever du Soleil\.$|\bSoleil (?:est )?(?:tout à fait|entièrement) couché|\bon ne la cherche pas en plein jour\.$|\bon ne peut voir aucun croissant\.$|^Une éclipse de Soleil ne se suit que sous la conduite d’un adulte, soit avec des filtres solaires certifiés, soit par projection indirecte\b|^Trop près du Soleil\u00a0: on ne la cherche pas cette nuit\.$/,
  points: /\b(?:nord|sud|est|ouest)\b(?! à| toute| une| le)/,
};

const splitSentences = (text: string) => text.split(/(?<=\.)\s+/);

/** Sentences that speak of the Sun and of looking in one breath, and are not known to be harmless. */
function findInvitations(text: string, { sun, looking, harmless }: Tongue): string[] {
  return splitSentences(text).filter(
    (sentence) => sun.test(sentence) && looking.test(sentence) && !harmless.test(sentence),
  );
}

const PLACES: Place[] = [
  ESTUARY,
  samplePlace(48.2, 5.1, 'Europe/Paris'),
  samplePlace(69.6, 18.9, 'Europe/Oslo'),
  samplePlace(1.3, 103.8, 'Asia/Singapore'),
];

/** The hours of a day: a usual school and one with long days and late bedtimes, in turn. */
function chooseHours(day: number) {
  return day % 2 === 0
    ? { classBegins: '09:00', classEnds: '15:00', bedtime: '20:30' }
    : { classBegins: '07:30', classEnds: '17:30', bedtime: '22:00' };
}

/** All that is said on every third date of three years, which bring every kind of evening and thirty eclipses. */
function* listTexts({ labels }: Tongue): Generator<string> {
  for (const place of PLACES) {
    const almanac = createAlmanac(sampleRules(), place);
    for (let day = utc('2026-01-01T00:00') / DAY_MS; day < utc('2029-01-01T00:00') / DAY_MS; day += 3) {
      const sky = computeEveningSky(almanac, renderCivilDate(day), chooseHours(day));
      yield sayEvening(sky, labels, place.timeZone);
      yield saySchoolHours(sky, labels, place.timeZone);
      yield sayCare(listEveningCare(sky), labels);
    }
    for (const eclipse of listEclipses(place, utc('2020-01-01T00:00'), utc('2040-01-01T00:00'))) {
      yield sayEclipse(eclipse, labels, place.timeZone);
      yield sayCare(listEclipseCare([eclipse]), labels);
    }
  }
}

describe.each([
  ['English', ENGLISH],
  ['French', FRENCH],
])('%s words about the sky', (_, tongue) => {
  const texts = [...new Set(listTexts(tongue))];

  it('never invite anyone to look towards the Sun', () => {
    expect(texts.length).toBeGreaterThan(900);
    for (const text of texts) expect(findInvitations(text, tongue)).toEqual([]);
  });

  it('never do so in any fixed text of a pack either', () => {
    for (const key of LABEL_KEYS) {
      const label = tongue === ENGLISH ? getLabelEntry(key).english : FRENCH_FILE?.labels[key];
      for (const text of typeof label === 'string' ? [label] : Object.values(label ?? {})) {
        expect(findInvitations(text, tongue), key).toEqual([]);
      }
    }
  });

  it('leave no placeholder unfilled and no sentence unended', () => {
    for (const text of texts) {
      expect(text).not.toMatch(/[{}]|undefined|NaN|\.\./);
      expect(text).toMatch(/^\p{Lu}.*\.$/u);
    }
  });

  it('give no direction for an eclipse of the Sun, and one for an eclipse of the Moon', () => {
    for (const place of PLACES) {
      for (const eclipse of listEclipses(place, utc('2020-01-01T00:00'), utc('2040-01-01T00:00'))) {
        const text = sayEclipse(eclipse, tongue.labels, place.timeZone);
        if (eclipse.of === 'sun') {
          expect(text).not.toMatch(tongue.points);
          expect(text).not.toMatch(tongue.looking);
        } else expect(text).toMatch(tongue.points);
      }
    }
  });
});

describe('the search for invitations', () => {
  it('finds bad ones', () => {
    const bad: [string, Tongue][] = [
      ['Look at the Sun through a filter.', ENGLISH],
      ['The crescent is beside the Sun: look west at sunset.', ENGLISH],
      ['Watch the eclipse of the Sun at noon.', ENGLISH],
      ['Never look at the Sun or near it. You can see the Sun at four.', ENGLISH],
      ['Regardez le Soleil avec des lunettes.', FRENCH],
      ['Cherchez le croissant près du Soleil.', FRENCH],
    ];
    for (const [text, tongue] of bad) expect(findInvitations(text, tongue)).toHaveLength(1);
  });
});

describe('what is said of an evening', () => {
  const almanac = createAlmanac(sampleRules(), ESTUARY);
  const say = (date: string, bedtime = '20:30') => {
    const sky = computeEveningSky(almanac, date, { classBegins: '09:00', classEnds: '15:00', bedtime });
    return {
      evening: sayEvening(sky, ENGLISH.labels, ESTUARY.timeZone),
      school: saySchoolHours(sky, ENGLISH.labels, ESTUARY.timeZone),
      care: sayCare(listEveningCare(sky), ENGLISH.labels),
    };
  };

  it('tells where to look when the Moon is up', () => {
    expect(say('2026-07-26')).toEqual({
      evening:
        'Look east after 5:52 pm: the Moon is already up, half-way up in the sky. At bedtime, 8:30 pm, it is in the north-east, high in the sky.',
      school: 'In school hours the Moon is up: at 3:00 pm it is in the south-east, low in the sky.',
      care: 'Never look at the Sun or near it. Outside at night, and near water, only with an adult and by local rules.',
    });
  });

  it('tells to wait for a crescent, and when it goes down', () => {
    const { evening, care } = say('2026-07-16');
    expect(evening).toMatch(
      /^Wait until 5:4\d pm, when the Sun is fully down, then look (north-)?west: the Moon is low/,
    );
    expect(evening).toMatch(/ It goes down at 7:\d\d pm\.$/);
    expect(care).toContain('A crescent is only looked for with the Sun fully down.');
  });

  it('names the day of a time after midnight', () => {
    expect(say('2026-08-05').evening).toBe(
      'The Moon is not well up before bedtime, 8:30 pm: it comes up at 12:40 am on Thursday 6 August.',
    );
  });
});

describe('listWeekEclipses', () => {
  const kindsOf = (place: Place, date: string) => listWeekEclipses(place, date).map(({ of, kind }) => `${of} ${kind}`);
  const paris = samplePlace(48.2, 5.1, 'Europe/Paris');

  it('covers the week of a date, from Monday to the Monday noon after it', () => {
    expect(kindsOf(paris, '2026-08-12')).toEqual(['sun partial']);
    expect(kindsOf(paris, '2026-08-10')).toEqual(['sun partial']);
    expect(kindsOf(paris, '2026-08-16')).toEqual(['sun partial']);
    expect(kindsOf(paris, '2026-08-09')).toEqual([]);
    expect(kindsOf(paris, '2026-08-17')).toEqual([]);
    // 1 January 2029, a Monday, from 4:07 in the morning: the last night of the week before, too.
    expect(kindsOf(ESTUARY, '2028-12-29')).toEqual(['moon total']);
    expect(kindsOf(ESTUARY, '2029-01-01')).toEqual(['moon total']);
  });

  it('gives each eclipse to one date: of the Sun to its day, of the Moon to the day before its night', () => {
    const datesOf = (place: Place, monday: string) =>
      Array.from({ length: 8 }, (_, index) => renderCivilDate(parseCivilDate(monday) + index)).filter(
        (date) => listDateEclipses(place, date).length > 0,
      );
    expect(datesOf(paris, '2026-08-10')).toEqual(['2026-08-12']);
    expect(datesOf(ESTUARY, '2026-03-02')).toEqual(['2026-03-03']);
    // From 4:07 on Monday 1 January 2029.
    expect(datesOf(ESTUARY, '2028-12-25')).toEqual(['2028-12-31']);
    expect(datesOf(ESTUARY, '2029-01-01')).toEqual([]);
  });

  it.each([
    ['sunset', '2028-12-31'],
    ['sunrise', '2028-12-31'],
    ['midnight', '2029-01-01'],
  ] as const)('gives it to the night of the calendar that it is in: days that begin at %s', (dayBegins, expected) => {
    const almanac = createAlmanac(sampleRules({ dayBegins }), ESTUARY);
    const nights = [...almanac.nights('2028-12-29', '2029-01-03')];
    const holding = nights.filter((night) => listNightEclipses(ESTUARY, night).length > 0);
    expect(holding.map(({ date }) => date)).toEqual([expected]);
  });

  it('leaves out what hardly anyone sees', () => {
    expect(kindsOf(ESTUARY, '2027-08-17')).toEqual([]);
    expect(listEclipses(ESTUARY, utc('2027-08-16T00:00'), utc('2027-08-18T00:00'))).toHaveLength(1);
  });

  it('works in a week with a date that the place left out', () => {
    expect(kindsOf(samplePlace(-13.8, -171.8, 'Pacific/Apia'), '2011-12-29')).toEqual([]);
    // Kwajalein had no 21 August 1993.
    expect(kindsOf(samplePlace(9.1, 167.3, 'Pacific/Kwajalein'), '1993-08-20')).toEqual([]);
  });

  it('says what is seen here: a whole Moon covered, a part, a ring', () => {
    const say = (place: Place, date: string) =>
      listWeekEclipses(place, date).map((eclipse) => sayEclipse(eclipse, ENGLISH.labels, place.timeZone));
    expect(say(ESTUARY, '2026-03-03')).toEqual([
      'Eclipse of the Moon, in the night from Tuesday 3 March to Wednesday 4 March: the shadow of the Earth covers the whole Moon. Here it lasts from 10:49 pm to 2:17 am on Wednesday 4 March and is deepest at 12:33 am on Wednesday 4 March. The Moon is then in the north, half-way up in the sky.',
    ]);
    // First seen well after midnight: the evening before is named all the same.
    expect(say(ESTUARY, '2028-12-29')[0]).toMatch(
      /^Eclipse of the Moon, in the night from Sunday 31 December to Monday 1 January: /,
    );
    expect(say(paris, '2026-08-12')).toEqual([
      'Eclipse of the Sun, Wednesday 12 August: the Moon covers part of the Sun, 91 percent at most. Here it lasts from 7:23 pm to 8:58 pm and is deepest at 8:17 pm.',
    ]);
    expect(say(samplePlace(-48.2051, -70.6549, 'America/Punta_Arenas'), '2024-10-02')[0]).toContain(
      'covers all of the Sun but a ring.',
    );
    expect(say(samplePlace(41.0341, -83.6523, 'America/New_York'), '2024-04-08')[0]).toContain('covers the whole Sun');
  });
});
