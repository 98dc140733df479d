/** Whether bytes stand at an offset; text stands for its ASCII codes. */
export function hasBytes(bytes: Uint8Array, offset: number, wanted: string | readonly number[]): boolean {
  const codes = typeof wanted === 'string' ? [...wanted].map((sign) => sign.charCodeAt(0)) : wanted;
  return codes.every((code, index) => bytes[offset + index] === code);
}

/** Four bytes as text, one sign a byte; shorter at the end. */
export function readTag(bytes: Uint8Array, offset: number): string {
  return String.fromCharCode(...bytes.subarray(offset, offset + 4));
}

/** A view for reading numbers; it looks at the same bytes. */
export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
