import { describe, expect, it } from 'vitest';
import { parseSvg } from '../../../src/content/media/parse-svg.ts';
import { joinBytes, makeSvg } from './sample-files.ts';

const encode = (text: string) => new TextEncoder().encode(text);
const findFault = (inside: string) => parseSvg(makeSvg(inside)).fault?.found;

describe('the size of an SVG picture', () => {
  // 1 in is 96 px, 2.54 cm and 72 pt: CSS Values and Units Level 3, section 6.2.
  it.each([
    ['viewBox="0 0 40 30"', 40, 30],
    ['viewBox="-5, -5, 1e2, .5"', 100, 0.5],
    ['width="400" height="300px"', 400, 300],
    ['width="25.4mm" height="2.54cm"', 96, 96],
    ['width="72pt" height="1in"', 96, 96],
    ['width="100%" height="100%" viewBox="0 0 40 30"', 40, 30],
    ['width="80" viewBox="0 0 40 30"', 80, 60],
    ['height="15" viewBox="0 0 40 30"', 20, 15],
  ])('is read from %s', (attributes, widthPx, heightPx) => {
    expect(parseSvg(makeSvg('', attributes)).value).toEqual({ widthPx, heightPx });
  });

  it.each([
    '',
    'viewBox="0 0 0 30"',
    'width="40"',
    'width="0" height="0"',
    'viewBox="none"',
    'width="1e999" height="1"',
  ])('must be there: %s', (attributes) => {
    expect(parseSvg(makeSvg('', attributes)).fault?.found).toBe('does not say how large it is');
  });
});

