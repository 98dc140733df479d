import { leadsToPage, listTagFaults } from './check-tag.ts';
import { isChance, isLabelText } from './explain.ts';
import { readModelValues } from './page-model.ts';
import type { MarkupAttribute } from './parse-tag.ts';
import { sayFault } from './say-leak.ts';
import { reportAuthors, reportUnseen, type SearchedPage, type TagFindings } from './searched-page.ts';
import type { SecretSearch } from './secret-search.ts';

const NOTHING: TagFindings = { faults: [], secrets: [] };

/** Searches the tags of a page: what their attributes say, and what no page for learners may have. */
export function searchTags(page: SearchedPage): void {
  let values: ReadonlySet<string> | undefined;
  judgeTags(page);
  for (const { tag, at } of page.markup.elements) {
    const { faults, secrets } = page.setting.findings.get(tag) ?? NOTHING;
    for (const { offset, found, expected } of faults) {
      page.add({ severity: 'error', at: at + offset, message: sayFault(found, expected, page.setting.origin) });
    }
    for (const { attribute, unseen } of secrets) {
      const where = `in the attribute \`${attribute.name}\` of \`<${tag.name}>\``;
      if (page.model !== undefined) values ??= readModelValues(page.model);
      if (values?.has(attribute.value) === true) reportAuthors(unseen.secret, at + attribute.offset, where, page);
      else if (!isLabelText(attribute.value, page.setting.labels)) {
        reportUnseen(unseen, at + attribute.offset, where, page);
      }
    }
  }
}

/** Judges the tags that were not met before: once for all elements that are written the same. */
function judgeTags({ path, markup, setting }: SearchedPage): void {
  const { findings, search, pages, isKept } = setting;
  const tags = [...new Set(markup.elements.map(({ tag }) => tag))].filter((tag) => !findings.has(tag));
  const values = tags.flatMap(({ attributes }) => attributes.map(({ value }) => value));
  // One look at all of them is enough where nothing is found, as on most pages.
  const mayHold = search.findUnseen(values.join('\n')).length > 0;
  for (const tag of tags) {
    const suspects = mayHold ? tag.attributes : tag.attributes.filter((attribute) => isWhole(attribute, search));
    const secrets = suspects.flatMap((attribute) =>
      listTexts(attribute)
        .flatMap((text) => search.findUnseen(text))
        .filter(({ secret }, index, all) => all.findIndex((other) => other.secret === secret) === index)
        .filter(({ secret }) => !isChance(tag, attribute, secret, search))
        // A page is called by its title, which stands in the link to it.
        .filter(({ secret }) => secret.telling === 'anywhere' || !leadsToPage(attribute, path, pages))
        .map((unseen) => ({ attribute, unseen })),
    );
    findings.set(tag, { faults: isKept ? [] : listTagFaults(tag, path, pages), secrets });
  }
}

/** The value of an attribute; of several classes each one as well. */
function listTexts({ name, value }: MarkupAttribute): string[] {
  return name === 'class' && value.includes(' ') ? [value, ...value.split(' ')] : [value];
}

/** Whether an attribute holds a short secret and nothing else. */
function isWhole(attribute: MarkupAttribute, search: SecretSearch): boolean {
  return listTexts(attribute).some((text) => search.isWhole(text.toLowerCase().trim()));
}
