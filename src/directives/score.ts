import { defineDirective } from './definition.ts';
import { describeNights } from './report-nights.ts';
import { chooseNights, NIGHT_WORDS } from './score-strip/choose-nights.ts';
import { computeScoreStrip, withoutDates } from './score-strip/compute-score-strip.ts';
import { renderScoreStrip } from './score-strip/render-score-strip.ts';

export const score = defineDirective({
  name: 'score',
  forms: ['leaf'],
  about:
    'The month, or part of it, as a score: groups between bar lines, for each night its beat, the Moon, the gesture and the name. For learners it is without dates.',
  example: '::score{nights="High Water"}',
  label: { use: 'none' },
  attributes: {
    nights: { type: 'text', about: `${describeNights(NIGHT_WORDS)}; left out, \`all\` of the month` },
    on: { type: 'day', about: "a day of this week, whose month and night count; left out, the lesson's own day" },
    view: {
      type: 'choice',
      values: ['facing', 'own', 'mirror'],
      about:
        'the drawings: `facing`, as the class sees a leader; `own`, as you see your own hands; `mirror`, a leader who faces the class and leads mirrored; left out, `facing`',
    },
  },
  notInside: ['group-quiz'],
  resolve(written, { nights = 'all', on, view = 'facing' }, context) {
    const { dates, lesson } = context;
    const date = on === undefined ? lesson.date : (dates.get(on) ?? lesson.date);
    const chosen = chooseNights(written, nights, date, context);
    if (chosen === undefined) return undefined;
    const side = view === 'own' || view === 'mirror' ? view : 'facing';
    const strip = computeScoreStrip(chosen.records, { date, view: side, number: written.number }, context);
    const figures = strip.groups.flatMap((group) => group.nights.flatMap(({ figure }) => figure ?? []));
    return {
      learner: withoutDates(strip),
      teacher: strip,
      figures,
      pictures: figures.flatMap(({ gesture }) => gesture.picture ?? []),
      ...(chosen.tells.length > 0 ? { tells: chosen.tells } : {}),
    };
  },
  learnerView: (strip, _children, view) => renderScoreStrip(strip, view),
  teacherView: (strip, _children, view) => renderScoreStrip(strip, view),
});
