import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import { findNearMiss } from '../content/near-miss.ts';
import { renderName } from '../content/render-name.ts';
import type { Gesture } from '../content/types.ts';
import { formatElapsed } from '../rhythm/format-elapsed.ts';
import { type NightSelectionFault, selectNights } from '../rhythm/select-nights.ts';
import { computeTimeline, type TimelineEntry } from '../rhythm/timeline.ts';
import { defineDirective, type ResolveContext, type ViewContext, type WrittenDirective } from './definition.ts';

/** A run of gestures on the beat, by group. */
interface GestureRun {
  readonly tempo: number;
  readonly beatsPerNight: number;
  readonly totalSeconds: number;
  readonly groups: readonly GestureGroup[];
}

interface GestureGroup {
  readonly name: string;
  readonly cards: readonly GestureCard[];
}

interface GestureCard {
  readonly entry: TimelineEntry;
  /** Nights of its group in the calendar, whatever was selected. */
  readonly groupLength: number;
  /** Absent where the calendar gives the night none. */
  readonly gesture?: Gesture;
}

const DEFAULT_TEMPO = 60;
const DEFAULT_BEATS = 4;

export const gestureSequence = defineDirective({
  name: 'gesture-sequence',
  forms: ['leaf'],
  about: 'Gestures on the beat, a card a night in order: group, name, what to do, place in the group and time.',
  example: '::gesture-sequence{nights=up-to-tonight tempo=72}',
  label: { use: 'none' },
  attributes: {
    nights: {
      type: 'text',
      about: '`all`, `up-to-tonight`, `this-week`, a group, a night, or `First night..Last night`; left out, `all`',
    },
    tempo: { type: 'integer', min: 30, max: 160, about: `beats a minute; left out, ${DEFAULT_TEMPO}` },
    beats: { type: 'integer', min: 1, max: 8, about: `beats a night; left out, ${DEFAULT_BEATS}` },
  },
  notInside: ['group-quiz'],
  resolve(written, { nights = 'all', tempo = DEFAULT_TEMPO, beats = DEFAULT_BEATS }, context) {
    const { almanac, dates, lesson } = context;
    const selection = selectNights(almanac.run, nights, {
      tonight: almanac.nightOn(lesson.date).night.number,
      week: [...dates.values()].map((date) => almanac.nightOn(date).night.number),
    });
    if (!('nights' in selection)) {
      reportSelection(written, nights, selection, context);
      return undefined;
    }
    const timeline = computeTimeline(selection.nights, {
      tempoBeatsPerMinute: tempo,
      beatsPerNight: beats,
      countIn: 'none',
    });
    const run = {
      tempo,
      beatsPerNight: beats,
      totalSeconds: timeline.totalSeconds,
      groups: gatherGroups(timeline.entries, context),
    };
    // Run up to tonight, its last card is tonight; the other selections do not go by dates.
    const tells = selection.kind === 'up-to-tonight' ? { tells: [lesson.date] } : {};
    return { learner: run, teacher: run, ...tells };
  },
  learnerView: (run, _children, view) => renderRun(run, view),
  teacherView: (run, _children, view) => renderRun(run, view),
});

/** Neighbours of one group stand together; a run that wraps around may come to a group twice. */
function gatherGroups(entries: readonly TimelineEntry[], { almanac, gestures }: ResolveContext): GestureGroup[] {
  const groups: { name: string; cards: GestureCard[] }[] = [];
  for (const entry of entries) {
    const gesture = gestures.gestures[entry.night.gesture ?? ''];
    const groupLength = almanac.run.filter(({ groupNumber }) => groupNumber === entry.night.groupNumber).length;
    const card = { entry, groupLength, ...(gesture === undefined ? {} : { gesture }) };
    const last = groups.at(-1);
    if (last === undefined || last.name !== entry.night.group || entry.strong) {
      groups.push({ name: entry.night.group, cards: [card] });
    } else last.cards.push(card);
  }
  return groups;
}

function renderRun(run: GestureRun, view: ViewContext): ElementContent[] {
  const { labels, namesLanguage } = view;
  const facts = labels.text('gesture-run-facts', {
    tempo: run.tempo,
    beats: labels.count('beats-a-night', run.beatsPerNight),
    time: formatElapsed(run.totalSeconds),
  });
  return [
    // A group, not a landmark: a lesson has many runs, and landmarks of one name are no help.
    h('div.gesture-run', { role: 'group', ariaLabel: labels.text('gesture-run') }, [
      h('p.gesture-run-facts', facts),
      ...run.groups.map((group) =>
        h('div.gesture-group', [
          h('p.gesture-group-name', [
            renderName(group.name, namesLanguage),
            ' ',
            h('span.gesture-group-count', String(group.cards.length)),
          ]),
          h(
            'ol.gesture-cards',
            group.cards.map((card) => renderCard(card, view)),
          ),
        ]),
      ),
    ]),
  ];
}

function renderCard(
  { entry, groupLength, gesture }: GestureCard,
  { labels, namesLanguage }: ViewContext,
): ElementContent {
  const { night } = entry;
  return h(entry.strong ? 'li.gesture-card.strong-beat' : 'li.gesture-card', [
    h('p.gesture-beat', [
      h('span.gesture-count', { ariaHidden: 'true' }, String(entry.count)),
      h(
        'span.gesture-time',
        labels.text('gesture-count', {
          n: entry.count,
          length: groupLength,
          time: formatElapsed(entry.startsAtSeconds),
        }),
      ),
    ]),
    h('p.gesture-name', [renderName(night.name, namesLanguage)]),
    ...(gesture === undefined
      ? [h('p.gesture-cue', labels.text('gesture-none'))]
      : [
          h('p.gesture-cue', gesture.cue),
          h('p.gesture-seated', labels.text('gesture-seated', { how: gesture.seated })),
        ]),
  ]);
}

function reportSelection(
  written: WrittenDirective,
  nights: string,
  fault: NightSelectionFault,
  { almanac, report }: ResolveContext,
): void {
  const expected = '`all`, `up-to-tonight`, `this-week`, the name of a group or a night, or `First night..Last night`';
  const known = [...almanac.run.flatMap(({ name, group }) => [name, group]), 'all', 'up-to-tonight', 'this-week'];
  const name = fault.kind === 'unknown-name' ? fault.name : nights;
  const near = fault.kind === 'unknown-name' ? (fault.hint ?? findNearMiss(fault.name, known)) : undefined;
  const what =
    fault.kind === 'unknown-name'
      ? `\`${name}\` is not a night or a group of the calendar`
      : `\`${nights}\` does not say which nights`;
  report({
    rule: 'attribute-value',
    severity: 'error',
    place: written.attributePlace('nights'),
    message: `${what}; expected ${expected}; ${near === undefined ? 'mend `nights`' : `did you mean \`${near}\`?`}`,
    found: nights,
    expected,
  });
}
