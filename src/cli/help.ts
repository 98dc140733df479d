/** What `lessontide --help` and `lessontide COMMAND --help` print. It teaches by example, shortest first. */
export const HELP = {
  lessontide: `Lessontide turns a week of Markdown lessons into a lesson pack.

  lessontide build WEEK…    make the pack of a week, in output/
  lessontide check [WEEK…]  look for mistakes, write nothing
  lessontide nights         say which night each date is, and why
  lessontide observe …      add what was seen to the school's file

A week is a folder below lessons/ with a week.yaml in it; its name will do:

  lessontide build round-moon

Then open the page that the last line names. Every command explains itself:

  lessontide build --help

Exit status: 0 done, 1 something in the content is wrong and is listed,
2 the command was not understood, 3 the kit itself failed.`,

  build: `lessontide build WEEK… makes the pack of each week.

  lessontide build round-moon
  lessontide build round-moon vers-la-nuit-noire
  lessontide build lessons/round-moon --out ../for-the-office
  lessontide build round-moon --pdf
  lessontide build round-moon --qti

The pack is a folder of pages that open with a double click. It is written whole
or not at all: after a mistake, the last good pack is still there. A pack that
somebody has changed by hand is not overwritten without --replace.

With --pdf the pack also has PDFs to print: pdf/ holds one for the teacher, with
the answers, and one for the wall (A3); learners/pdf/ holds a paper for each
group, and the handouts. It takes Chromium, or a browser made from it, found in
the usual places or named by the environment variable CHROMIUM_PATH. Where there
is none, the pack is built without PDFs, and the exit status is 1.

With --qti the teacher's part has a folder qti/ with an archive for each quiz,
which the school's assessment tool can take in (QTI 3.0): a test for each group.
Learners must not have these archives: the right answers are in them.

  --content DIR   where schools/, calendars/, gestures/ … are (content)
  --out DIR       where packs go (output)
  --school ID     another school than week.yaml names
  --calendar ID   another calendar than the school's file names
  --pdf           add PDFs for the teacher, for learners and for the wall
  --qti           add each quiz, with its answers, for an assessment tool
  --replace       overwrite a pack that was changed by hand, and nothing else
  --json          print what was made as JSON
  --quiet         print mistakes only`,

  check: `lessontide check looks for mistakes in weeks and in all content files.

  lessontide check                 everything
  lessontide check round-moon      one week, and what it needs

It resolves every directive as build does, and writes nothing. Each mistake is
a line: file, line, column, what was found, what was expected, what to do.
It also searches all that learners would get for anything the answer key says,
and the learners' part of the week's pack, if that was built before.

  --content DIR   where schools/, calendars/, gestures/ … are (content)
  --out DIR       where packs go (output)
  --school ID     another school than week.yaml names
  --calendar ID   another calendar than the school's file names
  --json          print the findings as JSON
  --quiet         print mistakes only`,

  nights: `lessontide nights says which night each date is at a school, and why.

  lessontide nights --from 2026-07-01 --to 2026-07-31
  lessontide nights --year 2026 --month "Frost Month"
  lessontide nights --year 2026 --ics > nights.ics
  lessontide nights --explain 2026-07-29

Dates are of the school's own clocks, from 1800-01-01 to 2200-12-31; --to alone
left out means the one date. A night carries the date on which it begins. Years
and months are the calendar's own; a month is a name or a number.

  --from DATE     the first date, YYYY-MM-DD
  --to DATE       the last date
  --year YEAR     all months of a year of the calendar
  --month MONTH   only this month of it
  --explain DATE  tell how a date comes to its night, and how close the call was
  --content DIR   where schools/, calendars/, gestures/ … are (content)
  --school ID     which school (left out: the one with home: true)
  --calendar ID   another calendar than the school's file names
  --json          a row a date, for other programs
  --csv           the same for a spreadsheet (RFC 4180, UTF-8)
  --ics           an event a night, for calendar programs (RFC 5545)
  --quiet         beside the nights tell mistakes only`,

  observe: `lessontide observe adds a night that was seen to the school's file.

  lessontide observe 2026-07-15 "Hidden Moon" --by "seen from the jetty"

What is seen comes before what is computed: a first night moves the beginning of
its month, any other counts the names anew from there to the month's end. The
command says which nights change. Comments and layout of the file stay; to take
an observation back, take its entry out.

The date is the one on which the night began: where days begin at sunset, what
is seen after midnight has the date of the day before. An entry that contradicts
another, or lies too far from what is computed, is not written.

  --by TEXT       who saw it, or from where; pack pages say so
  --content DIR   where schools/, calendars/, gestures/ … are (content)
  --school ID     which school (left out: the one with home: true)
  --json          print what was added, where, and what changes as JSON`,
} as const;
