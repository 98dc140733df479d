import type { RuleId } from '../../src/content/diagnostic.ts';
import { STAR_NAMES } from '../../src/content/star-catalogue.ts';
import { writeDirectiveName } from '../../src/directives/check-attributes.ts';
import type { AttributeSchema, DirectiveSyntax } from '../../src/directives/definition.ts';
import { CALENDAR_CHECKS, type CalendarCheck } from '../../src/directives/questions/calendar-checks.ts';
import { QUESTION_KINDS } from '../../src/quiz/questions/question-kinds.ts';

/** What each kind of message means, for authors. */
const RULES: Readonly<Record<RuleId, string>> = {
  'text-encoding': 'A file is not saved as UTF-8, or is no text: its letters cannot be known.',
  'yaml-syntax':
    'The lines between the dashes, or a file that ends in `.yaml`, cannot be read: often a missing space or quote.',
  'unknown-key': 'A line begins with a word that does not belong there.',
  'missing-key': 'A line that must be there is not.',
  'wrong-value': 'A line holds something else than it may.',
  'repeated-name': 'Two things have the same name.',
  'unknown-reference': 'A name stands for nothing: no such school, calendar, gesture or question.',
  observation: 'What was seen or announced cannot be, or contradicts something else that was.',
  'missing-file': 'A picture, a recording, or the lesson of a day, is not there.',
  'media-file': 'A picture or a recording cannot be used as it is: another kind of file, too large, or not whole.',
  'gestures-alike': 'Two gestures look the same when they are drawn.',
  'front-matter': 'A lesson does not begin with its lines between dashes.',
  nesting: 'Quotations, lists, blocks or emphasis stand in one another too deep.',
  'directive-syntax': 'A directive is not written as it must be.',
  'directive-unclosed': 'A block has no closing line, or lost it to another block.',
  'directive-unknown': 'There is no directive of this name.',
  'directive-place': 'A directive stands where it may not, or is written with too many or too few colons.',
  'attribute-unknown': 'Something in braces does not belong to this directive.',
  'attribute-repeated': 'Something stands in braces twice.',
  'attribute-missing': 'Something that must stand in braces does not.',
  'attribute-value': 'A value in braces is not one of those it may be.',
  'label-missing': 'The fixed words of a pack are not there in the language of the school; they will be in English.',
  'html-left-out': 'HTML is not taken over; write it in Markdown.',
  'link-broken': 'A link leads nowhere, or out of the learners’ pages; or a picture is on the web.',
  'step-minutes':
    'The minutes of the steps do not add up to those of the lesson, or runs on the beat take longer than their step.',
  'quiz-question': 'A question cannot be asked or marked as it is.',
  'date-range': 'A date does not exist, is no Monday, or lies outside of what is computed.',
  'output-changed':
    'The place of the pack holds files that are not of the kit, or is one of your own folders; nothing was overwritten.',
  'learner-leak':
    'Something that only the key or the teacher may have stands in a file for learners, or a file tells of a person or a place.',
};

/** The authors' reference: the hand-written text with what the kit's own registries say of themselves filled in. */
export function writeReference(handWritten: string, directives: readonly DirectiveSyntax[]): string {
  const rules = Object.entries(RULES).map(([rule, meaning]) => `| \`${rule}\` | ${meaning} |`);
  return handWritten
    .replace('<!-- stars -->', STAR_NAMES.join(', '))
    .replace('<!-- checks -->\n', () => writeChecks())
    .replace('<!-- kinds -->\n', () => writeKinds())
    .replace('<!-- directives -->\n', () => directives.map(writeDirective).join('\n'))
    .replace('<!-- rules -->\n', () => ['| word | what was found |', '| --- | --- |', ...rules, ''].join('\n'));
}

/** What stands after the word of a check. */
const ARGUMENTS: Readonly<Record<CalendarCheck['takes'], string>> = { day: ' DAY', night: ' NIGHT', nothing: '' };

const COMPARED: Readonly<Record<CalendarCheck['of'], string>> = {
  answer: 'options or a short answer',
  order: 'things to put in order',
  match: 'pairs',
};

function writeChecks(): string {
  const rows = Object.entries(CALENDAR_CHECKS).map(([word, { takes, of, about }]) => [
    `\`${word}${ARGUMENTS[takes]}\``,
    COMPARED[of],
    about,
  ]);
  return writeTable(['`check`', 'for', 'the right answer is'], rows);
}

function writeKinds(): string {
  const rows = Object.entries(QUESTION_KINDS).map(([ask, { about, levels }]) => [`\`${ask}\``, about, ...levels]);
  return writeTable(['`ask`', 'what is asked', 'level 1', 'level 2', 'level 3'], rows);
}

function writeTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const lines = [head, head.map(() => '---'), ...rows];
  return lines.map((cells) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |\n`).join('');
}

function writeDirective(directive: DirectiveSyntax): string {
  const { name, forms, about, example, attributes } = directive;
  const written = forms.map((form) => `\`${writeDirectiveName(name, form)}\``).join(' or ');
  return [
    `### ${name}`,
    '',
    about,
    '',
    '````markdown',
    example,
    '````',
    '',
    `- Written ${written}.`,
    `- In square brackets: ${writeLabel(directive)}`,
    `- Where: ${writePlace(directive)}`,
    `- In braces: ${Object.keys(attributes).length === 0 ? 'nothing.' : 'as follows.'}`,
    '',
    ...writeAttributes(attributes),
  ].join('\n');
}

function writeLabel({ label }: DirectiveSyntax): string {
  if (label.use === 'none') return 'nothing.';
  const about = label.about ?? 'a text';
  return label.use === 'required' ? `${about}; it must be there.` : `${about}; may be left out.`;
}

function writePlace({ inside, notInside }: DirectiveSyntax): string {
  const names = (list: readonly string[]) =>
    list
      .map((each) => `\`${each}\``)
      .join(', ')
      .replace(/, ([^,]*)$/, ' or $1');
  if (inside !== undefined) return `only inside ${names(inside)}.`;
  return notInside === undefined ? 'anywhere.' : `anywhere but inside ${names(notInside)}.`;
}

function writeAttributes(attributes: DirectiveSyntax['attributes']): string[] {
  const rows = Object.entries(attributes).map(([name, schema]) => {
    const cells = [
      `\`${name}\``,
      writeValues(schema),
      `${schema.about}${schema.required === true ? '; must be there' : ''}`,
    ];
    return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  });
  return rows.length === 0 ? [] : ['| in braces | may be | what it does |', '| --- | --- | --- |', ...rows, ''];
}

function writeValues(schema: AttributeSchema): string {
  switch (schema.type) {
    case 'text':
      return 'text';
    case 'integer':
      return `a whole number from ${schema.min} to ${schema.max}`;
    case 'choice':
      return schema.values.map((value) => `\`${value}\``).join(', ');
    case 'day':
      return 'a day of the week that is taught, such as `friday`';
    case 'night':
      return 'the name of a night';
  }
}
