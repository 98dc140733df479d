import type { NightRecord } from '../calendar/almanac-types.ts';

/** The tradition's sentence with `{night}` and `{month}` filled in; it stays in the calendar's language. */
export function fillSentence(sentence: string, record: NightRecord): string {
  return sentence.replaceAll('{night}', record.night.name).replaceAll('{month}', record.month.name);
}
