import type { NightRecord } from '../calendar/almanac-types.ts';

/** The tradition's sentence with `{night}` and `{month}` filled in; it stays in the calendar's language. */
export function fillSentence(sentence: string, record: NightRecord): string {
  const names = { night: record.night.name, month: record.month.name };
  return sentence.replace(/\{(night|month)\}/g, (_, key: keyof typeof names) => names[key]);
}
