import fc from 'fast-check';
import { parseMidi, type MidiEvent as ReadEvent } from 'midi-file';
import { describe, expect, it } from 'vitest';
import { computeTimeline } from '../../src/rhythm/compute-timeline.ts';
import { planTracks } from '../../src/rhythm/plan-tracks.ts';
import { renderMidi, TICKS_PER_BEAT } from '../../src/rhythm/render-midi.ts';
import type { Timeline, Track } from '../../src/rhythm/timeline-types.ts';
import { readMidi } from './midi-reader.ts';
import { anyGroups, anyRhythm, buildGroups, buildRhythm, monthGroups } from './sample-runs.ts';

const trackOf = (timeline: Timeline): Track => {
  const [track] = planTracks([timeline]).tracks;
  if (track === undefined) throw new Error('no track');
  return track;
};

/** Beats on which something is struck, from the timeline alone; a group's first beat twice, for rim and drum. */
const struckBeats = ({ events }: Timeline) =>
  events.flatMap((event) => {
    if (event.kind === 'rest') return [];
    const beats = Array.from({ length: event.beats }, (_, beat) => event.firstBeat + beat);
    return event.kind === 'item' && event.strong ? [event.firstBeat, ...beats] : beats;
  });

/** The events of an independent reader, with ticks from the beginning. */
const readIndependently = (file: Uint8Array) => {
  const { header, tracks } = parseMidi(file);
  let tick = 0;
  const events = (tracks[0] ?? []).map((event) => {
    tick += event.deltaTime;
    return { ...event, tick };
  });
  return { header, tracks: tracks.length, events };
};

const ofType = <Type extends ReadEvent['type']>(events: readonly (ReadEvent & { tick: number })[], type: Type) =>
  events.filter((event): event is Extract<ReadEvent, { type: Type }> & { tick: number } => event.type === type);

