import type { FactSetting } from '../../../src/directives/questions/answer-facts.ts';
import { openContent } from '../build-week.ts';

/** The fixed English school on a date, with its real sky, for what is computed from a lesson's date. */
export function openSetting(date: string, schoolId = 'saltgrass-point') {
  const { library, almanacFor } = openContent();
  const opened = library.openSchool(schoolId)?.value;
  if (opened === undefined) throw new Error(`The school ${schoolId} is not there.`);
  const head = {
    title: 'A lesson',
    day: 'wednesday',
    minutes: 10,
    intentions: [],
    success: [],
    materials: [],
  } as const;
  const setting = {
    almanac: almanacFor(opened),
    calendar: opened.calendar,
    labels: opened.labels,
    lesson: { head, date, file: 'a.md', slug: 'wednesday', stem: '3-wednesday' },
  } satisfies FactSetting;
  return { ...setting, school: opened.school };
}
