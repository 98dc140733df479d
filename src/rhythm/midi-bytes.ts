/** A whole number from 0, most significant byte first. */
export function wholeNumber(value: number, bytes: number): number[] {
  return Array.from({ length: bytes }, (_, index) => Math.floor(value / 256 ** (bytes - 1 - index)) % 256);
}

/** A whole number from 0 below 2^28, 7 bits a byte, most significant first; all bytes but the last have their top bit set. */
export function variableLength(value: number): number[] {
  const bytes = [value % 128];
  for (let rest = Math.floor(value / 128); rest > 0; rest = Math.floor(rest / 128)) bytes.unshift((rest % 128) + 128);
  return bytes;
}

/** A meta event of a MIDI file, such as a tempo, without its time. */
export function metaEvent(type: number, data: readonly number[]): number[] {
  return [0xff, type, ...variableLength(data.length), ...data];
}

/** Text in UTF-8. */
export function encodeText(text: string): number[] {
  return [...new TextEncoder().encode(text)];
}

/** A chunk of a MIDI file: four letters, the length of what follows, and that. */
export function renderChunk(type: 'MThd' | 'MTrk', body: readonly number[]): number[] {
  return [...encodeText(type), ...wholeNumber(body.length, 4), ...body];
}
