import type { LabelEntry } from '../label-entry.ts';

/** Words of the questions about nights, groups, months and the year, and of what the key says to them. */
export const NIGHT_QUESTION_LABELS = {
  'quiz-ask-night-of-date': { english: 'Which night is {date}?', about: 'Question, where the day begins at midnight' },
  'quiz-ask-night-from-sunset': { english: 'Which night is {date}, from sunset on?', about: 'Question' },
  'quiz-ask-night-from-sunrise': { english: 'Which night is {date}, from sunrise on?', about: 'Question' },
  'quiz-ask-nights-until': { english: 'Tonight is {tonight}. How many nights until {night}?', about: 'Question' },
  'quiz-ask-next-in-run': { english: 'Which night comes next after {night} this month?', about: 'Question' },
  'quiz-ask-next-after-last': {
    english: '{night} is the last night of this month. Which night comes next?',
    about: 'Question',
  },
  'quiz-ask-next-in-month': { english: 'Which night comes next after {night} in {month}?', about: 'Question' },
  'quiz-ask-next-after-last-of': {
    english: '{night} is the last night of {month}. Which night comes next?',
    about: 'Question',
  },
  'quiz-ask-before-in-run': { english: 'Which night comes just before {night} this month?', about: 'Question' },
  'quiz-ask-before-first': {
    english: '{night} is the first night of this month. Which night comes just before it?',
    about: 'Question',
  },
  'quiz-ask-before-in-month': { english: 'Which night comes just before {night} in {month}?', about: 'Question' },
  'quiz-ask-before-first-of': {
    english: '{night} is the first night of {month}. Which night comes just before it?',
    about: 'Question',
  },
  'quiz-date-from-sunset': {
    english: '{date} (from sunset on)',
    about: 'The date of a night in a question, where nights begin at sunset',
  },
  'quiz-date-from-sunrise': {
    english: '{date} (from sunrise on)',
    about: 'The date of a night in a question, where nights begin at sunrise',
  },
  'quiz-ask-date': {
    english: 'In {month}, which date is {night}?',
    about: 'Question, where the day begins at midnight',
  },
  'quiz-ask-date-from-sunset': {
    english: 'In {month}, on which date does {night} begin at sunset?',
    about: 'Question',
  },
  'quiz-ask-date-from-sunrise': {
    english: 'In {month}, on which date does {night} begin at sunrise?',
    about: 'Question',
  },
  'quiz-ask-group-of-night': { english: 'Which group does {night} belong to?', about: 'Question' },
  'quiz-ask-group-on-date': { english: 'Which group does the night of {date} belong to?', about: 'Question' },
  'quiz-ask-beats-in-group': {
    english: 'Each name of {group} is said on one beat. How many beats are there?',
    about: 'Question',
  },
  'quiz-ask-nights-in-group': { english: 'How many nights of {month} belong to {group}?', about: 'Question' },
  'quiz-ask-order-in-month': {
    english: 'Put these nights in the order in which they come in {month}.',
    about: 'Question',
  },
  'quiz-ask-order-from': {
    english: 'Put these nights in the order in which they come. Begin with the night of {date}.',
    about: 'Question',
  },
  'quiz-ask-odd-one-of-group': {
    english: 'Three of these nights belong to {group}. Which one does not?',
    about: 'Question',
  },
  'quiz-ask-odd-one-out': {
    english: 'Three of these nights belong to the same group. Which one does not?',
    about: 'Question',
  },
  'quiz-ask-month-of-date': { english: 'In which month is the night of {date}?', about: 'Question' },
  'quiz-ask-months-by-nights': {
    english:
      'Twelve months have about {twelve} nights, thirteen months about {thirteen}. The year that begins on {date} has {nights}. How many months has it?',
    about: 'Question; {nights} is a number of nights',
  },
  'quiz-ask-months-by-years': {
    english:
      'A month has 29 or 30 nights as a rule. A year of this calendar begins on {from}, and the next year on {to}. How many months has the first of the two?',
    about: 'Question',
  },
  'quiz-ask-months-by-last': {
    english:
      'A month has 29 or 30 nights as a rule. The first month of a year begins on {from}, and its last month on {to}. How many months has the year?',
    about: 'Question',
  },
  'quiz-ask-sentence': {
    english: 'Finish the sentence for {date}: {sentence}',
    about: 'Question; {sentence} is the sentence of the calendar with gaps',
  },
  'quiz-unit-nights': {
    english: 'nights',
    about: 'After the line a number of nights is written on, whatever the number',
  },
  'quiz-nights': { english: { one: '{n} night', other: '{n} nights' }, about: 'How many nights, in the key' },
  'quiz-unit-beats': { english: 'beats', about: 'After the line a number of beats is written on, whatever the number' },
  'quiz-unit-months': {
    english: 'months',
    about: 'After the line a number of months is written on, whatever the number',
  },
  'quiz-beats': { english: { one: '{n} beat', other: '{n} beats' }, about: 'How many beats, in the key' },
  'quiz-months': { english: { one: '{n} month', other: '{n} months' }, about: 'How many months, in the key' },
  'quiz-working-date': { english: '{date} is night {number} of the month: {night}.', about: 'In the key' },
  'quiz-working-said-again': { english: '{night} is said for more than one night this month.', about: 'In the key' },
  'quiz-working-between': { english: 'The night before is {before}, the night after is {after}.', about: 'In the key' },
  'quiz-working-count': {
    english: 'Count on from tonight, starting with the night after: {nights}.',
    about: 'In the key',
  },
  'quiz-working-to-go': {
    english: '{night} is night {to} of the month; tonight is night {from}; {count} to go.',
    about: 'In the key; {count} is a number of nights',
  },
  'quiz-working-to-go-over': {
    english:
      'Tonight is night {from} of {length}: {left} to the end of the month. {night} is night {to} of the next: {count} to go.',
    about: 'In the key; {left} and {count} are numbers of nights',
  },
  'quiz-working-next': { english: 'After {night} comes {next}.', about: 'In the key' },
  'quiz-working-month-ends': {
    english: '{month} has {number} nights; the next month begins with {night}.',
    about: 'In the key',
  },
  'quiz-working-groups-meet': {
    english: '{group} ends with {last}, and {next-group} begins with {first}.',
    about: 'In the key; {group} and {next-group} are groups of nights',
  },
  'quiz-working-date-of': {
    english: '{month} begins on {first}. {night} is its night {number}: {date}.',
    about: 'In the key',
  },
  'quiz-working-count-on': {
    english: 'Tonight, {date}, is night {from}: count {count} on.',
    about: 'In the key; {count} is a number of nights',
  },
  'quiz-working-count-back': {
    english: 'Tonight, {date}, is night {from}: count {count} back.',
    about: 'In the key; {count} is a number of nights',
  },
  'quiz-working-group': {
    english: '{night} belongs to {group}: {nights}.',
    about: 'In the key; {nights} are all nights of the group',
  },
  'quiz-working-beats': {
    english: '{group}: {nights}; {count}.',
    about: 'In the key; {nights} are all nights of the group with their numbers, {count} a number of beats',
  },
  'quiz-working-nights-of-group': {
    english: '{group} this time: {nights}; {count}.',
    about: 'In the key; {nights} are the nights of the group with their numbers, {count} a number of nights',
  },
  'quiz-working-numbered': { english: '{night} is night {number}', about: 'In the key, part of a list' },
  'quiz-working-order': {
    english: 'In this order: {nights}.',
    about: 'In the key; {nights} are nights with their numbers',
  },
  'quiz-working-odd': { english: '{night} belongs to {group}.', about: 'In the key' },
  'quiz-working-odd-others': {
    english: 'The others belong to {group}: {nights}.',
    about: 'In the key; {nights} are all nights of the group',
  },
  'quiz-working-month-span': { english: '{month} goes from {from} to {to}.', about: 'In the key; two dates' },
  'quiz-working-night-of-month': {
    english: '{date} is its night {number}.',
    about: 'In the key, after the dates of a month',
  },
  'quiz-working-year-nights': {
    english: 'From {from} to {to} it is {nights}.',
    about: 'In the key; {nights} is a number of nights',
  },
  'quiz-working-year-months': {
    english: 'Twelve months have about {twelve} nights, thirteen months about {thirteen}: {months}.',
    about: 'In the key; {months} is a number of months',
  },
  'quiz-working-year-last': {
    english: 'That is {before}; with the last month, which begins then, it is {months}.',
    about: 'In the key; {before} and {months} are numbers of months',
  },
  'quiz-working-not-reached': { english: '{night} does not come this time.', about: 'In the key' },

  // What a wrong answer means, for the teacher
  'quiz-means-just-before': {
    english: 'Counted one night too few: this name stands just before it in the run.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-just-after': {
    english: 'Counted one night too many: this name stands just after it in the run.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-earlier': {
    english: 'Lost count: this name stands earlier in the run.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-later': {
    english: 'Lost count: this name stands later in the run.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-mirror': {
    english: 'Mixed up the two halves of the month: this is the mirror night, with about the same shape of Moon.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-near-mirror': {
    english: 'Mixed up the two halves of the month, and counted one night off as well.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-not-reached': {
    english: 'Went by the list of names: this one does not come this time.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-night-before': {
    english: 'Took the night that ends on this date, not the one that begins on it.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-night-before-count': {
    english: 'Took the night that ends on this date, or counted tonight as well.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-went-back': { english: 'Went back in the run instead of on.', about: 'Of a wrong option, in the key' },
  'quiz-means-went-on': { english: 'Went on in the run instead of back.', about: 'Of a wrong option, in the key' },
  'quiz-means-skipped-one': {
    english: 'Skipped a night: this one is two away.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-date-ends': {
    english: 'Took the date on which the night ends, not the one on which it begins.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-date-ends-count': {
    english: 'Took the date on which the night ends, or counted tonight as well.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-days-early': {
    english: { one: 'Counted one day too few.', other: 'Lost count: {n} days too early.' },
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-days-late': {
    english: { one: 'Counted one day too many.', other: 'Lost count: {n} days too late.' },
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-other-month': { english: 'The right night, but in {month}.', about: 'Of a wrong option, in the key' },
  'quiz-means-other-month-off': {
    english: 'Took {month}, and counted one day off as well.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-group-before': {
    english: 'Took the group before: does not know yet where this group begins.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-group-after': {
    english: 'Took the group after: does not know yet where this group ends.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-group-other': {
    english: 'Does not know the groups and their order yet.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-group-mirror': {
    english: 'Mixed up the two halves of the month: this group has about the same shapes of Moon.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-group-one-early': {
    english: 'Counted one night too few: {night}, the night before, is in this group.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-group-one-late': {
    english: 'Counted one night too many: {night}, the night after, is in this group.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-odd-first': {
    english: 'Thinks that {group} begins later: this is its first night.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-odd-last': {
    english: 'Thinks that {group} ends sooner: this is its last night.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-odd-middle': {
    english: 'Does not know {group} yet: this night is in the midst of it.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-month-before': {
    english: 'Took the month before: its last night is {date}.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-month-after': {
    english: 'Took the month after: its first night is {date}.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-month-other': {
    english: 'Does not know the order of the months yet.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-month-namesake': {
    english: 'Counted the months from January on: the civil month has the same number.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-month-not-there': {
    english: 'Put in the thirteenth month: only long years have it.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-sentence-night-before': {
    english: 'Knows the month, but took the night before.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-sentence-night-after': {
    english: 'Knows the month, but took the night after.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-sentence-month-before': {
    english: 'Knows the night, but took the month before.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-sentence-month-after': {
    english: 'Knows the night, but took the month after.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-means-sentence-both': {
    english: 'Knows neither the night nor the month yet.',
    about: 'Of a wrong option, in the key',
  },
  'quiz-slip-counted-in': { english: 'Counted the count-in as well.', about: 'Of a wrong number, in the key' },
  'quiz-slip-next-group-too': {
    english: 'Counted the first night of the next group as well.',
    about: 'Of a wrong number, in the key',
  },
  'quiz-slip-one-left-out': {
    english: 'Left out the first or the last night of the group.',
    about: 'Of a wrong number, in the key',
  },
  'quiz-slip-other-group': { english: 'Counted another group: {group}.', about: 'Of a wrong number, in the key' },
  'quiz-slip-usual-year': {
    english: 'Took it for a usual year of twelve months.',
    about: 'Of a wrong number, in the key',
  },
  'quiz-slip-extra-month': {
    english: 'Added a thirteenth month, which this year does not have.',
    about: 'Of a wrong number, in the key',
  },
  'quiz-slip-next-year-too': {
    english: 'Counted the first month of the next year as well.',
    about: 'Of a wrong number, in the key',
  },
  'quiz-slip-months-between': {
    english: 'Counted only the beginnings of months that lie between the two dates.',
    about: 'Of a wrong number, in the key',
  },
  'quiz-slip-last-month-left-out': {
    english: 'Left out the last month, which has only begun.',
    about: 'Of a wrong number, in the key',
  },
  'quiz-slip-counted-tonight': { english: 'Counted tonight as well.', about: 'Of a wrong number, in the key' },
  'quiz-slip-counted-names': {
    english: 'Counted the names of the list, not the nights that come.',
    about: 'Of a wrong number, in the key',
  },
  'quiz-slip-stopped-early': {
    english: 'Left out the night that is asked for.',
    about: 'Of a wrong number, in the key',
  },
} as const satisfies Readonly<Record<string, LabelEntry>>;
