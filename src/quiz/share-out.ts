import type { QuestionInstance } from './questions/question-instance.ts';

/**
 * Gives each paper an instance that is not on it yet, and as many papers as can be one that no other paper has
 * (a greatest matching, by augmenting paths: Kuhn, "The Hungarian method for the assignment problem", 1955).
 * @param instances Those that come first are given out first.
 * @param papers What each paper asks already.
 * @returns An instance a paper; undefined where a paper has all of them.
 */
export function shareOut(
  instances: readonly QuestionInstance[],
  papers: readonly ReadonlySet<string | undefined>[],
): QuestionInstance[] | undefined {
  const givenTo = new Map<QuestionInstance, number>();
  papers.forEach((_, paper) => {
    findPlace(paper, { instances, papers, givenTo }, new Set());
  });
  const hand = new Map(Array.from(givenTo, ([instance, paper]) => [paper, instance]));
  const given = papers.map((paper, number) => hand.get(number) ?? instances.find(({ asks }) => !paper.has(asks)));
  return given.includes(undefined) ? undefined : given.filter((instance) => instance !== undefined);
}

interface Sharing {
  readonly instances: readonly QuestionInstance[];
  readonly papers: readonly ReadonlySet<string | undefined>[];
  /** The paper that each instance went to. */
  readonly givenTo: Map<QuestionInstance, number>;
}

/** Finds an instance for a paper, moving others to theirs where it must. */
function findPlace(paper: number, sharing: Sharing, tried: Set<QuestionInstance>): boolean {
  for (const instance of sharing.instances) {
    if (tried.has(instance) || sharing.papers[paper]?.has(instance.asks) === true) continue;
    tried.add(instance);
    const other = sharing.givenTo.get(instance);
    if (other === undefined || findPlace(other, sharing, tried)) {
      sharing.givenTo.set(instance, paper);
      return true;
    }
  }
  return false;
}
