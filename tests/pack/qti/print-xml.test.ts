import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printXml } from '../../../src/pack/qti/print-xml.ts';
import { xmlElement } from '../../../src/pack/qti/xml-element.ts';
import { readXml } from './read-xml.ts';

/** What is left of a text in XML: half surrogates, controls and two non-characters are not. */
const keep = (text: string) => text.replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '');

describe('a document of XML', () => {
  it('is written as it is read', () => {
    const root = xmlElement('a', { x: 1, y: undefined, z: '"<&>\'\n\t' }, ['5 < 6 & 7 ]]> 8\r', xmlElement('b:c')]);
    expect(printXml(root)).toBe(
      '<?xml version="1.0" encoding="UTF-8"?>\n<a x="1" z="&quot;&lt;&amp;&gt;\'&#xA;&#x9;">5 &lt; 6 &amp; 7 ]]&gt; 8&#xD;<b:c/></a>\n',
    );
  });

  it('gives any text and any value back to an independent reader', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.string({ unit: 'grapheme' }), (value, text) => {
        const root = readXml(printXml(xmlElement('a', { value }, [text, value])));
        expect([root.attributes['value'], root.text]).toEqual([keep(value), keep(text) + keep(value)]);
      }),
    );
  });

  it('leaves out what XML has no way to write', () => {
    expect(printXml(xmlElement('a', {}, ['1\u0000\u001f\ud800\uffff2']))).toContain('<a>12</a>');
  });
});
