import type { MoonView } from '../../calendar/almanac-types.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import type { Labels } from '../../content/labels.ts';
import { describeMoon } from '../../drawing/describe-moon.ts';
import { foldText } from '../../quiz/fold-text.ts';
import type { CalendarFact } from './calendar-fact.ts';

const EDGES = ['top', 'left', 'bottom', 'right'] as const;
type Edge = (typeof EDGES)[number];

/**
 * Which side of the Moon is lit, in the words by which the pack itself tells the sides apart: "left" agrees with "at the
 * bottom left", "right" does not. Undefined for a dark or a full Moon, which has no lit side.
 */
export function makeLitSideFact(date: CivilDate, moon: MoonView, labels: Labels): CalendarFact | undefined {
  const described = describeMoon(moon);
  if (!('litSide' in described)) return undefined;
  const { litSide } = described;
  const lit: ReadonlySet<Edge> = new Set(EDGES.filter((edge) => litSide.split('-').includes(edge)));
  const words = listTellingWords(labels);
  const isLit = (text: string) => {
    const named = findEdges(text, words);
    return named.length === 0 ? undefined : named.every((edge) => lit.has(edge));
  };
  return {
    says: labels.text(`side-${litSide}`),
    date,
    agrees: (text) => isLit(text) === true,
    contradicts: (text) => isLit(text) === false,
  };
}

type TellingWords = ReadonlyMap<Edge, readonly string[]>;

/** Of the words for each edge ("on the left"), those that stand in no other's ("left"). */
export function listTellingWords(labels: Pick<Labels, 'text'>): TellingWords {
  const all = EDGES.map((edge) => [edge, splitWords(labels.text(`side-${edge}`))] as const);
  return new Map(
    all.map(([edge, words]) => {
      const others = all.flatMap(([other, its]) => (other === edge ? [] : its));
      return [edge, words.filter((word) => !others.includes(word))];
    }),
  );
}

function findEdges(text: string, words: TellingWords): Edge[] {
  const found = splitWords(text);
  return EDGES.filter((edge) => words.get(edge)?.some((word) => found.some((other) => isSameWord(word, other))));
}

/** Letters that may differ at the end of a word, as in "droite" and "droit", and those that must be there. */
const MOST_ENDING = 2;
const FEWEST_SAME = 3;

function isSameWord(one: string, other: string): boolean {
  const [short, long] = one.length < other.length ? [one, other] : [other, one];
  return long.startsWith(short) && short.length >= FEWEST_SAME && long.length - short.length <= MOST_ENDING;
}

function splitWords(text: string): string[] {
  return foldText(text).match(/[\p{L}\p{M}\p{N}]+/gu) ?? [];
}
