import { computeBeatSeconds } from './beat-seconds.ts';
import type { Timeline, Track, TrackCut } from './timeline-types.ts';
import { compareSounds, hasGroupsAt, listSounds, type Sound } from './track-sounds.ts';

/** The sound of some runs, such as those of a week. */
export interface TrackPlan {
  /** Each is one file of sound; the longest first. */
  readonly tracks: readonly Track[];
  /** Where each timeline is heard, in the order in which the timelines were given. */
  readonly cuts: readonly TrackCut[];
}

/** A track while it is planned. */
interface Draft {
  /** The sound that the track is made for. */
  readonly sound: Sound;
  /** It, and those that sound just the same under other names. */
  readonly named: Sound[];
  /** All that is heard in the track. */
  readonly parts: { readonly sound: Sound; readonly atBeat: number }[];
}

/**
 * Plans as few tracks as the runs need: the longest run is a track, and each shorter one whose strokes stand in a track
 * at the same tempo, beat for beat, is cut from it; where the tempo changes, it must change on the same beat. Where the
 * strokes stand in several places, one among the same groups is taken, so that the markers are right too. Tracks are
 * numbered for each tempo, rounded to whole beats a minute, as in `beat-60-1`; one with a slow pass goes by its full
 * tempo. The plan is the same in whatever order the timelines come.
 * @throws RangeError when a timeline has no beats
 */
export function planTracks(timelines: readonly Timeline[]): TrackPlan {
  const drafts: Draft[] = [];
  for (const sound of listSounds(timelines).sort(compareSounds)) placeSound(sound, drafts);
  const tracks: Track[] = [];
  const cuts: TrackCut[] = [];
  for (const draft of drafts) {
    const track = buildTrack(draft, tracks);
    tracks.push(track);
    for (const { sound, atBeat } of draft.parts) cuts[sound.index] = cutTrack(track, atBeat, sound.strokes.length);
  }
  return { tracks, cuts };
}

/** Finds a place for a sound in the tracks there are, or adds a track for it. */
function placeSound(sound: Sound, drafts: Draft[]): void {
  const places = drafts.flatMap((draft) => findPlaces(sound, draft).map((atBeat) => ({ draft, atBeat })));
  const namedPlace = places.find(({ draft, atBeat }) => draft.named.some((other) => hasGroupsAt(other, atBeat, sound)));
  const place = namedPlace ?? places[0];
  if (place === undefined) {
    drafts.push({ sound, named: [sound], parts: [{ sound, atBeat: 0 }] });
    return;
  }
  place.draft.parts.push({ sound, atBeat: place.atBeat });
  // A part under other names is left without markers: among those of the whole they would only confuse.
  if (namedPlace === undefined && sound.code === place.draft.sound.code) place.draft.named.push(sound);
}

function findPlaces({ code }: Sound, { sound: { code: whole } }: Draft): number[] {
  const places: number[] = [];
  for (let at = whole.indexOf(code); at >= 0; at = whole.indexOf(code, at + 1)) places.push(at);
  return places;
}

function buildTrack({ sound: { timeline, strokes }, named }: Draft, before: readonly Track[]): Track {
  const stem = `beat-${Math.round(timeline.rhythm.tempoBeatsPerMinute)}-`;
  const number = before.filter(({ name }) => name.startsWith(stem)).length + 1;
  const { tempi, totalSeconds } = timeline;
  return { name: `${stem}${number}`, strokes, tempi, markers: listMarkers(named), totalSeconds };
}

/** A group begins with its count-in, not with the rest before it. Where one beat has several names, all are given. */
function listMarkers(named: readonly Sound[]): Track['markers'] {
  const names = new Map<number, Set<string>>();
  for (const { timeline } of named) {
    const sounding = timeline.events.filter(({ kind }) => kind !== 'rest');
    sounding.forEach(({ firstBeat, group, pass }, index) => {
      const before = sounding[index - 1];
      if (before?.group === group && before.pass === pass) return;
      names.set(firstBeat, (names.get(firstBeat) ?? new Set()).add(timeline.groups[group]?.name ?? ''));
    });
  }
  return [...names].sort(([a], [b]) => a - b).map(([atBeat, texts]) => ({ atBeat, text: [...texts].join(' / ') }));
}

function cutTrack(track: Track, atBeat: number, beats: number): TrackCut {
  const startsAtSeconds = computeBeatSeconds(track.tempi, atBeat);
  return { track, startsAtSeconds, endsAtSeconds: computeBeatSeconds(track.tempi, atBeat + beats) };
}
