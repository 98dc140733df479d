import type { LabelEntry } from './label-entry.ts';
import { MARKING_LABELS } from './labels/marking.ts';
import { NIGHT_QUESTION_LABELS } from './labels/night-questions.ts';
import { OUTSIDE_LABELS } from './labels/outside.ts';
import { PAPER_LABELS } from './labels/papers.ts';
import { PDF_LABELS } from './labels/pdf.ts';
import { QTI_LABELS } from './labels/qti.ts';
import { SKY_QUESTION_LABELS } from './labels/sky-questions.ts';
import { TEACHING_LABELS } from './labels/teaching.ts';
import type { PlaceholderIn } from './template.ts';

/**
 * Every fixed word of a pack, with its English text. Other languages are files in content/labels.
 * To add one, add a line here and in each of those files: a test names what is missing.
 */
export const LABELS = {
  // Days and months
  'weekday-monday': { english: 'Monday', about: 'Day of the week, as it stands in a date' },
  'weekday-tuesday': { english: 'Tuesday', about: 'Day of the week' },
  'weekday-wednesday': { english: 'Wednesday', about: 'Day of the week' },
  'weekday-thursday': { english: 'Thursday', about: 'Day of the week' },
  'weekday-friday': { english: 'Friday', about: 'Day of the week' },
  'weekday-saturday': { english: 'Saturday', about: 'Day of the week' },
  'weekday-sunday': { english: 'Sunday', about: 'Day of the week' },
  'weekday-short-monday': { english: 'Mon', about: 'Day of the week, short' },
  'weekday-short-tuesday': { english: 'Tue', about: 'Day of the week, short' },
  'weekday-short-wednesday': { english: 'Wed', about: 'Day of the week, short' },
  'weekday-short-thursday': { english: 'Thu', about: 'Day of the week, short' },
  'weekday-short-friday': { english: 'Fri', about: 'Day of the week, short' },
  'weekday-short-saturday': { english: 'Sat', about: 'Day of the week, short' },
  'weekday-short-sunday': { english: 'Sun', about: 'Day of the week, short' },
  'month-1': { english: 'January', about: 'Month of the civil year, as it stands in a date' },
  'month-2': { english: 'February', about: 'Month of the civil year' },
  'month-3': { english: 'March', about: 'Month of the civil year' },
  'month-4': { english: 'April', about: 'Month of the civil year' },
  'month-5': { english: 'May', about: 'Month of the civil year' },
  'month-6': { english: 'June', about: 'Month of the civil year' },
  'month-7': { english: 'July', about: 'Month of the civil year' },
  'month-8': { english: 'August', about: 'Month of the civil year' },
  'month-9': { english: 'September', about: 'Month of the civil year' },
  'month-10': { english: 'October', about: 'Month of the civil year' },
  'month-11': { english: 'November', about: 'Month of the civil year' },
  'month-12': { english: 'December', about: 'Month of the civil year' },
  'month-short-1': { english: 'Jan', about: 'Month of the civil year, short' },
  'month-short-2': { english: 'Feb', about: 'Month of the civil year, short' },
  'month-short-3': { english: 'Mar', about: 'Month of the civil year, short' },
  'month-short-4': { english: 'Apr', about: 'Month of the civil year, short' },
  'month-short-5': { english: 'May', about: 'Month of the civil year, short' },
  'month-short-6': { english: 'Jun', about: 'Month of the civil year, short' },
  'month-short-7': { english: 'Jul', about: 'Month of the civil year, short' },
  'month-short-8': { english: 'Aug', about: 'Month of the civil year, short' },
  'month-short-9': { english: 'Sep', about: 'Month of the civil year, short' },
  'month-short-10': { english: 'Oct', about: 'Month of the civil year, short' },
  'month-short-11': { english: 'Nov', about: 'Month of the civil year, short' },
  'month-short-12': { english: 'Dec', about: 'Month of the civil year, short' },

  // Dates, times, numbers, lists
  'date-long': { english: '{weekday} {day} {month} {year}', about: 'A date in full' },
  'date-day': { english: '{weekday} {day} {month}', about: 'A date without its year' },
  'date-short': { english: '{weekday} {day} {month}', about: 'A date with short names' },
  'date-range': { english: '{from} to {to}', about: 'From one date to another' },
  'date-first-of-month': { english: '1', about: 'The number of the first day of a month, in a date' },
  clock: {
    english: '{h12}:{mm} {ampm}',
    about: 'A time of day; {h24} and {hh} (two digits) count 0 to 23',
    mayUse: ['h12', 'h24', 'hh', 'mm', 'ampm'],
  },
  'clock-am': { english: 'am', about: 'Before noon, in a time of day' },
  'clock-pm': { english: 'pm', about: 'After noon, in a time of day' },
  'decimal-mark': { english: '.', about: 'Between the whole part of a number and its decimals' },
  'list-between': { english: '{before}, {next}', about: 'Joins entries of a list, but for the last' },
  'list-last': { english: '{before} and {last}', about: 'Joins the last entry of a list' },

  // The Moon and its nights
  'phase-new-moon': { english: 'new Moon', about: 'Phase of the Moon' },
  'phase-first-quarter': { english: 'first quarter', about: 'Phase of the Moon' },
  'phase-full-moon': { english: 'full Moon', about: 'Phase of the Moon' },
  'phase-last-quarter': { english: 'last quarter', about: 'Phase of the Moon' },
  'night-of-month': { english: 'night {n} of {length}', about: 'Which night of the month it is' },
  'say-name': { english: 'say: {say}', about: 'How a name is said' },
  night: { english: 'Night', about: 'Heading of a column or a line' },
  group: { english: 'Group', about: 'A group of nights, as a heading' },
  month: { english: 'Month', about: 'A month of the calendar, as a heading' },
  today: { english: 'Today', about: 'Marks the present day' },
  tonight: { english: 'Tonight', about: 'Heading over the night of a day' },
  'moon-rises': { english: 'Moonrise {time}', about: 'Moonrise' },
  'moon-sets': { english: 'Moonset {time}', about: 'Moonset' },

  // Directives
  'night-repeats': {
    english: 'the name comes a second time',
    about: 'After the place of a night whose name was said before this month',
  },
  'clock-on-day': { english: '{time} on {day}', about: 'A time that falls on another date' },
  'moon-up-at-sunset': { english: 'already up at sunset', about: 'When to look' },
  'moon-too-near-sun': {
    english: 'Too near the Sun to look for tonight.',
    about: 'Instead of the times of the Moon, when it stands near the Sun and the sky is not dark',
  },
  'moon-not-in-the-dark': { english: 'The Moon is not up in the dark hours of this night', about: 'When to look' },
  'moon-not-up': {
    english: 'The Moon is not up at all this night',
    about: 'When to look, in the far north and south, where a night may have no dark hours or no others',
  },
  'night-from': {
    english: 'from {time}',
    about: 'After a date, when class is over or not yet there: its night begins then',
  },
  'class-time-night': {
    english:
      'Class on {day} at {time} is still in the night before, {class}, which began on {before}. {tonight} begins on {after}.',
    about:
      'Where a day does not begin at midnight, class may lie in the night before; {before} and {after} are day and time',
  },
  'day-at-time': { english: '{day} at {time}', about: 'A day and a time' },
  // The evening sky and eclipses. No text may invite anyone to look towards the Sun: tests/directives/sky-words.test.ts
  'point-north': { english: 'north', about: 'A direction, after "look", "to the" or "in the"' },
  'point-north-east': { english: 'north-east', about: 'A direction' },
  'point-east': { english: 'east', about: 'A direction' },
  'point-south-east': { english: 'south-east', about: 'A direction' },
  'point-south': { english: 'south', about: 'A direction' },
  'point-south-west': { english: 'south-west', about: 'A direction' },
  'point-west': { english: 'west', about: 'A direction' },
  'point-north-west': { english: 'north-west', about: 'A direction' },
  'height-low': { english: 'low', about: 'How high the Moon is, before "in the sky"; up to 20 degrees' },
  'height-middle': { english: 'half-way up', about: 'How high the Moon is, before "in the sky"' },
  'height-high': { english: 'high', about: 'How high the Moon is, before "in the sky"; from 50 degrees on' },
  'sky-after-dark': {
    english: 'Look {point} after {time}: the Moon is already up, {height} in the sky.',
    about: 'When and where to look, in words for a child; {time} is when the Sun is fully down',
  },
  'sky-after-dark-near-sun': {
    english: 'Wait until {time}, when the Sun is fully down, then look {point}: the Moon is {height} in the sky.',
    about: 'The same for a crescent',
  },
  'sky-at-bedtime': {
    english: 'At bedtime, {time}, it is in the {point}, {height} in the sky.',
    about: 'Follows one of the last two',
  },
  'sky-goes-down': { english: 'It goes down at {time}.', about: 'Moonset, in words for a child' },
  'sky-rising': {
    english: 'The Moon comes up at {time}. At bedtime, {bedtime}, look {point}: it is {height} in the sky.',
    about: 'When and where to look',
  },
  'sky-in-daylight': {
    english: 'It is still light at bedtime, {time}, but the Moon is up: look {point}, {height} in the sky.',
    about: 'When and where to look; said only when the Moon is far from the Sun',
  },
  'sky-later': {
    english: 'The Moon is not well up before bedtime, {bedtime}: it comes up at {time}.',
    about: 'When there is nothing to look for',
  },
  'sky-too-light': {
    english: 'It is light until bedtime: the Moon is not looked for this evening.',
    about: 'When there is nothing to look for',
  },
  'sky-down': {
    english: 'When it is dark this evening, the Moon is down: it is not looked for.',
    about: 'When there is nothing to look for',
  },
  'sky-low': {
    english:
      'When it is dark this evening, the Moon is up but too low to see over houses and trees: it is not looked for.',
    about: 'When there is nothing to look for',
  },
  'sky-school-up': {
    english: 'In school hours the Moon is up: at {time} it is in the {point}, {height} in the sky.',
    about: 'The Moon by day; said only when it is far from the Sun',
  },
  'sky-school-near-sun': {
    english: 'In school hours the Moon is too near the Sun: it is not looked for by day.',
    about: 'The Moon by day',
  },
  'sky-school-down': { english: 'In school hours the Moon is not well up.', about: 'The Moon by day' },
  'care-sun': { english: 'Never look at the Sun or near it.', about: 'Caution' },
  'care-crescent': { english: 'A crescent is only looked for with the Sun fully down.', about: 'Caution' },
  'care-night': {
    english: 'Outside at night, and near water, only with an adult and by local rules.',
    about: 'Caution',
  },
  'care-lunar-eclipse': { english: 'An eclipse of the Moon does not harm the eyes.', about: 'With a lunar eclipse' },
  'care-solar-eclipse': {
    english:
      'An eclipse of the Sun is followed only when an adult leads, either with certified solar filters or by indirect projection: a small hole throws the picture onto a card, and all have their backs to the Sun. Sunglasses and smoked glass are not filters.',
    about: 'Caution with a solar eclipse',
  },
  'eclipses-this-week': { english: 'Eclipse this week', about: 'Heading over the eclipses of a week' },
  'eclipses-of-date': { english: 'Eclipse', about: 'Heading over the eclipses of the date of a lesson' },
  'eclipse-night': {
    english: 'in the night from {evening} to {morning}',
    about: 'Instead of the date of a lunar eclipse that is seen after midnight; both are days',
  },
  'eclipse-moon-total': {
    english: 'Eclipse of the Moon, {date}: the shadow of the Earth covers the whole Moon.',
    about: 'A lunar eclipse',
  },
  'eclipse-moon-partial': {
    english: 'Eclipse of the Moon, {date}: the shadow of the Earth covers part of the Moon, {percent} percent at most.',
    about: 'A lunar eclipse; {percent} is of the area',
  },
  'eclipse-sun-total': {
    english: 'Eclipse of the Sun, {date}: the Moon covers the whole Sun for a short time.',
    about: 'A solar eclipse',
  },
  'eclipse-sun-annular': {
    english: 'Eclipse of the Sun, {date}: the Moon covers all of the Sun but a ring.',
    about: 'A solar eclipse',
  },
  'eclipse-sun-partial': {
    english: 'Eclipse of the Sun, {date}: the Moon covers part of the Sun, {percent} percent at most.',
    about: 'A solar eclipse; {percent} is of the area',
  },
  'eclipse-times': {
    english: 'Here it lasts from {from} to {until} and is deepest at {time}.',
    about: 'Follows what kind of eclipse it is; times while Sun or Moon is up',
  },
  'eclipse-moon-where': {
    english: 'The Moon is then in the {point}, {height} in the sky.',
    about: 'Follows the times of a lunar eclipse',
  },

  // Directives
  'teacher-note': { english: 'For the teacher', about: 'Heading of a note' },
  handout: { english: 'Handout', about: 'Before the title of a page for learners' },
  questions: { english: { one: '{n} question', other: '{n} questions' }, about: 'How long a quiz is' },
  'key-link': { english: 'Key, teacher only', about: 'Link to the answers' },
  'group-number': { english: 'Group {n}', about: 'A group of learners without a name of its own' },
  'box-ticked': { english: 'ticked', about: 'Said of a ticked box in a list' },
  'moon-looks-dark': { english: 'The Moon is dark.', about: 'Says what a drawing shows' },
  'moon-looks-full': { english: 'The Moon is full and round.', about: 'Says what a drawing shows' },
  'moon-looks-crescent': { english: 'A crescent Moon, lit {side}.', about: 'Says what a drawing shows' },
  'moon-looks-half': { english: 'A half Moon, lit {side}.', about: 'Says what a drawing shows' },
  'moon-looks-gibbous': { english: 'A Moon more than half lit, brightest {side}.', about: 'Says what a drawing shows' },
  'side-top': { english: 'at the top', about: 'Which side is lit' },
  'side-top-left': { english: 'at the top left', about: 'Which side is lit' },
  'side-left': { english: 'on the left', about: 'Which side is lit' },
  'side-bottom-left': { english: 'at the bottom left', about: 'Which side is lit' },
  'side-bottom': { english: 'at the bottom', about: 'Which side is lit' },
  'side-bottom-right': { english: 'at the bottom right', about: 'Which side is lit' },
  'side-right': { english: 'on the right', about: 'Which side is lit' },
  'side-top-right': { english: 'at the top right', about: 'Which side is lit' },
  'gesture-tempo': { english: '{tempo} beats a minute', about: 'Speed of a run of gestures' },
  'beats-each': {
    english: { one: 'one beat each', other: '{n} beats each' },
    about: 'Length of each night or month in a run of gestures',
  },
  'count-in-by-group': {
    english: 'each group is counted in',
    about: 'Of a run: before a group, as many beats as it has',
  },
  'count-in-beats': {
    english: { one: 'one beat counted before each group', other: '{n} beats counted before each group' },
    about: 'Of a run',
  },
  'count-in-none': { english: 'nothing counted in', about: 'Of a run: no beats before a group' },
  'rest-between': {
    english: { one: 'one beat of rest in between', other: '{n} beats of rest in between' },
    about: 'Of a run: between its groups, and before it is done again',
  },
  'times-through': { english: { one: 'once', other: '{n} times' }, about: 'Of a run: how often it is done' },
  'slow-then-times': {
    english: { one: 'first slowly, then once more', other: 'first slowly, then {n} times' },
    about: 'Of a run: how often it is done after a slow first time',
  },
  'time-in-all': { english: '{time} in all', about: 'Length of a run; {time} is minutes and seconds' },
  'run-from-to': { english: '{first} to {last}', about: 'Title of a run: the names of its first and its last night' },
  'months-group': { english: 'Months', about: 'Over the months in a run' },
  'count-comes': {
    english: 'Count {counts}, then {group}',
    about: 'In a run, before a group: {counts} is 1, or two numbers such as 1–5',
  },
  'rest-beats': {
    english: { one: 'Rest for one beat', other: 'Rest for {n} beats' },
    about: 'In a run, between groups',
  },
  'gesture-seated': { english: 'Seated: {how}', about: 'The way of doing a gesture in a chair' },
  'place-of': { english: '{n} of {length}', about: 'On the card of a gesture: which night of its group, of how many' },
  'from-time': {
    english: 'from {time}',
    about: 'On the card of a gesture: when it begins; {time} is minutes and seconds',
  },
  'gesture-none': { english: 'no gesture yet', about: 'For a night without a gesture' },
  'months-cue': { english: 'Say each name on its beat.', about: 'What to do with the months in a run' },
  'then-sentence': { english: 'Then everyone says:', about: 'After a run up to tonight, before its sentence' },
  'gesture-run': { english: 'Gesture sequence', about: 'Name of a run of gestures for those who do not see it' },
  'drum-track': { english: 'Drum track', about: 'What is heard in a run' },
  'midi-file': { english: 'Drum track as a MIDI file', about: 'A link to a file' },
  'hear-name': { english: 'Hear {name}', about: 'Plays the spoken name of a night' },
  'hear-at': { english: 'To be heard at {link}', about: 'Of a recording; {link} is an address' },
  'recording-by': { english: 'Recording: {credit} · {permission}', about: 'Who is heard, and on what terms' },
  'names-spoken-by': { english: 'Spoken names: {credit} · {permission}', about: 'Who is heard, and on what terms' },
  'pictures-by': { english: 'Pictures: {credit}', about: 'Who made the pictures of gestures' },

  // Player of a run
  'player-play': { english: 'Play', about: 'Button' },
  'player-pause': { english: 'Pause', about: 'Button, while a run is heard' },
  'player-start': { english: 'Start over', about: 'Button' },
  'player-back': { english: 'One back', about: 'Button: to the night before' },
  'player-on': { english: 'One on', about: 'Button: to the next night' },
  'player-slower': { english: 'Slower', about: 'Button' },
  'player-faster': { english: 'Faster', about: 'Button' },
  'player-speed': { english: '× {speed}', about: 'How fast a run is played: {speed} is 0.75, 1 or 1.25' },
  'player-mirror': { english: 'Swap left and right', about: 'Button: drawings as in a mirror' },
  'player-seated': { english: 'Seated way first', about: 'Button: shows how to do it in a chair before the other way' },
  'player-next': { english: 'Next: {name}', about: 'The night that comes next' },
  'player-beat': { english: 'beat {n} of {length}', about: 'Where a night is that lasts several beats' },
  'player-rest': { english: 'Rest', about: 'Beats without a stroke' },
  'player-end': { english: 'The end', about: 'After a run' },
  'player-silent': {
    english: 'There is no sound here: follow the beat with your eyes.',
    about: 'Where the sound of a run cannot be played',
  },

  // Directives
  'group-quiz': { english: 'Group quiz', about: 'What a page for learners is' },

  // Directives
  'moon-drawn-for': { english: 'Drawn as it stands here at {time}', about: 'Under the drawing of the Moon' },
  'moon-up-all-night': { english: 'The Moon is up all night', about: 'When to look, where the Moon does not set' },

  // Lessons
  minutes: { english: { one: '{n} minute', other: '{n} minutes' }, about: 'A length of time' },
  'teacher-only': { english: 'Teacher only', about: 'Over what learners do not get' },
  'what-to-do': { english: 'What to do', about: 'Heading of the start page' },
  bring: { english: 'Bring', about: 'Heading over what the teacher needs that day' },
  'if-something-fails': { english: 'If something fails', about: 'Heading over notes for a relief teacher' },
  intentions: { english: 'Learning intentions', about: 'Heading over the learning intentions' },
  success: { english: 'Success criteria', about: 'Heading over the success criteria' },

  // Quizzes
  marks: { english: { one: '{n} mark', other: '{n} marks' }, about: 'What a question is worth' },
  question: { english: 'Question {n}', about: 'Number of a question' },
  answers: { english: 'Answers', about: 'Heading of the key' },
  'role-reader': { english: 'Reader', about: 'Reads the questions aloud' },
  'role-writer': { english: 'Writer', about: 'Writes the answers' },
  'role-checker': { english: 'Checker', about: 'Sees that all agree' },

  ...NIGHT_QUESTION_LABELS,
  ...SKY_QUESTION_LABELS,
  ...PAPER_LABELS,
  ...PDF_LABELS,
  ...MARKING_LABELS,
  ...QTI_LABELS,
  ...OUTSIDE_LABELS,
  ...TEACHING_LABELS,

  // Pages of the pack
  'start-here': { english: 'Start here', about: 'The page that is opened first' },
  'pack-pages': { english: 'Pages of this pack', about: 'Names the links on top of a page, for screen readers' },
  'days-of-week': { english: 'Days of this week', about: 'Names the strip of days, for screen readers' },
  'skip-link': { english: 'Skip to the content', about: 'First link of a page, for keyboards and screen readers' },
  'month-for-wall': { english: 'Month for the wall', about: 'Link to the page with the whole month' },
  'answer-key': { english: 'Answer key', about: 'The page with all answers' },
  'for-learners': { english: 'For learners', about: 'The list of papers and handouts' },
  'begins-at': { english: 'begins at {time}', about: 'When a lesson begins' },
  steps: { english: 'Steps', about: 'Heading over the list of timed steps' },
  'to-print': { english: 'Print for class', about: 'Heading over links to papers and handouts' },
  papers: {
    english: { one: '{n} paper', other: '{n} papers' },
    about: 'How many papers a quiz has, one for each group',
  },
  'key-to': { english: 'Key: {title}', about: 'Link to the answers of a quiz' },
  'night-named': { english: 'Night: {night}', about: 'The night a date carries' },
  'lesson-before': { english: 'Before', about: 'Over the link to the lesson before' },
  'lesson-after': { english: 'After', about: 'Over the link to the next lesson' },
  'other-lessons': {
    english: 'Other lessons',
    about: 'Names the links to the lessons before and after, for screen readers',
  },
  'how-we-know': { english: 'How we know', about: 'Heading over the rule of the calendar' },
  'calendar-named': { english: 'The calendar is {title}.', about: 'The name of the calendar, in a sentence' },
  'day-begins-sunset': {
    english: 'A night begins at sunset and lasts until the next sunset.',
    about: 'Rule of the calendar',
  },
  'day-begins-midnight': {
    english: 'A night begins at midnight and lasts until the next midnight.',
    about: 'Rule of the calendar',
  },
  'day-begins-sunrise': {
    english: 'A night begins at sunrise and lasts until the next sunrise.',
    about: 'Rule of the calendar',
  },
  'month-begins-conjunction': {
    english: 'A month begins with the night in which the Moon passes the Sun, the new Moon.',
    about: 'Rule of the calendar',
  },
  'month-begins-first-crescent': {
    english:
      'A month begins with the first night after the new Moon in whose evening the young crescent can be seen here.',
    about: 'Rule of the calendar',
  },
  'month-begins-full-moon': {
    english: 'A month begins with the night in which the Moon is full.',
    about: 'Rule of the calendar',
  },
  'nights-later': {
    english: { one: 'Its first night is {n} night later.', other: 'Its first night is {n} nights later.' },
    about: 'Follows the rule of the month',
  },
  'nights-earlier': {
    english: { one: 'Its first night is {n} night earlier.', other: 'Its first night is {n} nights earlier.' },
    about: 'Follows the rule of the month',
  },
  'computed-for-here': {
    english: 'Computed for this place, in local time:',
    about: 'Over a list of phases with date and time',
  },
  'keeper-first': {
    english: 'Everything here is computed as an aid: the word of the keeper, {keeper}, and local practice come first.',
    about: 'At the foot of pages',
  },
  'not-a-tide-table': { english: 'It is not a tide table or a forecast.', about: 'At the foot of pages' },
  'no-quiz-this-week': { english: 'There is no quiz this week.', about: 'On the answer key of a week without a quiz' },
  'key-stays-with-teacher': {
    english: 'These pages hold answers. They stay with the teacher.',
    about: 'At the foot of the answer key',
  },
  'also-accept': { english: 'Also right:', about: 'Before other spellings of an answer' },
  'mark-sheet': { english: 'Mark sheet', about: 'A table to write marks in' },
  total: { english: 'Total', about: 'The sum of the marks' },
  'quiz-group': { english: 'Group', about: 'Before the name of a group of learners' },
  'tick-one': { english: 'Tick one.', about: 'How to answer a question with one right option' },
  'tick-all-right': { english: 'Tick every right one.', about: 'How to answer a question with several right options' },
  'write-here': { english: 'Write here:', about: 'Before a line to write on, for screen readers' },
  'role-drummer': { english: 'Drummer', about: 'Keeps the beat' },
  'name-line': { english: 'Name', about: "Before the line for a learner's name" },
  'date-line': { english: 'Date', about: 'Before the line for the date' },
  'no-sheets': {
    english: 'There are no papers or handouts this week.',
    about: 'On the list for learners when it is empty',
  },
  'print-these': {
    english: 'Learners may have everything on this page.',
    about: 'At the foot of the list for learners',
  },
  'score-strong': { english: 'strong beat: a new group begins', about: 'Legend of the score' },
  'score-beat': { english: 'beat: one night, one gesture', about: 'Legend of the score' },
  'figures-facing': {
    english: 'The figures face you: their right hand is on your left.',
    about: 'From which side gestures are drawn',
  },
  'figures-own': {
    english: 'As you see your own hands: right is on the right.',
    about: 'From which side gestures are drawn',
  },
  'figures-mirror': {
    english: 'The figures are your mirror: move the hand on the same side.',
    about: 'From which side gestures are drawn',
  },
  'score-picture': {
    english: 'The month as a score. The list below says the same.',
    about: 'What the picture of the score says to screen readers',
  },
  'score-as-list': { english: 'The same as a list', about: 'Heading over the nights of the score' },
  'score-seen-from': {
    english: 'The Moon as it stands when highest, seen from {latitude}.',
    about: 'At the foot of the score',
  },
  'latitude-north': { english: '{n}° north', about: 'A latitude' },
  'latitude-south': { english: '{n}° south', about: 'A latitude' },
  'how-gestures-go': { english: 'How each gesture is done', about: 'The page with all gestures; also a link to it' },
  'no-gestures-at-all': {
    english:
      'No night of this calendar has a gesture yet. The names can be said on the beat all the same; gestures come from the keeper of the calendar.',
    about: 'On the page with all gestures when there is none',
  },
  'seated-as-good': {
    english: 'The seated way is as good as the other, and anyone may choose it.',
    about: 'Over all gestures',
  },
  'lead-as-mirror': {
    english:
      'If you face your class, swap left and right, as in a mirror: each of them then moves the hand on the same side.',
    about: 'Over all gestures, for who leads them',
  },
  'read-a-drawing': { english: 'How to read a drawing', about: 'Heading over what the drawings of gestures mean' },
  'view-facing': { english: 'facing you', about: 'Under a drawing of a gesture, very short' },
  'view-own': { english: 'your own hands', about: 'Under a drawing of a gesture, very short' },
  'view-mirror': { english: 'in a mirror', about: 'Under a drawing of a gesture, very short' },
  'view-seated': { english: 'seated, facing you', about: 'Under a drawing of a gesture, very short' },
  'view-picture': {
    english: 'picture for all views',
    about: 'Under a picture that stands for all drawings of a gesture',
  },
  'sign-palm': { english: 'A hand in outline shows its palm.', about: 'What a drawing means' },
  'sign-back': { english: 'A hand that is filled in shows its back.', about: 'What a drawing means' },
  'sign-table': { english: 'At a table, with the hands no higher than the face.', about: 'What a drawing means' },
  'sign-way': {
    english:
      'The strong hand is the pose on the beat, the faint one the other end of the move. The arrow shows which way to go.',
    about: 'What a drawing means',
  },
  'sign-turn': { english: 'A round arrow: turn the hand.', about: 'What a drawing means' },
  'sign-ripple': { english: 'A wave: ripple the fingers.', about: 'What a drawing means' },
  'sign-part': {
    english: 'Two small arrows: part the fingers, or bring them together.',
    about: 'What a drawing means',
  },
  'print-on-a3': {
    english: 'Prints on A3, two sheets a month: one with figures that face the class, one as you see your own hands.',
    about: 'Over the score',
  },
  'print-on-a4': { english: 'Print on A4 instead', about: 'A box to tick, over the score' },
  'hear-it': { english: 'Hear it', about: 'Heading over codes that lead to recordings' },
  'scan-code': {
    english: 'Point the camera of a phone or tablet at a code, or type the address beside it.',
    about: 'Over codes that lead to recordings',
  },

  // Why a date has its night
  'explain-night': {
    english: 'The night of {date} is {night}: night {n} of {length} in {month}.',
    about: 'What is explained',
  },
  'night-lasts-sunset': {
    english: 'It begins at sunset, {begins}, and ends at {ends}.',
    about: 'When a night begins and ends',
  },
  'night-lasts-midnight': {
    english: 'It begins at midnight, {begins}, and ends at {ends}.',
    about: 'When a night begins and ends',
  },
  'night-lasts-sunrise': {
    english: 'It begins at sunrise, {begins}, and ends at {ends}.',
    about: 'When a night begins and ends',
  },
  'no-sunset-here': {
    english: 'The Sun does not set here that day, so midnight stands in for sunset.',
    about: 'After when a night begins, under the midnight sun of the far north and south',
  },
  'no-sunset-sun-down': {
    english: 'The Sun does not rise here that day, so midnight stands in for sunset.',
    about: 'After when a night begins, in the polar night of the far north and south',
  },
  'no-sunrise-here': {
    english: 'The Sun does not rise here that day, so midnight stands in for sunrise.',
    about: 'After when a night begins, in the polar night of the far north and south',
  },
  'no-sunrise-sun-up': {
    english: 'The Sun does not set here that day, so midnight stands in for sunrise.',
    about: 'After when a night begins, under the midnight sun of the far north and south',
  },
  'local-and-utc': {
    english: '{date}, {time} ({utc} UTC)',
    about: 'An instant in local and in universal time (UTC)',
  },
  hours: { english: { one: '{n} hour', other: '{n} hours' }, about: 'A length of time' },
  'hours-and-minutes': { english: '{hours} {minutes}', about: 'A length of time' },
  'under-a-minute': { english: 'less than a minute', about: 'A length of time' },
  'explain-opening-after': {
    english:
      'The phase it is counted from, {phase}: {instant}. That is in the night of {date}, {margin} after it began ({boundary}).',
    about: 'The phase from which the month is counted',
  },
  'explain-opening-before': {
    english:
      'The phase it is counted from, {phase}: {instant}. That is in the night of {date}, {margin} before it ended ({boundary}).',
    about: 'The phase from which the month is counted',
  },
  'explain-crescent-seen': {
    english:
      'Evening of {date}: by the geometry of Sun and Moon the young crescent is of class {class} at {time} (q = {q}). Class {wanted} is enough here, so it counts as seen.',
    about: 'Whether a young crescent can be seen; the classes go from A, easily seen, to F',
  },
  'explain-crescent-unseen': {
    english:
      'Evening of {date}: by the geometry of Sun and Moon the young crescent is of class {class} at {time} (q = {q}). Class {wanted} is needed here, so it does not count as seen.',
    about: 'Whether a young crescent can be seen; the classes go from A, easily seen, to F',
  },
  'explain-crescent-moon-down': {
    english: 'Evening of {date}: the Moon is not above the horizon at sunset, so no crescent can be seen.',
    about: 'Whether a young crescent can be seen; the Moon has gone down before the Sun, or does not come up',
  },
  'explain-crescent-no-sunset': {
    english:
      'Evening of {date}: the Sun does not set here that day, so there is no sunset from which to judge a crescent.',
    about: 'Whether a young crescent can be seen, under the midnight sun of the far north and south',
  },
  'explain-crescent-no-sunrise': {
    english:
      'Evening of {date}: the Sun does not rise here that day, so there is no sunset from which to judge a crescent.',
    about: 'Whether a young crescent can be seen, in the polar night of the far north and south',
  },
  'explain-crescent-no-moonset': {
    english:
      'Evening of {date}: the Moon is up at sunset and does not set within a day, so there is no moonset from which to judge a crescent.',
    about: 'Whether a young crescent can be seen, in the far north and south; the test takes sunset and moonset',
  },
  'explain-first-night': {
    english: 'So the first night of {month} is that of {date}.',
    about: 'The first night of a month; {month} is its name',
  },
  'explain-observed': { english: 'Seen: {night}, in the night of {date}.', about: 'What somebody saw' },
  'explain-observed-by': {
    english: 'Seen: {night}, in the night of {date} ({by}).',
    about: 'What somebody saw; {by} says who, or from where',
  },
  'explain-announced': {
    english: 'It was announced that a month begins with the night of {date}.',
    about: 'A month beginning made known by the keeper',
  },
  'explain-rule-agrees': {
    english: 'The rule alone gives the same first night.',
    about: 'After what was seen or announced',
  },
  'explain-rule-silent': {
    english: 'The rule alone gives no first night: no young crescent can be computed here.',
    about: 'After what was seen or announced',
  },
  'explain-rule-moved': {
    english: 'By the rule alone the first night would be that of {date}; what people see or announce comes first.',
    about: 'After what was seen or announced',
  },
  'explain-ending': {
    english: 'So this month has {length} nights; if the next one began by the rule, it would have {foreseen}.',
    about: 'After what was seen or announced of the next month, where it moves the end of this one',
  },
  'explain-marker-date': {
    english: 'The year is measured from a fixed date, {when}.',
    about: 'How the year was found',
  },
  'explain-marker-solstice-june': {
    english: 'The year is measured from the June solstice: {when}.',
    about: 'How the year was found',
  },
  'explain-marker-solstice-december': {
    english: 'The year is measured from the December solstice: {when}.',
    about: 'How the year was found',
  },
  'explain-marker-equinox-march': {
    english: 'The year is measured from the March equinox: {when}.',
    about: 'How the year was found',
  },
  'explain-marker-equinox-september': {
    english: 'The year is measured from the September equinox: {when}.',
    about: 'How the year was found',
  },
  'explain-marker-rising': {
    english:
      'The year is measured from the first morning on which {star} stands clear of the horizon before dawn: {when}.',
    about: 'How the year was found; {star} is the name of a star',
  },
  'explain-year': {
    english:
      'Its first month is the first in which this phase falls in the night of {date} or later: {phase}, {instant}.',
    about: 'How the year was found; follows what it is measured from',
  },
  'explain-month-number': { english: '{month} is month {n} of the year {year}.', about: 'Which month it is' },
  'explain-extra-month': {
    english: '{month} is month {n} of the year {year}, the extra month of a long year.',
    about: 'Which month it is',
  },
  'explain-anchor': {
    english: '{night} belongs to this phase: {phase}, {instant}, in the night of {date}.',
    about: 'A night that is tied to a phase of the Moon',
  },
  'explain-name-counting': {
    english: 'Names run in order from the first night on, so night {n} is {night}.',
    about: 'How the night got its name',
  },
  'explain-name-anchor': {
    english: 'Names run in order between the nights that belong to a phase, so night {n} is {night}.',
    about: 'How the night got its name',
  },
  'explain-name-observation': {
    english: 'Names run in order from what was seen to the end of the month, so night {n} is {night}.',
    about: 'How the night got its name',
  },
  'explain-repeat': {
    english: 'The name comes again: here there are more nights than names.',
    about: 'How the night got its name',
  },
  'explain-repeat-observed': {
    english: 'The name comes again: an earlier night of this month has it too.',
    about: 'The same after something that was seen, from which the names are counted anew',
  },
  'explain-phase': {
    english: 'Within the night of {date}: {phase}, {instant}.',
    about: 'A phase that falls within the night',
  },
  'not-a-close-call': {
    english: 'This is not a close call: a small difference in the sky would change nothing.',
    about: 'How sure it is',
  },
  'close-opening-phase': {
    english: 'Close call: the phase that this month is counted from is {margin} from the boundary of its night.',
    about: 'How sure it is',
  },
  'close-next-opening-phase': {
    english:
      'Close call: by the rule the next month begins with the night of {first}, but the phase it is counted from is {margin} from the boundary of its night: {phase}, {instant}.',
    about: 'How sure it is',
  },
  'close-crescent': {
    english:
      'Close call: the beginning of this month hangs on the crescent of the evening of {date} (q = {q}), which is only {margin} from the limit.',
    about: 'How sure it is; q tells how well a young crescent can be seen',
  },
  'close-next-crescent': {
    english:
      'Close call: by the rule the next month begins with the night of {first}, but the crescent of the evening of {date} (q = {q}) is only {margin} from the limit.',
    about: 'How sure it is; q tells how well a young crescent can be seen',
  },
  'close-anchor': {
    english:
      'Close call: {night} belongs to a phase that is {margin} from the boundary of its night: {phase}, {instant}.',
    about: 'How sure it is; {night} is the name of a night',
  },
  'close-year-phase': {
    english:
      'Close call: the year {year} is measured from the night of {date}, whose beginning is {margin} from this phase: {phase}, {instant}.',
    about: 'How sure it is; the phase opens the year, or would if it came later',
  },
  'close-year-marker': {
    english:
      'Close call: what the year {year} is measured from is {margin} from the boundary of its night, {date}, and this phase falls within a night of it: {phase}, {instant}.',
    about: 'How sure it is; the year is measured from an equinox or a solstice',
  },
  'close-rising': {
    english:
      'Close call: the year {year} is measured from the night of {date}, and this phase falls within a night of it: {phase}, {instant}. The star that decides, {star}, stands only {degrees}° from the height that counts.',
    about: 'How sure it is; {star} is the name of a star',
  },
  'boundary-unsure': {
    english:
      'On that day the Sun only just rises or sets here, or only just does not, so the boundary itself is in doubt.',
    about: 'After a close call, in the far north and south',
  },
  'otherwise-night': {
    english: 'Otherwise this night would be {night}: night {n} of {length} in {month}.',
    about: 'After a close call: what the night would be if it fell the other way',
  },
  'otherwise-month': {
    english: 'Otherwise this month would be {month}, month {n} of the year {year}.',
    about: 'After a close call about a year: which month it would be if it fell the other way',
  },
  'check-by-eye': {
    english:
      'Check it by eye in the nights that follow and ask the keeper: what is seen comes before what is computed.',
    about: 'After a close call',
  },
  'ask-about-year': {
    english:
      'The beginning of that year cannot be checked by eye in these nights: ask the keeper, whose word comes before what is computed.',
    about: 'After a close call about a year that began months ago, or is to begin in months',
  },
  'look-after-sunset': {
    english: 'Look for a young crescent only when the Sun is fully down.',
    about: 'Caution, after a close call',
  },
  'look-before-dawn': {
    english: 'Look for the star before dawn only, and stop before the Sun is due.',
    about: 'Caution, after a close call',
  },
} as const satisfies Readonly<Record<string, LabelEntry>>;

