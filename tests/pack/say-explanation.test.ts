import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { CloseCall, CrescentReport } from '../../src/calendar/explanation.ts';
import { createLabels } from '../../src/content/labels.ts';
import { parseLabelFile } from '../../src/content/parse-label-file.ts';
import { sayExplanation } from '../../src/pack/say-explanation.ts';
import { renderPlain, type Sentence } from '../../src/pack/voice.ts';
import { buildFakeWeek } from './fake-week.ts';
import { type ExplanationChanges, explainRecord } from './sample-explanation.ts';

const { almanac } = buildFakeWeek();
const plain = (sentences: readonly Sentence[]) => sentences.map(renderPlain);

function say(changes: ExplanationChanges = {}, date = '2026-07-29', labels = createLabels('en')) {
  const explanation = explainRecord(almanac, almanac.nightOn(date), changes);
  const said = sayExplanation(explanation, labels, 'Pacific/Auckland');
  return { night: plain(said.night), steps: plain(said.steps), closeness: plain(said.closeness), said };
}

type Tested = Extract<CrescentReport, { untested: null }>;

/** An evening's crescent; the numbers are made up. */
function crescent(changes: Partial<Tested>): CrescentReport {
  return {
    date: '2026-07-15',
    untested: null,
    sunsetMs: Date.UTC(2026, 6, 15, 5, 13),
    moonsetMs: Date.UTC(2026, 6, 15, 6, 0),
    bestMs: Date.UTC(2026, 6, 15, 5, 34),
    arcvDegrees: 8,
    arclDegrees: 9,
    widthArcminutes: 0.2,
    q: 0.0199,
    class: 'B',
    seen: true,
    ...changes,
  };
}

/** An evening without a crescent to test. */
function noCrescent(date: string, untested: NonNullable<CrescentReport['untested']>): CrescentReport {
  const unknown = {
    moonsetMs: null,
    bestMs: null,
    arcvDegrees: null,
    arclDegrees: null,
    widthArcminutes: null,
    q: null,
  };
  return { date, untested, sunsetMs: null, ...unknown, class: 'none', seen: false };
}

