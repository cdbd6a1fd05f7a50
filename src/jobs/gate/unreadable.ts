import { InputError, type Problem } from '../../problem/problem.ts';

/** Goes on past a run or a result that cannot be read, and keeps why, once for each. */
export class Unreadable {
  readonly all: { readonly path: string; readonly problems: readonly Problem[] }[] = [];

  take<Value>(
    path: string,
    read: () => Value,
    isTold: (problems: readonly Problem[]) => boolean = () => false,
  ): Value | null {
    try {
      return read();
    } catch (error) {
      return this.#keep(path, error, isTold);
    }
  }

  async wait<Value>(path: string, read: () => Promise<Value>): Promise<Value | null> {
    try {
      return await read();
    } catch (error) {
      return this.#keep(path, error, () => false);
    }
  }

  #keep(path: string, error: unknown, isTold: (problems: readonly Problem[]) => boolean): null {
    if (!(error instanceof InputError)) throw error;
    const isKnown = this.all.some((entry) => entry.path === path);
    if (!isTold(error.problems) && !isKnown) this.all.push({ path, problems: error.problems });
    return null;
  }
}