/** The key of any label. */
export type LabelKey = keyof typeof LABELS;

/** Keys of labels with two forms. */
export type CountKey = { [Key in LabelKey]: (typeof LABELS)[Key]['english'] extends string ? never : Key }[LabelKey];

/** Keys of labels with one form. */
export type TextKey = Exclude<LabelKey, CountKey>;

type EnglishOf<Key extends LabelKey> = (typeof LABELS)[Key]['english'];

/** Names of the placeholders of a label; `n` of a label with two forms is the number itself. */
export type PlaceholderOf<Key extends LabelKey> =
  EnglishOf<Key> extends infer English
    ? English extends string
      ? PlaceholderIn<English>
      : English extends { readonly other: infer Other extends string }
        ? Exclude<PlaceholderIn<Other>, 'n'>
        : never
    : never;

/** All keys, in the order of the catalogue. */
export const LABEL_KEYS: readonly LabelKey[] =
  // Object.keys gives the keys of the literal above and no others.
  Object.keys(LABELS) as LabelKey[];

/** The entry of a key, in its general form. */
export function getLabelEntry(key: LabelKey): LabelEntry {
  return LABELS[key];
}

/** True for the key of a label. */
export function isLabelKey(key: string): key is LabelKey {
  return Object.hasOwn(LABELS, key);
}
