import { describe, expect, it } from 'vitest';
import { findBrowser } from './launch-browser.ts';

const HERE = import.meta.filename;
const NOWHERE = `${HERE}.gone`;

describe('findBrowser', () => {
  it('takes the named browser before an installed one', async () => {
    expect(await findBrowser(HERE, [NOWHERE])).toEqual({ executablePath: HERE });
  });

  it('takes the first that is installed when none is named', async () => {
    expect(await findBrowser(undefined, [NOWHERE, HERE])).toEqual({ executablePath: HERE });
    expect(await findBrowser('', [HERE, NOWHERE])).toEqual({ executablePath: HERE });
  });

  it('does not pass over a named browser that is missing', async () => {
    await expect(findBrowser(NOWHERE, [HERE])).rejects.toThrow('CHROMIUM_PATH');
  });
});