describe('renderMidi', () => {
  it('is, byte for byte, what the standard asks for', () => {
    // By hand: one night at 72 counted in by one; 60,000,000 / 72 = 833,333 microseconds (0x0CB735); 96 ticks a beat.
    const file = renderMidi(trackOf(computeTimeline(buildGroups(1), buildRhythm({ tempoBeatsPerMinute: 72 }))));
    const hex = [...file].map((byte) => byte.toString(16).padStart(2, '0')).join(' ');
    const parts = [
      '4d 54 68 64 00 00 00 06 00 00 00 01 00 60',
      '4d 54 72 6b 00 00 00 3d', // 13 + 7 + 8 + 5 + 8 + 16 + 4 bytes follow
      '00 ff 03 09 62 65 61 74 2d 37 32 2d 31', // beat-72-1
      '00 ff 51 03 0c b7 35',
      '00 ff 58 04 01 02 18 08',
      '00 ff 06 01 41', // A
      '00 99 32 40 30 89 32 40', // the count, and its end half a beat on
      '30 99 25 68 00 99 2d 68 30 89 25 40 00 89 2d 40', // rim and drum
      '30 ff 2f 00',
    ];
    expect(hex).toBe(parts.join(' '));
  });

  it('is read by an independent reader as it was meant', () => {
    const timeline = computeTimeline(buildGroups(2, 3), buildRhythm({ tempoBeatsPerMinute: 96, restBeats: 1 }));
    const track = { ...trackOf(timeline), markers: [{ atBeat: 5, text: 'Épaves – 潮' }] };
    const { header, tracks, events } = readIndependently(renderMidi(track));
    expect(header).toMatchObject({ format: 0, numTracks: 1, ticksPerBeat: 96 });
    expect(tracks).toBe(1);
    expect(ofType(events, 'trackName').map(({ text }) => text)).toEqual(['beat-96-1']);
    expect(ofType(events, 'setTempo').map(({ microsecondsPerBeat }) => microsecondsPerBeat)).toEqual([625_000]);
    expect(ofType(events, 'timeSignature')).toEqual([
      expect.objectContaining({ numerator: 1, denominator: 4, metronome: 24, thirtyseconds: 8 }),
    ]);
    // The reader gives the bytes of a text one by one.
    const texts = ofType(events, 'marker').map(({ text, tick }) => [
      tick,
      Buffer.from(text, 'latin1').toString('utf8'),
    ]);
    expect(texts).toEqual([[5 * 96, 'Épaves – 潮']]);
    const notes = ofType(events, 'noteOn');
    expect(new Set(notes.map(({ channel }) => channel))).toEqual(new Set([9]));
    expect(notes.map(({ noteNumber, tick }) => `${noteNumber}@${tick / 96}`).join(' ')).toBe(
      '50@0 50@1 37@2 45@2 45@3 50@5 50@6 50@7 37@8 45@8 45@9 45@10',
    );
    expect(events.at(-1)).toMatchObject({ type: 'endOfTrack', tick: 11 * 96 });
  });

  it('has its notes on the ticks of the timeline, each ended before the next, whoever reads it', () => {
    fc.assert(
      fc.property(anyGroups, anyRhythm, (groups, rhythm) => {
        const timeline = computeTimeline(groups, rhythm);
        const file = renderMidi(trackOf(timeline));
        const own = readMidi(file);
        const ticks = struckBeats(timeline).map((beat) => beat * TICKS_PER_BEAT);
        expect(own.division).toBe(TICKS_PER_BEAT);
        expect(own.events.filter(({ kind }) => kind === 'on').map(({ tick }) => tick)).toEqual(ticks);
        expect(own.events.filter(({ kind }) => kind === 'off').map(({ tick }) => tick)).toEqual(
          ticks.map((tick) => tick + TICKS_PER_BEAT / 2),
        );
        expect(own.events.at(-1)?.tick).toBe(timeline.totalBeats * TICKS_PER_BEAT);
        const read = readIndependently(file);
        expect(read.tracks).toBe(1);
        expect(ofType(read.events, 'noteOn').map(({ tick }) => tick)).toEqual(ticks);
      }),
    );
  });

  it('sounds within half a tick of the timeline’s seconds, a slow pass and a rounded tempo and all', () => {
    fc.assert(
      fc.property(anyGroups, anyRhythm, (groups, rhythm) => {
        const timeline = computeTimeline(groups, rhythm);
        let [microseconds, tick, perBeat] = [0, 0, 0];
        const struck: number[] = [];
        for (const event of readMidi(renderMidi(trackOf(timeline))).events) {
          microseconds += ((event.tick - tick) * perBeat) / TICKS_PER_BEAT;
          tick = event.tick;
          if (event.kind === 'tempo') perBeat = event.bytes.reduce((sum, byte) => sum * 256 + byte, 0);
          if (event.kind === 'on') struck.push(microseconds / 1e6);
        }
        const halfTick = 60 / rhythm.tempoBeatsPerMinute / TICKS_PER_BEAT / 2;
        const strikes = timeline.events.flatMap((event) => {
          if (event.kind === 'rest') return [];
          const beat = (event.endsAtSeconds - event.startsAtSeconds) / event.beats;
          const starts = Array.from({ length: event.beats }, (_, index) => event.startsAtSeconds + index * beat);
          return event.kind === 'item' && event.strong ? [event.startsAtSeconds, ...starts] : starts;
        });
        const late = struck.map((seconds, index) => Math.abs(seconds - (strikes[index] ?? Number.NaN)));
        expect(Math.max(...late)).toBeLessThan(halfTick);
      }),
    );
  });

  it('makes a bar of every night, and bars of one beat of what is counted', () => {
    const timeline = computeTimeline(buildGroups(2, 1), buildRhythm({ beatsPerItem: 4, restBeats: 2 }));
    const signatures = readMidi(renderMidi(trackOf(timeline))).events.filter(({ kind }) => kind === 'signature');
    // By hand: 2 counts, 2 nights of 4, 2 rests and 1 count from beat 10, a night from beat 13.
    expect(signatures.map(({ tick, bytes }) => [tick / TICKS_PER_BEAT, bytes[0]])).toEqual([
      [0, 1],
      [2, 4],
      [10, 1],
      [13, 4],
    ]);
    const long = computeTimeline(buildGroups(1), buildRhythm({ beatsPerItem: 256, countIn: 'none' }));
    const bars = readMidi(renderMidi(trackOf(long))).events.filter(({ kind }) => kind === 'signature');
    expect(bars.map(({ tick, bytes }) => [tick / TICKS_PER_BEAT, bytes[0]])).toEqual([
      [0, 255],
      [255, 1],
    ]);
  });

  it('marks the groups by name and the change of tempo', () => {
    const timeline = computeTimeline(monthGroups, buildRhythm({ tempoBeatsPerMinute: 80, slowFirst: true }));
    const { events } = readMidi(renderMidi(trackOf(timeline)));
    const markers = events.filter(({ kind }) => kind === 'marker');
    expect(String.fromCharCode(...markers.flatMap(({ bytes }) => bytes))).toBe('ABCDEFGHABCDEFGH');
    const tempi = events.filter(({ kind }) => kind === 'tempo');
    expect(tempi.map(({ tick, bytes }) => [tick / TICKS_PER_BEAT, ...bytes])).toEqual([
      [0, 0x0f, 0x42, 0x40], // 1,000,000
      [60, 0x0b, 0x71, 0xb0], // 750,000
    ]);
  });

  it.each([3.5, 200_000_000])('refuses %d beats a minute, which a file cannot say', (tempoBeatsPerMinute) => {
    const timeline = computeTimeline(buildGroups(1), buildRhythm({ tempoBeatsPerMinute }));
    expect(() => renderMidi(trackOf(timeline))).toThrow(RangeError);
  });
});
