import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { RunNight } from '../../calendar/almanac-types.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { renderName } from '../../content/render-name.ts';
import { tagAuthors } from '../../content/tag-authors.ts';
import type { ContentPicture, ContentSound, Recording } from '../../content/types.ts';
import { addressSound } from '../../directives/gestures/run-sound.ts';
import {
  renderSharedFigure,
  type SharedFigure,
  seatFigure,
  shareFigure,
} from '../../directives/gestures/shared-figures.ts';
import { nameNightAnchor } from '../../directives/page-names.ts';
import type { ResolvedWeek } from '../../lesson/model.ts';
import type { PageContext } from './page-context.ts';

/** A night of the calendar with all that a teacher needs to show its gesture. */
export interface SheetNight {
  readonly night: RunNight;
  /** In the order in which they are shown: three views and the seated way, or an author's picture; empty without a gesture. */
  readonly figures: readonly SharedFigure[];
  /** The name as somebody says it. */
  readonly spoken?: Recording;
}

/** All nights of the calendar by groups, those too that the present month leaves out. */
export function listSheetGroups(week: ResolvedWeek): SheetNight[][] {
  const groups: SheetNight[][] = [];
  for (const night of week.almanac.run) {
    const described = describe(night, week);
    const open = groups.at(-1);
    if (open?.[0]?.night.groupNumber === night.groupNumber) open.push(described);
    else groups.push([described]);
  }
  return groups;
}

function describe(night: RunNight, { calendar, gestures }: ResolvedWeek): SheetNight {
  const spoken = calendar.spokenNames.get(night.number);
  const key = night.gesture;
  const gesture = key === undefined ? undefined : gestures.gestures[key];
  const share = (view: SharedFigure['view']) =>
    key === undefined || gesture === undefined ? [] : [shareFigure(key, gesture, view, gestures)];
  const facing = share('facing');
  const isPicture = gesture?.picture !== undefined;
  return {
    night,
    figures: isPicture ? facing : [...facing, ...share('own'), ...share('mirror'), ...facing.map(seatFigure)],
    ...(spoken === undefined ? {} : { spoken }),
  };
}

/** The pictures and sounds that the page of gestures shows and plays. */
export function listSheetMedia(week: ResolvedWeek): {
  readonly pictures: ContentPicture[];
  readonly sounds: ContentSound[];
} {
  const nights = listSheetGroups(week).flat();
  return {
    pictures: nights.flatMap(({ figures }) => figures[0]?.gesture.picture ?? []),
    sounds: nights.flatMap(({ spoken }) => spoken?.sound ?? []),
  };
}

/** A group of nights, a card a night. */
export function renderSheetGroup(context: PageContext, nights: readonly SheetNight[]): Element[] {
  const first = nights[0]?.night;
  if (first === undefined) return [];
  const id = `group-${first.groupNumber}`;
  return [
    h('section', { className: ['how-group'], ariaLabelledBy: id }, [
      h('h2', { id }, [
        renderName(first.group, context.view.namesLanguage),
        ' ',
        h('span', { className: ['how-length'] }, String(nights.length)),
      ]),
      h(
        'ol',
        { className: ['plain-list'] },
        nights.map((night) => renderCard(context, night)),
      ),
    ]),
  ];
}

function renderCard({ week, view }: PageContext, { night, figures, spoken }: SheetNight): Element {
  const { labels, school } = week;
  const gesture = figures[0]?.gesture;
  const id = nameNightAnchor(night.number);
  const how =
    gesture === undefined
      ? [h('p', { className: ['how-none'] }, labels.text('gesture-none'))]
      : [
          h('p', { className: ['how-cue'], ...tagAuthors(labels.language, school.language) }, gesture.cue),
          h(
            'p',
            { className: ['how-seated'] },
            fillLabel(labels, 'gesture-seated', {
              how: [h('span', tagAuthors(labels.language, school.language), gesture.seated)],
            }),
          ),
        ];
  return h('li', { className: ['how-card'], id }, [
    h('div', { className: ['how-words'] }, [
      h('h3', { id: `${id}-name` }, [
        h('span', { className: ['how-count'], ariaHidden: 'true' }, String(night.numberInGroup)),
        h('span', [renderName(night.name, view.namesLanguage)]),
      ]),
      ...renderSay(night, view),
      ...how,
      ...renderSpoken(spoken, `${id}-name`, view),
    ]),
    ...renderViews(figures, view),
  ]);
}

function renderSay({ say }: RunNight, { labels, namesLanguage }: PageContext['view']): Element[] {
  if (say === undefined) return [];
  return [
    h(
      'p',
      { className: ['how-say'] },
      fillLabel(labels, 'say-name', { say: [h('span', { lang: namesLanguage }, say)] }),
    ),
  ];
}

/** The browser's own player: it needs no script. The name of the night is its label. */
function renderSpoken(spoken: Recording | undefined, nameId: string, { labels }: PageContext['view']): Element[] {
  if (spoken === undefined) return [];
  const { sound, link } = spoken;
  const parts: ElementContent[] = [];
  if (sound !== undefined) {
    const heard = { controls: true, preload: 'none', src: addressSound(sound), ariaLabelledBy: nameId };
    parts.push(h('audio', { className: ['screen-only'], ...heard }));
  }
  if (link !== undefined) parts.push(h('p', fillLabel(labels, 'hear-at', { link: [h('a', { href: link }, link)] })));
  return [h('div', { className: ['how-spoken'] }, parts)];
}

/** The drawings side by side, each with its view in words. Hidden from screen readers: the words beside them say the same. */
function renderViews(figures: readonly SharedFigure[], { labels }: PageContext['view']): Element[] {
  if (figures.length === 0) return [];
  return [
    h(
      'div',
      { className: ['how-views'], ariaHidden: 'true' },
      figures.map((figure) =>
        h('figure', [renderSharedFigure(figure), h('figcaption', labels.text(nameView(figure)))]),
      ),
    ),
  ];
}

function nameView({ gesture, view, seated }: SharedFigure) {
  if (gesture.picture !== undefined) return 'view-picture';
  return seated === true ? 'view-seated' : (`view-${view}` as const);
}
