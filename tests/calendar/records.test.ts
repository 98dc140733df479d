import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import type { Almanac } from '../../src/calendar/almanac-types.ts';
import { checkRecords } from '../../src/calendar/check-records.ts';
import { parseCivilDate, renderCivilDate } from '../../src/calendar/day-number.ts';
import type { CalendarRules, Observation } from '../../src/calendar/rules.ts';
import { ESTUARY, samplePlace, sampleRules } from './sample-rules.ts';

/** 28 names with two anchors and three flexible nights, so that every kind of fitting happens. */
const ANCHORED: CalendarRules['groups'] = [
  {
    name: 'All',
    nights: Array.from({ length: 28 }, (_, index) => ({
      name: `N${index + 1}`,
      ...(index === 7 && { anchor: 'first-quarter' as const }),
      ...(index === 14 && { anchor: 'full-moon' as const }),
      ...([3, 15, 22].includes(index) && { flexible: true }),
    })),
  },
];

function almanacOf(changes: Partial<CalendarRules>, place = ESTUARY): Almanac {
  return createAlmanac(sampleRules(changes), place);
}

function seen(date: string, night: string): Observation {
  return { date, night };
}

function addDays(date: string, days: number): string {
  return renderCivilDate(parseCivilDate(date) + days);
}

/** The night, month and basis of a date in few words. */
function tell(almanac: Almanac, date: string): string {
  const { night, repeat, nightOfMonth, month, basis } = almanac.nightOn(date);
  return `${night.name}${repeat ? ' again' : ''}, ${nightOfMonth} of ${month.length} from ${month.firstDate}, ${basis}`;
}

describe('the end of a month', () => {
  const late = seen('2026-07-15', 'Night 1');
  it.each([
    ['a first night a night late', { observations: [late] }, { kind: 'observation', observation: late }, 31],
    ['an old night after the end', { observations: [seen('2026-07-14', 'Night 30')] }, { kind: 'observation' }, 31],
    ['a month announced early', { announcedMonths: ['2026-07-13'] }, { kind: 'announced', date: '2026-07-13' }, 29],
  ] as const)('tells of %s', (_, changes, basis, length) => {
    const { month } = almanacOf(changes).explain('2026-06-20');
    expect(month).toMatchObject({ length, basis: { kind: 'rule' }, ending: { basis, foreseenLength: 30 } });
    expect(almanacOf(changes).nightOn('2026-07-12').basis).toBe('computed');
  });

  it('is not spoken of where a record agrees with the rule', () => {
    const almanac = almanacOf({ observations: [seen('2026-07-14', 'Night 1')] });
    expect(almanac.explain('2026-06-20').month.ending).toBeNull();
    expect(almanacOf({}).explain('2026-06-20').month.ending).toBeNull();
  });
});

// Of the estuary: conjunction in the night of 2026-07-14, then of 2026-08-12; the month has 29 nights.
describe('a first night that was seen', () => {
  it('a night late moves the month and lengthens the one before', () => {
    const almanac = almanacOf({ observations: [seen('2026-07-15', 'Night 1')] });
    expect(
      ['2026-07-13', '2026-07-14', '2026-07-15', '2026-08-11', '2026-08-12'].map((date) => tell(almanac, date)),
    ).toEqual([
      'Night 30, 30 of 31 from 2026-06-14, computed',
      'Night 30 again, 31 of 31 from 2026-06-14, observed',
      'Night 1, 1 of 28 from 2026-07-15, observed',
      'Night 28, 28 of 28 from 2026-07-15, observed',
      'Night 1, 1 of 29 from 2026-08-12, computed',
    ]);
  });

  it('a night early shortens the month before and changes none of its names', () => {
    const almanac = almanacOf({ observations: [seen('2026-07-13', 'Night 1')] });
    expect(['2026-07-12', '2026-07-13', '2026-07-14', '2026-08-11'].map((date) => tell(almanac, date))).toEqual([
      'Night 29, 29 of 29 from 2026-06-14, computed',
      'Night 1, 1 of 30 from 2026-07-13, observed',
      'Night 2, 2 of 30 from 2026-07-13, observed',
      'Night 30, 30 of 30 from 2026-07-13, observed',
    ]);
  });

  it('on the computed date only changes the basis', () => {
    const almanac = almanacOf({ observations: [seen('2026-07-14', 'Night 1')] });
    expect(tell(almanac, '2026-07-14')).toBe('Night 1, 1 of 29 from 2026-07-14, observed');
    expect(tell(almanac, '2026-07-13')).toBe('Night 30, 30 of 30 from 2026-06-14, computed');
  });

  it('more than three nights away is passed over', () => {
    for (const date of ['2026-07-10', '2026-07-18', '2026-07-29']) {
      const rules = { observations: [seen(date, 'Night 1')] };
      expect(tell(almanacOf(rules), '2026-07-18')).toBe(tell(almanacOf({}), '2026-07-18'));
      expect(checkRecords(sampleRules(rules), ESTUARY)[0]).toMatchObject({ what: 'too-far', record: 0 });
    }
    expect(checkRecords(sampleRules({ observations: [seen('2026-07-18', 'Night 1')] }), ESTUARY)).toEqual([
      { what: 'too-far', record: 0, computedDate: '2026-07-14', nightsOff: 4 },
    ]);
  });
});

