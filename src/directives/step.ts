import { h } from 'hastscript';
import { addMinutes } from './add-minutes.ts';
import { defineDirective, type LessonStep } from './definition.ts';

export const step = defineDirective({
  name: 'step',
  forms: ['container'],
  about: "A timed step of the lesson. The minutes of all steps must add up to the lesson's `minutes`.",
  example: ':::step[Warm up]{minutes=5}\nStand in a circle.\n:::',
  label: { use: 'required', about: 'what the step is called' },
  attributes: {
    minutes: { type: 'integer', min: 1, max: 240, required: true, about: 'how long it takes' },
  },
  notInside: ['step', 'handout', 'group-quiz', 'teacher'],
  resolve(written, { minutes = 0 }, { lesson, school }) {
    const model: LessonStep = {
      number: written.number,
      title: written.label,
      minutes,
      beginsAt: addMinutes(lesson.head.begins ?? school.classBegins, written.minutesBefore),
    };
    return { learner: undefined, teacher: model, step: model };
  },
  learnerView: (_model, children) => children,
  teacherView: (model, children, { labels }) => [
    h('section.step', { id: `step-${model.number}`, ariaLabelledBy: `step-${model.number}-title` }, [
      h('header.step-head', [
        h('p.step-clock', labels.clock(model.beginsAt)),
        h('h2', { id: `step-${model.number}-title` }, model.title),
        h('p.step-minutes', labels.count('minutes', model.minutes)),
      ]),
      h('div.step-body', children),
    ]),
  ],
});
