import type { ElementContent } from 'hast';
import type { MoonView, NightRecord } from '../../calendar/almanac-types.ts';
import { isMoonTooNearSun } from '../../calendar/evening-sky.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { findLitSide, type LitSide } from '../../drawing/describe-moon.ts';
import type { QuizFacts } from '../model.ts';
import { listWrongSides, type WrongSide } from './lit-sides.ts';
import { namePhase } from './moon-words.ts';
import { listKnownNights } from './neighbours.ts';
import type { QuestionInstance, QuestionKind } from './question-instance.ts';
import { sayMoment } from './say-moment.ts';
import { joinSentences } from './working.ts';

/** Less lit than the first, or more than the second, the side is a matter of a few degrees that nobody sees. By eye. */
const LIT_FROM = 0.05;
const LIT_UP_TO = 0.92;

/** Higher than this (degrees) the Moon is nearly overhead, and what is left of it hangs on which way one faces. */
const UP_TO_DEGREES = 75;

/** Words for sides are 45 degrees apart; the lit edge points within this of its own word (degrees). Our own choice. */
const NEAR_WORD_DEGREES = 15;

/** "Which side of the Moon is lit on Friday 31 July at 6:05 pm?", a choice of four sides, as the Moon stands here. */
export const litSide: QuestionKind = {
  about: 'which side of the Moon is lit at the time of a night when it is best seen, as it stands in this sky',
  levels: [
    'the question says the shape, and whether the Moon grows or shrinks',
    'the date and the time alone',
    'the same, where full or new Moon, at which the light changes sides, lies between that night and the lesson’s',
  ],
  list: listLitSide,
};

/** The Moon of a night with a side that can be told. */
interface LitNight {
  readonly record: NightRecord;
  readonly moon: MoonView;
  readonly side: LitSide;
}

function listLitSide(facts: QuizFacts): QuestionInstance[] {
  const [tonight] = listKnownNights(facts.almanac, facts.today, facts.today);
  const isWaxing = tonight === undefined ? undefined : facts.almanac.moonBestSeen(tonight).waxing;
  return listKnownNights(facts.almanac, facts.from, facts.to).flatMap((record) =>
    see(facts, record).flatMap((night) => {
      const hasTurned = isWaxing !== undefined && isWaxing !== night.moon.waxing;
      return [makeInstance(facts, night, 1), makeInstance(facts, night, hasTurned ? 3 : 2)];
    }),
  );
}

/** The night, if the side is beyond doubt, and the Moon stands well away from a Sun that is up. */
function see({ almanac }: QuizFacts, record: NightRecord): LitNight[] {
  const moon = almanac.moonBestSeen(record);
  const { litFraction, altitudeDegrees, brightLimbDegrees } = moon;
  const offWordDegrees = Math.abs(brightLimbDegrees - 45 * Math.round(brightLimbDegrees / 45));
  if (!moon.up || litFraction < LIT_FROM || litFraction > LIT_UP_TO) return [];
  if (altitudeDegrees > UP_TO_DEGREES || offWordDegrees > NEAR_WORD_DEGREES) return [];
  return isMoonTooNearSun(almanac.place, moon.atMs) ? [] : [{ record, moon, side: findLitSide(brightLimbDegrees) }];
}

function makeInstance(facts: QuizFacts, night: LitNight, level: 1 | 2 | 3): QuestionInstance {
  const { record, moon, side } = night;
  const { labels } = facts;
  const when = sayMoment(facts, moon.atMs, record.date);
  return {
    kind: 'choice',
    asks: `lit side in the night of ${record.date}`,
    tells: [],
    level,
    hardness: { nights: 0, hurdle: false },
    about: { nights: [record.night.number], dates: [record.date] },
    renderPrompt: () =>
      level === 1
        ? fillLabel(labels, 'quiz-ask-lit-side-of-phase', { phase: namePhase(moon, labels), when })
        : fillLabel(labels, 'quiz-ask-lit-side', { when }),
    renderRight: () => renderSide(facts, side),
    listWrongSets: () => [listWrongSides(side).map((wrong) => renderWrong(facts, moon, wrong))],
    renderWorking: () => renderWorking(facts, night, when, level),
  };
}

function renderSide({ labels }: QuizFacts, side: LitSide): ElementContent[] {
  return fillLabel(labels, `side-${side}`, {});
}

function renderWrong(facts: QuizFacts, { waxing }: MoonView, { side, reason }: WrongSide) {
  const key = reason === 'mirror' ? (waxing ? 'mirror-shrinking' : 'mirror-growing') : reason;
  return { content: renderSide(facts, side), means: fillLabel(facts.labels, `quiz-means-side-${key}`, {}) };
}

function renderWorking(facts: QuizFacts, { moon, side }: LitNight, when: string, level: number): ElementContent[] {
  const { labels } = facts;
  return joinSentences([
    fillLabel(labels, 'quiz-working-lit-side', {
      when,
      phase: namePhase(moon, labels),
      side: labels.text(`side-${side}`),
    }),
    fillLabel(labels, 'quiz-working-faces-sun', {}),
    ...(level === 3 ? [fillLabel(labels, 'quiz-working-side-changed', {})] : []),
  ]);
}
