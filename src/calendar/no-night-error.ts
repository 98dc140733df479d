/**
 * The rules of the calendar give no night here and then, such as a month that begins with the first crescent where the
 * Sun does not set. Nobody's mistake in the kit: the message says what to do.
 */
export class NoNightError extends RangeError {
  override readonly name = 'NoNightError';
}
