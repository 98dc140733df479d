import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { createLabels } from '../../../src/content/labels.ts';
import type { ContentPicture, ContentSound, GestureSet, RunRecording } from '../../../src/content/types.ts';
import type { LessonView } from '../../../src/directives/definition.ts';
import { computeGestureRun, type RunOrder } from '../../../src/directives/gestures/gesture-run.ts';
import { renderRun } from '../../../src/directives/gestures/render-run.ts';
import { renderFigureStore } from '../../../src/directives/gestures/shared-figures.ts';
import { stringifyHast } from '../../../src/lesson/stringify-hast.ts';
import { planTracks } from '../../../src/rhythm/plan-tracks.ts';
import type { Timeline, TrackCut } from '../../../src/rhythm/timeline-types.ts';
import { buildFakeWeek } from '../../pack/fake-week.ts';

const PICTURE: ContentPicture = {
  file: 'wave.png',
  packName: 'picture-1.png',
  widthPx: 10,
  heightPx: 10,
  bytes: Uint8Array.of(1),
  credit: 'drawn by the tests',
};
const SOUND: ContentSound = {
  file: 'run.mp3',
  packName: 'sound 1.mp3',
  mediaType: 'audio/mpeg',
  bytes: Uint8Array.of(2),
};
const RECORDING: RunRecording = {
  sound: SOUND,
  credit: 'the choir',
  permission: 'for this school',
  tempoBeatsPerMinute: 72.5,
  firstBeatSeconds: 5,
};
const week = buildFakeWeek();
const GESTURES: GestureSet = {
  ...week.gestures,
  gestures: {
    other: { move: 'hold', cue: 'Other.', seated: 'Other, seated.' },
    wave: { move: 'hold', cue: 'Lift one hand.', seated: 'The same, seated.', picture: PICTURE },
  },
};
const spoken = new Map([
  [1, { sound: SOUND, credit: 'a neighbour', permission: 'for lessons' }],
  [2, { sound: SOUND, credit: 'a neighbour', permission: 'for lessons' }],
  [3, { link: 'https://example.org/', credit: 'nobody', permission: 'none' }],
]);
const source = { almanac: week.almanac, calendar: { ...week.calendar, spokenNames: spoken }, gestures: GESTURES };

const item = (number: number) => ({ kind: 'night', name: `Eau noire ${number}`, number, gesture: 'wave' }) as const;
const ORDER: RunOrder = {
  groups: [{ kind: 'nights', name: 'Eau noire', items: [item(1), item(2), item(3)], wholeLength: 10, firstInGroup: 1 }],
  rhythm: {
    tempoBeatsPerMinute: 60,
    beatsPerItem: 1,
    countIn: 2,
    restBeats: 0,
    passes: 1,
    slowFirst: false,
  },
  view: 'facing',
  number: 3,
};

/** A view in which the runs are heard in tracks planned for them, or wherever it is said. */
function viewOf(timelines: readonly Timeline[], cut?: TrackCut): LessonView {
  const { cuts } = planTracks(timelines);
  return {
    labels: createLabels('en'),
    namesLanguage: 'fr',
    trackOf: (timeline) => {
      const found = cut ?? cuts[timelines.indexOf(timeline)];
      if (found === undefined) throw new Error('No track.');
      return found;
    },
  };
}

function render(order: RunOrder, reader: 'learner' | 'teacher' = 'teacher', cut?: TrackCut): string {
  const run = computeGestureRun(order, source);
  return stringifyHast(renderRun(run, viewOf([run.timeline], cut), reader) as Element[]);
}

function readScore(html: string): Record<string, unknown> {
  return JSON.parse(/<script type="application\/json">(.*?)<\/script>/.exec(html)?.[1] ?? '');
}

const sourceOf = (html: string) => /<audio[^>]* src="([^"]*)"/.exec(html)?.[1];

