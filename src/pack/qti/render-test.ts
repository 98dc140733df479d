import type { LearnerPaper } from '../../quiz/model.ts';
import { declareTotal, MAX_SCORE, SCORE } from './declarations.ts';
import type { ItemContext } from './item-parts.ts';
import { setOutcome } from './processing.ts';
import type { PackagePart } from './qti-names.ts';
import { renderBlock } from './render-flow.ts';
import { QTI_NAMESPACE } from './render-item.ts';
import { TOOL } from './tool.ts';
import { type XmlElement, xmlElement } from './xml-element.ts';

/** A test beside its items. */
export interface TestParts {
  readonly identifier: string;
  readonly title: string;
  /** The name of the group, as a heading. */
  readonly heading: string;
  /** In order of the questions. */
  readonly items: readonly PackagePart[];
}

const SECONDS_PER_MINUTE = 60;

/**
 * A group's paper as a test of QTI 3.0. Each paper is a test of its own, not a section of one: a tool hands out tests
 * whole, so that every group gets its own questions and no other's.
 * As on paper, a group goes to and fro between questions and hands in all of them together, and the time is a guide.
 */
export function renderTest(
  paper: LearnerPaper,
  { identifier, title, heading, items }: TestParts,
  context: ItemContext,
): XmlElement {
  const total = (name: string) => setOutcome(name, xmlElement('qti-sum', {}, [readAll(name)]));
  return xmlElement('qti-assessment-test', { xmlns: QTI_NAMESPACE, identifier, title, ...TOOL }, [
    declareTotal(SCORE),
    declareTotal(MAX_SCORE),
    ...renderTimeLimit(paper.minutes),
    xmlElement(
      'qti-test-part',
      { identifier: 'part-1', 'navigation-mode': 'nonlinear', 'submission-mode': 'simultaneous' },
      [
        // What a wrong answer means is for the teacher: a tool shows it to a group only when told to.
        xmlElement('qti-item-session-control', { 'max-attempts': 1, 'show-feedback': false, 'show-solution': false }),
        xmlElement('qti-assessment-section', { identifier: 'section-1', title: heading, visible: true }, [
          ...renderIntroduction(paper, context),
          ...items.map((item) =>
            xmlElement('qti-assessment-item-ref', { identifier: item.identifier, href: item.path }),
          ),
        ]),
      ],
    ),
    xmlElement('qti-outcome-processing', {}, [total(SCORE), total(MAX_SCORE)]),
  ]);
}

/** The values of a variable in all items. */
function readAll(name: string): XmlElement {
  return xmlElement('qti-test-variables', { 'variable-identifier': name });
}

function renderTimeLimit(minutes: number | undefined): XmlElement[] {
  if (minutes === undefined) return [];
  const limits = { 'max-time': minutes * SECONDS_PER_MINUTE, 'allow-late-submission': true };
  return [xmlElement('qti-time-limits', limits)];
}

function renderIntroduction({ introduction }: LearnerPaper, { pictures, labels }: ItemContext): XmlElement[] {
  const content = renderBlock(introduction, pictures);
  if (content.length === 0) return [];
  return [
    xmlElement('qti-rubric-block', { use: 'instructions', view: 'candidate', 'xml:lang': labels.language }, [
      xmlElement('qti-content-body', {}, content),
    ]),
  ];
}
