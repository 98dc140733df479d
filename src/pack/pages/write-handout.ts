import type { ElementContent } from 'hast';
import { tagAuthors } from '../../content/tag-authors.ts';
import type { Handout, ResolvedWeek } from '../../lesson/model.ts';
import { frameTables } from './frame-tables.ts';
import type { NameBook } from './name-book.ts';
import { openBlanks } from './open-blanks.ts';
import { sayNames } from './say-names.ts';

/** A handout's text as learners get it: names with how they are said, and room to write. */
export function writeHandout({ labels, school, calendar }: ResolvedWeek, handout: Handout, book: NameBook): Handout {
  // The kit's own words among the author's, which are tagged as a whole.
  const tag = tagAuthors(school.language, labels.language);
  const view = { labels, namesLanguage: calendar.language };
  const body: ElementContent[] = frameTables(openBlanks(sayNames(handout.body, book, view, tag), labels, tag), labels);
  return { ...handout, body };
}
