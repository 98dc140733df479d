import { describe, expect, it } from 'vitest';
import { pageStyles } from '../../src/pack/pages/page-styles.ts';
import { findSidedStyles } from './judges/find-sided-styles.ts';

describe('styles', () => {
  it.each(Object.entries(pageStyles))('of %s say where lines begin and end, and not left or right', (_kind, styles) => {
    expect(findSidedStyles(styles)).toEqual([]);
  });

  it('that say left or right are seen', () => {
    const good = '@page { margin: 1mm 2mm 3mm 4mm } a { margin: 0 1px 2px; float: left; float: inline-start }';
    expect(findSidedStyles(good)).toEqual([]);
    const bad =
      'a { left: 0; padding-right: 1px; border-left-width: 1px; text-align: right; float: left; margin: 0 1px 0 calc(2px + 1em) }';
    expect(findSidedStyles(bad)).toHaveLength(6);
  });
});
