import { createAlmanac } from '../../src/calendar/almanac.ts';
import { openLibrary } from '../../src/content/open-library.ts';
import { renderFigure } from '../../src/drawing/figure/figure.ts';
import { renderScore } from '../../src/drawing/score.ts';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';
import { readContent } from '../../src/node/read-content.ts';
import { computeTimeline } from '../../src/rhythm/compute-timeline.ts';
import { planTracks } from '../../src/rhythm/plan-tracks.ts';
import { renderMidi } from '../../src/rhythm/render-midi.ts';
import { renderWav } from '../../src/rhythm/render-wav.ts';
import { selectRun } from '../../src/rhythm/select-run.ts';

// A month of a school: `look` works out its nights and Moons only, `make` also draws every gesture from both sides
// (a mirrored one is the facing one, flipped by the page) and the score on two sheets, and renders the drum track. The difference is what the second costs.
const [contentFolder = 'content', schoolId = '', date = '', mode = 'look'] = process.argv.slice(2);
const opened = openLibrary(readContent(contentFolder)).openSchool(schoolId)?.value;
if (opened === undefined) throw new Error(`There is no school ${schoolId}.`);
const almanac = createAlmanac(opened.calendar, opened.school.place);
const records = almanac.nightsOfMonth(date);
const moons = records.map((record) => almanac.moonHighest(record));
if (mode === 'make') {
  const bytes = drawFigures() + drawScore() + renderTrack();
  if (!(bytes > 0)) throw new Error('Nothing was made.');
}

function gestureOf(key: string | undefined) {
  return opened?.gestures.gestures[key ?? ''];
}

function drawFigures(): number {
  return sum(
    records.flatMap(({ night }) => {
      const gesture = gestureOf(night.gesture);
      if (gesture === undefined) return [];
      return (['facing', 'own'] as const).map((view) => write(renderFigure(gesture, view)));
    }),
  );
}

function drawScore(): number {
  const nights = records.map((record, index) => {
    const moon = moons[index];
    if (moon === undefined) throw new Error('A night without a Moon.');
    const gesture = gestureOf(record.night.gesture);
    return {
      group: record.night.group,
      night: {
        name: record.night.name,
        nightOfMonth: record.nightOfMonth,
        date: record.date.slice(5),
        moon,
        strong: record.night.numberInGroup === 1,
        ...(gesture === undefined ? {} : { gesture }),
        inWeek: index < 5,
      },
    };
  });
  const names = [...new Set(nights.map(({ group }) => group))];
  const sheets = renderScore({
    title: records[0]?.month.name ?? '',
    subtitle: [date],
    footer: [schoolId],
    legend: { strong: 'strong', beat: 'beat' },
    groups: names.map((name) => ({
      name,
      nights: nights.filter(({ group }) => group === name).map(({ night }) => night),
    })),
    sheets: (['facing', 'own'] as const).map((view) => ({ view, caption: view, pictureTitle: view })),
    namesLanguage: 'en',
    weekLabel: 'week',
    idPrefix: 'score',
  });
  return sum(sheets.map(write));
}

function renderTrack(): number {
  const selection = selectRun({ run: almanac.run, months: [], monthsName: '' }, 'all', {});
  if (!('groups' in selection)) throw new Error('There is no run.');
  const timeline = computeTimeline(selection.groups, {
    tempoBeatsPerMinute: 60,
    beatsPerItem: 1,
    countIn: 'by-group',
    restBeats: 0,
    passes: 1,
    slowFirst: false,
  });
  return sum(planTracks([timeline]).tracks.map((track) => renderWav(track).length + renderMidi(track).length));
}

function write(element: ReturnType<typeof renderFigure>): number {
  return stringifyHast({ type: 'root', children: [element] }).length;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
