import { describe, expect, it } from 'vitest';
import { addObservation, renderObservation } from '../../src/content/add-observation.ts';

const SEEN = { date: '2026-07-15', night: 'Hidden Moon', by: 'seen from the jetty' };
const ENTRY = '{ date: 2026-07-15, night: Hidden Moon, by: "seen from the jetty" }';

/** Each text, and the same with the entry added: everything else is as it was, byte for byte. */
const ADDED = [
  ['no list yet', 'name: A # why\n\n# end\n', `name: A # why\n\n# end\nobservations:\n  - ${ENTRY}\n`],
  ['no line end at the end', 'name: A', `name: A\nobservations:\n  - ${ENTRY}\n`],
  ['lines that end in CR LF', 'name: A\r\nx: 1\r\n', `name: A\r\nx: 1\r\nobservations:\r\n  - ${ENTRY}\r\n`],
  ['a byte order mark', '\uFEFFname: A\n', `\uFEFFname: A\nobservations:\n  - ${ENTRY}\n`],
  ['a file that is indented', '  name: A\n  x: 1\n', `  name: A\n  x: 1\n  observations:\n    - ${ENTRY}\n`],
  [
    'a list of entries on lines, between other keys',
    'observations:   # seen\n- { date: 2026-01-01, night: X }   # cloudy\n\n# then\nname: A\n',
    `observations:   # seen\n- { date: 2026-01-01, night: X }   # cloudy\n- ${ENTRY}\n\n# then\nname: A\n`,
  ],
  [
    'entries over several lines',
    'observations:\n    - date: 2026-01-01\n      night: X # clear\n      by: >-\n        a\n        b\nname: A\n',
    `observations:\n    - date: 2026-01-01\n      night: X # clear\n      by: >-\n        a\n        b\n    - ${ENTRY}\nname: A\n`,
  ],
  [
    'a list that ends the file without a line end',
    'observations:\n  - { date: 2026-01-01, night: X }',
    `observations:\n  - { date: 2026-01-01, night: X }\n  - ${ENTRY}`,
  ],
  [
    'a list in brackets',
    'observations: [ { date: 2026-01-01, night: X } ] # seen\nname: A\n',
    `observations: [ { date: 2026-01-01, night: X }, ${ENTRY} ] # seen\nname: A\n`,
  ],
  [
    'a list in brackets over several lines, with a comma at the end',
    'observations: [\n  { date: 2026-01-01, night: X }, # one\n]\n',
    `observations: [\n  { date: 2026-01-01, night: X }, ${ENTRY}, # one\n]\n`,
  ],
  ['empty brackets', 'observations: []\nname: A\n', `observations: [${ENTRY}]\nname: A\n`],
] as const;

describe('addObservation', () => {
  it.each(ADDED)('adds to %s', (_, before, after) => {
    expect(addObservation(before, SEEN)).toBe(after);
  });

  it('adds again and again', () => {
    const once = addObservation('name: A\n', SEEN) ?? '';
    const twice = addObservation(once, { ...SEEN, date: '2026-08-13' });
    expect(twice).toBe(`${once}  - ${ENTRY.replace('07-15', '08-13')}\n`);
  });

  it.each([
    ['an alias', 'old: &old\n  - { date: 2026-01-01, night: X }\nobservations: *old\n'],
    ['a file in braces', '{ name: A }\n'],
    ['a document end', 'name: A\n...\n'],
    ['something else than a list', 'observations: none\n'],
  ])('gives way before %s', (_, text) => {
    expect(addObservation(text, SEEN)).toBeUndefined();
  });
});

describe('renderObservation', () => {
  it.each([
    ['Hidden Moon', 'Hidden Moon'],
    ['Nuit d’été', 'Nuit d’été'],
    ["Lune d'eau, haute", `"Lune d'eau, haute"`],
    ['True', '"True"'],
    ['7th night', '"7th night"'],
    ['A: b', '"A: b"'],
    ['A # b', '"A # b"'],
    ['- A', '"- A"'],
  ])('writes the night %s so that it is read back as text', (night, written) => {
    expect(renderObservation({ date: '2026-07-15', night })).toBe(`{ date: 2026-07-15, night: ${written} }`);
    expect(addObservation('name: A\n', { date: '2026-07-15', night, by: 'a "b" \\ c: # d' })).toBeDefined();
  });
});
