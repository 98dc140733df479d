import axe, { type AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

const WCAG_22_AA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] as const;

/** What the judge holds for good practice beyond the standard, such as names for doubled landmarks. */
const GOOD_PRACTICE = 'best-practice';

/** Faults against WCAG 2.2 AA and good practice, as far as axe-core sees them in the page's present look: rule and element. */
export async function findBarriers(page: Page): Promise<string[]> {
  return runAxe(page, {
    runOnly: { type: 'tag', values: [...WCAG_22_AA, GOOD_PRACTICE] },
    // Off as the judge comes, because it is new; it is part of 2.2 AA.
    rules: { 'target-size': { enabled: true } },
  });
}

/** Text, and links in text, that do not stand out enough in the page's present colours; nothing else hangs on those. */
export async function findFaintText(page: Page): Promise<string[]> {
  return runAxe(page, { runOnly: { type: 'rule', values: ['color-contrast', 'link-in-text-block'] } });
}

/** Targets under 24 by 24 CSS pixels that have too little room around them, in the page's present width (2.5.8). */
export async function findSmallTargets(page: Page): Promise<string[]> {
  return runAxe(page, { runOnly: { type: 'rule', values: ['target-size'] } });
}

async function runAxe(page: Page, options: object): Promise<string[]> {
  if (!(await page.evaluate<boolean>('"axe" in globalThis'))) await page.evaluate(axe.source);
  const given = JSON.stringify({ ...options, resultTypes: ['violations'] });
  const { violations } = await page.evaluate<AxeResults>(`axe.run(document, ${given})`);
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, any }) => `${id}: ${target} ${any[0]?.message ?? ''}`),
  );
}
