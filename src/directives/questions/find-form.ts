import type { QuestionSource } from '../../quiz/model.ts';
import type { ResolveContext } from '../definition.ts';
import { explainUnanswered } from './explain-unanswered.ts';
import type { QuestionItem } from './question-item.ts';
import { PAIR } from './read-match.ts';
import { reportQuestion } from './report-question.ts';

/** A form of a handwritten question. */
export type FormName = Exclude<QuestionSource['kind'], 'computed'>;

/** What messages call the part of an item that makes it a question of a form. */
const SIGNS: Readonly<Record<FormName, string>> = {
  choice: 'options with boxes',
  short: 'an answer in square brackets',
  open: '`rubric`',
  draw: '`draw`',
  order: 'a numbered list',
  match: 'a table of two columns',
};

/**
 * The form that an item is written in. Boxes and what `::answer` holds say it first; beside them, a numbered list or a
 * table is something to read. An item of no form or of two, or an attribute that does not go with the form, is reported.
 */
export function findForm(item: QuestionItem, context: ResolveContext): FormName | undefined {
  const said = listSaid(item);
  const forms = said.length > 0 ? said : listShown(item);
  const [form, second] = forms;
  if (form === undefined) {
    if (!reportUnfit(item, undefined, context)) explainUnanswered(item, context);
    return undefined;
  }
  if (second !== undefined) {
    const found = `${SIGNS[form]} and ${form === second ? 'another one' : SIGNS[second]} in one question`;
    const advice = 'keep the one that is meant, or make two questions of it';
    reportQuestion(context, item.place, found, 'one way to answer', advice);
    return undefined;
  }
  return reportUnfit(item, form, context) ? undefined : form;
}

function listSaid({ taskLists, answer }: QuestionItem): FormName[] {
  const forms: FormName[] = [];
  if (taskLists.length > 0) forms.push('choice');
  if (answer === undefined) return forms;
  if (answer.written.label !== '') forms.push('short');
  if (answer.values['rubric'] !== undefined) forms.push('open');
  if (answer.values['draw'] !== undefined) forms.push('draw');
  return forms;
}

function listShown({ numberedLists, tables }: QuestionItem): FormName[] {
  const pairs = tables.filter(({ children: [head] }) => head?.children.length === PAIR);
  return [...numberedLists.map(() => 'order' as const), ...pairs.map(() => 'match' as const)];
}

/** The attributes that go with one form only. */
const OWN_ATTRIBUTES: Readonly<Record<string, FormName>> = { accept: 'short', forgive: 'short', lines: 'open' };

function reportUnfit({ answer }: QuestionItem, form: FormName | undefined, context: ResolveContext): boolean {
  let unfit = false;
  for (const name of Object.keys(answer?.values ?? {})) {
    const owner = OWN_ATTRIBUTES[name];
    if (answer === undefined || owner === undefined || owner === form) continue;
    unfit = true;
    const found = `\`${name}\` in a question without ${SIGNS[owner]}`;
    const advice = form === undefined ? `write ${SIGNS[owner]} too` : 'take it out';
    reportQuestion(context, answer.written.attributePlace(name), found, `it beside ${SIGNS[owner]}`, advice);
  }
  return unfit;
}
