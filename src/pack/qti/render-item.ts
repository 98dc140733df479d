import type { KeyAnswer, LearnerQuestion } from '../../quiz/model.ts';
import { renderChoiceItem } from './choice-item.ts';
import { declareFeedback, declareResponse, declareScore, FEEDBACK } from './declarations.ts';
import type { FeedbackText, ItemContext, ItemParts } from './item-parts.ts';
import { renderLineItem } from './line-item.ts';
import { renderMatchItem } from './match-item.ts';
import { renderOrderItem } from './order-item.ts';
import { renderFlow } from './render-flow.ts';
import { TOOL } from './tool.ts';
import { renderDrawItem, renderOpenItem } from './written-item.ts';
import { type XmlElement, xmlElement } from './xml-element.ts';

/** Namespace of items and tests (1EdTech, QTI 3.0 Assessment, Section and Item). */
export const QTI_NAMESPACE = 'http://www.imsglobal.org/xsd/imsqtiasi_v3p0';

/** What an item is called. */
export interface ItemName {
  readonly identifier: string;
  /** For those who look through a bank of items; nothing of the question stands in it. */
  readonly title: string;
}

/**
 * A question as an item of QTI 3.0: what is asked, what is right, and how marks are given, by the rules the key states.
 * @param question As on a group's paper.
 * @param answer The same question's in the group's key.
 */
export function renderItem(
  question: LearnerQuestion,
  answer: KeyAnswer,
  name: ItemName,
  context: ItemContext,
): XmlElement {
  const { response, body, processing, feedback } = renderParts(question, answer, context);
  return xmlElement(
    'qti-assessment-item',
    {
      xmlns: QTI_NAMESPACE,
      ...name,
      'xml:lang': context.labels.language,
      adaptive: false,
      'time-dependent': false,
      ...TOOL,
    },
    [
      declareResponse(response),
      ...declareScore(question.marks, processing.length === 0 ? 'human' : 'machine'),
      ...(feedback.length === 0 ? [] : [declareFeedback(response.cardinality)]),
      xmlElement('qti-item-body', {}, body),
      ...(processing.length === 0 ? [] : [xmlElement('qti-response-processing', {}, processing)]),
      ...feedback.map((text) => renderFeedback(text, context)),
    ],
  );
}

function renderParts(question: LearnerQuestion, { expected, number }: KeyAnswer, context: ItemContext): ItemParts {
  const { space } = question;
  if (space.kind === 'options' && expected.kind === 'options') {
    return renderChoiceItem({ question, space, expected }, context);
  }
  if (space.kind === 'line' && expected.kind === 'line') return renderLineItem({ question, space, expected }, context);
  if (space.kind === 'order' && expected.kind === 'order')
    return renderOrderItem({ question, space, expected }, context);
  if (space.kind === 'match' && expected.kind === 'match')
    return renderMatchItem({ question, space, expected }, context);
  if (space.kind === 'lines' && expected.kind === 'lines')
    return renderOpenItem({ question, space, expected }, context);
  if (space.kind === 'disc' && expected.kind === 'disc') return renderDrawItem({ question, space, expected }, context);
  throw new Error(`Question ${number} is answered by ${space.kind} on the paper, and by ${expected.kind} in the key.`);
}

/** What a wrong answer means. A tool shows it only where the test lets it: see the session control of `renderTest`. */
function renderFeedback({ identifier, content }: FeedbackText, { pictures }: ItemContext): XmlElement {
  return xmlElement('qti-modal-feedback', { 'outcome-identifier': FEEDBACK, identifier, 'show-hide': 'show' }, [
    xmlElement('qti-content-body', {}, renderFlow(content, pictures)),
  ]);
}
