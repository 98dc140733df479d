import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadLibrary } from '../../src/content/library.ts';
import type { SourceFile } from '../../src/content/types.ts';

function load(root: string) {
  const read = (kind: string): SourceFile[] => {
    const folder = new URL(`../../${root}/${kind}/`, import.meta.url);
    const names = readdirSync(folder).filter((name) => name.endsWith('.yaml'));
    return names.sort().map((name) => ({ path: `${kind}/${name}`, text: readFileSync(new URL(name, folder), 'utf8') }));
  };
  return loadLibrary({
    calendars: read('calendars'),
    schools: read('schools'),
    gestures: read('gestures'),
    questions: read('questions'),
    labels: root === 'content' ? read('labels') : [],
  });
}

describe('loadLibrary', () => {
  it('gives checked content by id', () => {
    const { library, diagnostics } = load('tests/fixtures/content/good');
    expect(diagnostics).toEqual([]);
    expect([...library.calendars.keys()]).toEqual(['demo', 'other', 'third']);
    expect([...library.gestures.keys()]).toEqual(['demo']);
    expect([...library.questions.keys()]).toEqual(['demo']);
    expect(library.schools.get('saltgrass')).toMatchObject({ id: 'saltgrass', language: 'en', calendar: 'demo' });
  });

  it('leaves out what is faulty, and a school with its calendar', () => {
    const text = 'title: [';
    const school = readFileSync(new URL('../fixtures/content/good/schools/saltgrass.yaml', import.meta.url), 'utf8');
    const { library, diagnostics } = loadLibrary({
      calendars: [{ path: 'calendars/demo.yaml', text }],
      schools: [{ path: 'schools/saltgrass.yaml', text: school }],
      gestures: [{ path: 'gestures/demo.yaml', text }],
      questions: [],
      labels: [],
    });
    expect(library.calendars.size + library.schools.size + library.gestures.size).toBe(0);
    expect(diagnostics.map(({ rule, place }) => `${place.file} ${rule}`)).toEqual([
      'calendars/demo.yaml yaml-syntax',
      'gestures/demo.yaml yaml-syntax',
    ]);
  });

  it('finds nothing to say about the content of the kit', () => {
    const { diagnostics } = load('content');
    expect(diagnostics.map(({ place, message }) => `${place.file}:${place.line} ${message}`)).toEqual([]);
  });
});
