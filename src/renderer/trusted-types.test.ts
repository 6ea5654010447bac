import { describe, expect, it } from 'vitest';
import { ownScriptAddress } from './trusted-types.ts';

describe('addresses of scripts', () => {
  it.each([
    [
      './assets/calculation-worker-1.js',
      'http://127.0.0.1:4000/',
      'http://127.0.0.1:4000/assets/calculation-worker-1.js',
    ],
    ['app://counterpoise/assets/w.js', 'app://counterpoise/index.html', 'app://counterpoise/assets/w.js'],
  ])('%s is a file of %s', (address, page, href) => {
    expect(ownScriptAddress(address, page)).toBe(href);
  });

  it.each([
    'https://example.org/w.js',
    'http://127.0.0.1:4001/w.js',
    'data:text/javascript,1',
    'blob:http://127.0.0.1:4000/0c1f',
    'app://other/w.js',
  ])('%s is refused', (address) => {
    expect(() => ownScriptAddress(address, 'http://127.0.0.1:4000/')).toThrow(TypeError);
  });
});
