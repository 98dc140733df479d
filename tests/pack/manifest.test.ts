import Ajv2020 from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { sha256 } from '../../src/node/sha256.ts';
import { MANIFEST_SCHEMA, type Manifest, planManifest } from '../../src/pack/manifest.ts';
import { buildFakeWeek, type FakeWeekOptions } from './fake-week.ts';

const validate = new Ajv2020({ strict: true }).compile(JSON.parse(String(MANIFEST_SCHEMA.content)));

function readManifest(paths: readonly string[], options?: FakeWeekOptions): Manifest {
  const files = paths.map((path) => ({ path, content: path }));
  return JSON.parse(String(planManifest(buildFakeWeek(options), files, sha256).content));
}

const GOOD = readManifest(['index.html', 'learners/index.html']);

const BAD: readonly (readonly [string, unknown])[] = [
  ['a key more', { ...GOOD, author: 'Somebody' }],
  ['no title', { ...GOOD, title: undefined }],
  ['an empty title', { ...GOOD, title: '' }],
  ['another version', { ...GOOD, formatVersion: 2 }],
  ['another schema', { ...GOOD, $schema: 'https://example.org/pack.json' }],
  ['a language that is none', { ...GOOD, language: 'en_NZ' }],
  ['a calendar that says nothing of sharing', { ...GOOD, calendar: { ...GOOD.calendar, sharing: undefined } }],
  ['no lesson', { ...GOOD, lessons: [] }],
  ['a date that is none', { ...GOOD, lessons: [{ title: 'A', date: '2026-13-01', page: 'a.html' }] }],
  ...['../key.html', '/key.html', 'a/../../key.html', 'a\\b', 'C:/key.html', '', 'a//b', './a'].map(
    (path) => [`the path ${path}`, { ...GOOD, files: [{ ...GOOD.files[0], path }] }] as const,
  ),
  ['a file twice', { ...GOOD, files: [GOOD.files[0], GOOD.files[0]] }],
  ['a size that is none', { ...GOOD, files: [{ ...GOOD.files[0], bytes: 1.5 }] }],
  ['a digest in capitals', { ...GOOD, files: [{ ...GOOD.files[0], sha256: 'A'.repeat(64) }] }],
  ['a reader nobody knows', { ...GOOD, files: [{ ...GOOD.files[0], for: 'parent' }] }],
];

describe('planManifest', () => {
  it('names its schema, which lies beside it', () => {
    expect(GOOD.$schema).toBe(MANIFEST_SCHEMA.path);
    expect(MANIFEST_SCHEMA.path).not.toContain('/');
  });

  it.each([
    [
      'pictures with names of all kinds',
      ['images/été (1).png', 'images/a:b.png', 'images/..hidden.png', 'images/🌘.png'],
    ],
    ['a file in folders', ['learners/sound/beat-60-1.wav', 'fonts/OFL.txt']],
  ])('keeps to its schema with %s', (_what, paths) => {
    expect(validate(readManifest(paths)), JSON.stringify(validate.errors)).toBe(true);
  });

  it.each(['en', 'zh-Hant-TW', 'x-creek', 'sl-rozaj-biske-1994'])(
    'keeps to its schema with names in %s',
    (language) => {
      expect(validate(readManifest(['index.html'], { calendar: { language, sharing: 'school' } }))).toBe(true);
    },
  );

  it.each(BAD)('has a schema that refuses %s', (_what, manifest) => {
    expect(validate(JSON.parse(JSON.stringify(manifest)))).toBe(false);
  });
});
