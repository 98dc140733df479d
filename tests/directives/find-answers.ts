/*
 * A search of its own for answers in learners' pages: it reads the author's Markdown, the key page and the page of the
 * learner as plain text, and shares no code with what makes them.
 */

/** What no learner's page may hold, whatever the lesson: signs of an answer, of the teacher, or of the source. */
export const SIGNS_OF_ANSWERS =
  /<!--|\sdata-|\schecked|ticked|aria-checked|<input|correct|\bworking\b|\bright-answer|teacher|key\.html|answer-key|\[x\]/i;

/** A page without its head, style and script, as text with one space between words. */
export function readPageText(html: string): string {
  return html
    .replace(/<(head|style|script)\b.*?<\/\1>/gs, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&#x3C;', '<')
    .replaceAll('&#x26;', '&')
    .replace(/\s+/g, ' ');
}

/** The sentences a page shows in elements of a class, as plain text. The element may hold no other of its own kind. */
export function listTextsOf(html: string, tag: string, className: string): string[] {
  const pattern = new RegExp(`<${tag}[^>]*class="[^"]*\\b${className}\\b[^"]*"[^>]*>(.*?)</${tag}>`, 'gs');
  return [...html.matchAll(pattern)].map(([, inner = '']) => readPageText(inner).trim());
}

/** Sentences of a text long enough to be told from chance. */
export function splitSentences(text: string): string[] {
  return text
    .split(/(?<=[.!?»”"])\s+/)
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence.length > 14);
}

/** What a lesson's Markdown keeps for the key, read line by line: answers, workings, hints, rubrics, what options mean. */
export function listWrittenAnswers(markdown: string): string[] {
  const lines = markdown.split(/\r?\n/);
  const answers = lines.filter((line) => line.trimStart().startsWith('::answer'));
  return [
    ...answers.flatMap((line) => [
      ...(/::answer\[([^\]]+)\]/.exec(line)?.slice(1) ?? []),
      ...splitList(/accept="([^"]+)"/.exec(line)?.[1]),
      ...(/working="([^"]+)"/.exec(line)?.slice(1) ?? []),
      ...(/hint="([^"]+)"/.exec(line)?.slice(1) ?? []),
      ...splitList(/rubric="([^"]+)"/.exec(line)?.[1]).map((row) => row.replace(/^\d+\s*:\s*/, '')),
    ]),
    ...listReasons(lines),
  ].filter((secret) => secret !== '');
}

function splitList(value = ''): string[] {
  return value.split(';').map((part) => part.trim());
}

/** Lines of quotations under options. */
function listReasons(lines: readonly string[]): string[] {
  let underOption = false;
  return lines.flatMap((line) => {
    if (line.trim() === '') return [];
    const [, reason] = /^\s+>\s*(.*)$/.exec(line) ?? [];
    if (reason === undefined) underOption = /^\s*- \[[ xX]\] /.test(line);
    return underOption && reason !== undefined ? [reason.replaceAll('*', '')] : [];
  });
}

/** Lists of options on a page, each option with its words and letter left out: all of a list must be the same. */
export function listOptionShells(html: string): string[][] {
  return [...dropPlainLists(html).matchAll(/<ul class="options[^"]*">(.*?)<\/ul>/gs)].map(([, list = '']) =>
    [...list.matchAll(/<li\b.*?<\/li>/gs)].map(([item]) =>
      item
        .replace(/(<div class="option">).*<\/div>/s, '$1</div>')
        .replace(/(<span class="letter">)[A-H] <\/span>/, '$1</span>'),
    ),
  );
}

/** Without lists inside of options, which have no class: only their ends would be taken for those of the options. */
function dropPlainLists(html: string): string {
  const without = html.replace(/<ul>(?:(?!<ul|<\/ul>).)*<\/ul>/gs, '');
  return without === html ? html : dropPlainLists(without);
}

/** Letters of the right options of each question with one right option, in the order of the key page. */
export function listRightLetters(key: string): string[] {
  return [...key.matchAll(/<ul class="key-options[^"]*">(.*?)<\/ul>/gs)].flatMap(([, list = '']) => {
    const right = /<li class="key-option is-right"><strong class="key-letter">([A-H])<\/strong>/g;
    const letters = [...list.matchAll(right)].map(([, letter = '']) => letter);
    return letters.length === 1 ? letters : [];
  });
}

/**
 * A page as it would be with everything that papers shuffle in the order of its words, and without letters. Drawings
 * count with their descriptions: what several of them share is written where the first of them stands.
 */
export function sortShuffled(html: string): string {
  const described = html.replace(
    /<svg\b[^>]*>.*?<\/svg>/gs,
    (drawing) => /aria-label="[^"]*"/.exec(drawing)?.[0] ?? '',
  );
  return described.replace(
    /(<ul class="(?:options|match-right)[^"]*">)(.*?)(<\/ul>)/gs,
    (_, begin: string, items: string, end: string) => {
      const sorted = items
        .replace(/<span class="letter">[A-H] <\/span>/g, '')
        .split(/(?=<li>)/)
        .sort();
      return begin + sorted.join('') + end;
    },
  );
}
