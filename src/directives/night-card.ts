import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Almanac, MoonView, NightRecord, NightSky } from '../calendar/almanac-types.ts';
import { MS_PER_DAY } from '../calendar/day-number.ts';
import { isMoonTooNearSun } from '../calendar/evening-sky.ts';
import { requireLocalInstant } from '../calendar/local-instant.ts';
import type { CivilDate, InstantMs } from '../calendar/rules.ts';
import { findLastRiseSet, findRiseSet } from '../calendar/sky.ts';
import { readWallClock, type WallClock } from '../calendar/wall-clock.ts';
import { fillLabel } from '../content/fill-label.ts';
import type { Labels } from '../content/labels.ts';
import { renderName } from '../content/render-name.ts';
import { findStandInLabel, type StandInLabel } from '../content/stand-in-label.ts';
import { tagAuthors } from '../content/tag-authors.ts';
import type { Calendar } from '../content/types.ts';
import { renderMoon } from '../drawing/moon.ts';
import type { ViewContext } from './definition.ts';
import { fillSentence } from './fill-sentence.ts';
import { sayMoon } from './say-moon.ts';

/** All that is said of the night of one date. */
export interface NightCard {
  readonly record: NightRecord;
  readonly moon: MoonView;
  readonly sentence: string;
  /** When the Moon came up and goes down around the moment it is best seen; null where it does neither, or is not up. */
  readonly rises: WallClock | null;
  readonly sets: WallClock | null;
  /** True when the night begins at sunset and the Moon is up by then. */
  readonly upAtSunset: boolean;
  /** True when the Moon is up in the dark and neither rises nor sets. */
  readonly upAllNight: boolean;
  /** Words for a Moon that is not up in the dark, or on a night that is dark or light throughout; null when it is up. */
  readonly notUp: 'moon-not-in-the-dark' | 'moon-not-up' | null;
  /** True when the drawing shows a moment at which looking for the Moon would mean looking near the Sun. */
  readonly tooNearSun: boolean;
  /** Words for what midnight stands in for, and why; null where the night begins with what it should. */
  readonly standIn: StandInLabel | null;
  readonly begins: WallClock;
  /** The moment that the drawing shows. */
  readonly drawnFor: WallClock;
  /** The night that class time lies in, when it is another than the date's own. */
  readonly atClassTime?: ClassNight;
}

/** A class that lies in another night than its date's own. */
interface ClassNight {
  readonly record: NightRecord;
  readonly begins: WallClock;
  /** Local time `HH:MM` of the class. */
  readonly classBegins: string;
}

/** @param classBegins Local time `HH:MM` of the class on that date. */
export function computeNightCard(
  almanac: Almanac,
  calendar: Calendar,
  date: CivilDate,
  classBegins: string,
): NightCard {
  const record = almanac.nightOn(date);
  const { timeZone } = almanac.place;
  const toClock = (atMs: InstantMs | undefined): WallClock | null =>
    atMs === undefined ? null : readWallClock(atMs, timeZone);
  const moon = almanac.moonBestSeen(record);
  const { riseMs, setMs } = moon.up ? findStretch(almanac, record, moon.atMs) : {};
  const classNight = almanac.nightAt(requireLocalInstant(timeZone, date, classBegins));
  return {
    record,
    moon,
    sentence: fillSentence(calendar.sentence, record),
    rises: toClock(riseMs),
    sets: toClock(setMs),
    upAtSunset: record.beginsWith === 'sunset' && riseMs !== undefined && riseMs < record.beginsMs,
    upAllNight: moon.up && riseMs === undefined && setMs === undefined,
    notUp: moon.up ? null : findNotUpLabel(almanac.skyOf(record)),
    tooNearSun: isMoonTooNearSun(almanac.place, moon.atMs),
    standIn: findStandInLabel(almanac.rules.dayBegins, record),
    begins: readWallClock(record.beginsMs, timeZone),
    drawnFor: readWallClock(moon.atMs, timeZone),
    ...(classNight.date === record.date
      ? {}
      : { atClassTime: { record: classNight, begins: readWallClock(classNight.beginsMs, timeZone), classBegins } }),
  };
}

function findNotUpLabel({ sunsetMs, sunriseMs }: NightSky): NightCard['notUp'] {
  return sunsetMs === null && sunriseMs === null ? 'moon-not-up' : 'moon-not-in-the-dark';
}

/**
 * The rise before and the set after an instant at which the Moon is up; in polar regions either may be days away, and
 * is then not looked for further than a day beyond the night.
 */
function findStretch(
  { place }: Almanac,
  record: NightRecord,
  atMs: InstantMs,
): { riseMs?: InstantMs; setMs?: InstantMs } {
  const riseMs = findLastRiseSet('moon', 'rise', place, atMs, (atMs - record.beginsMs) / MS_PER_DAY + 1);
  const setMs = findRiseSet('moon', 'set', place, atMs, (record.endsMs - atMs) / MS_PER_DAY + 1);
  return { ...(riseMs === null ? {} : { riseMs }), ...(setMs === null ? {} : { setMs }) };
}

const MOON_RADIUS_PX = 90;

