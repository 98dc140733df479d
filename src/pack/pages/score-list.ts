import type { Element } from 'hast';
import { h } from 'hastscript';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import { renderName } from '../../content/render-name.ts';
import { nameNightAnchor } from '../../directives/page-names.ts';
import { sayMoon } from '../../directives/say-moon.ts';
import type { PageContext } from './page-context.ts';
import type { ScoreMonth } from './score-months.ts';

/** The nights of the score as lists, a list a group, for those who cannot make out the picture; each leads to how its gesture is done. Not printed. */
export function renderScoreList(context: PageContext, month: ScoreMonth, id: string): Element {
  const { namesLanguage, labels } = context.view;
  return h('div', { className: ['score-list', 'screen-only'] }, [
    h('h2', { id: `${id}-title` }, [renderName(month.name, namesLanguage), `: ${labels.text('score-as-list')}`]),
    h(
      'div',
      { className: ['score-groups'] },
      month.groups.map((group) =>
        h('div', { className: ['score-group'] }, [
          h('h3', [renderName(group.name, namesLanguage)]),
          h(
            'ol',
            group.nights.map((record) => renderNight(context, record)),
          ),
        ]),
      ),
    ),
  ]);
}

function renderNight({ week, view, paths }: PageContext, record: NightRecord): Element {
  const cue = week.gestures.gestures[record.night.gesture ?? '']?.cue;
  const name = renderName(record.night.name, view.namesLanguage);
  const href = `${paths.gestures}#${nameNightAnchor(record.night.number)}`;
  return h('li', { value: record.nightOfMonth }, [
    h('strong', [cue === undefined ? name : h('a', { href }, [name])]),
    ` · ${week.labels.date(record.date, 'short')}`,
    ...(cue === undefined ? [] : [h('span', { className: ['cue'] }, cue)]),
    h('span', { className: ['visually-hidden'] }, ` ${sayMoon(week.almanac.moonHighest(record), week.labels)}`),
  ]);
}
