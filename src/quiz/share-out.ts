import type { QuestionInstance } from './questions/question-instance.ts';

/** What a paper asks already. */
export interface PaperSoFar {
  /** By questions of the kind that is dealt: it must not ask them again. */
  readonly ofKind: ReadonlySet<string>;
  /** By all its questions: it should not ask for the same fact in another way, if that can be had. */
  readonly ofAll: ReadonlySet<string>;
}

type Choice = readonly [candidates: readonly QuestionInstance[], forbids: (paper: PaperSoFar, asks: string) => boolean];

/**
 * Gives each paper an instance that is not on it yet, and as many papers as can be one that no other paper has
 * (a greatest matching, by augmenting paths: Kuhn, "The Hungarian method for the assignment problem", 1955). Where there
 * are too few, each goes to about as many papers as any other.
 * @param wanted Those to give out first, in order.
 * @param alike Others that are of the same level.
 * @param rest All others, for want of anything better.
 * @returns An instance a paper; undefined where a paper has all of them.
 */
export function shareOut(
  wanted: readonly QuestionInstance[],
  alike: readonly QuestionInstance[],
  rest: readonly QuestionInstance[],
  papers: readonly PaperSoFar[],
): QuestionInstance[] | undefined {
  const all = [...wanted, ...alike, ...rest];
  const { ofAll, ofKind } = FORBIDS;
  const given: Given = new Map();
  for (const [candidates, forbids] of [
    [wanted, ofAll],
    [[...wanted, ...alike], ofAll],
    [[...wanted, ...alike], ofKind],
    [all, ofAll],
    [all, ofKind],
  ] satisfies Choice[]) {
    // Papers that have one keep theirs or get another, so each round goes on from the last.
    for (const paper of papers) {
      if (candidates.every(({ asks }) => given.has(asks))) break;
      if (!isServed(paper, given)) findPlace(paper, [candidates, forbids], given, new Set());
    }
  }
  return fillUp(all, papers, given);
}

const FORBIDS = {
  ofAll: (paper: PaperSoFar, asks: string) => paper.ofAll.has(asks),
  ofKind: (paper: PaperSoFar, asks: string) => paper.ofKind.has(asks),
};

/** By what they ask: the instance that is given out, and the paper it went to. */
type Given = Map<string, { readonly instance: QuestionInstance; readonly paper: PaperSoFar }>;

function isServed(paper: PaperSoFar, given: Given): boolean {
  for (const each of given.values()) if (each.paper === paper) return true;
  return false;
}

/** Finds an instance for a paper, moving others to theirs only where none is free. */
function findPlace(paper: PaperSoFar, choice: Choice, given: Given, tried: Set<string>): boolean {
  const [candidates, forbids] = choice;
  const open = candidates.filter(({ asks }) => !forbids(paper, asks));
  const free = open.find(({ asks }) => !given.has(asks));
  if (free !== undefined) {
    given.set(free.asks, { instance: free, paper });
    return true;
  }
  for (const instance of open) {
    const { asks } = instance;
    const other = given.get(asks);
    if (other === undefined || tried.has(asks)) continue;
    tried.add(asks);
    if (!findPlace(other.paper, choice, given, tried)) continue;
    given.set(asks, { instance, paper });
    return true;
  }
  return false;
}

/** A hand in the order of the papers, in which those without an instance of their own get one that comes least often. */
function fillUp(
  all: readonly QuestionInstance[],
  papers: readonly PaperSoFar[],
  given: Given,
): QuestionInstance[] | undefined {
  const ofPaper = new Map(Array.from(given.values(), ({ instance, paper }) => [paper, instance]));
  const uses = new Map(Array.from(given.keys(), (asks) => [asks, 1]));
  const hand: QuestionInstance[] = [];
  for (const paper of papers) {
    const own = ofPaper.get(paper) ?? findRarest(all, paper, uses);
    if (own === undefined) return undefined;
    if (!ofPaper.has(paper)) uses.set(own.asks, (uses.get(own.asks) ?? 0) + 1);
    hand.push(own);
  }
  return hand;
}

function findRarest(
  all: readonly QuestionInstance[],
  paper: PaperSoFar,
  uses: ReadonlyMap<string, number>,
): QuestionInstance | undefined {
  const open = all.filter(({ asks }) => !paper.ofKind.has(asks));
  const fewest = Math.min(...open.map(({ asks }) => uses.get(asks) ?? 0));
  return open.find(({ asks }) => (uses.get(asks) ?? 0) === fewest);
}