/** The card: date, name, place in the run and month, sentence, the Moon in this sky, its rise and set, class time. */
export function renderNightCard(card: NightCard, view: ViewContext): ElementContent[] {
  const { record } = card;
  return [
    h('section.tonight', [
      h('div.tonight-moon', [
        renderMoon(card.moon, { radius: MOON_RADIUS_PX, title: sayMoon(card.moon, view.labels) }),
      ]),
      h('div.tonight-words', [
        h('p.tonight-date', sayDate(card, view.labels)),
        h('p.tonight-name', [renderName(record.night.name, view.namesLanguage)]),
        h('p.tonight-place', renderNightPlace(record, view)),
        h('p.tonight-sentence', [h('q', [renderName(card.sentence, view.namesLanguage)])]),
        ...renderMeaning(record, view),
        ...(card.standIn === null ? [] : [h('p.tonight-begins', view.labels.text(card.standIn))]),
        ...renderLooking(card, view.labels),
        ...renderCare(card, view.labels),
        ...(card.atClassTime === undefined
          ? []
          : [h('p.tonight-class', renderClassTime(card, card.atClassTime, view))]),
      ]),
    ]),
  ];
}

/** "night 16 of 29 · High Water · Frost Month · say ROWND moon". */
export function renderNightPlace(record: NightRecord, { labels, namesLanguage }: ViewContext): ElementContent[] {
  const { night, month } = record;
  const parts: ElementContent[][] = [
    fillLabel(labels, 'night-of-month', { n: record.nightOfMonth, length: month.length }),
    [renderName(night.group, namesLanguage)],
    [renderName(month.name, namesLanguage)],
  ];
  if (night.say !== undefined)
    parts.push(fillLabel(labels, 'say-name', { say: [h('strong', { lang: namesLanguage }, night.say)] }));
  if (record.repeat) parts.push(fillLabel(labels, 'night-repeats', {}));
  return parts.flatMap((part, index) => (index === 0 ? part : [{ type: 'text', value: ' · ' }, ...part]));
}

/** A time, with its day when it is another than `date`. */
export function sayClock({ clock, date: day }: WallClock, date: CivilDate, labels: Labels): string {
  const time = labels.clock(clock);
  return day === date ? time : labels.text('clock-on-day', { time, day: labels.date(day, 'short') });
}

/** When to look for the Moon and which moment is drawn; no time at all when looking then would be looking near the Sun. */
function renderLooking(card: NightCard, labels: Labels): ElementContent[] {
  if (card.tooNearSun) return [h('p.tonight-sky', labels.text('moon-too-near-sun'))];
  const times = sayMoonTimes(card, labels);
  return [
    ...(times === '' ? [] : [h('p.tonight-sky', times)]),
    h('p.tonight-drawn', labels.text('moon-drawn-for', { time: sayClock(card.drawnFor, card.record.date, labels) })),
  ];
}

/** When the Moon rises and sets, in a line. */
function sayMoonTimes(card: NightCard, labels: Labels): string {
  const say = (time: WallClock) => sayClock(time, card.record.date, labels);
  const parts = [
    ...(card.rises === null ? [] : [labels.text('moon-rises', { time: say(card.rises) })]),
    ...(card.upAtSunset ? [labels.text('moon-up-at-sunset')] : []),
    ...(card.sets === null ? [] : [labels.text('moon-sets', { time: say(card.sets) })]),
    ...(card.upAllNight ? [labels.text('moon-up-all-night')] : []),
    ...(card.notUp === null ? [] : [labels.text(card.notUp)]),
  ];
  return parts.join(' · ');
}

/** Less lit than this, the Moon stands within 60 degrees of the Sun. */
const THIN_BELOW = 0.25;

/** Whether the Moon is thin, and so near the Sun: whoever reads when to look for it must read the caution too. */
export function isThinMoon({ moon }: NightCard): boolean {
  return moon.litFraction < THIN_BELOW;
}

function renderCare(card: NightCard, labels: Labels): ElementContent[] {
  return isThinMoon(card) ? [h('p.tonight-care', labels.text('care-crescent'))] : [];
}

function renderMeaning(
  { night }: NightRecord,
  { labels, explainedIn = labels.language }: ViewContext,
): ElementContent[] {
  return night.meaning === undefined
    ? []
    : [h('p.tonight-meaning', tagAuthors(labels.language, explainedIn), night.meaning)];
}

/** The date; when class lies in the night before, also the time from which the card's night is. */
function sayDate({ record, atClassTime, begins }: NightCard, labels: Labels): string {
  const date = labels.date(record.date, 'day');
  if (atClassTime === undefined) return date;
  return `${date} · ${labels.text('night-from', { time: sayClock(begins, record.date, labels) })}`;
}

/** Both nights, each with the day and time it begins, so that neither can be taken for the other. */
function renderClassTime(card: NightCard, classNight: ClassNight, view: ViewContext): ElementContent[] {
  const { labels, namesLanguage } = view;
  const sayWhen = ({ date, clock }: WallClock) =>
    labels.text('day-at-time', { day: labels.date(date, 'day'), time: labels.clock(clock) });
  return fillLabel(labels, 'class-time-night', {
    day: labels.date(card.record.date, 'day'),
    time: labels.clock(classNight.classBegins),
    class: [h('strong', [renderName(classNight.record.night.name, namesLanguage)])],
    before: sayWhen(classNight.begins),
    tonight: [h('strong', [renderName(card.record.night.name, namesLanguage)])],
    after: sayWhen(card.begins),
  });
}
