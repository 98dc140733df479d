import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isMap, isScalar, parseDocument, type Scalar, visit } from 'yaml';
import { LABELS } from '../../src/content/label-catalogue.ts';

/** The tag of what is in no language, written in Hebrew letters (BCP 47: `und` with the script of ISO 15924). */
export const NONSENSE_LANGUAGE = 'und-Hebr';

/** The letters of the script, without those that stand at the end of a word only. */
const LETTERS = 'אבגדהוזחטיכלמנסעפצקרשת';

/** What is not words: placeholders, boxes, entities, targets of links, names of directives. */
const NO_WORDS = /\{[^{}]*\}|\[[ xX]\]|&\w+;|\]\([^)]*\)|(?<=^|[^:\w]):{1,5}[a-z][a-z-]*(?=[[{\s]|$)/;

/** Keys of content files under which people's words stand. */
const KEYS_OF_WORDS: ReadonlySet<string> = new Set(
  `title keeper note name say meaning sentence by for groups relief-notes no-sound no-projector no-copies rain cue seated ask
  text answers working hint means order headings rubric intentions success materials`.split(/\s+/),
);

/** Attributes of directives in which people's words or names stand, where they are quoted. */
const ATTRIBUTES_OF_WORDS = /\b(nights?|draw|working|hint|accept|rubric|title)="([^"]*)"/g;

/**
 * Nonsense for a test of direction: each letter of a text becomes a letter of a script that runs from right to left.
 * The result is as long as the text and means nothing in any language. Placeholders stay.
 */
function makeNonsense(text: string): string {
  const parts = new RegExp(`${NO_WORDS.source}|\\p{Letter}`, 'gmu');
  return text.replace(parts, (part) => ([...part].length === 1 ? swapLetter(part) : part));
}

function swapLetter(letter: string): string {
  return LETTERS.charAt((letter.toLowerCase().codePointAt(0) ?? 0) % LETTERS.length);
}

/**
 * The demonstration school with its week in nonsense, and labels in the same: a content folder and a lessons folder of
 * this name inside `folder`. @param root The project's folder.
 */
export function writeNonsenseWeek(root: string, folder: string): void {
  const files = {
    'calendars/estuary.yaml': 'calendars/estuary.yaml',
    'gestures/estuary.yaml': 'gestures/estuary.yaml',
    'questions/estuary.yaml': 'questions/estuary.yaml',
    'schools/saltgrass-point.yaml': 'schools/saltgrass-point.yaml',
  };
  for (const room of ['calendars', 'gestures', 'questions', 'schools', 'labels']) {
    mkdirSync(join(folder, 'content', room), { recursive: true });
  }
  for (const file of Object.values(files)) {
    writeFileSync(join(folder, 'content', file), swapYaml(readFileSync(join(root, 'content', file), 'utf8')));
  }
  writeFileSync(join(folder, 'content/labels', `${NONSENSE_LANGUAGE}.yaml`), writeLabels());
  const week = join(root, 'lessons/round-moon');
  cpSync(week, join(folder, 'lessons/round-moon'), { recursive: true });
  for (const file of readdirSync(week)) {
    const text = readFileSync(join(week, file), 'utf8');
    const swapped = file.endsWith('.md') ? swapLesson(text) : swapYaml(text);
    writeFileSync(join(folder, 'lessons/round-moon', file), swapped);
  }
}

function writeLabels(): string {
  const labels = Object.entries(LABELS).map(([key, { english }]) => {
    const swapped =
      typeof english === 'string'
        ? makeNonsense(english)
        : { one: makeNonsense(english.one), other: makeNonsense(english.other) };
    return `  ${key}: ${JSON.stringify(swapped)}`;
  });
  return [`language: ${NONSENSE_LANGUAGE}`, 'labels:', ...labels, ''].join('\n');
}

function swapYaml(text: string): string {
  const document = parseDocument(text);
  visit(document, {
    Scalar(key, node, path) {
      if (key !== 'key' && typeof node.value === 'string') swapScalar(node, path);
    },
  });
  return document.toString({ lineWidth: 0 });
}

function swapScalar(node: Scalar, path: readonly unknown[]): void {
  const pair = path.findLast((each) => typeof each === 'object' && each !== null && 'key' in each && !isMap(each));
  const key = typeof pair === 'object' && pair !== null && 'key' in pair && isScalar(pair.key) ? pair.key.value : '';
  if (key === 'language') node.value = NONSENSE_LANGUAGE;
  else if (typeof key === 'string' && KEYS_OF_WORDS.has(key)) node.value = makeNonsense(String(node.value));
}

function swapLesson(text: string): string {
  const [, head = '', body = ''] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text) ?? [];
  const swapped = makeNonsense(body).replace(/\{[^{}]*\}/g, (attributes) =>
    attributes.replace(ATTRIBUTES_OF_WORDS, (_all, name: string, value: string) => `${name}="${makeNonsense(value)}"`),
  );
  return `---\n${swapYaml(head)}---\n${swapped}`;
}
