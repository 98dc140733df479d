import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import { renderName } from '../../content/render-name.ts';
import { tagAuthors } from '../../content/tag-authors.ts';
import type { ResolvedLesson, ResolvedWeek } from '../../lesson/model.ts';
import { sayExplanation } from '../say-explanation.ts';
import type { Sentence } from '../voice.ts';

/** The calendar, why the lesson's date has its night, how close the call was, and whose word comes first. */
export function renderHowWeKnow(week: ResolvedWeek, lesson: ResolvedLesson): ElementContent[] {
  const { labels, almanac, calendar } = week;
  const said = sayExplanation(almanac.explain(lesson.tonight.date), labels, almanac.place.timeZone);
  const render = (sentence: Sentence) => renderSentence(sentence, calendar.language);
  return [
    h('h2', labels.text('how-we-know')),
    h('p', [...renderCalendarTitle(week), text(` ${labels.text(`day-begins-${calendar.dayBegins}`)}`)]),
    h('p', joinSentences(said.night.map(render))),
    h('p', labels.text('computed-for-here')),
    h(
      'ul',
      said.steps.map((sentence) => h('li', render(sentence))),
    ),
    h('p', said.closeCall ? { className: ['close-call'] } : {}, joinSentences(said.closeness.map(render))),
    h('p', renderKeeperLine(week)),
  ];
}

/** The calendar's name, what its file says of itself, and whose word comes first. */
export function renderKeeperNote(week: ResolvedWeek): ElementContent[] {
  return [h('p', renderCalendarTitle(week)), h('p', renderKeeperLine(week))];
}

/** Who keeps the calendar, that their word comes before what is computed, and that nothing here is a tide table. */
export function renderKeeperLine({ labels, calendar }: ResolvedWeek): ElementContent[] {
  const keeper = h('strong', calendar.keeper);
  return [...fillLabel(labels, 'keeper-first', { keeper: [keeper] }), text(` ${labels.text('not-a-tide-table')}`)];
}

function renderCalendarTitle({ calendar, labels }: ResolvedWeek): ElementContent[] {
  const title = h('strong', [renderName(calendar.title, calendar.language)]);
  const named = fillLabel(labels, 'calendar-named', { title: [title] });
  const { note, explainedIn = labels.language } = calendar;
  if (note === undefined) return named;
  const tag = tagAuthors(labels.language, explainedIn);
  return [...named, text(' '), tag.lang === undefined ? text(note) : h('span', tag, note)];
}

function renderSentence(sentence: Sentence, namesLanguage: string): ElementContent[] {
  return sentence.map((part) => (typeof part === 'string' ? text(part) : renderName(part.name, namesLanguage)));
}

function joinSentences(sentences: readonly ElementContent[][]): ElementContent[] {
  return sentences.flatMap((sentence, index) => (index === 0 ? sentence : [text(' '), ...sentence]));
}

function text(value: string): ElementContent {
  return { type: 'text', value };
}
