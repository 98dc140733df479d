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

/** The style sheet of each kind of page: what all share, what this kind needs, and its paper. */
export const pageStyles = {
  start: joinSheets(directives, moon, steps, start, printA4),
  lesson: joinSheets(directives, moon, steps, lesson, figure, gestures, player, scoreStrip, printA4),
  key: joinSheets(moon, figure, key, marking, printA4),
  paper: joinSheets(moon, figure, paper, printA4),
  handout: joinSheets(directives, moon, handout, figure, gestures, player, scoreStrip, printA4),
  learners: joinSheets(learners, printA4),
  score: joinSheets(moon, figure, score, printA3),
  gestures: joinSheets(figure, printA4, gestureSheet),
} as const;

function joinSheets(...parts: readonly string[]): string {
  return [tokens, base, print, ...parts].join('\n');
}
