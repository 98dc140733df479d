import type { MoonView } from '../calendar/almanac-types.ts';
import type { Labels } from '../content/labels.ts';
import { describeMoon } from '../drawing/describe-moon.ts';

/** What the Moon looks like here that night, in a sentence for those who do not see the drawing. */
export function sayMoon(moon: MoonView, labels: Labels): string {
  const described = describeMoon(moon);
  switch (described.shape) {
    case 'dark':
      return labels.text('moon-looks-dark');
    case 'full':
      return labels.text('moon-looks-full');
    default:
      return labels.text(`moon-looks-${described.shape}`, { side: labels.text(`side-${described.litSide}`) });
  }
}
