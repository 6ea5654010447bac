/**
 * How requests and answers travel between browser and host: JSON, with bytes behind it as they are instead of
 * inside it as text. Form: length of the JSON as 4 bytes, high byte first; the JSON
 * `{"value": …, "bytes": "<member>" | absent}`; then the bytes that belong into that member of the value.
 */

/** The value as one run of bytes. At most one direct member of it may be a Uint8Array. */
export function pack(value: object): Uint8Array<ArrayBuffer> {
  const member = Object.entries(value).find(([, content]) => content instanceof Uint8Array);
  const tail = member === undefined ? new Uint8Array() : (member[1] as Uint8Array);
  const plain =
    member === undefined ? { value } : { value: { ...value, [member[0]]: null }, bytes: member[0] };
  const head = new TextEncoder().encode(JSON.stringify(plain));
  const whole = new Uint8Array(4 + head.length + tail.length);
  new DataView(whole.buffer).setUint32(0, head.length);
  whole.set(head, 4);
  whole.set(tail, 4 + head.length);
  return whole;
}

/** What `pack` was given, not yet checked for its meaning. @throws SyntaxError when the bytes are no parcel */
export function unpack(whole: Uint8Array): unknown {
  if (whole.length < 4) throw new SyntaxError('a parcel has at least 4 bytes');
  const length = new DataView(whole.buffer, whole.byteOffset, whole.byteLength).getUint32(0);
  if (4 + length > whole.length) throw new SyntaxError('the parcel is cut short');
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let head: unknown;
  try {
    head = JSON.parse(decoder.decode(whole.subarray(4, 4 + length)));
  } catch {
    throw new SyntaxError('the parcel holds no JSON');
  }
  if (typeof head !== 'object' || head === null || !('value' in head)) {
    throw new SyntaxError('the parcel holds no value');
  }
  const { value } = head;
  const name = 'bytes' in head ? head.bytes : undefined;
  if (typeof name !== 'string') return value;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new SyntaxError('the parcel has no place for its bytes');
  }
  return { ...value, [name]: whole.slice(4 + length) };
}
