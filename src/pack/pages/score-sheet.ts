import type { Element } from 'hast';
import { h } from 'hastscript';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import type { ContentPicture } from '../../content/types.ts';
import { renderScore } from '../../drawing/score.ts';
import type { ScoreNight } from '../../drawing/score-model.ts';
import type { ResolvedWeek } from '../../lesson/model.ts';
import type { PageContext } from './page-context.ts';
import type { ScoreMonth } from './score-months.ts';

/** From which sides the figures are shown, a sheet each: for the class, and for who does it alone. */
const SHEETS = ['facing', 'own'] as const;

/** The sheets of a month for the wall: the month as music. On a small screen each scrolls in its own frame. */
export function renderScoreSheets({ week, view }: PageContext, month: ScoreMonth, idPrefix: string): Element[] {
  const { calendar, labels, plan, school } = week;
  const dates = labels.text('date-range', {
    from: labels.date(month.firstDate, 'day'),
    to: labels.date(month.lastDate, 'long'),
  });
  const captions = SHEETS.map((side) => labels.text(`figures-${side}`));
  const pictures = renderScore({
    title: month.name,
    subtitle: [{ name: calendar.title }, ` · ${dates} · ${school.name}`],
    footer: [
      [
        describePlace(week),
        labels.text('keeper-first', { keeper: calendar.keeper }),
        ...listCredits(week, month).map((credit) => labels.text('pictures-by', { credit })),
      ].join(' '),
    ],
    legend: { strong: labels.text('score-strong'), beat: labels.text('score-beat') },
    groups: month.groups.map(({ name, nights }) => ({
      name,
      nights: nights.map((record, index) => describeNight(week, month, record, index === 0)),
    })),
    sheets: SHEETS.map((side, index) => ({
      view: side,
      caption: captions[index] ?? '',
      pictureTitle: `${labels.text('score-picture')} ${captions[index] ?? ''}`,
    })),
    namesLanguage: view.namesLanguage,
    weekLabel: plan.title,
    idPrefix,
  });
  return pictures.flatMap((picture, index) => {
    const caption = captions[index] ?? '';
    return [
      // On a small screen the sheet's own words may lie beyond the edge of the frame.
      h('p', { className: ['score-side', 'screen-only'] }, caption),
      h('section', { className: ['score-frame'], ariaLabel: `${dates}: ${caption}`, tabIndex: 0 }, [picture]),
    ];
  });
}

/** The author's own pictures that stand in for drawings on the sheets of a week. */
export function listScorePictures(week: ResolvedWeek, months: readonly ScoreMonth[]): ContentPicture[] {
  return months.flatMap(({ groups }) =>
    groups.flatMap(({ nights }) => nights.flatMap((record) => findGesture(week, record)?.picture ?? [])),
  );
}

function describeNight(week: ResolvedWeek, month: ScoreMonth, record: NightRecord, strong: boolean): ScoreNight {
  const gesture = findGesture(week, record);
  return {
    name: record.night.name,
    nightOfMonth: record.nightOfMonth,
    date: week.labels.date(record.date, 'short'),
    moon: week.almanac.moonHighest(record),
    strong,
    inWeek: isInWeek(record.date, month),
    ...(gesture === undefined ? {} : { gesture }),
  };
}

/** From the month's first lesson to its last, days without one between them too. */
function isInWeek(date: CivilDate, { taught }: ScoreMonth): boolean {
  return date >= (taught[0] ?? '') && date <= (taught.at(-1) ?? '');
}

function findGesture({ gestures }: ResolvedWeek, { night }: NightRecord) {
  return night.gesture === undefined ? undefined : gestures.gestures[night.gesture];
}

function listCredits(week: ResolvedWeek, month: ScoreMonth): string[] {
  return [...new Set(listScorePictures(week, [month]).flatMap(({ credit }) => credit ?? []))];
}

function describePlace({ labels, school }: ResolvedWeek): string {
  const { latitudeDegrees } = school.place;
  const n = Math.round(Math.abs(latitudeDegrees));
  const latitude = labels.text(latitudeDegrees < 0 ? 'latitude-south' : 'latitude-north', { n });
  return labels.text('score-seen-from', { latitude });
}
