import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Almanac, MoonView, NightRecord } from '../calendar/almanac-types.ts';
import { requireCivilZone } from '../calendar/civil.ts';
import { requireLocalInstant } from '../calendar/local-instant.ts';
import type { CivilDate, InstantMs } from '../calendar/rules.ts';
import { fillLabel } from '../content/fill-label.ts';
import type { Labels } from '../content/labels.ts';
import type { Calendar } from '../content/types.ts';
import { describeMoon } from '../drawing/moon-words.ts';
import { renderMoon } from '../drawing/moon.ts';
import { renderName } from '../content/render-name.ts';
import { fillSentence } from './fill-sentence.ts';
import type { ViewContext } from './definition.ts';

/** All that is said of the night of one date. */
export interface NightCard {
  readonly record: NightRecord;
  readonly moon: MoonView;
  readonly sentence: string;
  /** Clock times, or null where there is none within the night. */
  readonly rises: NightClock | null;
  readonly sets: NightClock | null;
  /** True when the Moon is above the horizon as the night begins. */
  readonly upAtBeginning: boolean;
  readonly begins: NightClock;
  /** The night that class time lies in, when it is another than the date's own. */
  readonly atClassTime?: NightRecord;
}

/** A time on the wall clock, and the date it belongs to. */
export interface NightClock {
  readonly clock: string;
  readonly date: CivilDate;
}

/** @param classBegins Local time `HH:MM` of the class on that date. */
export function computeNightCard(
  almanac: Almanac,
  calendar: Calendar,
  date: CivilDate,
  classBegins: string,
): NightCard {
  const record = almanac.nightOn(date);
  const sky = almanac.skyOf(record);
  const { timeZone } = almanac.place;
  const toClock = (atMs: InstantMs): NightClock => {
    const local = requireCivilZone(timeZone).renderLocal(atMs);
    return { clock: local.slice(11, 16), date: local.slice(0, 10) };
  };
  const { moonriseMs, moonsetMs } = sky;
  const classNight = almanac.nightAt(requireLocalInstant(timeZone, date, classBegins));
  return {
    record,
    moon: almanac.moonBestSeen(record),
    sentence: fillSentence(calendar.sentence, record),
    rises: moonriseMs === null ? null : toClock(moonriseMs),
    sets: moonsetMs === null ? null : toClock(moonsetMs),
    upAtBeginning: moonsetMs !== null && (moonriseMs === null || moonsetMs < moonriseMs),
    begins: toClock(record.beginsMs),
    ...(classNight.date === record.date ? {} : { atClassTime: classNight }),
  };
}

const MOON_RADIUS_PX = 90;

/** The card: date, name, place in the run and month, sentence, the Moon in this sky, its rise and set, class time. */
export function renderNightCard(card: NightCard, view: ViewContext): ElementContent[] {
  const { record } = card;
  return [
    h('section.tonight', [
      h('div.tonight-moon', [
        renderMoon(card.moon, { radius: MOON_RADIUS_PX, title: describeMoon(card.moon, view.labels) }),
      ]),
      h('div.tonight-words', [
        h('p.tonight-date', view.labels.date(record.date, 'day')),
        h('p.tonight-name', [renderName(record.night.name, view.namesLanguage)]),
        h('p.tonight-place', renderNightPlace(record, view)),
        h('p.tonight-sentence', [h('q', [renderName(card.sentence, view.namesLanguage)])]),
        h('p.tonight-sky', renderMoonTimes(card, view.labels)),
        ...(card.atClassTime === undefined ? [] : [h('p.tonight-class', renderClassTime(card, card.atClassTime, view))]),
      ]),
    ]),
  ];
}

/** "night 16 of 29 · High Water · Frost Month · say ROWND moon". */
export function renderNightPlace(record: NightRecord, { labels, namesLanguage }: ViewContext): ElementContent[] {
  const { night, month } = record;
  const parts: ElementContent[][] = [
    fillLabel(labels, 'night-of-month', { n: String(record.nightOfMonth), length: String(month.length) }),
    [renderName(night.group, namesLanguage)],
    [renderName(month.name, namesLanguage)],
  ];
  if (night.say !== undefined) parts.push(fillLabel(labels, 'say', { say: h('strong', { lang: namesLanguage }, night.say) }));
  if (record.repeat) parts.push(fillLabel(labels, 'night-repeats', {}));
  return parts.flatMap((part, index) => (index === 0 ? part : [{ type: 'text', value: ' · ' }, ...part]));
}

/** When the Moon rises and sets within the night, in a sentence or two. */
export function renderMoonTimes(card: NightCard, labels: Labels): ElementContent[] {
  const say = ({ clock, date }: NightClock) =>
    date === card.record.date
      ? labels.clock(clock)
      : labels.text('clock-on-day', { time: labels.clock(clock), day: labels.date(date, 'short') });
  const sentences: string[] = [];
  if (card.upAtBeginning && card.record.beginsWith === 'sunset') sentences.push(labels.text('moon-up-at-sunset'));
  const rises = card.rises === null ? [] : [[card.rises, labels.text('moon-rises', { time: say(card.rises) })] as const];
  const sets = card.sets === null ? [] : [[card.sets, labels.text('moon-sets', { time: say(card.sets) })] as const];
  const inOrder = card.upAtBeginning ? [...sets, ...rises] : [...rises, ...sets];
  sentences.push(...inOrder.map(([, sentence]) => sentence));
  if (!card.moon.up) sentences.push(labels.text('moon-not-in-the-dark'));
  return [{ type: 'text', value: sentences.join(' ') }];
}

function renderClassTime(card: NightCard, classNight: NightRecord, view: ViewContext): ElementContent[] {
  return fillLabel(view.labels, 'class-time-night', {
    class: h('strong', [renderName(classNight.night.name, view.namesLanguage)]),
    tonight: h('strong', [renderName(card.record.night.name, view.namesLanguage)]),
    time: view.labels.clock(card.begins.clock),
  });
}
