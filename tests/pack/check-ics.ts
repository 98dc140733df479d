/** An event as a strict reading of the file finds it; values are unescaped. */
export interface IcsEvent {
  readonly uid: string;
  readonly stamp: string;
  readonly start: string;
  readonly end: string;
  readonly summary: string;
  readonly description: string;
}

/** Properties that an event of ours has, each once: RFC 5545, section 3.6.1. No rule of recurrence is among them. */
const EVENT_PROPERTIES = ['UID', 'DTSTAMP', 'DTSTART', 'DTEND', 'SUMMARY', 'DESCRIPTION', 'CATEGORIES', 'TRANSP'];

/**
 * Reads an iCalendar file strictly, as far as our own files go, and throws at the first fault: line ends, lengths in
 * octets, characters cut, control characters, order of components, properties missing or doubled, dates that are not
 * real, ends not after their beginning, equal UIDs.
 * Written from RFC 5545 (sections 3.1, 3.3.4, 3.3.11, 3.6, 3.8.4.7); shares no code with the writer.
 */
export function readIcsStrictly(bytes: Uint8Array): IcsEvent[] {
  const lines = unfoldLines(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
  expectLine(lines[0], 'BEGIN:VCALENDAR');
  expectLine(lines.at(-1), 'END:VCALENDAR');
  const firstEvent = lines.indexOf('BEGIN:VEVENT');
  const head = readProperties(lines.slice(1, firstEvent === -1 ? -1 : firstEvent));
  if (head.get('VERSION') !== '2.0' || !head.has('PRODID')) throw new Error('VERSION or PRODID is missing.');
  const events = firstEvent === -1 ? [] : readEvents(lines.slice(firstEvent, -1));
  const uids = new Set(events.map(({ uid }) => uid));
  if (uids.size !== events.length) throw new Error('Two events have the same UID.');
  return events;
}

function unfoldLines(text: string): string[] {
  if (!text.endsWith('\r\n')) throw new Error('The last line does not end in CR LF.');
  const physical = text.slice(0, -2).split('\r\n');
  const lines: string[] = [];
  for (const line of physical) {
    if (/[\r\n]/.test(line)) throw new Error(`A line end is not CR LF: ${line}`);
    if (/(?!\t)\p{Cc}/u.test(line)) throw new Error(`A control character: ${line}`);
    if (new TextEncoder().encode(line).length > 75) throw new Error(`More than 75 octets: ${line}`);
    if (line === '') throw new Error('An empty line.');
    if (line.startsWith(' ')) lines.push(`${lines.pop()}${line.slice(1)}`);
    else lines.push(line);
  }
  return lines;
}

function readEvents(lines: readonly string[]): IcsEvent[] {
  const events: IcsEvent[] = [];
  let at = 0;
  while (at < lines.length) {
    expectLine(lines[at], 'BEGIN:VEVENT');
    const end = lines.indexOf('END:VEVENT', at);
    if (end === -1) throw new Error('An event does not end.');
    events.push(readEvent(lines.slice(at + 1, end)));
    at = end + 1;
  }
  return events;
}

function readEvent(lines: readonly string[]): IcsEvent {
  const properties = readProperties(lines);
  if ([...properties.keys()].sort().join() !== [...EVENT_PROPERTIES].sort().join()) {
    throw new Error(`Unexpected properties: ${[...properties.keys()].join()}`);
  }
  const value = (name: string) => properties.get(name) ?? '';
  const stamp = value('DTSTAMP');
  if (!/^\d{8}T([01]\d|2[0-3])[0-5]\d[0-5]\dZ$/.test(stamp)) throw new Error(`Not a time in UTC: ${stamp}`);
  requireRealDate(stamp.slice(0, 8));
  const [start, end] = [requireRealDate(value('DTSTART')), requireRealDate(value('DTEND'))];
  if (end <= start) throw new Error(`An event ends at ${end}, not after ${start}.`);
  const text = { summary: readEscaped(value('SUMMARY')), description: readEscaped(value('DESCRIPTION')) };
  return { uid: readEscaped(value('UID')), stamp, start, end, ...text };
}

function readProperties(lines: readonly string[]): Map<string, string> {
  const properties = new Map<string, string>();
  for (const line of lines) {
    const found = /^([A-Z-]+)((?:;[A-Z-]+=[A-Za-z0-9-]+)*):(.*)$/s.exec(line);
    if (found === null) throw new Error(`Not a content line: ${line}`);
    const [, name = '', parameters = '', value = ''] = found;
    if (properties.has(name)) throw new Error(`${name} is there twice.`);
    if (/^DT(START|END)$/.test(name) && parameters !== ';VALUE=DATE') throw new Error(`${name} is no whole day.`);
    properties.set(name, value);
  }
  return properties;
}

function requireRealDate(text: string): string {
  const date = new Date(Date.UTC(Number(text.slice(0, 4)), Number(text.slice(4, 6)) - 1, Number(text.slice(6, 8))));
  if (!/^\d{8}$/.test(text) || date.toISOString().slice(0, 10).replaceAll('-', '') !== text) {
    throw new Error(`Not a real date: ${text}`);
  }
  return text;
}

function readEscaped(value: string): string {
  if (/(^|[^\\])(\\\\)*(\\[^\\;,nN]|[;,]|\\$)/.test(value)) throw new Error(`Not escaped text: ${value}`);
  return value.replace(/\\(.)/g, (_, escaped: string) => (/n/i.test(escaped) ? '\n' : escaped));
}

function expectLine(found: string | undefined, expected: string): void {
  if (found !== expected) throw new Error(`Unexpected line ${found}, expected ${expected}.`);
}