describe('a run', () => {
  it('knows the place, the time and the saying of each card', () => {
    const { parts } = computeGestureRun(ORDER, source);
    expect(parts.map(({ countBeats, restBeats }) => [countBeats, restBeats])).toEqual([[2, 0]]);
    const cards = parts.flatMap((part) => part.cards);
    expect(cards.map(({ place, startsAtSeconds, strong, say }) => [place, startsAtSeconds, strong, say])).toEqual([
      [1, 2, true, 'dire Eau noire 1'],
      [2, 3, false, 'dire Eau noire 2'],
      [3, 4, false, 'dire Eau noire 3'],
    ]);
    expect(cards[0]?.figure).toEqual({ id: 'figure-2-facing', gesture: GESTURES.gestures['wave'], view: 'facing' });
  });

  it('has a title and facts: whole groups by their name, others by their ends', () => {
    expect(render(ORDER)).toContain(
      '<p class="run-title" id="run-3"><span lang="fr">Eau noire 1</span> to <span lang="fr">Eau noire 3</span></p><p class="run-facts">60 beats a minute · one beat each · 2 beats counted before each group · 0:05 in all</p>',
    );
    const [group] = ORDER.groups;
    if (group === undefined) throw new Error('No group.');
    const whole = render({ ...ORDER, groups: [{ ...group, wholeLength: 3 }] });
    expect(whole).toContain('id="run-3"><span lang="fr">Eau noire</span></p>');
    expect(whole).not.toContain('gesture-group-name');
    expect(render({ ...ORDER, groups: [{ ...group, items: [item(1)] }] })).toContain(
      'id="run-3"><span lang="fr">Eau noire 1</span></p>',
    );
  });

  it('plays its part of a track, and tells a browser without scripts to stop early', () => {
    const run = computeGestureRun(ORDER, source);
    const [track] = planTracks([run.timeline]).tracks;
    if (track === undefined) throw new Error('No track.');
    expect(sourceOf(render(ORDER))).toBe('sound/beat-60-1.wav');
    const cut = { track: { ...track, totalSeconds: 20 }, startsAtSeconds: 10 / 3, endsAtSeconds: 10 / 3 + 5 };
    const html = render(ORDER, 'teacher', cut);
    expect(sourceOf(html)).toBe('sound/beat-60-1.wav#t=3.333,8.033');
    expect(readScore(html)).toEqual({
      from: 3333,
      zero: 3333,
      until: 8333,
      end: 5000,
      events: [
        [1, 0, 1, 0, 1],
        [1, 1000, 1, 0, 2],
        [2, 2000, 1, 0, 0],
        [2, 3000, 1, 0, 1],
        [2, 4000, 1, 0, 2],
      ],
    });
  });

  it('stops two fifths of a beat early where beats are short', () => {
    const quick = { ...ORDER, rhythm: { ...ORDER.rhythm, tempoBeatsPerMinute: 150 } };
    const run = computeGestureRun(quick, source);
    const [track] = planTracks([run.timeline]).tracks;
    if (track === undefined) throw new Error('No track.');
    const cut = { track, startsAtSeconds: 0, endsAtSeconds: 1.2 };
    expect(sourceOf(render(quick, 'teacher', cut))).toBe('sound/beat-150-1.wav#t=0,1.04');
  });

  it('offers the MIDI file to the teacher alone', () => {
    expect(render(ORDER)).toContain('<a href="sound/beat-60-1.mid" download>Drum track as a MIDI file</a>');
    expect(render(ORDER, 'learner')).not.toContain('.mid');
  });

  it('leads the teacher, and no learner, to how its first night is done', () => {
    expect(render(ORDER)).toContain('<a href="gestures.html#night-1">How each gesture is done</a>');
    expect(render(ORDER, 'learner')).not.toContain('gestures.html');
    const without = ORDER.groups.map((group) => ({
      ...group,
      items: group.items.map(({ kind, name, number }) => ({ kind, name, number })),
    }));
    expect(render({ ...ORDER, groups: without })).not.toContain('gestures.html');
  });
});