describe('any other night that was seen', () => {
  it('names the nights from there to the end of the month', () => {
    const almanac = almanacOf({ observations: [seen('2026-07-20', 'Night 9')] });
    expect(
      ['2026-07-19', '2026-07-20', '2026-07-21', '2026-08-11', '2026-08-12'].map((date) => tell(almanac, date)),
    ).toEqual([
      'Night 6, 6 of 29 from 2026-07-14, computed',
      'Night 9, 7 of 29 from 2026-07-14, observed',
      'Night 10, 8 of 29 from 2026-07-14, observed',
      'Night 30 again, 29 of 29 from 2026-07-14, observed',
      'Night 1, 1 of 29 from 2026-08-12, computed',
    ]);
  });

  it('may say a name again', () => {
    const almanac = almanacOf({ observations: [seen('2026-07-20', 'Night 5')] });
    expect(tell(almanac, '2026-07-20')).toBe('Night 5 again, 7 of 29 from 2026-07-14, observed');
    expect(tell(almanac, '2026-07-22')).toBe('Night 7, 9 of 29 from 2026-07-14, observed');
  });

  it('keeps the anchors that are still to come, and outranks those that are not', () => {
    const plain = almanacOf({ groups: ANCHORED });
    const full = plain.nightsOfMonth('2026-07-20').find(({ night }) => night.name === 'N15');
    expect(full?.date).toBe('2026-07-29');
    const early = almanacOf({ groups: ANCHORED, observations: [seen('2026-07-25', 'N13')] });
    expect(tell(early, '2026-07-29')).toMatch(/^N15,/);
    const onTheDay = almanacOf({ groups: ANCHORED, observations: [seen('2026-07-29', 'N14')] });
    expect(tell(onTheDay, '2026-07-29')).toMatch(/^N14.*observed$/);
    expect(tell(onTheDay, '2026-07-30')).toMatch(/^N15,.*observed$/);
  });

  it('opens the month when a young night is seen before its beginning', () => {
    const almanac = almanacOf({ observations: [seen('2026-07-13', 'Night 2')] });
    expect(tell(almanac, '2026-07-12')).toBe('Night 29, 29 of 29 from 2026-06-14, computed');
    expect(tell(almanac, '2026-07-13')).toBe('Night 2, 1 of 30 from 2026-07-13, observed');
    expect(tell(almanac, '2026-07-14')).toBe('Night 3, 2 of 30 from 2026-07-13, observed');
  });

  it('puts the next month off when an old night is seen after the end', () => {
    const almanac = almanacOf({ observations: [seen('2026-07-14', 'Night 30')] });
    expect(tell(almanac, '2026-07-14')).toBe('Night 30 again, 31 of 31 from 2026-06-14, observed');
    expect(tell(almanac, '2026-07-15')).toBe('Night 1, 1 of 28 from 2026-07-15, observed');
  });
});

