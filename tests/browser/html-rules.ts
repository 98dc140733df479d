import { HtmlValidate } from 'html-validate';

/** The judge's recommended rules; each one that is off has its reason. */
const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  rules: {
    // The standard takes either case, and the pages' writer has lower case.
    'doctype-style': 'off',
  },
});

/** What the judge finds in a page: place, rule, words. */
export async function findHtmlFaults(html: string, path: string): Promise<string[]> {
  const { results } = await validator.validateString(html, path);
  return results
    .flatMap(({ messages }) => messages)
    .map(({ line, column, ruleId, message, selector }) => `${line}:${column} ${ruleId}: ${message} ${selector ?? ''}`);
}
