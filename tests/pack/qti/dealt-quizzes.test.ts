import type { XmlElement } from '@rgrove/parse-xml';
import { describe, expect, it } from 'vitest';
import { resolveWeek } from '../../../src/lesson/resolve-week.ts';
import { sha256 } from '../../../src/node/sha256.ts';
import { zip } from '../../../src/node/zip.ts';
import { planQtiPackages } from '../../../src/pack/qti/plan-qti.ts';
import { readText } from '../../../src/quiz/fold-text.ts';
import type { KeyAnswer } from '../../../src/quiz/model.ts';
import { QUESTION_KINDS } from '../../../src/quiz/questions/question-kinds.ts';
import { DEMO_CONTENT, makeWeek, openContent, writeLesson } from '../../directives/build-week.ts';
import { listFaults, readDocuments } from './check-package.ts';
import { type Answer, scoreOf } from './mark-item.ts';
import { findAll } from './read-xml.ts';
import { readZip } from './read-zip.ts';
import { describeSchemas, findSchemaFolder, openSchemas } from './schemas.ts';

/** Every form of a handwritten question, with what XML and languages make hard. */
const WRITTEN = `
1. Why is 5 < 6 & "7" > 6?
   - [x] Because it *is*
   - [ ] Because of <tides>
     > Mixed up \`a < b\` & "b".
   - [ ] Tāne says so
2. Which two are groups of nights?
   - [x] Dark Water
   - [x] High Water
   - [ ] Deep Sand
3. What is tonight called?

   ::answer[Te Rā o l’Été]{accept="Half Shell; قمر" forgive=all}
4. Put them in order.
   1. first
   2. second
   3. third
5. What belongs together?

   | Night | Beats |
   | ----- | ----- |
   | one   | 1     |
   | two   | 2     |
   | three | 3     |

   ::answer{marks=6}
6. Why is it dark?

   ::answer{rubric="2: says that the Sun & Moon stand together; 1: names the Sun" lines=4}
7. Draw it.

   ::answer{draw=wednesday}
`;

const asked = Object.keys(QUESTION_KINDS).map((kind) => `::question{ask=${kind}}`);

/** A quiz of a lesson on Wednesday 29 July 2026 at a school of the demonstration. */
function packQuiz(body: string, school: string) {
  const lesson = writeLesson(`:::group-quiz[Nights & “days”]{groups=4}\n\n${body}\n\n:::`);
  const { week, diagnostics } = resolveWeek(
    makeWeek({ 'wednesday.md': lesson }, { school }),
    openContent(DEMO_CONTENT),
  );
  const errors = diagnostics.filter(({ severity }) => severity === 'error').map(({ message }) => message);
  if (week === undefined) throw new Error(errors.join('\n'));
  const [archive] = planQtiPackages(week, new Map(), { sha256, zip });
  const entries = readZip(archive?.content instanceof Uint8Array ? archive.content : new Uint8Array());
  const files = entries.map(({ path, bytes }) => ({ path, content: bytes }));
  const documents = readDocuments(files);
  const answers = (week.lessons[0]?.quizzes[0]?.key ?? []).flatMap(({ answers }, index) =>
    answers.map((answer) => {
      const item = documents.get(`paper-${index + 1}-question-${answer.number}.xml`);
      if (item === undefined) throw new Error('A question of the key has no item.');
      return { answer, item };
    }),
  );
  return { files, answers };
}

/** The identifier of the choice that reads or shows the same; the words of pictures stand in their alternatives. */
function findChoice(item: XmlElement, words: string): string[] {
  const read = (choice: XmlElement) => {
    const alternatives = findAll(choice, 'img').map(({ attributes }) => attributes['alt']);
    return (choice.text + alternatives.join('')).trim();
  };
  return findAll(item)
    .filter((each) => /-choice$/.test(each.name) && read(each) === words.trim())
    .map((each) => each.attributes['identifier'] ?? '');
}

