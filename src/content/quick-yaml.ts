import { EVENT_ID, type Event, getScalarValue, parseEvents, SCALAR_STYLE } from 'js-yaml';

/** What readers differ over: tabs, document markers, and what else than LF and CRLF ends a line. */
const ODD = /[\t\u0085\u2028\u2029\uFEFF]|\r(?!\n)|^(?:---|\.\.\.)/m;

/** Beyond this many digits readers round differently. */
const MOST_DIGITS = 15;

const DECIMAL = /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)?$/;
/** What may be something else than text by the core schema: all that it knows begins with one of these. */
const NOT_SURELY_TEXT = /^(?:[-+.\d~]|[nN](?:ull|ULL)$|[tT](?:rue|RUE)$|[fF](?:alse|ALSE)$|$)/;

/** Thrown when a text holds something for the full reader; never leaves this file. */
const NOT_PLAIN = new Error('Not plain YAML');

/** Where a walk over the events stands. */
interface Walk {
  readonly source: string;
  readonly events: readonly Event[];
  at: number;
}

/**
 * The value of YAML text that is plain and without fault, as `parseYaml` describes it; undefined when there is anything
 * unusual in the text, which is then for the full reader to judge: anchors, tags, directives, several documents, keys
 * that are no words or come twice, tabs, and every fault. Takes a tenth of the full reader's time.
 */
export function findPlainYaml(source: string): { readonly value: unknown } | undefined {
  if (ODD.test(source)) return undefined;
  try {
    const walk: Walk = { source, events: parseEvents(source, {}), at: 0 };
    const head = walk.events[walk.at++];
    if (head?.type !== EVENT_ID.DOCUMENT || head.explicitStart || head.explicitEnd) return undefined;
    // Every file of ours is a map.
    if (walk.events[walk.at]?.type !== EVENT_ID.MAPPING) return undefined;
    const value = readValue(walk);
    // One more event ends the document.
    return walk.at === walk.events.length - 1 ? { value } : undefined;
  } catch {
    // The reader stops at the first fault; all of them, with their places, are found by the other one.
    return undefined;
  }
}

function readValue(walk: Walk): unknown {
  const event = walk.events[walk.at++];
  if (event === undefined || !('tagStart' in event) || event.tagStart !== -1 || event.anchorStart !== -1)
    throw NOT_PLAIN;
  if (event.type === EVENT_ID.MAPPING) return readMap(walk);
  if (event.type === EVENT_ID.SEQUENCE) return readList(walk);
  const text = getScalarValue(walk.source, event).normalize('NFC');
  if (event.style === SCALAR_STYLE.PLAIN) return readPlain(text);
  // The quick reader lets text follow a closing quote, as in `- "x"-:`.
  const isQuoted = event.style === SCALAR_STYLE.DOUBLE_QUOTED || event.style === SCALAR_STYLE.SINGLE_QUOTED;
  if (isQuoted && !/^[\s,\]}:]?$/.test(walk.source.charAt(event.valueEnd + 1))) throw NOT_PLAIN;
  return text;
}

function readList(walk: Walk): unknown[] {
  const list: unknown[] = [];
  while (!isEnd(walk)) list.push(readValue(walk));
  return list;
}

function readMap(walk: Walk): Record<string, unknown> {
  const map: Record<string, unknown> = Object.create(null);
  while (!isEnd(walk)) {
    const key = readValue(walk);
    // Other keys than words keep the spelling of the file, which the full reader knows.
    if (typeof key !== 'string' || key === '' || key === '__proto__' || key in map) throw NOT_PLAIN;
    map[key] = readValue(walk);
  }
  return map;
}

/** Whether a map or list ends here; if so, steps over its end. */
function isEnd(walk: Walk): boolean {
  if (walk.events[walk.at]?.type !== EVENT_ID.POP) return false;
  walk.at += 1;
  return true;
}

/** A scalar without quotes, by the core schema: YAML 1.2.2, section 10.3.2. */
function readPlain(text: string): unknown {
  if (!NOT_SURELY_TEXT.test(text)) return text;
  if (text === '' || text === '~' || /^null$/i.test(text)) return null;
  if (/^(?:true|false)$/i.test(text)) return /^t/i.test(text);
  if (DECIMAL.test(text)) {
    if (text.length > MOST_DIGITS) throw NOT_PLAIN;
    return Number(text);
  }
  // Numbers of other kinds are so rare that the full reader may have them.
  if (/^(?:0[xo]|[-+]?\.(?:inf|nan)$)/i.test(text)) throw NOT_PLAIN;
  return text;
}
