import { h } from 'hastscript';
import { defineDirective } from './definition.ts';

export const teacher = defineDirective({
  name: 'teacher',
  forms: ['container'],
  about: "A note for the teacher, set apart on the teacher's page and never on a learner's.",
  example: ':::teacher[If it goes quickly]\nAsk for a second way to count.\n:::',
  label: { use: 'optional', about: 'a heading for the note' },
  attributes: {},
  notInside: ['teacher', 'handout', 'group-quiz'],
  resolve: (written) => ({ learner: undefined, teacher: { heading: written.label } }),
  learnerView: () => [],
  teacherView: ({ heading }, children, { labels }) => [
    h('aside.teacher-note', { ariaLabel: heading === '' ? labels.text('teacher-note') : heading }, [
      h('p.teacher-note-heading', heading === '' ? labels.text('teacher-note') : heading),
      ...children,
    ]),
  ],
});
