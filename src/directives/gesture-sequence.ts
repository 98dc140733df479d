import type { ContentPicture, ContentSound, RunRecording } from '../content/types.ts';
import { selectRun } from '../rhythm/select-run.ts';
import type { CountIn, Rhythm } from '../rhythm/timeline-types.ts';
import { defineDirective, type ResolveContext, type WrittenDirective } from './definition.ts';
import { fillSentence } from './fill-sentence.ts';
import { computeGestureRun, type GestureRun } from './gestures/gesture-run.ts';
import { renderRun } from './gestures/render-run.ts';
import { reportRecording, reportTwoTempi } from './gestures/report-run.ts';
import { describeNights, reportNights } from './report-nights.ts';

const DEFAULT_TEMPO = 60;
const DEFAULT_BEATS = 1;
const MOST_BEATS = 8;

/** One value a line of the authors' reference: a word, or a number of beats. */
const COUNT_INS = ['by-group', 'none', ...Array.from({ length: MOST_BEATS }, (_, index) => String(index + 1))];

/** What `nights` knows beside names. */
const WORDS = ['all', 'up-to-tonight', 'this-week', 'months', 'months-then-nights'] as const;

export const gestureSequence = defineDirective({
  name: 'gesture-sequence',
  forms: ['leaf'],
  about:
    'Gestures on the beat, a card a night by groups: drawing, name, what to do, count and time, with a drum track to play.',
  example: '::gesture-sequence{nights=up-to-tonight tempo=72 rest=2 slow-first=yes}',
  label: { use: 'none' },
  attributes: {
    nights: { type: 'text', about: `${describeNights(WORDS)}; left out, \`all\`` },
    tempo: { type: 'integer', min: 30, max: 160, about: `beats a minute; left out, ${DEFAULT_TEMPO}` },
    beats: {
      type: 'integer',
      min: 1,
      max: MOST_BEATS,
      about: `beats that each night lasts; left out, ${DEFAULT_BEATS}`,
    },
    'count-in': {
      type: 'choice',
      values: COUNT_INS,
      about:
        'beats before each group: `by-group`, as many as the group has nights, so that the class hears which group comes; `none`; or a number; left out, `by-group`',
    },
    rest: { type: 'integer', min: 0, max: MOST_BEATS, about: 'beats of rest between groups; left out, 0' },
    repeats: { type: 'integer', min: 1, max: 10, about: 'how many times the run is done; left out, 1' },
    'slow-first': {
      type: 'choice',
      values: ['yes', 'no'],
      about: '`yes`: once more before that, at three quarters of the tempo; left out, `no`',
    },
    view: {
      type: 'choice',
      values: ['facing', 'own', 'mirror'],
      about:
        'the drawings: `facing`, as the class sees a leader; `own`, as you see your own hands; `mirror`, a leader who faces the class and leads mirrored; left out, `facing`',
    },
    recording: {
      type: 'text',
      about: 'a recording of the run in place of the drum track, by its name under `recordings` in the gestures file',
    },
  },
  notInside: ['group-quiz'],
  resolve(written, values, context) {
    const { almanac, calendar, dates, labels, lesson } = context;
    const { nights = 'all', view = 'facing' } = values;
    const selection = selectRun(
      { run: almanac.run, months: calendar.months, monthsName: labels.text('months-group') },
      nights,
      {
        tonight: almanac.nightOn(lesson.date).night.number,
        week: [...dates.values()].map((date) => almanac.nightOn(date).night.number),
      },
    );
    if (!('groups' in selection)) reportNights(written, nights, selection, WORDS, context);
    const recording = requireRecording(written, values, context);
    if (!('groups' in selection) || recording === 'wrong') return undefined;
    const { groups, endsTonight } = selection;
    const sentence = endsTonight ? fillSentence(calendar.sentence, almanac.nightOn(lesson.date)) : undefined;
    const rhythm = readRhythm(values);
    const number = written.number;
    const run = computeGestureRun({ groups, rhythm, view: toView(view), number, sentence, recording }, context);
    return {
      learner: run,
      teacher: run,
      run: { timeline: run.timeline, recorded: run.recorded !== undefined },
      figures: run.parts.flatMap(({ cards }) => cards.flatMap(({ figure }) => figure ?? [])),
      pictures: listPictures(run),
      sounds: listSounds(run),
      ...(selection.kind === 'this-week' ? { tells: [...dates.values()] } : {}),
      // It ends with tonight, in its last card or in its sentence; the selections that are left do not go by dates.
      ...(endsTonight ? { tells: [lesson.date] } : {}),
    };
  },
  learnerView: (run, _children, view) => renderRun(run, view, 'learner'),
  teacherView: (run, _children, view) => renderRun(run, view, 'teacher'),
});

interface RhythmValues {
  readonly tempo?: number;
  readonly beats?: number;
  readonly rest?: number;
  readonly repeats?: number;
  readonly 'count-in'?: string;
  readonly 'slow-first'?: string;
}

function readRhythm(values: RhythmValues): Rhythm {
  const { tempo = DEFAULT_TEMPO, beats = DEFAULT_BEATS, rest = 0, repeats = 1 } = values;
  return {
    tempoBeatsPerMinute: tempo,
    beatsPerItem: beats,
    countIn: readCountIn(values['count-in'] ?? 'by-group'),
    restBeats: rest,
    passes: repeats,
    slowFirst: values['slow-first'] === 'yes',
  };
}

/** The check let nothing else through than the words and numbers of `COUNT_INS`. */
function readCountIn(written: string): CountIn {
  return written === 'by-group' || written === 'none' ? written : Number(written);
}

function toView(written: string): GestureRun['view'] {
  return written === 'own' || written === 'mirror' ? written : 'facing';
}

/** The recording that is asked for, nothing when none is, `wrong` after a fault, which is reported. */
function requireRecording(
  written: WrittenDirective,
  { recording: name, tempo }: { readonly recording?: string; readonly tempo?: number },
  context: ResolveContext,
): RunRecording | 'wrong' | undefined {
  if (name === undefined) return undefined;
  const { recordings } = context.gestures;
  const recording = Object.hasOwn(recordings, name) ? recordings[name] : undefined;
  if (recording === undefined) reportRecording(written, name, context);
  else if (tempo !== undefined) reportTwoTempi(written, tempo, recording.tempoBeatsPerMinute, context);
  return recording === undefined || tempo !== undefined ? 'wrong' : recording;
}

function listPictures({ parts }: GestureRun): ContentPicture[] {
  return parts.flatMap(({ cards }) => cards.flatMap(({ figure }) => figure?.gesture.picture ?? []));
}

function listSounds({ parts, recorded }: GestureRun): ContentSound[] {
  const spoken = parts.flatMap(({ cards }) => cards.flatMap((card) => card.spoken?.sound ?? []));
  return [...(recorded === undefined ? [] : [recorded.sound]), ...spoken];
}
