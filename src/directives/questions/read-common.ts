import type { ElementContent } from 'hast';
import type { RootContent } from 'mdast';
import type { SourcePlace } from '../../content/diagnostic.ts';
import type { CheckedValues, ResolveContext } from '../definition.ts';
import type { QuestionItem } from './question-item.ts';
import { renderText } from './render-text.ts';

/** What may be given with any question; what the author left out is absent. */
export interface GivenValues {
  readonly marks?: number;
  readonly working?: string;
  readonly hint?: string;
}

/** The marks, the working and the hint that an `::answer` or a `::question` gives. */
export function readGiven(values: CheckedValues | undefined): GivenValues {
  const { marks, working, hint } = values ?? {};
  return {
    ...(typeof marks === 'number' ? { marks } : {}),
    ...(typeof working === 'string' ? { working } : {}),
    ...(typeof hint === 'string' ? { hint } : {}),
  };
}

/** What all handwritten questions have. @param used The parts of the item that are its answer; the rest is its text. */
export function readCommon(
  item: QuestionItem,
  used: readonly RootContent[],
  context: ResolveContext,
): GivenValues & { readonly place: SourcePlace; readonly prompt: ElementContent[] } {
  const text = item.nodes.filter((node) => !used.includes(node));
  return { place: item.place, prompt: renderText(text, context), ...readGiven(item.answer?.values) };
}
