import type { Labels } from '../../content/labels.ts';
import type { KeyPaper, LearnerPaper, QuizSheet } from '../../quiz/model.ts';
import type { PackFile } from '../pack-plan.ts';
import type { ItemContext } from './item-parts.ts';
import { createPictureStore } from './picture-store.ts';
import { printXml } from './print-xml.ts';
import { nameItem, namePaper, namePicture, type PackagePart } from './qti-names.ts';
import { renderItem } from './render-item.ts';
import { type PackageResource, renderManifest } from './render-manifest.ts';
import { renderTest } from './render-test.ts';
import type { XmlElement } from './xml-element.ts';

/** What a package is made with. */
export interface PackageSetting {
  /** The identifier of the quiz. */
  readonly identifier: string;
  readonly labels: Labels;
  /** Picture files that questions may show, by their name in the `images` folders of the pack. */
  readonly pictures: ReadonlyMap<string, Uint8Array>;
}

/** A group's part of a quiz. */
interface GroupPart {
  /** From 1, in the order of the groups. */
  readonly place: number;
  readonly paper: LearnerPaper;
  readonly key: KeyPaper;
}

/** An item or a test before it is text. */
interface Document {
  readonly part: PackagePart;
  readonly root: XmlElement;
  /** Identifiers of items that it does not work without. */
  readonly items: readonly string[];
}

const MANIFEST_PATH = 'imsmanifest.xml';

/** All files of the package of a quiz for assessment tools, the manifest first. It holds the answers. */
export function renderQtiPackage(quiz: QuizSheet, { identifier, labels, pictures }: PackageSetting): PackFile[] {
  const store = createPictureStore(pictures);
  const documents = quiz.papers.flatMap((paper, index) => {
    const key = quiz.key[index];
    if (key === undefined) throw new Error(`The paper of ${paper.group} has no key.`);
    return renderPaper({ place: index + 1, paper, key }, identifier, { labels, pictures: store });
  });
  const shown = store.list();
  const manifest = renderManifest(
    { identifier: `${identifier}-package`, title: quiz.title, language: labels.language },
    [
      ...documents.map((document) => describeDocument(document, identifier)),
      ...shown.map(({ path }): PackageResource => {
        return { identifier: namePicture(identifier, path), type: 'webcontent', path, needs: [] };
      }),
    ],
  );
  return [
    { path: MANIFEST_PATH, content: printXml(manifest) },
    ...documents.map(({ part, root }) => ({ path: part.path, content: printXml(root) })),
    ...shown,
  ];
}

/** A test and its items. */
function renderPaper({ place, paper, key }: GroupPart, quiz: string, context: ItemContext): Document[] {
  const heading = `${context.labels.text('quiz-group')} ${paper.group}`;
  const title = `${paper.title} · ${heading}`;
  const items = paper.questions.map((question, index): Document => {
    const answer = key.answers[index];
    if (answer === undefined) throw new Error(`Question ${question.number} of ${paper.group} has no answer.`);
    const part = nameItem(quiz, place, question.number);
    const name = { identifier: part.identifier, title: `${title} · ${question.number}` };
    return { part, root: renderItem(question, answer, name, context), items: [] };
  });
  const part = namePaper(quiz, place, paper.group);
  const parts = items.map((item) => item.part);
  const root = renderTest(paper, { identifier: part.identifier, title, heading, items: parts }, context);
  return [{ part, root, items: parts.map(({ identifier }) => identifier) }, ...items];
}

function describeDocument({ part, root, items }: Document, quiz: string): PackageResource {
  const pictures = listPictures(root).map((path) => namePicture(quiz, path));
  const type = root.name === 'qti-assessment-test' ? 'imsqti_test_xmlv3p0' : 'imsqti_item_xmlv3p0';
  return { ...part, type, needs: [...items, ...new Set(pictures)] };
}

/** Paths of all pictures that stand in an element, in order. */
function listPictures({ name, attributes, children }: XmlElement): string[] {
  if (name === 'img') return [attributes['src'] ?? ''];
  return children.flatMap((child) => (typeof child === 'string' ? [] : listPictures(child)));
}
