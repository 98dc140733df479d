import type { NightRecord } from '../calendar/almanac-types.ts';
import { renderName } from '../content/render-name.ts';
import type { Calendar } from '../content/types.ts';
import { type Directive, defineDirective } from './definition.ts';

/**
 * A directive in a line of prose that becomes words of the calendar about the night of a day.
 * @param tellsNight Whether the words name the night itself.
 */
export function defineInlineWords(
  syntax: { readonly name: string; readonly about: string; readonly example: string },
  say: (record: NightRecord, calendar: Calendar) => string,
  { tellsNight }: { readonly tellsNight: boolean },
): Directive {
  return defineDirective<{ on: { type: 'day'; about: string } }, string, string>({
    ...syntax,
    forms: ['text'],
    label: { use: 'none' },
    attributes: { on: { type: 'day', about: "a day of this week; left out, the lesson's own day" } },
    resolve(_written, { on }, { almanac, calendar, dates, lesson }) {
      const date = on === undefined ? lesson.date : (dates.get(on) ?? lesson.date);
      const words = say(almanac.nightOn(date), calendar);
      return { learner: words, teacher: words, ...(tellsNight ? { tells: [date] } : {}) };
    },
    learnerView: (words, _children, view) => [renderName(words, view.namesLanguage)],
    teacherView: (words, _children, view) => [renderName(words, view.namesLanguage)],
  });
}
