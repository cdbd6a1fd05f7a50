import type { Command } from 'commander';
import type { Shell } from './shell.ts';

/** Options that every command has. */
export interface CommonOptions {
  readonly color?: boolean;
  readonly quiet?: boolean;
  readonly debug?: boolean;
}

/** What a command is given beside its own arguments: the world, and where its exit status goes. */
export interface CommandContext {
  readonly shell: Shell;
  /** Runs a command's work and keeps its exit status; problems and faults are reported in one place. */
  act(command: Command, work: () => Promise<number>): Promise<void>;
}
