/** An event of a MIDI file as read by hand. */
export interface MidiEvent {
  readonly tick: number;
  readonly kind: string;
  readonly bytes: readonly number[];
}

/**
 * Reads a Standard MIDI File of format 0 and is strict about it: every length must be used up to the last byte, and the
 * end of the track must be there, once and last. After "Standard MIDI Files 1.0" (MIDI Manufacturers Association, 1988),
 * from memory. Knows what this project may write, and throws at anything else.
 */
export const readMidi = (file: Uint8Array): { readonly division: number; readonly events: MidiEvent[] } => {
  const number = (at: number, bytes: number) =>
    file.subarray(at, at + bytes).reduce((sum, byte) => sum * 256 + byte, 0);
  const text = (at: number) => String.fromCharCode(...file.subarray(at, at + 4));
  const expect = (what: string, found: unknown, expected: unknown) => {
    if (found !== expected) throw new Error(`${what} is ${found}, expected ${expected}`);
  };
  expect('header', text(0), 'MThd');
  expect('length of the header', number(4, 4), 6);
  expect('format', number(8, 2), 0);
  expect('tracks', number(10, 2), 1);
  expect('kind of division', number(12, 2) < 0x8000, true);
  expect('track', text(14), 'MTrk');
  expect('length of the track', number(18, 4), file.length - 22);
  const events: MidiEvent[] = [];
  let [at, tick] = [22, 0];
  const readLength = () => {
    let value = 0;
    for (let bytes = 1; ; bytes++) {
      const byte = file[at++] ?? 0;
      value = value * 128 + (byte % 128);
      if (byte < 128) return value;
      if (bytes === 4) throw new Error('a length of more than four bytes');
    }
  };
  const kinds = new Map([
    [0x03, 'name'],
    [0x06, 'marker'],
    [0x2f, 'end'],
    [0x51, 'tempo'],
    [0x58, 'signature'],
  ]);
  while (at < file.length) {
    tick += readLength();
    const status = file[at++] ?? 0;
    const meta = status === 0xff ? kinds.get(file[at++] ?? 0) : undefined;
    const kind =
      meta ??
      new Map([
        [0x99, 'on'],
        [0x89, 'off'],
      ]).get(status);
    if (kind === undefined) throw new Error(`a status of ${status} at ${at}`);
    const length = meta === undefined ? 2 : readLength();
    const bytes = [...file.subarray(at, at + length)];
    expect(`bytes of ${kind}`, bytes.length, length);
    if (meta === undefined)
      expect(
        `top bits of ${kind}`,
        bytes.some((byte) => byte > 127),
        false,
      );
    events.push({ tick, kind, bytes });
    at += length;
  }
  expect('last event', events.at(-1)?.kind, 'end');
  expect('ends', events.filter(({ kind }) => kind === 'end').length, 1);
  return { division: number(12, 2), events };
};
