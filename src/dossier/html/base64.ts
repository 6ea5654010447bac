/** Bytes as text inside of the page. */

/** A multiple of three, so that pieces join without padding between them. */
const PIECE = 3 * 8192;

export function base64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += PIECE) {
    text += btoa(String.fromCharCode(...bytes.subarray(at, at + PIECE)));
  }
  return text;
}
