import { readText } from '../../quiz/fold-text.ts';
import type { Forgiveness, Slip } from '../../quiz/model.ts';
import { FEEDBACK, RESPONSE } from './declarations.ts';
import type { ItemContext, ItemParts, QuestionOf } from './item-parts.ts';
import { listSpellings, tidySpace } from './list-spellings.ts';
import { readVariable, scoreByMapping, setOutcome, when, writeIdentifier } from './processing.ts';
import { renderBlock } from './render-flow.ts';
import { type XmlElement, xmlElement } from './xml-element.ts';

/** A line to write on. Every accepted spelling earns all marks, with or without the unit that stands after the line. */
export function renderLineItem({ question, space, expected }: QuestionOf<'line'>, context: ItemContext): ItemParts {
  const { unit } = space;
  const { forgive } = expected;
  const spellings = expected.accepted.flatMap((answer) => listSpellings(readText(answer), forgive));
  const keys = dropAlike(addUnit(spellings, unit), forgive.case);
  const slips = expected.slips.map((slip, index) => ({ ...slip, identifier: `slip-${index + 1}` }));
  return {
    response: {
      cardinality: 'single',
      baseType: 'string',
      correct: spellings.slice(0, 1),
      mapping: { entries: keys.map((key) => ({ key, value: question.marks })), caseSensitive: !forgive.case },
    },
    body: [
      ...renderBlock(question.prompt, context.pictures),
      xmlElement('p', {}, [
        // No length is expected: it would tell how long the answer is.
        xmlElement('qti-text-entry-interaction', {
          'response-identifier': RESPONSE,
          'aria-label': context.labels.text('write-here'),
        }),
        ...(unit === undefined ? [] : [` ${unit}`]),
      ]),
    ],
    processing: [...scoreByMapping(), ...slips.map((slip) => recogniseSlip(slip, unit, forgive))],
    feedback: slips.map(({ identifier, means }) => ({ identifier, content: means })),
  };
}

/** Texts with and without the unit that stands after the line, which an answer may hold already. */
function addUnit(texts: readonly string[], unit: string | undefined): string[] {
  if (unit === undefined) return [...texts];
  const ending = ` ${tidySpace(unit)}`;
  return texts.flatMap((text) => {
    const bare = text.endsWith(ending) ? text.slice(0, -ending.length) : text;
    return [text, bare, bare + ending];
  });
}

/** Two entries that a tool takes for the same would contradict each other. */
function dropAlike(texts: readonly string[], overlooksCase: boolean): string[] {
  const fold = (text: string) => (overlooksCase ? text.toLowerCase() : text);
  return texts.filter((text, index) => texts.findIndex((other) => fold(other) === fold(text)) === index);
}

function recogniseSlip(
  slip: Slip & { readonly identifier: string },
  unit: string | undefined,
  forgive: Forgiveness,
): XmlElement {
  const matches = dropAlike(addUnit(listSpellings(slip.answer, forgive), unit), forgive.case).map((text) =>
    xmlElement('qti-string-match', { 'case-sensitive': !forgive.case }, [
      readVariable(RESPONSE),
      xmlElement('qti-base-value', { 'base-type': 'string' }, [text]),
    ]),
  );
  const [only] = matches;
  const condition = only !== undefined && matches.length === 1 ? only : xmlElement('qti-or', {}, matches);
  return when(condition, [setOutcome(FEEDBACK, writeIdentifier(slip.identifier))]);
}