describe('a recording', () => {
  const html = render({ ...ORDER, recording: RECORDING });

  it('takes the place of the drum track, with its own beat, from a little before the first beat', () => {
    expect(sourceOf(html)).toBe('sound/sound%201.mp3');
    expect(readScore(html)).toMatchObject({ from: 3000, zero: 5000, until: 5000 + 4138 + 1000, end: 4138 });
    expect(html).toContain('72.5 beats a minute');
    expect(html).not.toContain('.mid"');
    expect(html).not.toContain('beat-');
  });

  it('is not sought before its beginning', () => {
    const early = render({ ...ORDER, recording: { ...RECORDING, firstBeatSeconds: 0.5 } });
    expect(readScore(early)).toMatchObject({ from: 0, zero: 500 });
  });

  it('brings its credit and its permission', () => {
    expect(html).toContain('<p class="run-credit">Recording: the choir · for this school</p>');
  });

  it('that is only linked to is named beside a drum track of its beat', () => {
    const { sound: _, ...linked } = RECORDING;
    const run = render({ ...ORDER, recording: { ...linked, link: 'https://example.org/run' } });
    expect(sourceOf(run)).toBe('sound/beat-73-1.wav');
    expect(run).toContain(
      'To be heard at <a href="https://example.org/run" class="leaves shows-address">https://example.org/run<',
    );
  });

  it('has its address near the player, for the teacher as a code too', () => {
    const linked = { ...ORDER, recording: { ...RECORDING, link: 'https://example.org/run' } };
    expect(render(linked)).toContain('<div class="run-link"><svg');
    expect(render(linked, 'learner')).toContain(
      '<div class="run-link"><p>To be heard at <a href="https://example.org/run" class="leaves shows-address">',
    );
    expect(html).not.toContain('run-link');
  });
});

describe('spoken names and pictures', () => {
  const html = render(ORDER);

  it('are heard from the card of the name, each named for those who do not see it', () => {
    expect(html.split('class="hear-name screen-only"')).toHaveLength(3);
    expect(html).toContain(
      '<a class="hear-name screen-only" href="sound/sound%201.mp3">Hear <span class="visually-hidden"><span lang="fr">Eau noire 2</span></span></a>',
    );
  });

  it('bring each credit once', () => {
    expect(html.split('Spoken names: a neighbour · for lessons')).toHaveLength(2);
    expect(html.split('Pictures: drawn by the tests')).toHaveLength(2);
    expect(html).not.toContain('nobody');
  });

  it('are never mirrored, as drawings are', () => {
    const wave = html.match(/<svg[^>]*>.*?<\/svg>/)?.[0];
    expect(wave).toContain('class="figure own-picture"');
    const run = computeGestureRun({ ...ORDER, view: 'mirror' }, source);
    expect(stringifyHast(renderRun(run, viewOf([run.timeline]), 'teacher') as Element[])).not.toContain('matrix');
    const drawn = { ...ORDER, view: 'mirror' as const, groups: changeGesture('other') };
    expect(render(drawn)).toContain('<use href="#figure-1-facing" transform="matrix(-1 0 0 1 ');
    expect(render({ ...drawn, view: 'own' })).toContain('<use href="#figure-1-own"/>');
  });

  it('stand once on a page, a mirrored drawing with the one it mirrors', () => {
    const figures = (view: 'facing' | 'own' | 'mirror') =>
      computeGestureRun({ ...ORDER, view }, source).parts.flatMap(({ cards }) =>
        cards.flatMap(({ figure }) => figure ?? []),
      );
    const store = stringifyHast(renderFigureStore([...figures('facing'), ...figures('mirror'), ...figures('own')]));
    expect([...store.matchAll(/<symbol id="([^"]*)"/g)].map(([, id]) => id)).toEqual([
      'figure-2-facing',
      'figure-2-own',
    ]);
    expect(store).toContain('href="images/picture-1.png"');
    expect(renderFigureStore([])).toEqual([]);
  });
});

function changeGesture(gesture: string): RunOrder['groups'] {
  return ORDER.groups.map((group) => ({ ...group, items: group.items.map((each) => ({ ...each, gesture })) }));
}
