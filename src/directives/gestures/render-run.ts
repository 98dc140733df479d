import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import type { Labels } from '../../content/labels.ts';
import { renderName } from '../../content/render-name.ts';
import { formatElapsed } from '../../rhythm/format-elapsed.ts';
import type { Rhythm, RunGroup } from '../../rhythm/timeline-types.ts';
import type { LessonView, ViewContext } from '../definition.ts';
import { GESTURES_PAGE, nameNightAnchor } from '../page-names.ts';
import type { GestureRun, RunPart } from './gesture-run.ts';
import { renderCard } from './render-card.ts';
import { renderCredits, renderRecordingLink } from './render-credits.ts';
import { findMidiFile, renderSound } from './run-sound.ts';

/** A run: its title and facts, its sound, its groups with their cards, tonight's sentence, and whose recordings it has. */
export function renderRun(run: GestureRun, view: LessonView, reader: 'learner' | 'teacher'): ElementContent[] {
  const id = `run-${run.number}`;
  const isOneGroup = run.parts.length === 1 && isWhole(run.parts[0]);
  return [
    // A group, not a landmark: a lesson has many runs, and landmarks are no help among so many.
    h('div', { className: ['gesture-run', `view-${run.view}`], role: 'group', ariaLabelledBy: id }, [
      h('p', { className: ['run-title'], id }, renderTitle(run, view)),
      h('p.run-facts', sayFacts(run, view.labels)),
      ...renderSound(run, view),
      ...renderRecordingLink(run, view, reader),
      ...run.parts.map((part) => renderPart(part, !isOneGroup, view)),
      ...renderSentence(run, view),
      ...renderCredits(run, view),
      ...(reader === 'teacher' ? renderFiles(run, view) : []),
    ]),
  ];
}

function isWhole(part: RunPart | undefined): boolean {
  return part !== undefined && part.cards.length >= part.group.wholeLength;
}

/** The group's name when there is one and it is whole; else the first and the last name, or the only one. */
function renderTitle({ parts }: GestureRun, view: ViewContext): ElementContent[] {
  const [part] = parts;
  if (part !== undefined && parts.length === 1 && isWhole(part)) return [renderGroupName(part.group, view)];
  const first = part?.cards[0]?.item.name ?? '';
  const last = parts.at(-1)?.cards.at(-1)?.item.name ?? '';
  const tag = (name: string) => [renderName(name, view.namesLanguage)];
  return first === last ? tag(first) : fillLabel(view.labels, 'run-from-to', { first: tag(first), last: tag(last) });
}

/** The months as a group have no name in the calendar: theirs is the kit's word. */
function renderGroupName({ kind, name }: RunGroup, { namesLanguage }: ViewContext): ElementContent {
  return kind === 'months' ? { type: 'text', value: name } : renderName(name, namesLanguage);
}

/** "60 beats a minute · one beat each · each group is counted in · 1:24 in all". */
function sayFacts({ timeline }: GestureRun, labels: Labels): string {
  const { rhythm, totalSeconds } = timeline;
  const { tempoBeatsPerMinute: tempo, restBeats } = rhythm;
  const parts = [
    labels.text('gesture-tempo', { tempo: labels.number(tempo, Number.isInteger(tempo) ? 0 : 1) }),
    labels.count('beats-each', rhythm.beatsPerItem),
    sayCountIn(rhythm, labels),
    ...(timeline.events.some(({ kind }) => kind === 'rest') ? [labels.count('rest-between', restBeats)] : []),
    ...sayPasses(rhythm, labels),
    labels.text('time-in-all', { time: formatElapsed(Math.ceil(totalSeconds)) }),
  ];
  return parts.join(' · ');
}

function sayCountIn({ countIn }: Rhythm, labels: Labels): string {
  if (countIn === 'by-group') return labels.text('count-in-by-group');
  return countIn === 'none' ? labels.text('count-in-none') : labels.count('count-in-beats', countIn);
}

function sayPasses({ passes, slowFirst }: Rhythm, labels: Labels): string[] {
  if (slowFirst) return [labels.count('slow-then-times', passes)];
  return passes > 1 ? [labels.count('times-through', passes)] : [];
}

function renderPart(part: RunPart, named: boolean, view: ViewContext): Element {
  const { group, cards, restBeats } = part;
  return h('div.gesture-group', [
    ...(restBeats > 0 ? [h('p.run-rest', view.labels.count('rest-beats', restBeats))] : []),
    ...renderHead(part, named, view),
    ...(group.kind === 'months' ? [h('p.run-note', view.labels.text('months-cue'))] : []),
    h(
      'ol.gesture-cards',
      cards.map((card) => renderCard(card, group, view)),
    ),
  ]);
}

/** The group's name and what is counted before it, in one line where there is room. */
function renderHead(part: RunPart, named: boolean, view: ViewContext): Element[] {
  const count = h('span.gesture-group-count', String(part.cards.length));
  const name = named ? [h('p.gesture-group-name', [h('span', [renderGroupName(part.group, view)]), ' ', count])] : [];
  const head = [...name, ...renderCountIn(part, view)];
  return head.length === 0 ? [] : [h('div.gesture-group-head', head)];
}

/** The counted beats as a row of rings, and in words. */
function renderCountIn({ group, countBeats }: RunPart, view: ViewContext): Element[] {
  if (countBeats === 0) return [];
  const counts = countBeats === 1 ? '1' : `1–${countBeats}`;
  return [
    h('p.run-count-in', [
      h(
        'span.count-row',
        { ariaHidden: 'true' },
        Array.from({ length: countBeats }, (_, index) => h('span', String(index + 1))),
      ),
      h('span.count-words', fillLabel(view.labels, 'count-comes', { counts, group: [renderGroupName(group, view)] })),
    ]),
  ];
}

function renderSentence({ sentence }: GestureRun, { labels, namesLanguage }: ViewContext): Element[] {
  if (sentence === undefined) return [];
  return [h('p.run-sentence', [`${labels.text('then-sentence')} `, h('q', [renderName(sentence, namesLanguage)])])];
}

/** Ways from a run to what learners do not get: how its gestures are done, and its track as a MIDI file. */
function renderFiles(run: GestureRun, view: LessonView): Element[] {
  const first = run.parts.flatMap(({ cards }) => cards).find(({ item, figure }) => item.kind === 'night' && figure);
  const how = first && `${GESTURES_PAGE}#${nameNightAnchor(first.item.number)}`;
  const midi = findMidiFile(run, view);
  const links = [
    ...(how === undefined ? [] : [h('a', { href: how }, view.labels.text('how-gestures-go'))]),
    ...(midi === undefined ? [] : [h('a', { href: midi, download: true }, view.labels.text('midi-file'))]),
  ];
  const parts = links.flatMap((link, index) => (index === 0 ? [link] : [' · ', link]));
  return parts.length === 0 ? [] : [h('p.run-files.screen-only', parts)];
}
