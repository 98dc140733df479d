/** Which way a text runs, as the `dir` attribute of HTML has it. */
export type TextDirection = 'ltr' | 'rtl';

/**
 * Letters of the scripts that run from right to left: the blocks that the Unicode Bidirectional Algorithm (UAX #9)
 * keeps for them, such as Hebrew, Arabic, Syriac, Thaana, N'Ko, Hanifi Rohingya and Adlam.
 */
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/** Whether a text holds letters of a script that runs from right to left. */
export function runsRightToLeft(text: string): boolean {
  return RIGHT_TO_LEFT.test(text);
}

/**
 * Which way most of the texts run. Their letters say it, not the tag of their language: tags of a school's own say
 * nothing of their script, and some languages are written in two.
 */
export function findDirection(texts: readonly string[]): TextDirection {
  const rightToLeft = texts.filter(runsRightToLeft).length;
  return rightToLeft * 2 > texts.length ? 'rtl' : 'ltr';
}
