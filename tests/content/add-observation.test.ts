import { describe, expect, it } from 'vitest';
import { addObservation, renderObservation } from '../../src/content/add-observation.ts';

const SEEN = { date: '2026-07-15', night: 'Hidden Moon', by: 'seen from the jetty' };
/** The same, a line for each key. */
const LINES = ['date: 2026-07-15', 'night: Hidden Moon', 'by: "seen from the jetty"'];
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
    `observations:\n    - date: 2026-01-01\n      night: X # clear\n      by: >-\n        a\n        b\n    - ${LINES.join('\n      ')}\nname: A\n`,
  ],
  [
    'entries over several lines with a wide dash, without indent, with CR LF',
    'observations:\r\n-   date: 2026-01-01\r\n    night: X\r\nname: A\r\n',
    `observations:\r\n-   date: 2026-01-01\r\n    night: X\r\n-   ${LINES.join('\r\n    ')}\r\nname: A\r\n`,
  ],
  [
    'an entry whose keys stand under its dash',
    'observations:\n  -\n    date: 2026-01-01\n    night: X\n',
    `observations:\n  -\n    date: 2026-01-01\n    night: X\n  - ${ENTRY}\n`,
  ],
  [
    'entries of both kinds, after the last one’s',
    'observations:\n  - { date: 2026-01-01, night: X }\n  - night: Y\n    date: 2026-01-02',
    `observations:\n  - { date: 2026-01-01, night: X }\n  - night: Y\n    date: 2026-01-02\n  - ${LINES.join('\n    ')}`,
  ],
  [
    'an entry with a comment of its own below',
    'observations:\n  - date: 2026-01-01\n    night: X\n    # ask Aunt\n      # again\n  # the list\nname: A\n',
    `observations:\n  - date: 2026-01-01\n    night: X\n    # ask Aunt\n      # again\n  - ${LINES.join('\n    ')}\n  # the list\nname: A\n`,
  ],
  [
    'an entry in braces over two lines',
    'observations:\n  - { date: 2026-01-01,\n      night: X } # clear\nname: A\n',
    `observations:\n  - { date: 2026-01-01,\n      night: X } # clear\n  - ${ENTRY}\nname: A\n`,
  ],
  [
    'a list that ends in empty lines before the next key',
    'observations:\n  - { date: 2026-01-01, night: X }\n\n\nname: A\n',
    `observations:\n  - { date: 2026-01-01, night: X }\n  - ${ENTRY}\n\n\nname: A\n`,
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
    `observations: [\n  { date: 2026-01-01, night: X }, # one\n  ${ENTRY},\n]\n`,
  ],
  [
    'a list in brackets over several lines, without',
    'observations: [ # seen\r\n  { date: 2026-01-01, night: X },\r\n  { date: 2026-01-02, night: Y } # two\r\n] # end\r\n',
    `observations: [ # seen\r\n  { date: 2026-01-01, night: X },\r\n  { date: 2026-01-02, night: Y }, # two\r\n  ${ENTRY}\r\n] # end\r\n`,
  ],
  [
    'brackets that close on the line of the last entry',
    'observations: [{ date: 2026-01-01, night: X },\n  { date: 2026-01-02, night: Y }] # end\n',
    `observations: [{ date: 2026-01-01, night: X },\n  { date: 2026-01-02, night: Y }, ${ENTRY}] # end\n`,
  ],
  [
    'brackets with a bracket in a comment',
    'observations: [\n  { date: 2026-01-01, night: X } # ] not yet\n]\n',
    `observations: [\n  { date: 2026-01-01, night: X }, # ] not yet\n  ${ENTRY}\n]\n`,
  ],
  [
    'a text over several lines that ends the file',
    'name: A\nnote: |+\n  one\n\n',
    `name: A\nnote: |+\n  one\n\nobservations:\n  - ${ENTRY}\n`,
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