describe('nights seen one after another', () => {
  it.each([
    ['a month two nights early', [seen('2026-07-12', 'Night 1'), seen('2026-07-13', 'Night 2')], '2026-07-12'],
    ['the same, the second told first', [seen('2026-07-13', 'Night 2'), seen('2026-07-12', 'Night 1')], '2026-07-12'],
    [
      'a month two nights late',
      [seen('2026-07-14', 'Night 29'), seen('2026-07-15', 'Night 30'), seen('2026-07-16', 'Night 1')],
      '2026-07-16',
    ],
    ['an old night that lasts longer', [seen('2026-07-14', 'Night 29'), seen('2026-07-15', 'Night 30')], '2026-07-16'],
  ])('are no contradiction: %s', (_, observations, firstDate) => {
    const almanac = almanacOf({ observations });
    for (const { date, night } of observations) expect(tell(almanac, date)).toMatch(new RegExp(`^${night}\\b`));
    expect(almanac.nightOn('2026-07-20').month.firstDate).toBe(firstDate);
    const faults = checkRecords(sampleRules({ observations }), ESTUARY);
    expect(faults.filter(({ what }) => what !== 'month-length')).toEqual([]);
  });

  it('are what they were seen to be, in any order, wherever the month begins', () => {
    const cases = fc.record({
      day: fc.integer({ min: parseCivilDate('1850-01-01'), max: parseCivilDate('2150-01-01') }),
      shift: fc.integer({ min: -3, max: 3 }),
      places: fc.uniqueArray(fc.integer({ min: 1, max: 27 }), { minLength: 1, maxLength: 6 }),
    });
    const plain = almanacOf({});
    fc.assert(
      fc.property(cases, ({ day, shift, places }) => {
        const first = addDays(plain.nightOn(renderCivilDate(day)).month.firstDate, shift);
        const observations = [...places, 0].map((place) => seen(addDays(first, place), plain.run[place]?.name ?? ''));
        const almanac = almanacOf({ observations });
        for (const { date, night } of observations) {
          expect(almanac.nightOn(date)).toMatchObject({ night: { name: night }, month: { firstDate: first } });
        }
        const faults = checkRecords(sampleRules({ observations }), ESTUARY);
        expect(faults.filter(({ what }) => what !== 'month-length')).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});

describe('announced months', () => {
  it('open on their dates, a whole year of them', () => {
    const plain = almanacOf({});
    const firsts: string[] = [];
    for (let date = '2026-06-14'; firsts.length < 12; ) {
      const { month } = plain.nightOn(date);
      firsts.push(addDays(month.firstDate, firsts.length % 3 === 0 ? 1 : 0));
      date = addDays(month.firstDate, month.length);
    }
    const almanac = almanacOf({ announcedMonths: [...firsts].reverse() });
    for (const first of firsts) expect(tell(almanac, first)).toMatch(/^Night 1, 1 of \d+ from .*, observed$/);
    expect(checkRecords(sampleRules({ announcedMonths: firsts }), ESTUARY)).toEqual([]);
  });

  it('give way to what was seen', () => {
    const rules = { announcedMonths: ['2026-07-14'], observations: [seen('2026-07-15', 'Night 1')] };
    expect(almanacOf(rules).nightOn('2026-07-20').month.firstDate).toBe('2026-07-15');
    expect(checkRecords(sampleRules(rules), ESTUARY)).toMatchObject([{ what: 'other-beginning', record: 0, other: 1 }]);
  });

  it('give way to a night that was seen on their date', () => {
    const old = { announcedMonths: ['2026-07-13'], observations: [seen('2026-07-13', 'Night 30')] };
    expect(tell(almanacOf(old), '2026-07-13')).toMatch(/^Night 30, 30 of 30 from 2026-06-14/);
    expect(tell(almanacOf(old), '2026-07-14')).toMatch(/^Night 1, 1 of 29/);
    expect(checkRecords(sampleRules(old), ESTUARY)).toEqual([
      { what: 'other-beginning', record: 0, other: 1, otherDate: '2026-07-14' },
    ]);
    const young = { announcedMonths: ['2026-07-14'], observations: [seen('2026-07-14', 'Night 2')] };
    expect(tell(almanacOf(young), '2026-07-14')).toMatch(/^Night 2, 1 of 29/);
    expect(checkRecords(sampleRules(young), ESTUARY)).toMatchObject([{ what: 'first-name-left-out', record: 1 }]);
  });

  it('open a month whose crescent cannot be told', () => {
    const place = samplePlace(69.65, 18.96, 'Europe/Oslo');
    const rules = { monthBegins: { at: 'first-crescent', offset: 0 } } as const;
    // Midnight Sun: conjunction of 2026-06-15 at 02:54 and of 2026-07-14 at 09:43 universal time.
    expect(() => almanacOf(rules, place).nightOn('2026-06-20')).toThrow(
      'The first crescent after the conjunction in the night of `2026-06-14` cannot be told at this place: the Sun does not set on the evening of `2026-06-15`; expected a crescent within five evenings, announce the first night of the month that follows it or record it as seen.',
    );
    const almanac = almanacOf({ ...rules, announcedMonths: ['2026-06-16', '2026-07-16'] }, place);
    expect(tell(almanac, '2026-06-20')).toBe('Night 5, 5 of 30 from 2026-06-16, observed');
    expect(almanac.explain('2026-06-20').month).toMatchObject({
      computedFirstDate: null,
      basis: { kind: 'announced' },
    });
    // In late winter, when the young Moon stands high in the evening, months need no help.
    expect(almanac.nightOn('2026-03-05').basis).toBe('computed');
  });
});

describe('checkRecords', () => {
  it.each([
    ['no records', [], []],
    ['a pace that holds', [seen('2026-07-14', 'Night 1'), seen('2026-07-20', 'Night 8')], []],
    [
      'two first nights of a month',
      [seen('2026-07-14', 'Night 1'), seen('2026-07-15', 'Night 1')],
      [{ what: 'other-beginning', record: 0, other: 1, otherDate: '2026-07-15' }],
    ],
    [
      'a young night before the first',
      [seen('2026-07-15', 'Night 2'), seen('2026-07-16', 'Night 1')],
      [
        { what: 'outside-month', record: 0, other: 1, side: 'before', firstDate: '2026-07-16' },
        { what: 'month-length', record: 1, firstDate: '2026-06-14', length: 32 },
        { what: 'month-length', record: 1, firstDate: '2026-07-16', length: 27 },
      ],
    ],
    [
      'an old night after the first of the next month',
      [seen('2026-07-15', 'Night 30'), seen('2026-07-14', 'Night 1')],
      [{ what: 'outside-month', record: 0, other: 1, side: 'after', firstDate: '2026-07-14' }],
    ],
    [
      'a first night, and later word of an older one',
      [seen('2026-07-14', 'Night 1'), seen('2026-07-15', 'Night 30')],
      [
        { what: 'other-beginning', record: 0, other: 1, otherDate: '2026-07-16' },
        { what: 'month-length', record: 1, firstDate: '2026-06-14', length: 32 },
        { what: 'month-length', record: 1, firstDate: '2026-07-16', length: 27 },
      ],
    ],
    [
      'a second name on the first night',
      [seen('2026-07-14', 'Night 2')],
      [{ what: 'first-name-left-out', record: 0, leftOut: ['Night 1'], firstDate: '2026-07-13' }],
    ],
    [
      'a third name before the first night',
      [seen('2026-07-13', 'Night 3')],
      [{ what: 'first-name-left-out', record: 0, leftOut: ['Night 1', 'Night 2'], firstDate: '2026-07-11' }],
    ],
    ['a third name with its first night', [seen('2026-07-14', 'Night 3'), seen('2026-07-12', 'Night 1')], []],
    [
      'names that run backwards',
      [seen('2026-07-20', 'Night 8'), seen('2026-07-21', 'Night 7')],
      [{ what: 'out-of-step', record: 1, other: 0 }],
    ],
    [
      'names and nights that drift apart',
      [seen('2026-07-20', 'Night 5'), seen('2026-07-24', 'Night 13')],
      [{ what: 'out-of-step', record: 1, other: 0 }],
    ],
    [
      'a far night',
      [seen('2026-07-20', 'Night 20')],
      [{ what: 'too-far', record: 0, computedDate: '2026-08-02', nightsOff: -13 }],
    ],
    [
      'a month too short and one too long',
      [seen('2026-07-17', 'Night 1')],
      [
        { what: 'month-length', record: 0, firstDate: '2026-06-14', length: 33 },
        { what: 'month-length', record: 0, firstDate: '2026-07-17', length: 26 },
      ],
    ],
  ] as [string, Observation[], object[]][])('finds in %s what there is', (_, observations, expected) => {
    expect(checkRecords(sampleRules({ observations }), ESTUARY)).toEqual(expected);
  });

  it('takes what is seen just as computed, where the calendar leaves out many names', () => {
    const nights = Array.from({ length: 30 }, (_, index) => ({ name: `N${index + 1}` }));
    const groups = [
      {
        name: 'All',
        nights: nights.map((night, index) => ({
          ...night,
          ...(index === 15 && { anchor: 'full-moon' as const }),
          ...(index === 25 && { flexible: true }),
        })),
      },
    ];
    const monthBegins = { at: 'first-crescent', offset: 0 } as const;
    const place = samplePlace(-36.85, 174.76, 'Pacific/Auckland');
    const plain = almanacOf({ groups, monthBegins }, place);
    const both = ['2026-03-31', '2026-04-01'].map((date) => plain.nightOn(date));
    expect(both.map(({ date, night }) => [date, night.number])).toEqual([
      ['2026-03-31', 11],
      ['2026-04-01', 16],
    ]);
    const observations = both.map(({ date, night }) => seen(date, night.name));
    expect(checkRecords(sampleRules({ groups, monthBegins, observations }), place)).toEqual([]);
  });

  it('finds only the far night where another one keeps to the calendar', () => {
    const observations = [seen('2026-07-18', 'Night 20'), seen('2026-07-21', 'Night 8')];
    expect(checkRecords(sampleRules({ observations }), ESTUARY)).toMatchObject([{ what: 'too-far', record: 0 }]);
  });

  it('finds a date that the place left out', () => {
    const rules = sampleRules({ observations: [seen('2011-12-30', 'Night 7')] });
    const apia = samplePlace(-13.8, -171.8, 'Pacific/Apia');
    expect(checkRecords(rules, apia)).toEqual([{ what: 'no-such-date', record: 0 }]);
    expect(createAlmanac(rules, apia).nightOn('2011-12-31').basis).toBe('computed');
  });

  it('refuses a night that the calendar does not have, and a date that is none', () => {
    expect(() => almanacOf({ observations: [seen('2026-07-15', 'Nought')] })).toThrow('Unexpected night `Nought`');
    expect(() => almanacOf({ announcedMonths: ['2026-02-30'] })).toThrow('Unexpected date `2026-02-30`');
  });
});

describe('adding an observation', () => {
  const places = [ESTUARY, samplePlace(48, 2, 'Europe/Paris')];
  const openings: CalendarRules['monthBegins'][] = [
    { at: 'conjunction', offset: 0 },
    { at: 'full-moon', offset: 1 },
    { at: 'first-crescent', offset: 0 },
  ];

  it('changes no date before its month, gives its date the night, and keeps the count of nights', () => {
    const cases = fc.record({
      place: fc.constantFrom(...places),
      monthBegins: fc.constantFrom(...openings),
      day: fc.integer({ min: parseCivilDate('1850-01-01'), max: parseCivilDate('2150-01-01') }),
      shift: fc.integer({ min: -3, max: 3 }),
    });
    fc.assert(
      fc.property(cases, ({ place, monthBegins, day, shift }) => {
        const rules = { groups: ANCHORED, monthBegins };
        const plain = almanacOf(rules, place);
        const date = renderCivilDate(day);
        const { night } = plain.nightOn(renderCivilDate(day + shift));
        const almanac = almanacOf({ ...rules, observations: [seen(date, night.name)] }, place);
        const observed = almanac.nightOn(date);
        expect(observed).toMatchObject({ night: { name: night.name }, basis: 'observed' });
        const first = [observed.month.firstDate, plain.nightOn(date).month.firstDate].sort()[0] ?? date;
        let nights = 0;
        for (const record of almanac.nights(addDays(first, -40), addDays(date, 70))) {
          nights += 1;
          const before = plain.nightOn(record.date);
          if (record.date < first) {
            expect([record.night.name, record.repeat, record.nightOfMonth]).toEqual([
              before.night.name,
              before.repeat,
              before.nightOfMonth,
            ]);
          }
          if (nights > 1 && record.nightOfMonth > 1) {
            expect(record.nightOfMonth).toBe(almanac.nightOn(addDays(record.date, -1)).nightOfMonth + 1);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
