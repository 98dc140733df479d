import type { KeyOption, LetteredContent } from '../../quiz/model.ts';
import { FEEDBACK, RESPONSE, type ResponseFacts } from './declarations.ts';
import {
  type ItemContext,
  type ItemParts,
  nameChoice,
  type QuestionOf,
  renderPrompt,
  requirePlace,
} from './item-parts.ts';
import { type MarkShare, readVariable, scoreByMapping, setOutcome, shareMarks } from './processing.ts';
import { renderFlow } from './render-flow.ts';
import { xmlElement } from './xml-element.ts';

/**
 * Boxes to tick. One right option earns all marks; where there may be several, each right tick is a point and each wrong
 * one takes a point back, and all right ones are all marks.
 */
export function renderChoiceItem(
  { question, space, expected }: QuestionOf<'options'>,
  context: ItemContext,
): ItemParts {
  const { pictures, labels } = context;
  const { several, options } = space;
  const keyed = expected.options.map((option) => ({
    ...option,
    identifier: nameChoice(requirePlace(option.letter, options)),
  }));
  const howTo = several ? [xmlElement('p', {}, [labels.text('tick-all-right')])] : [];
  const prompt = renderPrompt(question.prompt, pictures);
  const wrong = keyed.filter(({ right, means }) => !right && means.length > 0);
  const share = shareMarks(question.marks, keyed.filter(({ right }) => right).length);
  return {
    response: describeResponse(keyed, several, share),
    body: [
      xmlElement(
        'qti-choice-interaction',
        // No bound: the number of right options is not told.
        { 'response-identifier': RESPONSE, shuffle: false, 'max-choices': several ? 0 : 1 },
        [
          { ...prompt, children: [...prompt.children, ...howTo] },
          ...options.map((option, index) => renderChoice(option, index, context)),
        ],
      ),
    ],
    processing: [
      ...scoreByMapping(share),
      ...(wrong.length === 0 ? [] : [setOutcome(FEEDBACK, readVariable(RESPONSE))]),
    ],
    feedback: wrong.map(({ identifier, means }) => ({ identifier, content: means })),
  };
}

/** A thing to choose, as the items of an order are as well. */
export function renderChoice({ content }: LetteredContent, index: number, { pictures }: ItemContext) {
  return xmlElement('qti-simple-choice', { identifier: nameChoice(index) }, renderFlow(content, pictures));
}

function describeResponse(
  options: readonly (KeyOption & { readonly identifier: string })[],
  several: boolean,
  { worth }: MarkShare,
): ResponseFacts {
  const correct = options.filter(({ right }) => right).map(({ identifier }) => identifier);
  if (!several) {
    const entries = correct.map((key) => ({ key, value: worth }));
    return { cardinality: 'single', baseType: 'identifier', correct, mapping: { entries } };
  }
  const entries = options.map(({ identifier, right }) => ({ key: identifier, value: right ? worth : -worth }));
  return { cardinality: 'multiple', baseType: 'identifier', correct, mapping: { entries, lowerBound: 0 } };
}
