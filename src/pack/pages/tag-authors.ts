/**
 * The `lang` of what the author wrote, as a property to spread; nothing where the page has the same language.
 * They differ where there are no labels for the school's language, so that the fixed words are English.
 */
export function tagAuthors(pageLanguage: string, authorsLanguage: string): { readonly lang?: string } {
  return pageLanguage === authorsLanguage ? {} : { lang: authorsLanguage };
}
