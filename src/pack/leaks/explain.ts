import {
  type CountKey,
  getLabelEntry,
  LABEL_KEYS,
  type LabelKey,
  type TextKey,
} from '../../content/label-catalogue.ts';
import type { Labels } from '../../content/labels.ts';
import { findPlaceholders } from '../../content/template.ts';
import gesturePlayer from '../pages/gesture-player.js?raw';
import markToday from '../pages/mark-today.js?raw';
import { pageStyles } from '../pages/page-styles.ts';
import type { MarkupAttribute, MarkupTag } from './parse-tag.ts';
import type { Secret } from './secret.ts';
import type { SecretSearch } from './secret-search.ts';
import { splitWords } from './split-words.ts';

/*
 * What the kit's own constant files and fixed words hold can be no leak, even where it reads like an answer. Most of it
 * is looked at only once something was found.
 */

/** Attributes that say something to people. */
const SPOKEN: ReadonlySet<string> = new Set(
  'alt title placeholder summary content label abbr value aria-label aria-description aria-valuetext aria-roledescription'.split(
    ' ',
  ),
);

/** Whether an attribute has to do with a secret by chance only: by a class of the style sheets, or by a usual word. */
export function isChance(
  tag: MarkupTag,
  { name, value }: MarkupAttribute,
  secret: Secret,
  search: SecretSearch,
): boolean {
  if (name === 'class') {
    const tokens = value.split(/\s+/);
    const telling = tokens.filter((token) => search.findUnseen(token).some((found) => found.secret === secret));
    return telling.length > 0 && telling.every((token) => listClasses().has(token));
  }
  if (secret.telling !== 'alone') return false;
  if (name === 'aria-label') return /^\s*\d+\s*$/.test(value);
  return !SPOKEN.has(name) || (name === 'value' && tag.name === 'li');
}

let classes: ReadonlySet<string> | undefined;

/** Classes of all style sheets. */
function listClasses(): ReadonlySet<string> {
  classes ??= new Set(
    Object.values(pageStyles).flatMap((text) => [...text.matchAll(/\.([A-Za-z][\w-]*)/g)].map(([, name = '']) => name)),
  );
  return classes;
}

let styleLines: ReadonlySet<string> | undefined;

/** The lines of a style sheet that are in none of the kit's, such as the page's own line at the foot of a sheet. */
export function listOwnStyleLines(text: string): string[] {
  styleLines ??= new Set(Object.values<string>(pageStyles).flatMap((style) => style.split('\n')));
  const known = styleLines;
  return text.split('\n').filter((line) => !known.has(line));
}

/** Whether a script is one of those that the kit writes into pages. */
export function isKitScript(text: string): boolean {
  return text === gesturePlayer || text === markToday;
}

/** Names in what a run tells the player. */
const RUN_KEYS: ReadonlySet<string> = new Set(['from', 'zero', 'until', 'end', 'events']);

/** Whether a script is what a run tells the player: numbers under fixed names. */
export function isRunData(tag: MarkupTag | undefined, text: string): boolean {
  if (tag?.attributes.some(({ name, value }) => name === 'type' && value === 'application/json') !== true) return false;
  try {
    return isNumbers(JSON.parse(text));
  } catch {
    return false;
  }
}

function isNumbers(value: unknown): boolean {
  if (Array.isArray(value)) return value.every(isNumbers);
  if (typeof value !== 'object' || value === null) return typeof value === 'number';
  return Object.entries(value).every(([key, each]) => RUN_KEYS.has(key) && isNumbers(each));
}

const playerWords = new WeakMap<Labels, ReadonlySet<string>>();

function listPlayerWords(labels: Labels): Set<string> {
  return new Set(listLabelTexts(labels, (key) => key.startsWith('player-')).flatMap(splitWords));
}

/** Whether a text is no more than words of the player, and numbers. */
export function isPlayerText(text: string, labels: Labels): boolean {
  const words = playerWords.get(labels) ?? listPlayerWords(labels);
  playerWords.set(labels, words);
  return splitWords(text).every((word) => words.has(word) || /^\d+$/.test(word));
}

/** Whether a text is a fixed one of pages. */
export function isLabelText(text: string, labels: Labels): boolean {
  const words = splitWords(text).join(' ');
  return listLabelTexts(labels, () => true).some((label) => splitWords(label).join(' ') === words);
}

/** Whether all words are among the fixed ones of pages. */
export function isOfLabelWords(words: readonly string[], labels: Labels): boolean {
  const known = new Set(listLabelTexts(labels, () => true).flatMap(splitWords));
  return words.every((word) => known.has(word));
}

/** Labels without what fills them. */
function listLabelTexts(labels: Labels, isWanted: (key: LabelKey) => boolean): string[] {
  return LABEL_KEYS.filter(isWanted).flatMap((key) => {
    const { english, mayUse = [] } = getLabelEntry(key);
    const forms = typeof english === 'string' ? [english] : Object.values(english);
    const blanks = Object.fromEntries([...forms.flatMap(findPlaceholders), ...mayUse].map((name) => [name, ' ']));
    // Which placeholders a label has is known to the compiler for single labels only.
    if (typeof english === 'string') return (labels.text as FillAny<TextKey>)(key as TextKey, blanks);
    return [1, 2].map((n) => (labels.count as CountAny)(key as CountKey, n, blanks));
  });
}

type FillAny<Key> = (key: Key, values: Readonly<Record<string, string>>) => string;
type CountAny = (key: CountKey, n: number, values: Readonly<Record<string, string>>) => string;
