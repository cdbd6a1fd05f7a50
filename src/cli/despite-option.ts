import { Option } from 'commander';
import { UsageError } from './failure.ts';
import { collect } from './request.ts';

/** `--despite FACTOR=REASON`, as often as wanted. */
export function despiteOption(): Option {
  return new Option(
    '--despite <factor=reason>',
    'compare though this factor differs, for this reason',
  ).argParser(collect);
}

/** `FACTOR=REASON`, each factor once and none without a reason. */
export function reasonsOf(written: readonly string[] = []): Map<string, string> {
  const found = new Map<string, string>();
  for (const text of written) {
    const [, factor, reason] = /^([^=]+)=(.+)$/su.exec(text) ?? [];
    if (!factor?.trim() || !reason?.trim()) {
      throw new UsageError('--despite takes FACTOR=REASON: an override needs a reason');
    }
    if (found.has(factor.trim())) throw new UsageError(`--despite names ${factor.trim()} twice`);
    found.set(factor.trim(), reason.trim());
  }
  return found;
}
