import type { NightRecord } from '../../calendar/almanac-types.ts';
import { renderMoon } from '../../drawing/moon.ts';
import type { WrittenSource } from '../../quiz/model.ts';
import type { ResolveContext } from '../definition.ts';
import { sayMoon } from '../say-moon.ts';
import { requireDrawnNight } from './find-night.ts';
import type { QuestionItem } from './question-item.ts';
import { readCommon } from './read-common.ts';
import { readWrittenValue } from './written-value.ts';

/** `::answer{draw=…}`: the Moon of a night, to be drawn in an empty disc. */
export function readDrawing(item: QuestionItem, context: ResolveContext): WrittenSource[] {
  const written = item.answer && readWrittenValue(item.answer.written, 'draw');
  const record = written && requireDrawnNight(written, context);
  if (record === undefined) return [];
  return [{ kind: 'draw', ...readCommon(item, [], context), ...drawNight(record, context) }];
}

/** Half as wide as the Moon on a teacher's page: beside others in a key. Our own choice. */
const MOON_RADIUS_PX = 45;

/** The Moon as it is best seen that night from the school, and the same in words. */
export function drawNight(record: NightRecord, { almanac, labels }: Pick<ResolveContext, 'almanac' | 'labels'>) {
  const moon = almanac.moonBestSeen(record);
  const description = sayMoon(moon, labels);
  return { description, renderDrawing: () => [renderMoon(moon, { radius: MOON_RADIUS_PX, title: description })] };
}
