import { parse } from 'bcp-47';
import registry from 'language-subtag-registry/data/json/registry.json?raw';

/** An entry of the registry: a subtag, or a range of them as `qaa..qtz`. */
interface RegistryEntry {
  readonly Type: string;
  readonly Subtag?: string;
  readonly Deprecated?: string;
}

/** The registry of IANA, in the package's copy; read as text, since its type alone would be as long as itself. */
const REGISTRY: readonly RegistryEntry[] = JSON.parse(registry);

const SUBTAGS = new Map(REGISTRY.map((entry) => [`${entry.Type} ${entry.Subtag?.toLowerCase()}`, entry]));

/** Every language that a page names, in attributes and in data for other programs. */
export function listLanguages(html: string): string[] {
  return [...html.matchAll(/\s(?:lang|hreflang|xml:lang)="([^"]*)"/g)].map(([, tag = '']) => tag);
}

/** What is wrong with language tags: not well formed (bcp-47), or with subtags that IANA has not, or has no more. */
export function findLanguageFaults(tags: readonly string[]): string[] {
  return [...new Set(tags)].flatMap((tag) => {
    const { language, extendedLanguageSubtags, script, region, variants, privateuse } = parse(tag);
    if (language === null || language === undefined) return privateuse.length > 0 ? [] : [`${tag} is no language tag`];
    return [
      ...findUnregistered('language', [language]),
      ...findUnregistered('extlang', extendedLanguageSubtags),
      ...findUnregistered('script', [script]),
      ...findUnregistered('region', [region]),
      ...findUnregistered('variant', variants),
    ].map((fault) => `${tag}: ${fault}`);
  });
}

function findUnregistered(type: string, subtags: readonly (string | null | undefined)[]): string[] {
  return subtags.flatMap((subtag) => {
    if (subtag === null || subtag === undefined) return [];
    const entry = SUBTAGS.get(`${type} ${subtag.toLowerCase()}`);
    if (entry === undefined) return [`${type} ${subtag} is not registered`];
    return entry.Deprecated === undefined ? [] : [`${type} ${subtag} is deprecated`];
  });
}
