import { type XmlElement, xmlElement } from './xml-element.ts';

/** Namespaces of the manifest: content packaging as QTI 3.0 profiles it, and learning object metadata. */
const PACKAGE_NAMESPACE = 'http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1';
const METADATA_NAMESPACE = 'http://ltsc.ieee.org/xsd/LOM';

/** What a file of a package is, as the standard words it. */
export type ResourceType = 'imsqti_test_xmlv3p0' | 'imsqti_item_xmlv3p0' | 'webcontent';

/** A file of a package, with the files it does not work without. */
export interface PackageResource {
  readonly identifier: string;
  readonly type: ResourceType;
  readonly path: string;
  /** Identifiers of other resources. */
  readonly needs: readonly string[];
}

/** What a package is called. */
export interface PackageName {
  readonly identifier: string;
  readonly title: string;
  /** BCP 47 tag of the title. */
  readonly language: string;
}

/** The manifest of a package: every other file of it, once. */
export function renderManifest(
  { identifier, title, language }: PackageName,
  resources: readonly PackageResource[],
): XmlElement {
  return xmlElement('manifest', { xmlns: PACKAGE_NAMESPACE, identifier }, [
    xmlElement('metadata', {}, [
      xmlElement('schema', {}, ['QTI Package']),
      xmlElement('schemaversion', {}, ['3.0.0']),
      renderMetadata(title, language),
    ]),
    xmlElement('organizations'),
    xmlElement('resources', {}, resources.map(renderResource)),
  ]);
}

function renderMetadata(title: string, language: string): XmlElement {
  return xmlElement('lom', { xmlns: METADATA_NAMESPACE }, [
    xmlElement('general', {}, [
      xmlElement('title', {}, [xmlElement('string', { language }, [title])]),
      xmlElement('language', {}, [language]),
    ]),
  ]);
}

function renderResource({ identifier, type, path, needs }: PackageResource): XmlElement {
  return xmlElement('resource', { identifier, type, href: path }, [
    xmlElement('file', { href: path }),
    ...needs.map((identifierref) => xmlElement('dependency', { identifierref })),
  ]);
}
