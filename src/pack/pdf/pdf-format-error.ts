/** A PDF file is not written in the form that the kit reads; the message says what was found. */
export class PdfFormatError extends Error {
  override readonly name = 'PdfFormatError';
}
