import type { Element, Root } from 'hast';
import { h } from 'hastscript';
import type { Handout } from '../../lesson/model.ts';
import { playSound, renderPlayerParts } from './gesture-player.ts';
import { type LearnerFrame, renderLearnerPage } from './learner-page.ts';
import { pageStyles } from './page-styles.ts';
import { tagAuthors } from './tag-authors.ts';

/** A sheet for one learner: lines for name and date, the title, and what the author wrote. */
export function renderHandoutPage(handout: Handout, frame: LearnerFrame): Root {
  const { labels } = frame;
  return renderLearnerPage(frame, {
    title: handout.title,
    kind: 'handout-page',
    styles: pageStyles.handout,
    ...playSound(handout),
    main: [
      h('div', { className: ['name-lines'] }, [
        renderWriteLine(labels.text('name-line')),
        renderWriteLine(labels.text('date-line')),
      ]),
      h('h1', handout.title),
      h('div', { className: ['handout-body'], ...tagAuthors(frame.labels.language, frame.authorsLanguage) }, handout.body),
      ...renderPlayerParts(handout, labels),
    ],
  });
}

function renderWriteLine(words: string): Element {
  return h('p', [h('span', words), ' ', h('span', { className: ['write-line'] })]);
}
