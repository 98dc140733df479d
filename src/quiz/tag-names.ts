import type { ElementContent } from 'hast';
import { renderName } from '../content/render-name.ts';
import type { Calendar } from '../content/types.ts';
import { foldText } from './fold-text.ts';

/** A text that is a name of the calendar, tagged with the language of the names; any other text as it is. */
export function tagName(text: string, calendar: Calendar): ElementContent {
  return isName(text, calendar) ? renderName(text, calendar.language) : { type: 'text', value: text };
}

/** What an author wrote, tagged with the language of the names where it is a name of the calendar and nothing else. */
export function tagNames(content: ElementContent[], calendar: Calendar): ElementContent[] {
  return isNameAlone(content, calendar) ? content.map((node) => tagInside(node, calendar)) : content;
}

/**
 * The same for texts of which one may be right. Only where all of them are names is any tagged: beside made-up ones, a
 * tag would tell which are real.
 */
export function tagAllOrNone<Option extends { readonly content: ElementContent[] }>(
  options: readonly Option[],
  calendar: Calendar,
): readonly Option[] {
  if (!options.every(({ content }) => isNameAlone(content, calendar))) return options;
  return options.map((option) => ({ ...option, content: tagNames(option.content, calendar) }));
}

/** A name, perhaps in bold or slanted. */
function isNameAlone(content: readonly ElementContent[], calendar: Calendar): boolean {
  const [only] = content;
  if (content.length !== 1 || only === undefined) return false;
  if (only.type === 'text') return isName(only.value, calendar);
  const isTagged = only.type === 'element' && only.properties['lang'] !== undefined;
  return only.type === 'element' && !isTagged && isNameAlone(only.children, calendar);
}

function tagInside(node: ElementContent, calendar: Calendar): ElementContent {
  if (node.type === 'text') return tagName(node.value, calendar);
  if (node.type !== 'element') return node;
  return { ...node, children: node.children.map((child) => tagInside(child, calendar)) };
}

function isName(text: string, calendar: Calendar): boolean {
  return listFoldedNames(calendar).has(foldText(text));
}

const foldedNames = new WeakMap<Calendar, ReadonlySet<string>>();

/** All names of groups, nights and months; worked out once a calendar. */
function listFoldedNames(calendar: Calendar): ReadonlySet<string> {
  const known = foldedNames.get(calendar);
  if (known !== undefined) return known;
  const { groups, months, thirteenthMonth } = calendar;
  const named = [
    ...groups,
    ...groups.flatMap(({ nights }) => nights),
    ...months,
    ...(thirteenthMonth ? [thirteenthMonth] : []),
  ];
  const folded = new Set(named.map(({ name }) => foldText(name)));
  foldedNames.set(calendar, folded);
  return folded;
}
