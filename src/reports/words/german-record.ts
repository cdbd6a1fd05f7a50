import type { Line } from './line.ts';

export function germanRecord(text: string): Line {
  return { text, isRecord: true };
}

export function germanDeviation({ message }: { readonly message: string }): Line {
  return { text: message, isRecord: true };
}
