import { h } from 'hastscript';
import { defineDirective } from './definition.ts';
import { LEARNERS_FOLDER, nameHandoutPage } from './page-names.ts';

export const handout = defineDirective({
  name: 'handout',
  forms: ['container'],
  about: "A page of its own for learners. On the teacher's page a link to it stands in its place.",
  example: ':::handout[Sky slip]\nDraw the Moon as you see it.\n:::',
  label: { use: 'required', about: 'the title of the page' },
  attributes: {},
  notInside: ['handout', 'teacher', 'group-quiz'],
  resolve(written, _values, { lesson }) {
    const page = nameHandoutPage(lesson.stem, written.number, written.label);
    const model = { title: written.label, page };
    return { learner: model, teacher: model, handout: model };
  },
  // The page itself is made from the text between the fences; here only its place is kept.
  learnerView: () => [],
  teacherView: ({ title, page }, _children, { labels }) => [
    h('p.sheet-link', [
      h('span.sheet-kind', labels.text('handout')),
      ' ',
      h('a', { href: `${LEARNERS_FOLDER}/${page}` }, title),
    ]),
  ],
});
