/** The mechanics against published figures, table by table. */
import { describe, expect, it } from 'vitest';
import { checkTables, traced } from './checks/index.ts';
import { expectPrinted } from './printed.ts';

describe.each(checkTables)('$title as published', ({ checks }) => {
  it.each(checks)('$id: $what, $printed ($source)', (check) => {
    const { computed, ids } = traced(check);
    expectPrinted(computed, check.printed);
    expect(ids).not.toEqual([]);
  });
});