describe('an SVG picture', () => {
  it.each([
    '<path fill="url(#sky)" d="M0 0h9"/>',
    '<style>.a { fill: url( "#sky" ) }</style>',
    '<image href="data:image/png;base64,AAAA"/>',
    '<a href="#here"><circle r="3"/></a>',
    '<text aria-label="Watch: url(here)">I &lt;3 &#x41; &amp; &#66;</text>',
    '<metadata xmlns:r="urn:r"><r:onlooker r:about="https://example.org/"/></metadata>',
    '<!-- <script>no script</script> --><g/>',
    '<title><![CDATA[<script>]]></title>',
  ])('may hold %s', (inside) => {
    expect(findFault(inside)).toBeUndefined();
  });

  it.each([
    ['<script/>', 'holds a script (`<script>`)'],
    ['<x:script xmlns:x="http://www.w3.org/2000/svg"/>', 'holds a script (`<x:script>`)'],
    ['<g onload="a()"/>', 'holds a script (`onload`)'],
    ['<g ONLOAD="a()"/>', 'holds a script (`ONLOAD`)'],
    ['<foreignObject/>', 'holds a piece of a web page (`<foreignObject>`)'],
    ['<g xmlns:h="http://www.w3.org/1999/xhtml"/>', 'holds a piece of a web page'],
    ['<set attributeName="href"/>', 'holds something that moves (`<set>`)'],
    ['<style>@keyframes a {}</style>', 'holds something that moves (`@keyframes`)'],
    ['<image href="swan.png"/>', 'holds something from outside the file (`href`)'],
    [
      '<image xmlns:l="http://www.w3.org/1999/xlink" l:href="//example.org"/>',
      'holds something from outside the file (`l:href`)',
    ],
    ['<a href="java&#115;cript:a()"/>', 'holds something from outside the file (`href`)'],
    ['<image href="data:image/svg+xml,a"/>', 'holds something from outside the file (`href`)'],
    ['<g xml:base="https://example.org"/>', 'holds something from outside the file (`xml:base`)'],
    ['<g fill="url(https://example.org)"/>', 'holds something from outside the file (in a style)'],
    ['<g style="fill: URL( &quot;a.svg#b&quot; )"/>', 'holds something from outside the file (in a style)'],
    ['<g style="fill: url(a.svg"/>', 'holds something from outside the file (in a style)'],
    ['<style>@imp<!-- -->ort "a.css";</style>', 'holds something from outside the file (in a style)'],
    ['<style><![CDATA[@import "a.css";]]></style>', 'holds something from outside the file (in a style)'],
    ['<style>a { b: u\\72l(c) }</style>', 'holds a style with `\\` in it'],
  ])('may not hold %s', (inside, found) => {
    expect(findFault(inside)).toBe(found);
  });

  it.each([
    ['<g>', '`</svg>` where another tag is open'],
    ['</g>', '`</g>` where another tag is open'],
    ['<g a="1" a="2"/>', '`a` twice in one tag'],
    ['<g a=1/>', 'a tag `<g` that is not written as it must be'],
    ['<g l:href="#a"/>', '`l:href`, but no `xmlns:l`'],
    ['a & b', 'an `&` that begins none of `&amp;`, `&lt;`, `&gt;`, `&quot;`, `&apos;` and numbers'],
    ['&nbsp;', 'an `&` that begins none of `&amp;`, `&lt;`, `&gt;`, `&quot;`, `&apos;` and numbers'],
    ['&#0;', 'an `&` that begins none of `&amp;`, `&lt;`, `&gt;`, `&quot;`, `&apos;` and numbers'],
    ['<!-- a -- b -->', 'a comment without its end, or with `--` in it'],
    ['<![CDATA[', 'a `<![CDATA[` without `]]>`'],
    [']]>', 'a `]]>` that ends nothing'],
    ['<1/>', 'a `<` that begins no tag'],
    ['\u0001', 'a control character'],
    ['<?xml version="1.0"?>', 'something before its first line'],
    ['<!DOCTYPE a>', 'a document type (`<!DOCTYPE`)'],
  ])('is written as browsers read it, not as %s', (inside, found) => {
    expect(findFault(inside)).toBe(`has ${found}`);
  });

  it.each([
    ['<!DOCTYPE svg><svg/>', 'has a document type (`<!DOCTYPE`)'],
    ['<svg viewBox="0 0 9 9"/>', 'has no `xmlns` in its first tag, so that browsers do not show it'],
    ['<html/>', 'has `<html>` as its first tag'],
    ['<?xml version="1.0" encoding="ISO-8859-1"?><svg/>', 'has the encoding `ISO-8859-1`'],
    ['<?xml?><svg/>', 'has a first line that is not written as it must be'],
    ['<?xml-stylesheet href="a.css"?><svg/>', 'holds a style sheet from outside the file'],
    ['swan', 'has text outside of its tags'],
    ['<svg xmlns="http://www.w3.org/2000/svg"/><g/>', 'has something after its last tag'],
    ['<svg xmlns="http://www.w3.org/2000/svg">', 'has a tag without its end'],
    ['', 'has a tag without its end'],
  ])('is one file as browsers read it: %s', (text, found) => {
    expect(parseSvg(encode(text)).fault?.found).toBe(found);
  });

  it('may begin with a byte order mark and a declaration, and have a prefix', () => {
    const text =
      '\uFEFF<?xml version="1.0" encoding="utf-8" standalone="no"?>\n<s:svg xmlns:s="http://www.w3.org/2000/svg" viewBox="0 0 9 9"/>\n';
    expect(parseSvg(encode(text)).value).toEqual({ widthPx: 9, heightPx: 9 });
  });

  it('must be UTF-8', () => {
    expect(parseSvg(joinBytes('<svg>', [0xe9], '</svg>')).fault?.found).toBe('is not saved as UTF-8');
  });

  it('tells the line and column of what it may not hold', () => {
    expect(parseSvg(makeSvg('\r\n<g>\r<path/>\n  <script/></g>')).fault?.place).toEqual({ line: 4, column: 3 });
  });

  it('is read in a time that grows with its length only', () => {
    // Deep, and full of what might be read again and again; the limit of the test's time is the measure.
    const deep = `${'<g>'.repeat(30_000)}${'</g>'.repeat(30_000)}`;
    expect(findFault(deep)).toBeUndefined();
    expect(findFault('<style>'.repeat(2))).toBe('has a tag in a style');
    expect(findFault(`<style>${'a<!-- -->'.repeat(30_000)}</style>`)).toBeUndefined();
    expect(findFault(`<g ${' '.repeat(100_000)}`)).toBe('has a tag `<g` that is not written as it must be');
  });
});
