/** Requests as a page of the given origin makes them: a browser adds Origin by itself, Node does not. */
import { afterEach, beforeEach } from 'vitest';

/** For the tests of a file: `origin()` is asked at each request. */
export function fetchAsPageOf(origin: () => string): void {
  const plain = globalThis.fetch;
  beforeEach(() => {
    globalThis.fetch = (input, init) => {
      const headers = new Headers(init?.headers);
      headers.set('origin', origin());
      return plain(input, { ...init, headers });
    };
  });
  afterEach(() => {
    globalThis.fetch = plain;
  });
}
