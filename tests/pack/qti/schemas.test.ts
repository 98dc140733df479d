import { beforeAll, describe, expect, it } from 'vitest';
import { createLabels } from '../../../src/content/labels.ts';
import { renderQtiPackage } from '../../../src/pack/qti/qti-package.ts';
import { buildQuiz, EVERY_KIND } from './sample-quiz.ts';
import { describeSchemas, findSchemaFolder, openSchemas, type SchemaJudge } from './schemas.ts';

const files = renderQtiPackage(buildQuiz(EVERY_KIND, ['Heron', 'بلشون']), {
  identifier: 'quiz-0123456789ab',
  labels: createLabels('en'),
  pictures: new Map([['my tide.PNG', new Uint8Array(1)]]),
});
const documents = files.flatMap(({ path, content }) =>
  path.endsWith('.xml') ? [[path, String(content)] as const] : [],
);

const folder = findSchemaFolder(process.env);

describe(describeSchemas(folder), () => {
  if (folder === undefined) {
    it('says so, and what that leaves out', () => {
      expect(describeSchemas(folder)).toContain('NOT HERE');
    });
    return;
  }

  let schemas: SchemaJudge;
  beforeAll(() => {
    schemas = openSchemas(folder);
  });

  it.each(documents)('find nothing against %s', (_, xml) => {
    expect(schemas.judge(xml)).toEqual([]);
  });

  it('would find what is wrong', () => {
    const [item = ''] = documents.flatMap(([path, xml]) => (path === 'paper-1-question-1.xml' ? [xml] : []));
    expect(schemas.judge(item.replace('<qti-prompt>', '<qti-prompt data-answer="A">'))).toEqual([
      expect.stringContaining("attribute 'data-answer'"),
    ]);
    expect(schemas.judge(item.replace('identifier="choice-1"', 'identifier="1"'))).not.toEqual([]);
    const manifest = documents[0]?.[1] ?? '';
    expect(schemas.judge(manifest.replace('<organizations/>', ''))).not.toEqual([]);
  });
});

describe('the folder of the schemas', () => {
  it('is an error where it is named and they are not in it', () => {
    expect(() => findSchemaFolder({ QTI3_SCHEMAS: '/nowhere' })).toThrow('QTI3_SCHEMAS is /nowhere');
  });
});
