import type { LabelEntry } from '../label-entry.ts';

/** Words of the questions about the sky and about gestures, and of what the key says to them. */
export const SKY_QUESTION_LABELS = {
  // Moments
  'quiz-when': { english: 'on {date} at {time}', about: 'A moment, after a verb' },
  'quiz-when-midday': { english: 'at midday on {date}', about: 'A moment, after a verb' },
  'quiz-when-midnight': { english: 'at midnight between {date} and {next}', about: 'A moment, after a verb' },
  'quiz-when-night': {
    english: 'in the night from {date} to {next}, at {time}',
    about: 'A moment after midnight, after a verb',
  },

  // What a drawing of the Moon shows: never the name of a night or a phase
  'quiz-disc-dark': { english: 'A dark disc, nothing of it lit.', about: 'Says what a drawing shows' },
  'quiz-disc-hair': { english: 'A crescent as thin as a hair, lit {side}.', about: 'Says what a drawing shows' },
  'quiz-disc-thin': { english: 'A thin crescent, lit {side}.', about: 'Says what a drawing shows' },
  'quiz-disc-broad': { english: 'A broad crescent, lit {side}.', about: 'Says what a drawing shows' },
  'quiz-disc-half': { english: 'Half of a disc, lit {side}.', about: 'Says what a drawing shows' },
  'quiz-disc-over-half': {
    english: 'A little more than half of a disc, lit {side}, dark {dark}.',
    about: 'Says what a drawing shows; {side} and {dark} are sides',
  },
  'quiz-disc-most': {
    english: 'About three quarters of a disc, lit {side}, dark {dark}.',
    about: 'Says what a drawing shows; {side} and {dark} are sides',
  },
  'quiz-disc-nearly-whole': {
    english: 'Nearly a whole disc, lit {side}, with a thin dark edge {dark}.',
    about: 'Says what a drawing shows; {side} and {dark} are sides',
  },
  'quiz-disc-whole': { english: 'A whole disc, lit all round.', about: 'Says what a drawing shows' },

  // Which Moon belongs to which night
  'quiz-ask-match-moons': {
    english: 'Which Moon belongs to which night? Each is drawn as it stands in our sky when it is best seen.',
    about: 'Question',
  },
  'quiz-working-match-moon': {
    english: '{night} is night {number} of the month. {disc}',
    about: 'In the key; {disc} is a sentence that says what its drawing shows',
  },
  'quiz-working-mirror-moons': {
    english: 'Two of them look alike, lit on different sides: the light changes sides at full and at new Moon.',
    about: 'In the key',
  },

  // What the Moon is called from its shape
  'quiz-phase-dark': { english: 'a new Moon', about: 'After "the Moon is"' },
  'quiz-phase-full': { english: 'a full Moon', about: 'After "the Moon is"' },
  'quiz-phase-growing-crescent': { english: 'a growing crescent', about: 'After "the Moon is"' },
  'quiz-phase-growing-half': { english: 'a growing half Moon', about: 'After "the Moon is"' },
  'quiz-phase-growing-gibbous': { english: 'growing and more than half lit', about: 'After "the Moon is"' },
  'quiz-phase-shrinking-crescent': { english: 'a shrinking crescent', about: 'After "the Moon is"' },
  'quiz-phase-shrinking-half': { english: 'a shrinking half Moon', about: 'After "the Moon is"' },
  'quiz-phase-shrinking-gibbous': { english: 'shrinking and still more than half lit', about: 'After "the Moon is"' },

  // Which side is lit
  'quiz-ask-lit-side': {
    english: 'Which side of the Moon is lit, as it stands in our sky {when}?',
    about: 'Question; {when} is a moment such as "on Friday 31 July at 6:05 pm"',
  },
  'quiz-ask-lit-side-of-phase': {
    english: 'The Moon is {phase} {when}. Which side of it is lit, as it stands in our sky?',
    about: 'Question; {when} is a moment',
  },
  'quiz-working-lit-side': {
    english: 'The Moon is {phase} {when}, lit {side}.',
    about: 'In the key; {when} is a moment, {side} a side',
  },
  'quiz-working-faces-sun': { english: 'The lit side is always turned to the Sun.', about: 'In the key' },
  'quiz-working-side-changed': {
    english: 'Between the night of this lesson and then the light changes sides, as it does at full and at new Moon.',
    about: 'In the key',
  },
  'quiz-means-side-mirror-growing': {
    english: 'The mirror image: as while the Moon grows, or in pictures from the other side of the equator.',
    about: 'In the key, of a wrong side',
  },
  'quiz-means-side-mirror-shrinking': {
    english: 'The mirror image: as while the Moon shrinks, or in pictures from the other side of the equator.',
    about: 'In the key, of a wrong side',
  },
  'quiz-means-side-dark-side': {
    english: 'The dark part was taken for the lit one.',
    about: 'In the key, of a wrong side',
  },
  'quiz-means-side-upside-down': {
    english: 'Left and right are as they should be, top and bottom are changed over.',
    about: 'In the key, of a wrong side',
  },
  'quiz-means-side-lamp': {
    english: 'Lit from above, as by a lamp; but the Moon is lit by the Sun.',
    about: 'In the key, of a wrong side',
  },
  'quiz-means-side-below': {
    english: 'Lit from straight below, because the Sun is down; but it is down to one side.',
    about: 'In the key, of a wrong side',
  },
  'quiz-means-side-upright': {
    english: 'Lit from the side, as in pictures; but here the Moon lies on its back or on its face.',
    about: 'In the key, of a wrong side, where the Moon is lit at the top or the bottom',
  },

  // Where the Moon is at a time
  'quiz-ask-moon-at': { english: 'Where is the Moon {when}?', about: 'Question; {when} is a moment' },
  'quiz-ask-moon-at-of-phase': {
    english: 'The Moon is {phase} {when}. Where is it then?',
    about: 'Question; {when} is a moment',
  },
  'quiz-ask-moon-at-between': {
    english: 'The Moon rises {rise} and sets {set}. Where is it {when}?',
    about: 'Question; all three are moments such as "on Friday 31 July at 6:05 pm"',
  },
  'quiz-moon-up-east': { english: 'It is up, in the eastern half of the sky.', about: 'Answer to choose' },
  'quiz-moon-up-west': { english: 'It is up, in the western half of the sky.', about: 'Answer to choose' },
  'quiz-moon-has-set': {
    english: 'It is down: it set in the 6 hours before.',
    about: 'Answer to choose; exactly so many hours',
  },
  'quiz-moon-will-rise': {
    english: 'It is down: it rises in the 6 hours after.',
    about: 'Answer to choose; exactly so many hours',
  },
  'quiz-working-rise-and-set': {
    english: 'The Moon rises {rise} and sets {set}.',
    about: 'In the key; both are moments',
  },
  'quiz-working-moon-up-east': {
    english: 'It is still climbing, on the side of the sky where it came up: the east.',
    about: 'In the key',
  },
  'quiz-working-moon-up-west': {
    english: 'It is past its highest and goes down on the other side of the sky: the west.',
    about: 'In the key',
  },
  'quiz-working-moon-has-set': { english: 'By then it has gone down.', about: 'In the key' },
  'quiz-working-moon-will-rise': { english: 'It has not come up yet.', about: 'In the key' },
  'quiz-means-moon-sides': {
    english: 'Coming up and going down, or east and west, were changed over: so it is in the other half of the month.',
    about: 'In the key, of a wrong answer',
  },
  'quiz-means-moon-rises-early': { english: 'It rises later than that.', about: 'In the key, of a wrong answer' },
  'quiz-means-moon-rises-late': { english: 'It rises earlier than that.', about: 'In the key, of a wrong answer' },
  'quiz-means-moon-sets-early': { english: 'It sets later than that.', about: 'In the key, of a wrong answer' },
  'quiz-means-moon-sets-late': { english: 'It sets earlier than that.', about: 'In the key, of a wrong answer' },
  'quiz-means-moon-all-night': {
    english: 'The Moon was thought to be up whenever it is dark.',
    about: 'In the key, of a wrong answer',
  },
  'quiz-means-moon-never-by-day': {
    english: 'The Moon was thought to be up only when it is dark.',
    about: 'In the key, of a wrong answer',
  },
  'quiz-means-moon-across': {
    english: 'The other end of its way: likely a guess.',
    about: 'In the key, of a wrong answer',
  },

  // Which gesture belongs to a night
  'quiz-ask-gesture': { english: 'Which gesture belongs to {night}?', about: 'Question; pictures to choose from' },
  'quiz-working-gesture': { english: '{night}: {cue}', about: 'In the key; {cue} is a sentence that says what to do' },
  'quiz-working-do-gesture': { english: 'Do it with the class, facing them.', about: 'In the key, after a gesture' },
  'quiz-means-gesture-early': {
    english: 'It belongs to {night}, {distance} earlier in the run.',
    about: 'In the key, of a wrong gesture; {distance} is a number of nights',
  },
  'quiz-means-gesture-late': {
    english: 'It belongs to {night}, {distance} later in the run.',
    about: 'In the key, of a wrong gesture; {distance} is a number of nights',
  },
  'quiz-means-gesture-mirror': {
    english: 'It belongs to {night}, as far from the end of the run as this night is from its beginning.',
    about: 'In the key, of a wrong gesture',
  },

  // What a drawing of a gesture shows: never the cue, which may have a word of the night's name in it
  'quiz-hands-both': { english: 'Both hands: {pose}.', about: 'Says what a drawing shows' },
  'quiz-hands-left': { english: 'Left hand: {pose}.', about: 'Says what a drawing shows; whose hand it is' },
  'quiz-hands-right': { english: 'Right hand: {pose}.', about: 'Says what a drawing shows; whose hand it is' },
  'quiz-hand-pose': {
    english: '{shape}, {place}, palm {palm}, fingers {fingers}',
    about: 'How a hand is held; {palm} and {fingers} are directions',
  },
  'quiz-hand-open': { english: 'flat', about: 'Shape of a hand' },
  'quiz-hand-fist': { english: 'a fist', about: 'Shape of a hand' },
  'quiz-hand-curved': { english: 'curved', about: 'Shape of a hand' },
  'quiz-hand-pointing': { english: 'one finger pointing', about: 'Shape of a hand' },
  'quiz-hand-spread': { english: 'fingers spread', about: 'Shape of a hand' },
  'quiz-hand-pinch': { english: 'finger and thumb together', about: 'Shape of a hand' },
  'quiz-hand-at-above-head': { english: 'above the head', about: 'Where a hand is' },
  'quiz-hand-at-brow': { english: 'at the forehead', about: 'Where a hand is' },
  'quiz-hand-at-face': { english: 'level with the face', about: 'Where a hand is' },
  'quiz-hand-at-chest': { english: 'level with the chest', about: 'Where a hand is' },
  'quiz-hand-at-waist': { english: 'level with the waist', about: 'Where a hand is' },
  'quiz-hand-at-side': { english: 'out to the side', about: 'Where a hand is' },
  'quiz-hand-at-low': { english: 'low beside the body', about: 'Where a hand is' },
  'quiz-hand-to-up': { english: 'up', about: 'Direction of a palm or of fingers' },
  'quiz-hand-to-down': { english: 'down', about: 'Direction of a palm or of fingers' },
  'quiz-hand-to-in': { english: 'inwards', about: 'Direction of a palm or of fingers: to the middle of the body' },
  'quiz-hand-to-out': { english: 'outwards', about: 'Direction of a palm or of fingers' },
  'quiz-hand-to-front': { english: 'to the front', about: 'Direction of a palm or of fingers' },
  'quiz-hand-to-back': { english: 'to the body', about: 'Direction of a palm or of fingers' },
  'quiz-move-hold': { english: 'Held still.', about: 'Move of a gesture' },
  'quiz-move-open': { english: 'Opening, or moving apart.', about: 'Move of a gesture' },
  'quiz-move-close': { english: 'Closing, or coming together.', about: 'Move of a gesture' },
  'quiz-move-rise': { english: 'Moving up.', about: 'Move of a gesture' },
  'quiz-move-fall': { english: 'Moving down.', about: 'Move of a gesture' },
  'quiz-move-cross': { english: 'Moving across.', about: 'Move of a gesture' },
  'quiz-move-turn': { english: 'Turning.', about: 'Move of a gesture' },
  'quiz-move-ripple': { english: 'The fingers ripple.', about: 'Move of a gesture' },
  'quiz-move-then': { english: 'At the end: {hands}', about: 'Move of a gesture; {hands} are sentences' },

  // How long a run takes
  'quiz-run-of-group': {
    english: 'We do all the nights of {group} on the beat, at {tempo} beats a minute.',
    about: 'In a question; {group} is a name',
  },
  'quiz-run-of-two': {
    english: 'We do all the nights of {first} and then of {second} on the beat, at {tempo} beats a minute.',
    about: 'In a question; {first} and {second} are names of groups',
  },
  'quiz-run-of-all': {
    english: 'We do all the nights on the beat, group by group, at {tempo} beats a minute.',
    about: 'In a question',
  },
  'quiz-run-beats': {
    english: { one: 'Each night lasts {n} beat.', other: 'Each night lasts {n} beats.' },
    about: 'In a question',
  },
  'quiz-run-no-count-in': { english: 'Nothing is counted in.', about: 'In a question' },
  'quiz-run-count-in-group': {
    english: 'First we count in: one beat for each night of the group.',
    about: 'In a question',
  },
  'quiz-run-count-in-each': {
    english: 'Before each group we count in: one beat for each of its nights.',
    about: 'In a question',
  },
  'quiz-run-count-in-beats': {
    english: { one: 'First we count in: {n} beat.', other: 'First we count in: {n} beats.' },
    about: 'In a question',
  },
  'quiz-ask-run-seconds': {
    english: 'How many seconds does it take, until the last night is over?',
    about: 'Question',
  },
  'quiz-ask-run-seconds-counted': {
    english: 'How many seconds does it take with the count-in, until the last night is over?',
    about: 'Question',
  },
  'quiz-ask-run-minutes': {
    english: 'How many minutes and seconds does it take with the count-in, until the last night is over?',
    about: 'Question',
  },
  'quiz-unit-seconds': { english: 'seconds', about: 'After the line a number of seconds is written on' },
  'quiz-seconds': { english: { one: '{n} second', other: '{n} seconds' }, about: 'A length of time' },
  'quiz-minutes-and-seconds': { english: '{minutes} {seconds}', about: 'A length of time' },
  'quiz-working-run-nights': { english: 'Nights: {nights} × {beats} = {total} beats.', about: 'In the key' },
  'quiz-working-run-count-in': {
    english: 'Counted in: {count} beats, so {total} beats in all.',
    about: 'In the key',
  },
  'quiz-working-run-tempo': {
    english: 'There are {tempo} beats in 60 seconds: {total} × 60 ÷ {tempo} = {seconds}.',
    about: 'In the key; {seconds} is a length of time',
  },
  'quiz-working-run-minutes': { english: 'That is {time}.', about: 'In the key; {time} is minutes and seconds' },
  'quiz-means-run-no-count-in': { english: 'The count-in was forgotten.', about: 'In the key, of a wrong answer' },
  'quiz-means-run-one-count-in': {
    english: 'Only the first group’s count-in was counted.',
    about: 'In the key, of a wrong answer',
  },
  'quiz-means-run-wrong-way': {
    english: 'Divided the wrong way: beats × tempo ÷ 60.',
    about: 'In the key, of a wrong answer',
  },
  'quiz-means-run-beats': { english: 'These are the beats, not the seconds.', about: 'In the key, of a wrong answer' },
  'quiz-means-run-one-beat-a-night': {
    english: 'Each night was counted as one beat.',
    about: 'In the key, of a wrong answer',
  },
  'quiz-means-run-one-beat-off': {
    english: 'One beat short: measured to where the last beat begins, not to where it ends.',
    about: 'In the key, of a wrong answer',
  },
} as const satisfies Readonly<Record<string, LabelEntry>>;
