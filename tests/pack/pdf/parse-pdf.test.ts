import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parsePdf } from '../../../src/pack/pdf/parse-pdf.ts';
import { PdfFormatError } from '../../../src/pack/pdf/pdf-format-error.ts';
import { readPdfBytes, writePdfText } from '../../../src/pack/pdf/pdf-text.ts';
import { findEntry, pdfWord } from '../../../src/pack/pdf/pdf-value.ts';
import { renderPdf } from '../../../src/pack/pdf/render-pdf.ts';
import { writeFile, writeSmallPdf } from './small-pdf.ts';

const toBytes = (text: string) => new Uint8Array(Buffer.from(text, 'latin1'));
const toText = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1');

/** The first object of a file that holds one value, as it is written again. */
function rewrite(value: string): string {
  const { objects } = parsePdf(writeFile(new Map([[1, value]]), '/Root 1 0 R'));
  const text = toText(renderPdf([...objects.values()], { Root: 1, Info: 1 }));
  return text.slice(text.indexOf('obj\n') + 4, text.indexOf('\nendobj'));
}

describe('parsePdf', () => {
  it.each([
    ['numbers', '[1 -2 .5 +3. 0]'],
    ['keywords', '[true false null]'],
    ['names, empty and with escapes', '[/A /B#20C /]'],
    ['references beside numbers', '[12 0 R 12 0 7 0 R]'],
    ['strings with brackets and escapes', '[(a (b) c) (\\)\\\\) (\\(())]'],
    ['strings in hexadecimal digits', '[<FEFF014D> <>]'],
    ['dictionaries', '<</A <</B [1 2]>>\n/C (x)>>'],
  ])('keeps %s as they are', (_name, value) => {
    expect(rewrite(value)).toBe(value);
  });

  it('does not mind where lines end, and comments', () => {
    expect(rewrite('<<\r/A%x\r\n[1\t2]%]\n>>')).toBe('<</A [1 2]>>');
  });

  it('keeps the bytes of a stream, whatever they are', () => {
    const content = '\0endstream\r\n%\u00ff';
    for (const end of ['\n', '\r\n']) {
      const { objects } = parsePdf(
        writeFile(new Map([[1, `<</Length ${content.length}>> stream${end}${content}\nendstream`]]), '/Root 1 0 R'),
      );
      expect(toText(objects.get(1)?.stream ?? new Uint8Array())).toBe(content);
    }
  });

  it('leaves out numbers that are free', () => {
    const { objects } = parsePdf(writeSmallPdf({ title: 'A' }));
    expect(objects.has(1)).toBe(true);
    expect(objects.has(15)).toBe(false);
  });

  const good = toText(writeSmallPdf({ title: 'A' }));
  it.each([
    ['no PDF', 'hello', 'does not begin'],
    ['a page of HTML', '<!doctype html>', 'does not begin'],
    ['a file that was cut off', good.slice(0, 900), 'without its end'],
    [
      'a packed list of objects',
      good.replace(/\nxref[\s\S]*?trailer/, '\n9 0 obj <<>> stream trailer'),
      'a packed list',
    ],
    ['a list with an odd entry', good.replace(/00000 n \n/, '00000 x \n'), 'odd entry'],
    ['a list with a wrong offset', good.replace(/\d{10} 00000 n/, '0000000005 00000 n'), 'no object 1'],
    ['an encrypted file', good.replace('/Info 1 0 R', '/Encrypt 1 0 R'), 'encrypted'],
    ['a file that was changed', good.replace('/Info 1 0 R', '/Prev 0'), 'was changed'],
    ['a value that does not end', good.replace('/Count 1 ', '/Count (1'), 'without its end'],
    ['a value that is none', good.replace('/Count 1', '/Count }'), 'no value'],
    ['an entry without a name', good.replace('/Count 1', '(Coun) 1'), 'name of an entry'],
    ['a stream without its length', good.replace(/\/Length /, '/Lengte '), 'without its length'],
  ])('refuses %s', (_name, file, reason) => {
    expect(() => parsePdf(toBytes(file))).toThrow(PdfFormatError);
    expect(() => parsePdf(toBytes(file))).toThrow(reason);
  });
});

describe('texts', () => {
  it('are read as they were written', () => {
    expect(readPdfBytes(pdfWord('(a\\(b\\)\\\\\\n\\101\\7\\\nc)'))).toBe('a(b)\\\nA\x07c');
    expect(readPdfBytes(pdfWord('<48 656C6C6F2>'))).toBe('Hello ');
    expect(readPdfBytes(pdfWord('/Name'))).toBeUndefined();
  });

  it('go to and fro', () => {
    const decode = (bytes: string) =>
      bytes.startsWith('\u00fe\u00ff') ? Buffer.from(bytes.slice(2), 'latin1').swap16().toString('utf16le') : bytes;
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(decode(readPdfBytes(writePdfText(text)) ?? '')).toBe(text);
      }),
    );
  });
});

describe('renderPdf', () => {
  it('has no gaps among its numbers', () => {
    const objects = [{ number: 2, value: pdfWord('null') }];
    expect(() => renderPdf(objects, { Root: 2, Info: 2 })).toThrow('no object 1');
  });

  it('writes a file that can be read again', () => {
    const { objects } = parsePdf(writeFile(new Map([[1, '<</Type /Catalog>>']]), '/Root 1 0 R'));
    const { trailer } = parsePdf(renderPdf([...objects.values()], { Root: 1, Info: 1 }));
    expect(findEntry(trailer, 'Root')).toEqual({ type: 'reference', number: 1 });
  });
});
