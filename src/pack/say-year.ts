import type { NightExplanation } from '../calendar/explanation.ts';
import type { Sentence, Voice } from './voice.ts';

/** How the year was found, and which of its months this is. */
export function sayYear({ month, year }: NightExplanation, voice: Voice): Sentence[] {
  const phase = { phase: voice.labels.phase(year.phase), instant: voice.instant(year.phaseAtMs) };
  const first = { ...phase, date: voice.date(year.markerDate) };
  const place = { month: { name: month.name }, n: String(month.number), year: String(month.year) };
  return [
    sayMarker(year, voice),
    voice.say('explain-year', first),
    voice.say(month.intercalary ? 'explain-extra-month' : 'explain-month-number', place),
  ];
}

function sayMarker({ marker, markerDate, markerAtMs }: NightExplanation['year'], voice: Voice): Sentence {
  const when = markerAtMs === null ? voice.date(markerDate) : voice.instant(markerAtMs);
  switch (marker.kind) {
    case 'date':
      return voice.say('explain-marker-date', { when });
    case 'solstice':
      return voice.say(`explain-marker-solstice-${marker.month}`, { when });
    case 'equinox':
      return voice.say(`explain-marker-equinox-${marker.month}`, { when });
    case 'rising':
      return voice.say('explain-marker-rising', { star: marker.star.name, when });
  }
}
