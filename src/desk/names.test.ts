import { describe, expect, it } from 'vitest';
import { notebookName } from './names.ts';

describe('the name of a notebook', () => {
  it.each(['Tilt car', 'Gyro-2', 'Prüfstand Ω', 'a.b', 'console', 'com10', 'nul l', '二輪'])(
    '%s is a folder on every computer',
    (name) => {
      expect(notebookName(name)).toEqual({ ok: true, value: name });
    },
  );

  it('is kept in one form, however it was typed', () => {
    expect(notebookName('Pru\u0308fstand')).toEqual({ ok: true, value: 'Prüfstand' });
  });

  it.each([
    ['', 'it is empty'],
    ['x'.repeat(121), 'it is too long'],
    ['Ω'.repeat(120), 'it is too long'],
    ['..', 'it begins with a dot'],
    ['.hidden', 'it begins with a dot'],
    ['../outside', 'it holds “/”'],
    ['a\\b', 'it holds “\\”'],
    ['C:', 'it holds “:”'],
    ['a\u0000b', 'it holds an invisible character'],
    ['a\nb', 'it holds an invisible character'],
    ['a\u202eb', 'it holds an invisible character'],
    ['a\ud800', 'it holds half a character'],
    [' a', 'it begins with a space, or ends with a space or a dot'],
    ['a ', 'it begins with a space, or ends with a space or a dot'],
    ['a.', 'it begins with a space, or ends with a space or a dot'],
    ['CON', 'it is the name of a device'],
    ['nul.txt', 'it is the name of a device'],
    ['Lpt9', 'it is the name of a device'],
    ['com¹', 'it is the name of a device'],
    ['Settings.json', 'it is the name of a file of this program'],
  ])('%j is refused: %s', (name, detail) => {
    expect(notebookName(name)).toMatchObject({
      ok: false,
      problem: { code: 'notebook.bad-name', figures: { detail } },
    });
  });
});
