import { describe, expect, it } from 'vitest';
import { portions } from '../../../src/cli/batch/portions.ts';

describe('portions', () => {
  it('cuts a list, the last part shorter', () => {
    expect([...portions([1, 2, 3, 4, 5], 2)]).toEqual([[1, 2], [3, 4], [5]]);
    expect([...portions([], 2)]).toEqual([]);
  });
});
