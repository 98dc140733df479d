import { createAlmanac } from '../../src/calendar/almanac.ts';
import { renderNightRow } from '../../src/calendar/night-row.ts';
import { openLibrary } from '../../src/content/open-library.ts';
import { readContent } from '../../src/node/read-content.ts';

/** Makes a function that works out the rows of a school from a date to another, as `nights --json` does, and counts them. */
export function openNights(contentFolder: string, schoolId: string): (from: string, to: string) => number {
  const opened = openLibrary(readContent(contentFolder)).openSchool(schoolId)?.value;
  if (opened === undefined) throw new Error(`There is no school ${schoolId}.`);
  const almanac = createAlmanac(opened.calendar, opened.school.place);
  return (from, to) => {
    let count = 0;
    for (const record of almanac.nights(from, to)) {
      if (JSON.stringify(renderNightRow(almanac, record)) !== '') count += 1;
    }
    return count;
  };
}
