import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { XmlDocument, XmlValidateError, XsdValidator } from 'libxml2-wasm';
import { xmlRegisterFsInputProviders } from 'libxml2-wasm/lib/nodejs.mjs';

/** Where the schemas may lie: the folder that a variable of the environment names, else one beside the project. */
const BESIDE = join(import.meta.dirname, '../../../../shared/reference/qti3-xsd');

/** The schemas of 1EdTech: of items and tests, and of manifests. */
const ITEMS = 'qtiv3p0/imsqti_asiv3p0_sbacv1p0_v1p0.xsd';
const MANIFESTS = 'qtiv3p0/imsqtiv3p0_imscpv1p2_v1p0.xsd';

/** Holds documents against the schemas. */
export interface SchemaJudge {
  /** What a schema says against a document, a line a fault; none when it is valid. */
  judge(xml: string): string[];
}

/**
 * The folder of the schemas; nothing where there is none.
 * @throws Error when `QTI3_SCHEMAS` names a folder without them.
 */
export function findSchemaFolder(environment: Readonly<Record<string, string | undefined>>): string | undefined {
  const named = environment['QTI3_SCHEMAS'] || undefined;
  if (named !== undefined && !existsSync(join(named, ITEMS))) {
    throw new Error(`QTI3_SCHEMAS is ${named}, where ${ITEMS} is not.`);
  }
  return named ?? (existsSync(join(BESIDE, ITEMS)) ? BESIDE : undefined);
}

/** What the title of the tests says of the schemas. */
export function describeSchemas(folder: string | undefined): string {
  return folder === undefined
    ? 'the schemas of QTI 3.0 are NOT HERE (QTI3_SCHEMAS names their folder): only our own checks were made'
    : 'the schemas of QTI 3.0 (1EdTech)';
}

/** Reads the schemas with libxml2; it takes some seconds. */
export function openSchemas(folder: string): SchemaJudge {
  xmlRegisterFsInputProviders();
  const open = (path: string) => {
    const url = join(folder, path);
    return XsdValidator.fromDoc(XmlDocument.fromBuffer(readFileSync(url), { url }));
  };
  const [items, manifests] = [open(ITEMS), open(MANIFESTS)];
  return {
    judge(xml) {
      const document = XmlDocument.fromString(xml);
      try {
        (document.root.name === 'manifest' ? manifests : items).validate(document);
        return [];
      } catch (error) {
        if (!(error instanceof XmlValidateError)) throw error;
        return error.details.map(({ message }) => message.trim());
      } finally {
        document.dispose();
      }
    },
  };
}