describe('sayExplanation', () => {
  it('tells the chain from the sky to the name, in local and in universal time', () => {
    const { night, steps, closeness } = say();
    expect(night).toEqual([
      'The night of Wednesday 29 July 2026 is Eau claire 6: night 16 of 29 in Mois du gel.',
      'It begins at sunset, 5:25 pm, and ends at 5:25 pm on Thursday 30 July.',
    ]);
    expect(steps).toEqual([
      'A month begins with the night in which the Moon passes the Sun, the new Moon.',
      'The phase it is counted from, new Moon: Tuesday 14 July, 9:25 pm (9:25 am UTC). That is in the night of Tuesday 14 July, 4 hours after it began (5:25 pm).',
      'So the first night of Mois du gel is that of Tuesday 14 July.',
      'The year is measured from the June solstice: Sunday 21 June, 8:24 pm (8:24 am UTC).',
      'Its first month is the first in which this phase falls in the night of Sunday 21 June or later: new Moon, Tuesday 14 July, 9:25 pm (9:25 am UTC).',
      'Mois du gel is month 1 of the year 2026.',
      'Names run in order from the first night on, so night 16 is Eau claire 6.',
      'Within the night of Wednesday 29 July: full Moon, Wednesday 29 July, 9:25 pm (9:25 am UTC).',
    ]);
    expect(closeness).toEqual(['This is not a close call: a small difference in the sky would change nothing.']);
  });

  it('keeps names apart from the words around them', () => {
    const { said } = say();
    expect(said.night[0]?.filter((part) => typeof part !== 'string')).toEqual([
      { name: 'Eau claire 6' },
      { name: 'Mois du gel' },
    ]);
  });

  it('gives universal time its date where that is another one, and a date its year likewise', () => {
    const { steps } = say({
      month: { openingPhase: { name: 'new-moon', atMs: Date.UTC(2025, 11, 31, 22, 5) }, openingMarginMinutes: 65.9 },
    });
    expect(steps[1]).toContain('new Moon: Thursday 1 January, 11:05 am (10:05 pm on Wednesday 31 December UTC)');
    expect(steps[1]).toContain('1 hour 5 minutes');
    expect(say({ year: { markerAtMs: Date.UTC(2025, 11, 20) } }).steps[3]).toContain(
      'Saturday 20 December 2025, 1:00 pm',
    );
  });

  it('says on which side of its night the opening phase lies, and how far', () => {
    const openingBoundaryMs = Date.UTC(2026, 6, 15, 5, 25);
    const month = { openingPhase: { name: 'new-moon', atMs: openingBoundaryMs - 40_000 } as const, openingBoundaryMs };
    const { steps } = say({ month: { ...month, openingMarginMinutes: 40 / 60 } });
    expect(steps[1]).toContain('less than a minute before it ended (5:25 pm on Wednesday 15 July).');
  });

  it('tells every evening on which a crescent was looked for', () => {
    const opening = { at: 'first-crescent', offset: 1, visibility: 'B' } as const;
    const crescents = [
      noCrescent('2026-07-14', 'moon-down'),
      crescent({ date: '2026-07-15', q: -0.2, class: 'D', seen: false }),
      crescent({ date: '2026-07-16', bestMs: Date.UTC(2026, 6, 16, 5, 40) }),
    ];
    const { steps } = say({ month: { opening, crescents, visibility: 'B' } });
    expect(steps[0]).toMatch(/young crescent can be seen here\. Its first night is 1 night later\.$/);
    expect(steps.slice(2, 5)).toEqual([
      'Evening of Tuesday 14 July: the Moon is not above the horizon at sunset, so no crescent can be seen.',
      'Evening of Wednesday 15 July: by the geometry of Sun and Moon the young crescent is of class D at 5:34 pm (q = -0.200). Class B is needed here, so it does not count as seen.',
      'Evening of Thursday 16 July: by the geometry of Sun and Moon the young crescent is of class B at 5:40 pm (q = 0.020). Class B is enough here, so it counts as seen.',
    ]);
  });

  it.each([
    ['no-sunset', 'the Sun does not set here that day, so there is no sunset from which to judge a crescent'],
    ['no-sunrise', 'the Sun does not rise here that day, so there is no sunset from which to judge a crescent'],
    ['no-moonset', 'the Moon is up at sunset and does not set within a day, so there is no moonset'],
  ] as const)('says why a crescent could not be judged: %s', (untested, words) => {
    const { steps } = say({ month: { crescents: [noCrescent('2026-07-14', untested)], visibility: 'B' } });
    expect(steps[2]).toContain(`Evening of Tuesday 14 July: ${words}`);
  });

  it('says what was seen, by whom, and what the rule alone would give', () => {
    const observation = { date: '2026-07-15', night: 'Eau noire 1', by: 'seen from the jetty', place: 'the bay' };
    const basis = { kind: 'observation', observation } as const;
    const moved = say({ month: { basis, computedFirstDate: '2026-07-14', firstDate: '2026-07-15' } });
    expect(moved.steps.slice(2, 5)).toEqual([
      'Seen: Eau noire 1, in the night of Wednesday 15 July (seen from the jetty; the bay).',
      'By the rule alone the first night would be that of Tuesday 14 July; what people see or announce comes first.',
      'So the first night of Mois du gel is that of Wednesday 15 July.',
    ]);
    expect(say({ month: { basis, computedFirstDate: null } }).steps[3]).toBe(
      'The rule alone gives no first night: no young crescent can be computed here.',
    );
    const nobody = { kind: 'observation', observation: { date: '2026-07-14', night: 'Eau noire 1' } } as const;
    expect(say({ month: { basis: nobody } }).steps.slice(2, 4)).toEqual([
      'Seen: Eau noire 1, in the night of Tuesday 14 July.',
      'The rule alone gives the same first night.',
    ]);
  });

  it('says that a month was announced', () => {
    const basis = { kind: 'announced', date: '2026-07-13' } as const;
    expect(say({ month: { basis } }).steps[2]).toBe(
      'It was announced that a month begins with the night of Monday 13 July.',
    );
  });

  it('says what moved the end of the month, once', () => {
    const observation = { date: '2026-08-13', night: 'Eau noire 1', by: 'Aunt' };
    const ending = { basis: { kind: 'observation', observation } as const, foreseenLength: 29 };
    const month = { ending, length: 30 };
    expect(say({ month }).steps.slice(3, 5)).toEqual([
      'Seen: Eau noire 1, in the night of Thursday 13 August (Aunt).',
      'So this month has 30 nights; if the next one began by the rule, it would have 29.',
    ]);
    const { steps } = say({ month, name: { by: 'observation', observation } });
    expect(steps.filter((step) => step.startsWith('Seen:'))).toHaveLength(1);
    const announced = { basis: { kind: 'announced', date: '2026-08-11' } as const, foreseenLength: 29 };
    expect(say({ month: { ending: announced, length: 28 } }).steps.slice(3, 5)).toEqual([
      'It was announced that a month begins with the night of Tuesday 11 August.',
      'So this month has 28 nights; if the next one began by the rule, it would have 29.',
    ]);
  });

  it('tells an observation once, be it of the month or of the night', () => {
    const observation = { date: '2026-07-14', night: 'Eau noire 1', by: 'Aunt' };
    const name = { by: 'observation', observation } as const;
    const seen = (changes: ExplanationChanges) => say(changes).steps.filter((step) => step.startsWith('Seen:'));
    expect(seen({ name })).toHaveLength(1);
    expect(seen({ name, month: { basis: { kind: 'observation', observation } } })).toHaveLength(1);
    expect(say({ name }).steps).toContain(
      'Names run in order from what was seen to the end of the month, so night 16 is Eau claire 6.',
    );
  });

  it('names the anchors that decided', () => {
    const anchor = {
      ...{ night: 'Eau claire 6', phase: 'full-moon' as const, date: '2026-07-29' },
      ...{ atMs: almanac.skyOf(almanac.nightOn('2026-07-29')).phase?.atMs ?? 0, marginMinutes: 240 },
    } as const;
    const { steps } = say({ repeat: true, name: { by: 'anchor', anchors: [anchor] } });
    // Nor is its phase told again as one that falls within the night.
    expect(steps.slice(6)).toEqual([
      'Eau claire 6 belongs to this phase: full Moon, Wednesday 29 July, 9:25 pm (9:25 am UTC), in the night of Wednesday 29 July.',
      'Names run in order between the nights that belong to a phase, so night 16 is Eau claire 6.',
      'The name comes again: here there are more nights than names.',
    ]);
  });

  it('does not put a name that comes again down to many nights where it was seen', () => {
    const observation = { date: '2026-07-28', night: 'Eau claire 5', by: 'Aunt' };
    const { steps } = say({ repeat: true, name: { by: 'observation', observation } });
    expect(steps.filter((step) => step.startsWith('The name comes again'))).toEqual([
      'The name comes again: an earlier night of this month has it too.',
    ]);
  });

  it('does not tell the phase that opened the month twice', () => {
    expect(say({}, '2026-07-14').steps.filter((step) => step.startsWith('Within'))).toEqual([]);
  });

  it.each([
    ['sunset', 'up', 'The Sun does not set here that day, so midnight stands in for sunset.'],
    ['sunset', 'down', 'The Sun does not rise here that day, so midnight stands in for sunset.'],
    ['sunrise', 'up', 'The Sun does not set here that day, so midnight stands in for sunrise.'],
    ['sunrise', 'down', 'The Sun does not rise here that day, so midnight stands in for sunrise.'],
  ] as const)('says what stands in for %s where the Sun stays %s', (dayBegins, sunStays, words) => {
    expect(say({ beginsWith: 'midnight', dayBegins, sunStays }).night.slice(1)).toEqual([
      'It begins at midnight, 5:25 pm, and ends at 5:25 pm on Thursday 30 July.',
      words,
    ]);
  });

  it('does not say so of a night that begins at midnight by the rule', () => {
    expect(say({ beginsWith: 'midnight', dayBegins: 'midnight' }).night).toHaveLength(2);
  });

  it.each([
    [{ kind: 'date', monthDay: '06-18' }, 'The year is measured from a fixed date, Sunday 21 June.'],
    [{ kind: 'equinox', month: 'march' }, 'The year is measured from the March equinox: Sunday 21 June'],
    [
      {
        kind: 'rising',
        star: { name: 'Vega', rightAscensionHours: 18.6, declinationDegrees: 38.8 },
        starAltitudeDegrees: 5,
        sunAltitudeDegrees: -14,
      },
      'The year is measured from the first morning on which Vega stands clear of the horizon before dawn: Sunday 21 June',
    ],
  ] as const)('says what the year is measured from: %j', (marker, words) => {
    const year = marker.kind === 'date' ? { marker, markerAtMs: null } : { marker };
    expect(say({ year }).steps[3]).toContain(words);
  });

  it('says that a month is the extra one', () => {
    expect(say({ month: { intercalary: true, number: 13 } }).steps[5]).toBe(
      'Mois du gel is month 13 of the year 2026, the extra month of a long year.',
    );
  });

  /** The numbers are made up. */
  const year = {
    year: 2026,
    markerDate: '2026-07-07',
    phase: 'last-quarter',
    atMs: Date.UTC(2026, 6, 7, 19, 29),
  } as const;
  const sure = { isUnsure: false, otherwise: null } as const;
  const opening = {
    what: 'opening-phase',
    opens: 'this-month',
    firstDate: '2026-07-14',
    phase: 'new-moon',
    atMs: Date.UTC(2026, 6, 14, 9, 43),
    marginMinutes: 40.7,
    ...sure,
  } as const;
  const close = {
    what: 'crescent',
    opens: 'this-month',
    firstDate: '2026-07-16',
    date: '2026-07-15',
    atMs: Date.UTC(2026, 6, 15, 5, 34),
    q: 0.0199,
    marginQ: -0.0339,
    otherwise: null,
  } as const;
  const anchor = {
    what: 'anchor',
    night: 'Eau claire 6',
    phase: 'full-moon',
    atMs: Date.UTC(2026, 6, 29, 14, 36),
    marginMinutes: 1.2,
    ...sure,
  } as const;
  const rising = { what: 'rising', star: 'Alcyone', marginDegrees: 0.34, ...year, otherwise: null } as const;
  const yearPhase = { what: 'year-phase', marginMinutes: 12, ...year, ...sure } as const;
  const yearMarker = { ...yearPhase, what: 'year-marker' } as const;
  const closenessOf = (closeCalls: readonly CloseCall[], date = '2026-07-29', labels = createLabels('en')) =>
    say({ closeCall: true, closeCalls }, date, labels).closeness.map((sentence) => sentence.replaceAll('\u00A0', ' '));

  it('flags close calls, says why, and sends nobody out before the Sun is down', () => {
    expect(say({ closeCall: true, closeCalls: [opening] }).said.closeCall).toBe(true);
    expect(closenessOf([opening, close, anchor, rising])).toEqual([
      'Close call: the phase that this month is counted from is 40 minutes from the boundary of its night.',
      'Close call: the beginning of this month hangs on the crescent of the evening of Wednesday 15 July (q = 0.020), which is only 0.034 from the limit.',
      'Close call: Eau claire 6 belongs to a phase that is 1 minute from the boundary of its night: full Moon, Thursday 30 July, 2:36 am (2:36 pm on Wednesday 29 July UTC).',
      'Close call: the year 2026 is measured from the night of Tuesday 7 July, and this phase falls within a night of it: last quarter, Wednesday 8 July, 7:29 am (7:29 pm on Tuesday 7 July UTC). The star that decides, Alcyone, stands only 0.3° from the height that counts.',
      'Check it by eye in the nights that follow and ask the keeper: what is seen comes before what is computed.',
      'Look for a young crescent only when the Sun is fully down.',
      'Look for the star before dawn only, and stop before the Sun is due.',
    ]);
  });

  it('says when it is the next month that might begin on another night', () => {
    const next = { opens: 'next-month', firstDate: '2026-08-13' } as const;
    expect(closenessOf([{ ...opening, ...next, atMs: Date.UTC(2026, 7, 12, 17, 37) }])[0]).toBe(
      'Close call: by the rule the next month begins with the night of Thursday 13 August, but the phase it is counted from is 40 minutes from the boundary of its night: new Moon, Thursday 13 August, 5:37 am (5:37 pm on Wednesday 12 August UTC).',
    );
    expect(closenessOf([{ ...close, ...next, date: '2026-08-12' }])[0]).toBe(
      'Close call: by the rule the next month begins with the night of Thursday 13 August, but the crescent of the evening of Wednesday 12 August (q = 0.020) is only 0.034 from the limit.',
    );
  });

  it('says what the night would be otherwise, or the month where a year is in doubt', () => {
    const month = { name: 'Mois du gel', number: 12, year: 2025, length: 30 };
    const otherwise = { night: 'Eau claire 5', nightOfMonth: 15, month };
    for (const call of [opening, close, anchor]) {
      expect(closenessOf([{ ...call, otherwise }])[1]).toBe(
        'Otherwise this night would be Eau claire 5: night 15 of 30 in Mois du gel.',
      );
    }
    for (const call of [rising, yearPhase, yearMarker]) {
      expect(closenessOf([{ ...call, otherwise }])[1]).toBe(
        'Otherwise this month would be Mois du gel, month 12 of the year 2025.',
      );
    }
  });

  it('says what about a year was close', () => {
    expect(closenessOf([yearPhase, yearMarker]).slice(0, 2)).toEqual([
      'Close call: the year 2026 is measured from the night of Tuesday 7 July, whose beginning is 12 minutes from this phase: last quarter, Wednesday 8 July, 7:29 am (7:29 pm on Tuesday 7 July UTC).',
      'Close call: what the year 2026 is measured from is 12 minutes from the boundary of its night, Tuesday 7 July, and this phase falls within a night of it: last quarter, Wednesday 8 July, 7:29 am (7:29 pm on Tuesday 7 July UTC).',
    ]);
  });

  it('sends nobody out for a year that began months ago, but to the keeper', () => {
    const ask =
      'The beginning of that year cannot be checked by eye in these nights: ask the keeper, whose word comes before what is computed.';
    expect(closenessOf([rising], '2026-11-20').slice(1)).toEqual([ask]);
    const [, check, ...others] = closenessOf([rising], '2026-07-29');
    expect(check).toMatch(/^Check it by eye/);
    expect(others).toEqual(['Look for the star before dawn only, and stop before the Sun is due.']);
    const both = closenessOf([{ ...anchor, phase: 'new-moon' }, rising], '2026-11-20').slice(2);
    expect(both).toEqual([check, ask, 'Look for a young crescent only when the Sun is fully down.']);
  });

  it('says where the boundary itself is in doubt', () => {
    expect(closenessOf([{ ...opening, isUnsure: true }])[1]).toBe(
      'On that day the Sun only just rises or sets here, or only just does not, so the boundary itself is in doubt.',
    );
  });

  it('adds the caution to every call that sends somebody to look near the Sun', () => {
    const caution = 'Look for a young crescent only when the Sun is fully down.';
    const last = (call: CloseCall) => closenessOf([call]).at(-1);
    for (const call of [anchor, yearPhase, yearMarker, opening]) {
      expect(last({ ...call, phase: 'new-moon' })).toBe(caution);
      expect(last({ ...call, phase: 'full-moon' })).not.toBe(caution);
    }
    expect(last(close)).toBe(caution);
  });

  it('says a margin under a minute without a second limit before it', () => {
    expect(closenessOf([{ ...opening, marginMinutes: 0.4 }])[0]).toContain('is less than a minute from the boundary');
  });

  it('speaks French', () => {
    const file = parseLabelFile({ path: 'fr.yaml', text: readFileSync('content/labels/fr.yaml', 'utf8') }).value;
    if (file === undefined) throw new Error('No French labels.');
    const french = createLabels('fr', file);
    const { night, steps } = say({}, '2026-07-29', french);
    const spaced = [...night, ...steps].map((sentence) => sentence.replaceAll('\u00A0', ' '));
    expect(spaced[0]).toBe('La nuit du mercredi 29 juillet 2026 est Eau claire 6 : nuit 16 sur 29, Mois du gel.');
    expect(spaced[3]).toBe(
      'La phase d’où l’on compte, nouvelle Lune : mardi 14 juillet, 21 h 25 (9 h 25 UTC). Elle tombe dans la nuit du mardi 14 juillet, 4 heures après son début (17 h 25).',
    );
    const next = { ...opening, opens: 'next-month', firstDate: '2026-08-13' } as const;
    const month = { name: 'Mois du gel', number: 1, year: 2026, length: 30 };
    const otherwise = { night: 'Eau claire 6', nightOfMonth: 16, month };
    expect(closenessOf([{ ...next, otherwise }], '2026-07-29', french).slice(0, 2)).toEqual([
      'De justesse : selon la règle, le mois suivant commence par la nuit du jeudi 13 août, mais la phase d’où on le compte est à 40 minutes du bord de sa nuit : nouvelle Lune, mardi 14 juillet, 21 h 43 (9 h 43 UTC).',
      'Sinon, cette nuit serait Eau claire 6 : nuit 16 sur 30, Mois du gel.',
    ]);
  });
});
