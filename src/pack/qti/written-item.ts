import type { RubricRow } from '../../quiz/model.ts';
import { RESPONSE } from './declarations.ts';
import { renderEmptyDisc } from './empty-disc.ts';
import { type ItemContext, type ItemParts, type QuestionOf, renderPrompt } from './item-parts.ts';
import { renderFlow } from './render-flow.ts';
import { type XmlContent, type XmlElement, xmlElement } from './xml-element.ts';

/** An open answer, which a person marks by the rubric. */
export function renderOpenItem({ question, space, expected }: QuestionOf<'lines'>, context: ItemContext): ItemParts {
  return {
    response: { cardinality: 'single', baseType: 'string', correct: [] },
    body: [
      renderForScorer(expected.rubric.map((row) => renderRow(row, context))),
      xmlElement('qti-extended-text-interaction', { 'response-identifier': RESPONSE, 'expected-lines': space.lines }, [
        renderPrompt(question.prompt, context.pictures),
      ]),
    ],
    processing: [],
    feedback: [],
  };
}

/**
 * The Moon to be drawn, which a person marks. Drawn on paper over an empty disc and handed in as a photograph: the
 * standard's own drawing board gives back a picture of the kind it was given, and few tools draw on an SVG.
 */
export function renderDrawItem({ question, expected }: QuestionOf<'disc'>, context: ItemContext): ItemParts {
  const { labels, pictures } = context;
  const prompt = renderPrompt(question.prompt, pictures);
  const disc = renderFlow([renderEmptyDisc(labels.text('qti-empty-disc'))], pictures);
  return {
    response: { cardinality: 'single', baseType: 'file', correct: [] },
    body: [
      renderForScorer([
        xmlElement('p', {}, renderFlow(expected.drawing, pictures)),
        xmlElement('p', {}, [expected.description]),
      ]),
      xmlElement('qti-upload-interaction', { 'response-identifier': RESPONSE }, [
        {
          ...prompt,
          children: [
            ...prompt.children,
            xmlElement('p', {}, [...disc]),
            xmlElement('p', {}, [labels.text('qti-hand-in-drawing')]),
          ],
        },
      ]),
    ],
    processing: [],
    feedback: [],
  };
}

/** What only those who mark may see. */
function renderForScorer(content: readonly XmlContent[]): XmlElement {
  return xmlElement('qti-rubric-block', { use: 'scoring', view: 'scorer' }, [
    xmlElement('qti-content-body', {}, content),
  ]);
}

function renderRow({ marks, words }: RubricRow, { labels }: ItemContext): XmlElement {
  return xmlElement('p', {}, [`${labels.count('marks', marks)}: ${words}`]);
}
