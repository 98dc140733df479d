import base from '../styles/base.css?raw';
import directives from '../styles/directives.css?raw';
import figure from '../styles/figure.css?raw';
import gestureSheet from '../styles/gesture-sheet.css?raw';
import gestures from '../styles/gestures.css?raw';
import handout from '../styles/handout.css?raw';
import key from '../styles/key.css?raw';
import learners from '../styles/learners.css?raw';
import lesson from '../styles/lesson.css?raw';
import marking from '../styles/marking.css?raw';
import moon from '../styles/moon.css?raw';
import paper from '../styles/paper.css?raw';
import player from '../styles/player.css?raw';
import print from '../styles/print.css?raw';
import printA3 from '../styles/print-a3.css?raw';
import printA4 from '../styles/print-a4.css?raw';
import score from '../styles/score.css?raw';
import scoreStrip from '../styles/score-strip.css?raw';
import start from '../styles/start.css?raw';
import steps from '../styles/steps.css?raw';
import tokens from '../styles/tokens.css?raw';

/** What a page of an author's words may show, or may not. */
interface Shown {
  readonly runs: boolean;
  readonly scores: boolean;
}

const ALL: Shown = { runs: true, scores: true };

/** The style sheet of each kind of page: what all share, what this kind needs, and its paper. */
export const pageStyles = {
  start: joinSheets(directives, moon, steps, start, printA4),
  lesson: styleLesson(ALL),
  key: joinSheets(moon, figure, key, marking, printA4),
  keyList: joinSheets(key, learners, printA4),
  paper: joinSheets(moon, figure, paper, printA4),
  handout: styleHandout(ALL),
  learners: joinSheets(learners, printA4),
  score: joinSheets(moon, figure, score, printA3),
  gestures: joinSheets(figure, printA4, gestureSheet),
} as const;

/** The style sheet of a lesson's page, without what it does not show. */
export function styleLesson(shown: Shown): string {
  return joinSheets(directives, moon, steps, lesson, ...listDrawn(shown), printA4);
}

/** The style sheet of a handout, without what it does not show: most are words and lines to write on. */
export function styleHandout(shown: Shown): string {
  return joinSheets(directives, moon, handout, ...listDrawn(shown), printA4);
}

function listDrawn({ runs, scores }: Shown): string[] {
  return [...(runs || scores ? [figure] : []), ...(runs ? [gestures, player] : []), ...(scores ? [scoreStrip] : [])];
}

function joinSheets(...parts: readonly string[]): string {
  return [tokens, base, print, ...parts].join('\n');
}
