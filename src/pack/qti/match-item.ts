import type { ElementContent } from 'hast';
import { RESPONSE } from './declarations.ts';
import { type ItemContext, type ItemParts, type QuestionOf, renderPrompt, requirePlace } from './item-parts.ts';
import { scoreByMapping, shareMarks } from './processing.ts';
import { renderFlow } from './render-flow.ts';
import { type XmlElement, xmlElement } from './xml-element.ts';

/** Things that belong together, in two columns as on the paper. Each right pair is a point. */
export function renderMatchItem({ question, space, expected }: QuestionOf<'match'>, context: ItemContext): ItemParts {
  const { pictures } = context;
  const correct = expected.pairs.map(
    ({ right }, index) => `${nameLeft(index)} ${nameRight(requirePlace(right.letter, space.right))}`,
  );
  const share = shareMarks(question.marks, correct.length);
  const prompt = renderPrompt(question.prompt, pictures);
  return {
    response: {
      cardinality: 'multiple',
      baseType: 'directedPair',
      correct,
      mapping: { entries: correct.map((key) => ({ key, value: share.worth })), lowerBound: 0 },
    },
    body: [
      xmlElement(
        'qti-match-interaction',
        { 'response-identifier': RESPONSE, shuffle: false, 'max-associations': space.left.length },
        [
          { ...prompt, children: [...prompt.children, ...renderHeadings(space.headings, context)] },
          renderSide(space.left, nameLeft, context),
          renderSide(
            space.right.map(({ content }) => content),
            nameRight,
            context,
          ),
        ],
      ),
    ],
    processing: scoreByMapping(share),
    feedback: [],
  };
}

function nameLeft(index: number): string {
  return `left-${index + 1}`;
}

function nameRight(index: number): string {
  return `right-${index + 1}`;
}

function renderSide(
  side: readonly ElementContent[][],
  nameOf: (index: number) => string,
  { pictures }: ItemContext,
): XmlElement {
  return xmlElement(
    'qti-simple-match-set',
    {},
    side.map((content, index) =>
      xmlElement(
        'qti-simple-associable-choice',
        { identifier: nameOf(index), 'match-max': 1 },
        renderFlow(content, pictures),
      ),
    ),
  );
}

/** The columns have no heads of their own in the schema: a line of the prompt says what is matched to what. */
function renderHeadings(headings: QuestionOf<'match'>['space']['headings'], { pictures }: ItemContext): XmlElement[] {
  if (headings === undefined) return [];
  const [left, right] = headings.map((heading) => renderFlow(heading, pictures));
  return [xmlElement('p', {}, [...(left ?? []), ' – ', ...(right ?? [])])];
}
