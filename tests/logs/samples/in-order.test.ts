import { describe, expect, it } from 'vitest';
import { inOrder } from '../../../src/logs/samples/in-order.ts';

const wait = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

async function all<Value>(from: AsyncIterable<Value>): Promise<Value[]> {
  const found: Value[] = [];
  for await (const one of from) found.push(one);
  return found;
}

describe('inOrder', () => {
  it('gives replies in the order of the tasks, whichever is ready first', async () => {
    const replies = inOrder([30, 1, 15, 0], async (ms) => wait(ms).then(() => ms), 3);
    expect(await all(replies)).toEqual([30, 1, 15, 0]);
  });
  it('begins no more than so many before the first has been taken', async () => {
    let begun = 0;
    const replies = inOrder(
      Array.from({ length: 20 }, (_, i) => i),
      async (i) => {
        begun += 1;
        return i;
      },
      4,
    );
    await replies.next();
    expect(begun).toBe(4);
    await replies.next();
    expect(begun).toBe(5);
  });
  it('passes a failure on at its turn', async () => {
    const replies = inOrder([1, 2], async (i) => (i === 2 ? Promise.reject(new Error('second')) : i), 2);
    expect((await replies.next()).value).toBe(1);
    await expect(replies.next()).rejects.toThrow('second');
  });
});
