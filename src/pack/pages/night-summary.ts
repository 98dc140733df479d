import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import type { Labels } from '../../content/labels.ts';
import { renderName } from '../../content/render-name.ts';
import { tagAuthors } from '../../content/tag-authors.ts';
import { addressSound } from '../../directives/gestures/run-sound.ts';
import { isThinMoon, type NightCard, sayClock } from '../../directives/night-card.ts';
import { sayMoon } from '../../directives/say-moon.ts';
import { renderMoon } from '../../drawing/moon.ts';
import { joinWithDots, type PageContext } from './page-context.ts';

const MOON_RADIUS_PX = 90;

/**
 * What a relief teacher must know of a night to say it: its name, how it is said, the sentence, what it means, and which
 * night class time belongs to. When the Moon rises and sets is on the lesson's page.
 * @param classBegins Local time `HH:MM` of the class that the card was computed for.
 */
export function renderNightSummary(context: PageContext, card: NightCard, classBegins: string): Element {
  const { labels } = context.week;
  const { namesLanguage, explainedIn = labels.language } = context.view;
  const { night } = card.record;
  return h('div', { className: ['tonight'] }, [
    renderDrawing(card, labels),
    h('div', { className: ['tonight-words'] }, [
      h('p', { className: ['tonight-name'] }, [renderName(night.name, namesLanguage)]),
      ...renderSay(context, card),
      h('p', { className: ['tonight-sentence'] }, [h('q', [renderName(card.sentence, namesLanguage)])]),
      ...(night.meaning === undefined
        ? []
        : [h('p', { className: ['tonight-meaning'], ...tagAuthors(labels.language, explainedIn) }, night.meaning)]),
      h('p', { className: ['tonight-class'] }, sayClassTime(context, card, classBegins)),
      ...renderCare(card, labels),
      h('p', { className: ['tonight-place'] }, describePlace(context, card)),
    ]),
  ]);
}

/** Which moment is drawn is said only where looking then is no danger. */
function renderDrawing(card: NightCard, labels: Labels): Element {
  const time = sayClock(card.drawnFor, card.record.date, labels);
  const isSafe = !card.tooNearSun && !isThinMoon(card);
  return h('figure', { className: ['tonight-moon'] }, [
    renderMoon(card.moon, { radius: MOON_RADIUS_PX, title: sayMoon(card.moon, labels) }),
    ...(isSafe ? [h('figcaption', labels.text('moon-drawn-for', { time }))] : []),
  ]);
}

function renderSay({ week, view }: PageContext, { record }: NightCard): Element[] {
  const { labels, calendar } = week;
  const { say, number, name } = record.night;
  const sound = calendar.spokenNames.get(number)?.sound;
  const parts: ElementContent[][] = [];
  if (say !== undefined) {
    parts.push(fillLabel(labels, 'say-name', { say: [h('strong', { lang: view.namesLanguage }, say)] }));
  }
  if (sound !== undefined) {
    const hidden = h('span', { className: ['visually-hidden'] }, [renderName(name, view.namesLanguage)]);
    const words = fillLabel(labels, 'hear-name', { name: [hidden] });
    parts.push([h('a', { className: ['hear-name', 'screen-only'], href: addressSound(sound) }, words)]);
  }
  return parts.length === 0 ? [] : [h('p', { className: ['tonight-say'] }, joinWithDots(parts))];
}

/** In one line: which night class time belongs to, and when that of the date begins. */
function sayClassTime({ week, view }: PageContext, card: NightCard, classBegins: string): ElementContent[] {
  const { labels } = week;
  const name = (night: string) => [h('strong', [renderName(night, view.namesLanguage)])];
  const time = labels.clock(classBegins);
  const tonight = name(card.record.night.name);
  if (card.atClassTime === undefined) return fillLabel(labels, 'class-already-in', { time, tonight });
  const begins = sayClock(card.begins, card.record.date, labels);
  return fillLabel(labels, 'class-still-in', {
    time,
    class: name(card.atClassTime.record.night.name),
    tonight,
    begins,
  });
}

function renderCare(card: NightCard, labels: Labels): Element[] {
  const keys = [
    ...(card.standIn === null ? [] : [card.standIn]),
    ...(card.tooNearSun ? (['moon-too-near-sun'] as const) : []),
    ...(isThinMoon(card) && !card.tooNearSun ? (['care-crescent'] as const) : []),
  ];
  return keys.map((key) => h('p', { className: ['tonight-care'] }, labels.text(key)));
}

/** "night 16 of 29 · High Water · Frost Month". */
function describePlace({ week, view }: PageContext, { record }: NightCard): ElementContent[] {
  const { labels } = week;
  return joinWithDots([
    fillLabel(labels, 'night-of-month', { n: record.nightOfMonth, length: record.month.length }),
    [renderName(record.night.group, view.namesLanguage)],
    [renderName(record.month.name, view.namesLanguage)],
    ...(record.repeat ? [labels.text('night-repeats')] : []),
  ]);
}