/** What a tree says, pictures with their labels: a reader apart from the one that makes items. */
function sayContent(content: KeyAnswer['prompt']): string {
  return content
    .map((node) => {
      if (node.type !== 'element') return node.type === 'text' ? node.value : '';
      if (node.tagName !== 'svg') return sayContent(node.children);
      return String(node.properties['ariaLabel']);
    })
    .join('');
}

/** A text as it is typed: a key for spaces that do not break is on no keyboard. */
function typeWords(text: string): string {
  return text.replaceAll('\u00a0', ' ');
}

/** The rule of the key for what is partly right: half marks may come of it, smaller parts are dropped. */
function share(marks: number, points: number, most: number): number {
  return Math.floor((2 * marks * points) / most) / 2;
}

/** Answers to an item by the words of the key, each with the marks that the key's rule gives it. */
function listAnswers({ expected, marks }: KeyAnswer, item: XmlElement): { answer: Answer; worth: number }[] {
  switch (expected.kind) {
    case 'options': {
      const count = expected.options.filter(({ right }) => right).length;
      const single = expected.options.map(({ content, right }) => {
        return { answer: findChoice(item, sayContent(content)), worth: right ? share(marks, 1, count) : 0 };
      });
      const rights = expected.options
        .filter(({ right }) => right)
        .flatMap(({ content }) => findChoice(item, sayContent(content)));
      return [...single, { answer: rights, worth: marks }];
    }
    case 'line':
      return [
        ...expected.accepted.map((accepted) => ({ answer: [typeWords(readText(accepted))], worth: marks })),
        ...expected.slips.map(({ answer }) => ({ answer: [answer], worth: 0 })),
        { answer: ['?'], worth: 0 },
      ];
    case 'order': {
      const right = expected.items.flatMap(({ content }) => findChoice(item, sayContent(content)));
      const [first = '', second = '', ...others] = right;
      const places = right.length;
      const swapped = marks === 1 ? 0 : share(marks, places - 2, places);
      return [
        { answer: right, worth: marks },
        { answer: [second, first, ...others], worth: swapped },
      ];
    }
    case 'match': {
      const right = expected.pairs.map(({ left, right: { content } }) => {
        return [findChoice(item, sayContent(left))[0], findChoice(item, sayContent(content))[0]].join(' ');
      });
      return [
        { answer: right, worth: marks },
        { answer: right.slice(1), worth: share(marks, right.length - 1, right.length) },
      ];
    }
    default:
      return [];
  }
}

const folder = findSchemaFolder(process.env);
const schemas = folder === undefined ? undefined : openSchemas(folder);

describe.each([
  ['handwritten questions', WRITTEN, 'saltgrass-point'],
  ['computed questions of every kind', asked.join('\n\n'), 'saltgrass-point'],
  ['computed questions in French, in the north', asked.join('\n\n'), 'ormevire'],
])('%s', (_, body, school) => {
  const { files, answers } = packQuiz(body, school);

  it('are packed so that all holds together', () => {
    expect(listFaults(files)).toEqual([]);
  });

  it('are marked by their items as by the key', () => {
    let marked = 0;
    for (const { answer, item } of answers) {
      for (const given of listAnswers(answer, item)) {
        expect([answer.number, given.answer, scoreOf(item, given.answer)]).toEqual([
          answer.number,
          given.answer,
          given.worth,
        ]);
        marked += 1;
      }
    }
    expect(marked).toBeGreaterThan(answers.length);
  });

  it(`are held against ${describeSchemas(folder)}`, () => {
    if (schemas === undefined) {
      expect(describeSchemas(folder)).toContain('NOT HERE');
      return;
    }
    const faults = files
      .filter(({ path }) => path.endsWith('.xml'))
      .flatMap(({ path, content }) => {
        return schemas.judge(Buffer.from(content).toString()).map((fault) => `${path}: ${fault}`);
      });
    expect(faults).toEqual([]);
  });
});
