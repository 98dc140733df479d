import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { getLabelEntry, LABEL_KEYS } from '../../src/content/label-catalogue.ts';
import { createLabels } from '../../src/content/labels.ts';
import { parseLabelFile } from '../../src/content/parse-label-file.ts';
import { findPlaceholders } from '../../src/content/template.ts';

const FOLDER = new URL('../../content/labels/', import.meta.url);
const files = readdirSync(FOLDER).map((name) => ({
  path: `content/labels/${name}`,
  text: readFileSync(new URL(name, FOLDER), 'utf8'),
}));

function listErrors(text: string): string[] {
  const { diagnostics } = parseLabelFile({ path: 'labels/fr.yaml', text });
  return diagnostics.flatMap(({ rule, message, place }) =>
    rule === 'label-missing' ? [] : [`${place.line}:${place.column} ${rule} ${message}`],
  );
}

describe('the label files of the kit', () => {
  it('include French', () => {
    expect(files.map(({ path }) => path)).toContain('content/labels/fr.yaml');
  });

  it.each(files)('$path is complete and agrees with the catalogue', (file) => {
    // A message here names the labels to add to the file.
    expect(parseLabelFile(file).diagnostics.map(({ place, message }) => `${place.line}: ${message}`)).toEqual([]);
  });

  it('say French dates and times as they are said', () => {
    const file = files.find(({ path }) => path.endsWith('/fr.yaml'));
    const value = file && parseLabelFile(file).value;
    if (value === undefined) throw new Error('No French labels.');
    const labels = createLabels('fr', value);
    expect(labels.date('2026-07-29', 'long').replaceAll('\u00A0', ' ')).toBe('mercredi 29 juillet 2026');
    expect(labels.date('2026-08-01', 'day').replaceAll('\u00A0', ' ')).toBe('samedi 1er août');
    expect(labels.clock('17:25')).toBe('17\u00A0h\u00A025');
    expect(labels.phase('full-moon')).toBe('pleine Lune');
  });
});

describe('the catalogue', () => {
  it('has words, a description and well-formed placeholders for every key', () => {
    for (const key of LABEL_KEYS) {
      const { english, about } = getLabelEntry(key);
      const forms = typeof english === 'string' ? [english] : [english.one, english.other];
      expect(key).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(about, key).not.toBe('');
      for (const form of forms) {
        expect(form.trim(), key).toBe(form);
        expect(form, key).not.toBe('');
        expect(form.replace(/\{[a-z][a-z0-9-]*\}/g, ''), key).not.toMatch(/[{}]/);
      }
      if (typeof english !== 'string') expect(findPlaceholders(english.other), key).toContain('n');
    }
  });
});

describe('parseLabelFile', () => {
  it('warns once of all missing labels and keeps the file', () => {
    const { value, diagnostics } = parseLabelFile({
      path: 'labels/fr.yaml',
      text: 'language: fr\nlabels: { today: Auj }\n',
    });
    expect(value).toEqual({ id: 'fr', language: 'fr', labels: { today: 'Auj' } });
    expect(diagnostics.map(({ rule, severity }) => [rule, severity])).toEqual([['label-missing', 'warning']]);
    const [missing] = diagnostics;
    expect(missing?.message).toMatch(/^`labels`: \d+ labels are missing and will be English; add `weekday-monday`, /);
    expect(missing?.message).toContain(`and ${LABEL_KEYS.length - 13} more (all are in \`check --json\`).`);
    expect(missing?.expected?.split(', ')).toEqual(LABEL_KEYS.filter((key) => key !== 'today'));
  });

  it('names a few missing labels in full', () => {
    const [french] = files;
    const text = french?.text.replace(/^ {2}(?:today|tonight):.*\n/gm, '') ?? '';
    expect(parseLabelFile({ path: 'labels/fr.yaml', text }).diagnostics.map(({ message }) => message)).toEqual([
      '`labels`: 2 labels are missing and will be English; add `today`, `tonight`.',
    ]);
  });

  it('refuses unknown labels, with a near miss', () => {
    expect(listErrors('language: fr\nlabels:\n  tonigth: x\n  zzzzzz: y\n')).toEqual([
      '3:3 unknown-key `labels.tonigth`: the label `tonigth` is not known; did you mean `tonight`?',
      '4:3 unknown-key `labels.zzzzzz`: the label `zzzzzz` is not known; use a label of the kit or remove it.',
    ]);
  });

  it('refuses placeholders the English lacks and asks for those it has', () => {
    expect(listErrors('language: fr\nlabels:\n  night-of-month: "nuit {n} {total}"\n  today: "{n}"\n')).toEqual([
      '3:19 wrong-value `labels.night-of-month`: `{total}` is not known here, expected one of `{n}`, `{length}`; remove or correct it.',
      '3:19 wrong-value `labels.night-of-month`: `{length}` is missing, expected it as in the English `night {n} of {length}`; add it.',
      '4:10 wrong-value `labels.today`: `{n}` is not known here, expected no placeholder; remove or correct it.',
    ]);
  });

  it('lets the form for one do without the number, but not the general form', () => {
    expect(listErrors('language: fr\nlabels:\n  minutes: { one: "une minute", other: "{n} minutes" }\n')).toEqual([]);
    expect(listErrors('language: fr\nlabels:\n  minutes: "{n} min"\n')).toEqual([]);
    expect(listErrors('language: fr\nlabels:\n  minutes: { one: "une minute", other: "des minutes" }\n')).toEqual([
      '3:40 wrong-value `labels.minutes.other`: `{n}` is missing, expected it as in the English `{n} minutes`; add it.',
    ]);
  });

  it('takes any of the placeholders of a time of day', () => {
    expect(listErrors('language: fr\nlabels:\n  clock: "{hh}h{mm}"\n')).toEqual([]);
    expect(listErrors('language: fr\nlabels:\n  clock: "{hours}"\n')).toEqual([
      '3:10 wrong-value `labels.clock`: `{hours}` is not known here, expected one of `{h12}`, `{h24}`, `{hh}`, `{mm}`, `{ampm}`; remove or correct it.',
    ]);
  });

  it('refuses forms where there is no number, wrong forms, other values and another language', () => {
    expect(
      listErrors('language: de\nlabels:\n  today: { one: a, other: b }\n  marks: { some: a }\n  tonight: 3\n'),
    ).toEqual([
      '1:11 wrong-value `language`: found `de` in a file called `fr`, expected both to be alike; rename the file or change the tag.',
      '3:10 wrong-value `labels.today`: found forms for a number, expected text; this label goes with no number.',
      '4:10 wrong-value `labels.marks`: found the key `some`, expected text, or the keys `one` and `other` with text.',
      '5:12 wrong-value `labels.tonight`: found the number `3`, expected text, or the keys `one` and `other` with text.',
    ]);
  });
});
