import type { Page } from 'playwright-core';
import { lookAt } from './look-at.ts';

/**
 * Kinds of places that look the same with the keyboard's focus as without it, or whose outline is too faint or covered:
 * each with the ground it was seen on. @param seen Kinds looked at before are left out; those looked at now are added.
 */
export async function findUnseenFocus(page: Page, seen: Set<string>): Promise<string[]> {
  const unseen: string[] = [];
  const kinds = (await lookAt(page, 'listKinds')).filter((kind) => !seen.has(kind));
  // A script's focus shows as that of a keyboard only after a key was pressed.
  await page.keyboard.press('Shift');
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const kind of kinds) {
      seen.add(kind);
      const { isSeen, clip } = await lookAt(page, 'focusKind', kind);
      const focused = await page.screenshot({ clip });
      await lookAt(page, 'blur');
      const blurred = await page.screenshot({ clip });
      if (!isSeen || focused.equals(blurred)) unseen.push(`${kind} (${colorScheme})`);
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
  return unseen;
}

/**
 * States, such as today's day or the page one is on, that cannot be told without colour: where the reader's own few
 * colours replace the page's, nothing shows them, neither a line nor words. @param seen As for `findUnseenFocus`.
 */
export async function findLostStates(page: Page, seen: Set<string>): Promise<string[]> {
  const lost: string[] = [];
  await page.emulateMedia({ forcedColors: 'active' });
  for (const state of await lookAt(page, 'listStates')) {
    if (seen.has(state)) continue;
    seen.add(state);
    const { hasWords, clip } = await lookAt(page, 'showState', state);
    const on = await page.screenshot({ clip });
    await lookAt(page, 'setState', state, false);
    const off = await page.screenshot({ clip });
    await lookAt(page, 'setState', state, true);
    if (!hasWords && on.equals(off)) lost.push(state);
  }
  await page.emulateMedia({ forcedColors: 'none' });
  return lost;
}
