import type { ElementContent } from 'hast';
import type { ContentPicture, GestureSet } from '../content/types.ts';
import type { AnswerSpace, QuizSheet } from '../quiz/model.ts';

/**
 * The pictures of a gestures file that the papers of a quiz show. The key shows no others, since it repeats what is on
 * the papers.
 */
export function listQuizPictures({ papers }: QuizSheet, { gestures }: GestureSet): ContentPicture[] {
  const pictures = Object.values(gestures).flatMap(({ picture }) => picture ?? []);
  if (pictures.length === 0) return [];
  const shown = papers.flatMap(({ questions }) => questions.flatMap(({ space }) => listContents(space)));
  const addresses = new Set(shown.flatMap(listAddresses));
  return pictures.filter(({ packName }) => addresses.has(`images/${packName}`));
}

/** What can be chosen, put in order or matched: nothing else shows a gesture. */
function listContents(space: AnswerSpace): ElementContent[] {
  switch (space.kind) {
    case 'options':
      return space.options.flatMap(({ content }) => content);
    case 'order':
      return space.items.flatMap(({ content }) => content);
    case 'match':
      return [...space.left.flat(), ...space.right.flatMap(({ content }) => content)];
    default:
      return [];
  }
}

function listAddresses(node: ElementContent): string[] {
  if (node.type !== 'element') return [];
  const { href } = node.properties;
  const own = node.tagName === 'image' && typeof href === 'string' ? [href] : [];
  return [...own, ...node.children.flatMap(listAddresses)];
}
