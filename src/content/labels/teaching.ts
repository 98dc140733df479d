import type { LabelEntry } from '../label-entry.ts';

/** Words of the start page and of the lessons' pages, for somebody who teaches from them at short notice. */
export const TEACHING_LABELS = {
  // Start page
  'made-for-range': { english: 'Made for {from} to {to}', about: 'For which dates a pack was made' },
  'made-for-day': { english: 'Made for {date}', about: 'For which date a pack was made' },
  'today-night': { english: 'Today is {date}. Its night is {night}.', about: 'Over the days, on a day with a lesson' },
  'go-to-today': { english: 'Go to today', about: 'Link to the day of the week that it is' },
  'open-lesson': { english: 'Open the lesson', about: 'Link to the page of a lesson' },
  'pack-is-early': {
    english: 'You are early: the week of this pack is still to come. It is all here already, to be read in peace.',
    about: 'Over the days, before the first of them',
  },
  'pack-is-late': {
    english:
      'The week of this pack is over. Its lessons can be taught on other days, but its nights, clock times and answers belong to the dates it was made for: for other dates it has to be built again.',
    about: 'Over the days, after the last of them',
  },
  'no-lesson-today': {
    english: 'There is no lesson in this pack today. The next one is on {day}.',
    about: 'Over the days, on a day of the week that is not taught; {day} is a link',
  },
  'whole-week': { english: 'The week at a glance', about: 'Heading over the table of all days, and a link to it' },
  'day-column': { english: 'Day and night', about: 'Heading of a column of the week' },
  'lesson-column': { english: 'Lesson and steps', about: 'Heading of a column of the week' },
  'bring-column': { english: 'Gather', about: 'Heading of a column of the week: things that a lesson needs' },
  'print-column': { english: 'Print', about: 'Heading of a column of the week: papers and handouts' },
  'class-still-in': {
    english: 'In class, at {time}, it is still {class}; {tonight} begins at {begins}.',
    about: 'In one line: which night class time belongs to, where it is the night before',
  },
  'class-already-in': {
    english: 'In class, at {time}, it is already {tonight}.',
    about: 'In one line: which night class time belongs to, where it is the night of the date',
  },
  'who-sits-where': { english: 'Who sits where', about: 'Heading over groups and the roles of their seats' },
  'table-groups': { english: 'Groups: {groups}', about: 'Names of the groups of learners' },
  'seats-in-quiz': { english: '{quiz}: {seats}', about: 'Roles of the seats in a quiz' },
  'names-of-day': { english: 'Names: how to say them, what they mean', about: 'Link to the names on a lesson’s page' },
  'if-no-sound': { english: 'No sound:', about: 'Before what to do then' },
  'if-no-projector': { english: 'No projector:', about: 'Before what to do then' },
  'if-no-copies': { english: 'No copies:', about: 'Before what to do then' },
  'if-rain': { english: 'Bad weather:', about: 'Before what to do then' },
  'do-no-sound': {
    english: 'Clap or tap a steady beat. The numbers on the gesture cards are the counts.',
    about: 'What to do without sound, where a lesson has a run on the beat',
  },
  'do-no-projector': {
    english: 'Nothing has to be shown. Hold the page up, or copy the night’s name and its sentence onto the board.',
    about: 'What to do without a projector',
  },
  'do-no-copies': {
    english: 'One sheet or one screen for each table is enough. Learners write on any paper.',
    about: 'What to do without copies, where a lesson has papers or handouts',
  },
  'do-rain': {
    english: 'Nobody has to go out. The drawing shows how the Moon stands behind the clouds.',
    about: 'What to do in bad weather, where a lesson speaks of looking at the sky',
  },
  'relief-notes': { english: 'Good to know all week', about: 'Heading over the author’s notes for a relief teacher' },
  'notes-all-week': { english: 'Good to know all week: last page', about: 'Link to those notes, from each day' },

  // Lessons
  'day-sheet-of': { english: '{day} on one page', about: 'Link from a lesson to its day on the start page' },
  'names-on-page': { english: 'Names on this page', about: 'Heading over the names of nights, groups and months' },
  'wide-table': {
    english: 'A wide table, to be moved sideways',
    about: 'Names the frame of a table, for screen readers',
  },
  'names-months': { english: 'Months', about: 'Heading over the names of months' },
  'see-gesture': { english: 'see its gesture', about: 'After the name of a night, a link to how its gesture is done' },
} as const satisfies Readonly<Record<string, LabelEntry>>;
