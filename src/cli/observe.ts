import type { InstantMs } from '../calendar/rules.ts';
import { renderObservation } from '../content/add-observation.ts';
import { openLibrary } from '../content/open-library.ts';
import { readContent } from '../node/read-content.ts';
import type { Arguments } from './arguments.ts';
import { chooseSchool } from './choose-school.ts';
import { type NightChange, sayNightName } from './night-changes.ts';
import { CONTENT_FOLDER, requireKnown } from './open-weeks.ts';
import { readObservation } from './read-observation.ts';
import { type RecordedObservation, recordObservation } from './record-observation.ts';
import { tellDiagnostics } from './tell-diagnostics.ts';
import type { Terminal } from './terminal.ts';

/**
 * Adds what was seen to the school's file and says which nights change by it.
 * @param nowMs The present instant: what is still to come was not seen.
 * @returns The exit status.
 */
export async function observe(given: Arguments, terminal: Terminal, nowMs: InstantMs): Promise<number> {
  const { options } = given;
  const wanted = readObservation(given);
  const files = readContent(options.content ?? CONTENT_FOLDER);
  const library = openLibrary(files);
  requireKnown('school', options.school, library.schools.ids);
  const id = chooseSchool('observe', library, options.school);
  const opened = library.openSchool(id) ?? { diagnostics: [] };
  const recorded = recordObservation({ files, id, opened }, wanted, nowMs);
  tellDiagnostics(recorded.diagnostics, terminal);
  if (options.json === true) terminal.print(JSON.stringify(recorded, null, 2));
  else await tellRecorded(recorded, terminal);
  return recorded.status === 'refused' ? 1 : 0;
}

async function tellRecorded(recorded: RecordedObservation, terminal: Terminal): Promise<void> {
  const { status, file, line, observation, changes, diagnostics } = recorded;
  if (status === 'refused') {
    const counted = line === undefined ? '' : `; the lines above count the entry as line ${line}`;
    terminal.tell(`lessontide: nothing was written${counted}`);
    return;
  }
  if (status === 'known') {
    terminal.print(`${file}:${line} has \`${observation.night}\` on ${observation.date} already; nothing to add.`);
    return;
  }
  terminal.print(`${file}:${line} added ${renderObservation(observation)}`);
  if (changes.length > 0) await tellChanges(changes, terminal);
  else {
    const agrees = diagnostics.length === 0 ? ': what was seen agrees with what was computed' : '';
    terminal.print(`No night changes${agrees}.`);
  }
}

async function tellChanges(changes: readonly NightChange[], terminal: Terminal): Promise<void> {
  // Its tables of Unicode take 20 ms to make ready, which nothing else needs.
  const { default: measureWidth } = await import('string-width');
  terminal.print(`${changes.length} ${changes.length === 1 ? 'night changes' : 'nights change'}:`);
  const width = Math.max(...changes.map(({ before }) => measureWidth(sayNightName(before))));
  for (const { date, before, after } of changes) {
    const was = sayNightName(before);
    terminal.print(`${date}  ${was}${' '.repeat(width - measureWidth(was))}  ->  ${sayNightName(after)}`);
  }
}
