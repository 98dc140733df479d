import type { XmlElement } from '@rgrove/parse-xml';
import type { PackFile } from '../../../src/pack/pack-plan.ts';
import { findAll, findOne, listChildren, readXml, requireAttribute } from './read-xml.ts';

/** A name of XML without a colon (W3C, Namespaces in XML 1.0, NCName), as far as ASCII goes. */
const NC_NAME = /^[A-Za-z_][A-Za-z0-9._-]*$/;

/** The documents of a package by path; pictures left out. */
export function readDocuments(files: readonly PackFile[]): Map<string, XmlElement> {
  return new Map(files.flatMap(({ path, content }) => (path.endsWith('.xml') ? [[path, readXml(content)]] : [])));
}

/**
 * Our own checks of a package, beside the schemas: that everything named is there, and nothing else, and that right
 * answers and marks agree with themselves. Every fault is a line; none when all is well.
 */
export function listFaults(files: readonly PackFile[]): string[] {
  const documents = readDocuments(files);
  const manifest = documents.get('imsmanifest.xml');
  if (manifest === undefined) return ['no manifest'];
  return [
    ...checkManifest(manifest, files),
    ...[...documents].flatMap(([path, root]) => [
      ...checkTags(root).map((fault) => `${path}: ${fault}`),
      ...(root.name === 'qti-assessment-test' ? checkTest(root, documents) : []),
      ...(root.name === 'qti-assessment-item' ? checkItem(root).map((fault) => `${path}: ${fault}`) : []),
    ]),
    ...files.flatMap(({ path, content }) => (path.endsWith('.svg') ? checkDrawing(path, readXml(content)) : [])),
  ];
}

function checkManifest(manifest: XmlElement, files: readonly PackFile[]): string[] {
  const resources = findAll(manifest, 'resource');
  const identifiers = [manifest, ...resources].map((each) => requireAttribute(each, 'identifier'));
  const listed = findAll(manifest, 'file').map((file) => requireAttribute(file, 'href'));
  const packed = files.map(({ path }) => path).filter((path) => path !== 'imsmanifest.xml');
  const needed = findAll(manifest, 'dependency').map((each) => requireAttribute(each, 'identifierref'));
  return [
    ...listTwice(identifiers).map((each) => `two resources are ${each}`),
    ...listTwice(listed).map((each) => `${each} is listed twice`),
    ...identifiers.filter((each) => !NC_NAME.test(each)).map((each) => `${each} is no name`),
    ...needed.filter((each) => !identifiers.includes(each)).map((each) => `nothing is ${each}`),
    ...listed.filter((path) => !packed.includes(path)).map((path) => `${path} is not there`),
    ...packed.filter((path) => !listed.includes(path)).map((path) => `${path} is not listed`),
    ...packed.filter((path) => !/^[a-z0-9./-]+$/.test(path)).map((path) => `${path} is no plain path`),
    ...resources.flatMap((each) => checkDependencies(each, resources, files)),
  ];
}

/** A resource needs exactly what its document points at. */
function checkDependencies(
  resource: XmlElement,
  resources: readonly XmlElement[],
  files: readonly PackFile[],
): string[] {
  const path = requireAttribute(resource, 'href');
  const file = files.find((each) => each.path === path);
  if (file === undefined || !path.endsWith('.xml')) return [];
  const document = readXml(file.content);
  const pointed = [
    ...findAll(document, 'img').map((each) => requireAttribute(each, 'src')),
    ...findAll(document, 'qti-assessment-item-ref').map((each) => requireAttribute(each, 'href')),
  ];
  const needed = findAll(resource, 'dependency').map((each) => {
    const found = resources.find((other) => other.attributes['identifier'] === each.attributes['identifierref']);
    return found?.attributes['href'] ?? '';
  });
  const differing = [
    ...pointed.filter((each) => !needed.includes(each)),
    ...needed.filter((each) => !pointed.includes(each)),
  ];
  return differing.map((each) => `${path} and its resource differ over ${each}`);
}

function checkTest(test: XmlElement, documents: ReadonlyMap<string, XmlElement>): string[] {
  return findAll(test, 'qti-assessment-item-ref').flatMap((reference) => {
    const item = documents.get(requireAttribute(reference, 'href'));
    const same = item?.attributes['identifier'] === reference.attributes['identifier'];
    return same ? [] : [`${reference.attributes['href']} is not the item named`];
  });
}

function checkItem(item: XmlElement): string[] {
  const declaration = findOne(item, 'qti-response-declaration');
  const interactions = findAll(item).filter(({ name }) => name.endsWith('-interaction'));
  const choices = findAll(item).filter(({ attributes, name }) => /-choice$/.test(name) && attributes['identifier']);
  const names = choices.map((each) => requireAttribute(each, 'identifier'));
  const isNamed = declaration.attributes['base-type'] !== 'string';
  const answers = [
    ...findAll(declaration, 'qti-value').map(({ text }) => text),
    ...findAll(declaration, 'qti-map-entry').map((each) => requireAttribute(each, 'map-key')),
  ].flatMap((answer) => (isNamed ? answer.split(' ') : []));
  const outcomes = findAll(item, 'qti-outcome-declaration');
  const read = (name: string) => outcomes.find(({ attributes }) => attributes['identifier'] === name);
  const feedback = findAll(item, 'qti-modal-feedback');
  const most = Number(read('MAXSCORE')?.text);
  return [
    ...(interactions.length === 1 ? [] : [`${interactions.length} interactions`]),
    ...listTwice(names).map((each) => `two choices are ${each}`),
    ...answers.filter((each) => !names.includes(each)).map((each) => `${each} is no choice`),
    ...(most > 0 && Number(read('SCORE')?.attributes['normal-maximum']) === most ? [] : ['marks differ']),
    ...(feedback.length > 0 && read('FEEDBACK') === undefined ? ['feedback without an outcome'] : []),
    ...interactions
      .filter(({ attributes }) => attributes['response-identifier'] !== declaration.attributes['identifier'])
      .map(({ name }) => `${name} answers to nothing`),
  ];
}

/** What no document of ours may hold. */
function checkTags(root: XmlElement): string[] {
  return [root, ...findAll(root)].flatMap(({ name, attributes }) => [
    ...(['svg', 'script', 'style', 'input'].includes(name) ? [`<${name}>`] : []),
    ...Object.keys(attributes).flatMap((key) => (/^(data-|on|style$|class$)/.test(key) ? [`${name} has ${key}`] : [])),
    ...(name === 'img' && attributes['alt'] === undefined ? ['a picture without words'] : []),
  ]);
}

/** A drawing stands alone: with its namespace, and without styles, words or anything from elsewhere. */
function checkDrawing(path: string, root: XmlElement): string[] {
  const alone = root.name === 'svg' && root.attributes['xmlns'] === 'http://www.w3.org/2000/svg';
  return [
    ...(alone && root.text.trim() === '' ? [] : [`${path} does not stand alone`]),
    ...[root, ...findAll(root)].flatMap(({ name, attributes }) =>
      Object.keys(attributes)
        .filter((key) => /[A-Z]/.test(key) && !['viewBox', 'preserveAspectRatio'].includes(key))
        .map((key) => `${path}: ${name} has ${key}`),
    ),
    ...(listChildren(root).length > 0 ? [] : [`${path} is empty`]),
  ];
}

function listTwice(values: readonly string[]): string[] {
  return values.filter((value, index) => values.indexOf(value) !== index);
}
