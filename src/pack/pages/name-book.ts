import { nameNightAnchor } from '../../directives/page-names.ts';
import type { ResolvedWeek } from '../../lesson/model.ts';

/** What the calendar tells of one of its names. */
export interface BookEntry {
  readonly kind: 'night' | 'group' | 'month';
  readonly name: string;
  /** Anchor of its entry among the names on a page. */
  readonly id: string;
  /** Number of the group that a night belongs to or that this is; 0 for a month. */
  readonly groupNumber: number;
  readonly say?: string;
  readonly meaning?: string;
  /** Number of a night in the calendar's list, which finds its gesture and its recording. */
  readonly nightNumber?: number;
}

/** The names of a calendar in its order: each group before its nights, then the months. A name that comes twice is its first. */
export type NameBook = ReadonlyMap<string, BookEntry>;

/** Collects all names of a week's calendar of which there is anything to tell. */
export function createNameBook({ almanac, calendar, gestures }: ResolvedWeek): NameBook {
  const book = new Map<string, BookEntry>();
  const add = (entry: BookEntry, tells: boolean) => {
    if (tells && !book.has(entry.name)) book.set(entry.name, entry);
  };
  calendar.groups.forEach((group, index) => {
    const groupNumber = index + 1;
    const entry = { kind: 'group', id: `name-group-${groupNumber}`, groupNumber, ...pickWords(group) } as const;
    add(entry, tellsWords(group));
    for (const night of almanac.run.filter((each) => each.groupNumber === groupNumber)) {
      const { number, gesture } = night;
      const shown = gesture !== undefined && gestures.gestures[gesture] !== undefined;
      const tells = tellsWords(night) || shown || calendar.spokenNames.has(number);
      const id = `name-${nameNightAnchor(number)}`;
      add({ kind: 'night', id, groupNumber, nightNumber: number, ...pickWords(night) }, tells);
    }
  });
  const months = [...calendar.months, ...(calendar.thirteenthMonth === undefined ? [] : [calendar.thirteenthMonth])];
  months.forEach((month, index) => {
    add({ kind: 'month', id: `name-month-${index + 1}`, groupNumber: 0, ...pickWords(month) }, tellsWords(month));
  });
  return book;
}

type Words = Pick<BookEntry, 'name' | 'say' | 'meaning'>;

function pickWords({ name, say, meaning }: Words): Words {
  return { name, ...(say === undefined ? {} : { say }), ...(meaning === undefined ? {} : { meaning }) };
}

function tellsWords({ say, meaning }: Words): boolean {
  return say !== undefined || meaning !== undefined;
}
