import { defineDirective } from './definition.ts';
import { computeNightCard, renderNightCard } from './night-card.ts';

export const tonight = defineDirective({
  name: 'tonight',
  forms: ['leaf'],
  about:
    'A card for the night of a day: name, how to say it, group, month, sentence, the Moon as it stands in this sky.',
  example: '::tonight{on=wednesday}',
  label: { use: 'none' },
  attributes: {
    on: { type: 'day', about: "a day of this week; left out, the lesson's own day" },
  },
  resolve(_written, { on }, { almanac, calendar, dates, lesson, school }) {
    const date = on === undefined ? lesson.date : (dates.get(on) ?? lesson.date);
    const card = computeNightCard(almanac, calendar, date, lesson.head.begins ?? school.classBegins);
    return { learner: card, teacher: card, tells: [date] };
  },
  learnerView: (card, _children, view) => renderNightCard(card, view),
  teacherView: (card, _children, view) => renderNightCard(card, view),
});
