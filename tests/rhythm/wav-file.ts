/** A WAV file as read by hand, or an Error that says what is wrong with it. */
export interface WavFile {
  readonly rate: number;
  readonly samples: Int16Array;
}

/**
 * Reads a WAV file of one channel with 16 bit and nothing besides, and is strict about it: "Multimedia Programming
 * Interface and Data Specifications 1.0" (IBM and Microsoft, August 1991), chapter 3, from memory.
 */
export const readWav = (file: Uint8Array): WavFile => {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const text = (at: number) => String.fromCharCode(...file.subarray(at, at + 4));
  const [u16, u32] = [(at: number) => view.getUint16(at, true), (at: number) => view.getUint32(at, true)];
  const expect = (what: string, found: unknown, expected: unknown) => {
    if (found !== expected) throw new Error(`${what} is ${found}, expected ${expected}`);
  };
  expect('form', text(0) + text(8), 'RIFFWAVE');
  expect('size of the form', u32(4), file.length - 8);
  expect('first chunk', text(12), 'fmt ');
  expect('size of the format', u32(16), 16);
  expect('format tag', u16(20), 1);
  expect('channels', u16(22), 1);
  const rate = u32(24);
  expect('bytes a second', u32(28), rate * 2);
  expect('block align', u16(32), 2);
  expect('bits a sample', u16(34), 16);
  expect('second chunk', text(36), 'data');
  expect('size of the data', u32(40), file.length - 44);
  expect('odd size of the data', u32(40) % 2, 0);
  const samples = Int16Array.from({ length: u32(40) / 2 }, (_, index) => view.getInt16(44 + 2 * index, true));
  return { rate, samples };
};

/**
 * Finds where sounds begin: moments at which the energy of the 2 ms that follow rises above a hundredth of the most
 * there is, after 15 ms below it. Knows nothing of beats or of how the strokes are made.
 * @returns seconds
 */
export const findOnsets = ({ rate, samples }: WavFile): number[] => {
  const [window, quiet] = [Math.round(rate * 0.002), Math.round(rate * 0.015)];
  const energies = new Float64Array(samples.length);
  let energy = 0;
  for (let index = samples.length - 1; index >= 0; index--) {
    energy += (samples[index] ?? 0) ** 2 - (samples[index + window] ?? 0) ** 2;
    energies[index] = energy;
  }
  const threshold = energies.reduce((most, value) => Math.max(most, value), 0) / 100;
  const onsets: number[] = [];
  let lastLoud = -quiet;
  energies.forEach((value, index) => {
    if (value < threshold) return;
    if (index - lastLoud >= quiet) onsets.push((index + window / 2) / rate);
    lastLoud = index;
  });
  return onsets;
};
