import type { Diagnostic } from '../content/diagnostic.ts';
import type { WrittenDirective } from '../directives/definition.ts';
import { formatElapsed } from '../rhythm/format-elapsed.ts';
import { isForLearners, type NumberedDirective } from './number-directives.ts';
import type { Resolution } from './prepare-directive.ts';

/**
 * Holds the minutes of a lesson's steps against those at its top: a lesson without steps makes no such promise. A
 * faulty step was reported already, and its minutes are not known.
 */
export function checkStepMinutes(
  numbered: readonly NumberedDirective[],
  { readings }: Resolution,
  lessonMinutes: number,
  report: (diagnostic: Diagnostic) => void,
): void {
  const steps = numbered.filter(({ written }) => written.name === 'step');
  const last = steps.reduce<NumberedDirective | undefined>(
    (latest, each) => (latest !== undefined && latest.written.number > each.written.number ? latest : each),
    undefined,
  );
  if (last === undefined || steps.some(({ node }) => !readings.has(node))) return;
  const total = last.written.minutesBefore + Number(last.written.attributes['minutes']);
  if (total === lessonMinutes) return;
  report({
    rule: 'step-minutes',
    severity: 'error',
    place: last.written.attributePlace('minutes'),
    message: `The steps take \`${total}\` minutes; expected \`${lessonMinutes}\`, as \`minutes\` at the top of the lesson says; change a step or the top`,
    found: String(total),
    expected: String(lessonMinutes),
  });
}

/** Runs on the beat that are done one after another. */
interface DoneRuns {
  readonly runs: WrittenDirective[];
  seconds: number;
}

/**
 * Warns where the runs of a step together take longer than the step, and where a run takes longer than the lesson that
 * stands outside of all steps or on a handout, which is done whenever a learner likes.
 */
export function checkRunMinutes(
  numbered: readonly NumberedDirective[],
  { ready }: Resolution,
  lessonMinutes: number,
  report: (diagnostic: Diagnostic) => void,
): void {
  let inStep: DoneRuns = { runs: [], seconds: 0 };
  for (const { node, written, around } of numbered) {
    const { run, step } = ready.get(node) ?? {};
    if (run !== undefined) {
      const seconds = run.timeline.totalSeconds;
      if (around.includes('step') && !isForLearners(around)) {
        inStep.runs.push(written);
        inStep.seconds += seconds;
      } else reportTooLong({ runs: [written], seconds }, lessonMinutes, '`minutes` of the lesson', report);
    }
    // A step comes after all that it holds, and no step stands in another.
    if (written.name !== 'step') continue;
    if (step !== undefined) reportTooLong(inStep, step.minutes, `\`minutes\` of the step \`${step.title}\``, report);
    inStep = { runs: [], seconds: 0 };
  }
}

/** The place is the last run: with it the time is up. */
function reportTooLong(
  { runs, seconds }: DoneRuns,
  minutes: number,
  whose: string,
  report: (diagnostic: Diagnostic) => void,
): void {
  const last = runs.at(-1);
  if (last === undefined || seconds <= minutes * 60) return;
  const found = formatElapsed(Math.ceil(seconds));
  const expected = formatElapsed(minutes * 60);
  const named = ['repeats', 'tempo', 'beats', 'nights'].find((name) => last.attributes[name] !== undefined);
  const which = runs.length === 1 ? 'The run takes' : `The ${runs.length} runs together take`;
  report({
    rule: 'step-minutes',
    severity: 'warning',
    place: last.attributePlace(named ?? 'nights'),
    message: `${which} \`${found}\`; expected at most \`${expected}\`, the ${whose}; raise \`tempo\`, lower \`repeats\`, or give more minutes`,
    found,
    expected,
  });
}
