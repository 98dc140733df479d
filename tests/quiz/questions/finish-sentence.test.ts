import { describe, expect, it } from 'vitest';
import { finishSentence } from '../../../src/quiz/questions/finish-sentence.ts';
import { makeNights, range } from './fake-nights.ts';
import {
  countLevels,
  readAnswer,
  readMeanings,
  readPrompt,
  readSets,
  readWorking,
  requireQuestion,
} from './read-question.ts';

/** Tonight is in the second of three months. */
function makeFacts(more: Parameters<typeof makeNights>[0] = {}) {
  return makeNights({ today: '2026-08-20', from: '2026-08-17', to: '2026-08-27', ...more });
}

describe('finish-sentence', () => {
  it('leaves the night and the month open', () => {
    const instances = finishSentence.list(makeFacts());
    expect(instances).toHaveLength(11);
    expect(countLevels(instances)).toEqual([7, 4, 0]);
    const friday = requireQuestion(instances, 'Friday 21 August');
    expect(readPrompt(friday)).toBe('Finish the sentence for Friday 21 August (from sunset on): Tonight is …, in ….');
    expect(readAnswer(friday)).toBe('Den a … Month 2');
    expect(readWorking(friday)).toBe(
      'Friday 21 August is night 10 of the month: Den a. ' +
        'Month 2 goes from Wednesday 12 August to Thursday 10 September. Tonight is Den a, in Month 2.',
    );
  });

  it('offers each of two nights with each of two months', () => {
    const friday = requireQuestion(finishSentence.list(makeFacts()), 'Friday 21 August');
    expect(readSets(friday)).toEqual([
      'Cob c … Month 1, Cob c … Month 2, Den a … Month 1',
      'Cob c … Month 2, Cob c … Month 3, Den a … Month 3',
      'Den a … Month 1, Den b … Month 1, Den b … Month 2',
      'Den a … Month 3, Den b … Month 2, Den b … Month 3',
      'Den a … Month 1, Gum c … Month 1, Gum c … Month 2',
      'Den a … Month 3, Gum c … Month 2, Gum c … Month 3',
    ]);
    expect(readMeanings(friday)).toMatchObject({
      'Cob c … Month 2': 'Knows the month, but took the night before.',
      'Den b … Month 2': 'Knows the month, but took the night after.',
      'Den a … Month 1': 'Knows the night, but took the month before.',
      'Den a … Month 3': 'Knows the night, but took the month after.',
      'Cob c … Month 3': 'Knows neither the night nor the month yet.',
    });
  });

  it('says the names in the order of the sentence, in the language of the calendar', () => {
    const facts = makeFacts({ sentence: 'In {month} it is {night}; {night} it is.', language: 'x-other' });
    const friday = requireQuestion(finishSentence.list(facts), 'Friday 21 August');
    expect(readAnswer(friday)).toBe('Month 2 … Den a');
    if (friday.kind !== 'choice') throw new Error('A sentence is a choice.');
    expect(friday.renderRight()).toMatchObject([{ properties: { lang: 'x-other' } }]);
  });

  it('asks for the night alone where the sentence has no month', () => {
    const friday = requireQuestion(
      finishSentence.list(makeFacts({ sentence: 'Tonight is {night}.' })),
      'Friday 21 August',
    );
    expect(readAnswer(friday)).toBe('Den a');
    expect(readSets(friday)).toContain('Cob b, Cob c, Den b');
    expect(readWorking(friday)).toBe('Friday 21 August is night 10 of the month: Den a. Tonight is Den a.');
  });

  it('asks for the night alone where the months beside have the same name, and for the month where there is one night', () => {
    const monthNames = Array<string>(12).fill('Moon');
    const sameMonths = requireQuestion(finishSentence.list(makeFacts({ monthNames })), 'Friday 21 August');
    expect(readSets(sameMonths)).toContain('Cob b … Moon, Cob c … Moon, Den b … Moon');
    const oneNight = makeFacts({
      groups: [['All', ['Night']]],
      months: [1, 2, 3].map(() => ({ said: Array<number>(29).fill(1) })),
    });
    expect(readSets(requireQuestion(finishSentence.list(oneNight), 'Friday 21 August'))).toContain(
      'Night … Month 1, Night … Month 3, Night … Month 4',
    );
    expect(finishSentence.list({ ...oneNight, calendar: { ...oneNight.calendar, sentence: '{night}!' } })).toEqual([]);
  });

  it('is hardest over the end of the month', () => {
    const instances = finishSentence.list(makeFacts({ today: '2026-08-10', from: '2026-08-10', to: '2026-08-14' }));
    const first = requireQuestion(instances, 'Wednesday 12 August');
    expect([first.level, readAnswer(first)]).toEqual([3, 'Ash a … Month 2']);
    expect(readMeanings(first)['Jay b … Month 1']).toBe('Knows neither the night nor the month yet.');
  });

  it('keeps a name said twice apart from its neighbours', () => {
    const said = [...range(1, 10), 10, ...range(11, 28)];
    const facts = makeFacts({ months: [{ said: range(1, 29) }, { said }, { said: range(1, 29) }] });
    for (const instance of finishSentence.list(facts)) {
      for (const set of readSets(instance)) {
        const options = [readAnswer(instance), ...set.split(', ')];
        expect(new Set(options).size).toBe(options.length);
      }
    }
  });
});
