import type { Element } from 'hast';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { figureBox, renderFigureParts } from '../../drawing/figure/figure.ts';
import { svgElement } from '../../drawing/svg-element.ts';
import { foldName } from '../fold-text.ts';
import type { QuizFacts } from '../model.ts';
import {
  type GestureNight,
  type GestureNights,
  listGestureNights,
  listWrongGestures,
  type WrongGesture,
} from './gesture-options.ts';
import { listKnownNights } from './neighbours.ts';
import type { Level, QuestionInstance, QuestionKind, WrongOption } from './question-instance.ts';
import { joinSentences, renderNight } from './working.ts';

/** "Which gesture belongs to Half Shell?", a choice of pictures: a leader who faces the class. */
export const gestureOfNight: QuestionKind = {
  about: 'which gesture belongs to a night: a choice of drawings, or of the pictures that the gestures file gives',
  levels: [
    'the other gestures are of nights far off in the run',
    'among them are a neighbour and the night as far from the other end of the run',
    'all are of the nights just before and after',
  ],
  list: listGestureOfNight,
};

const LEVELS = [1, 2, 3] as const;

function listGestureOfNight(facts: QuizFacts): QuestionInstance[] {
  const all = listGestureNights(facts.almanac.run, facts.gestures, facts.labels);
  const said = new Set<string>();
  return listKnownNights(facts.almanac, facts.from, facts.to).flatMap((record) => {
    const right = all.nights.find(({ night }) => night.number === record.night.number);
    const name = foldName(record.night);
    if (right === undefined || said.has(name)) return [];
    said.add(name);
    return LEVELS.flatMap((level) => makeInstance(facts, record, right, all, level));
  });
}

function makeInstance(
  facts: QuizFacts,
  record: NightRecord,
  right: GestureNight,
  all: GestureNights,
  level: Level,
): QuestionInstance[] {
  const sets = listWrongGestures(right, all, level);
  if (sets.length === 0) return [];
  const { labels } = facts;
  const night = () => renderNight(facts, right.night.name);
  return [
    {
      kind: 'choice',
      asks: `gesture of night ${right.night.number}`,
      tells: [],
      level,
      hardness: { nights: 0, hurdle: false },
      about: { nights: [right.night.number], dates: [record.date] },
      renderPrompt: () => fillLabel(labels, 'quiz-ask-gesture', { night: night() }),
      renderRight: () => [renderGesture(right)],
      listWrongSets: () => sets.map((set) => set.map((wrong) => renderWrong(facts, wrong))),
      renderWorking: () =>
        joinSentences([
          fillLabel(labels, 'quiz-working-gesture', { night: night(), cue: right.gesture.cue }),
          fillLabel(labels, 'quiz-working-do-gesture', {}),
        ]),
    },
  ];
}

function renderWrong(facts: QuizFacts, wrong: WrongGesture): WrongOption {
  const { labels } = facts;
  const { night, reason, apart } = wrong;
  const named = renderNight(facts, night.name);
  const distance = labels.count('quiz-nights', apart);
  return {
    content: [renderGesture(wrong)],
    means:
      reason === 'mirror'
        ? fillLabel(labels, 'quiz-means-gesture-mirror', { night: named })
        : fillLabel(labels, `quiz-means-gesture-${reason}`, { night: named, distance }),
  };
}

/** Width of a picture in CSS pixels: 28 mm on paper, a little less than where alike gestures were looked at by eye. */
const WIDTH_PX = 106;
const HEIGHT_PX = Math.round((WIDTH_PX * figureBox.height) / figureBox.width);

/** The drawing or picture of a gesture, with the words for it for those who do not see it. */
function renderGesture({ gesture, words }: GestureNight): Element {
  const kind = gesture.picture === undefined ? [] : ['own-picture'];
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${figureBox.width} ${figureBox.height}`,
      width: WIDTH_PX,
      height: HEIGHT_PX,
      className: ['figure', ...kind, 'quiz-figure'],
      role: 'img',
      ariaLabel: words,
    },
    renderFigureParts(gesture, 'facing'),
  );
}
