import type { Element, Root } from 'hast';
import { h } from 'hastscript';
import { tagAuthors } from '../../content/tag-authors.ts';
import { SCORE_CLASS } from '../../directives/score-strip/render-score-strip.ts';
import type { Handout } from '../../lesson/model.ts';
import { playSound, renderPlayerParts } from './gesture-player.ts';
import { computeRoomMm } from './handout-room.ts';
import { holdsClass } from './holds-class.ts';
import { type LearnerFrame, renderLearnerPage } from './learner-page.ts';
import { styleHandout } from './page-styles.ts';

/** A sheet for one learner: lines for name and date, the title, and what the author wrote. */
export function renderHandoutPage(handout: Handout, frame: LearnerFrame): Root {
  const { labels } = frame;
  return renderLearnerPage(frame, {
    title: handout.title,
    kind: 'handout-page',
    styles: styleHandout({ runs: handout.hasRun, scores: holdsClass(handout.body, SCORE_CLASS) }),
    ...playSound(handout),
    main: [
      h('div', { className: ['handout-sheet'] }, [
        renderTop(handout, frame),
        h(
          'div',
          { className: nameBody(handout), ...tagAuthors(frame.labels.language, frame.authorsLanguage) },
          handout.body,
        ),
      ]),
      ...renderPlayerParts(handout, labels),
    ],
  });
}

/** Whose sheet it is and what it is. In print it comes again on a second sheet, so that a loose one can be told. */
function renderTop(handout: Handout, { labels, date, schoolName }: LearnerFrame): Element {
  return h('div', { className: ['handout-top'] }, [
    h('div', { className: ['name-lines'] }, [
      renderWriteLine(labels.text('name-line')),
      renderWriteLine(labels.text('date-line')),
    ]),
    h('div', { className: ['handout-head'] }, [
      h('h1', handout.title),
      h('p', { className: ['eyebrow', 'print-only'] }, [labels.date(date, 'day'), ' · ', schoolName]),
    ]),
  ]);
}

/** Rows to write in are as high on paper as the sheet has room for. */
function nameBody({ body }: Handout): string[] {
  const room = computeRoomMm(body);
  return room === undefined ? ['handout-body'] : ['handout-body', `room-${room}`];
}

function renderWriteLine(words: string): Element {
  return h('p', [h('span', words), ' ', h('span', { className: ['write-line'] })]);
}
