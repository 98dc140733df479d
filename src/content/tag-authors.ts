/**
 * The `lang` of what an author wrote, as a property to spread; nothing where the page has the same language. They differ
 * where there are no labels for the school's language, so that the fixed words are English, and where a calendar says
 * what its names mean in another language. Then the letters themselves say which way they run.
 */
export function tagAuthors(
  pageLanguage: string,
  authorsLanguage: string,
): { readonly lang?: string; readonly dir?: 'auto' } {
  return pageLanguage === authorsLanguage ? {} : { lang: authorsLanguage, dir: 'auto' };
}
