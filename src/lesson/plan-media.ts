import type { ReadyDirective } from '../directives/definition.ts';
import { planTracks } from '../rhythm/plan-tracks.ts';
import type { Timeline, TrackCut } from '../rhythm/timeline-types.ts';
import type { ReaderMedia, ResolvedWeek } from './model.ts';
import { isForLearners } from './number-directives.ts';
import type { PreparedLesson } from './prepare-lesson.ts';

/** The sound and the pictures of a week's directives, and where each run is heard. */
export interface MediaPlan {
  readonly media: ResolvedWeek['media'];
  readonly cuts: ReadonlyMap<Timeline, TrackCut>;
}

/**
 * Plans what the pages of a week show and play. The tracks of learners are planned apart from the teacher's: a shared
 * track would be as long as the longest run of both, and so could tell a learner how many nights the teacher's run up
 * to tonight has. What a quiz shows is planned for both: the papers are the learners', the key is the teacher's.
 */
export function planMedia(lessons: readonly PreparedLesson[]): MediaPlan {
  const cuts = new Map<Timeline, TrackCut>();
  const directives = lessons.flatMap(({ numbered, resolution }) =>
    numbered.flatMap(({ node, around }) => {
      const ready = resolution.ready.get(node);
      return ready === undefined ? [] : [{ ready, forLearners: isForLearners(around) }];
    }),
  );
  const planFor = (learners: boolean): ReaderMedia =>
    planReader(
      directives.flatMap(({ ready, forLearners }) => {
        return forLearners === learners || ready.quiz !== undefined ? ready : [];
      }),
      cuts,
    );
  return { media: { teacher: planFor(false), learners: planFor(true) }, cuts };
}

function planReader(directives: readonly ReadyDirective[], cuts: Map<Timeline, TrackCut>): ReaderMedia {
  const timelines = directives.flatMap(({ run }) => (run === undefined || run.recorded ? [] : run.timeline));
  const plan = planTracks(timelines);
  timelines.forEach((timeline, index) => {
    const cut = plan.cuts[index];
    if (cut !== undefined) cuts.set(timeline, cut);
  });
  return {
    tracks: plan.tracks,
    sounds: keepFirst(directives.flatMap(({ sounds }) => sounds ?? [])),
    pictures: keepFirst(directives.flatMap(({ pictures }) => pictures ?? [])),
  };
}

function keepFirst<Media extends { readonly packName: string }>(media: readonly Media[]): Media[] {
  return [...new Map(media.map((each) => [each.packName, each])).values()];
}
