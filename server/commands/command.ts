import type { Outcome } from '../core/input/problem.ts';
import type { CommandIo } from './command-io.ts';
import { isKeptTrip } from './kept-inputs.ts';
import { readTripArguments, type TripArguments } from './trip-arguments.ts';

/** A command: takes the words after its name, gives the text to print. */
export type Command = (words: readonly string[], io: CommandIo) => Promise<Outcome<string>>;

interface TripCommand {
  name: string;
  help: string;
  mostRigs: number;
  run: (args: TripArguments, io: CommandIo) => Promise<Outcome<string>>;
}

/** A command on a route, which gives its help where that is asked for. */
export const tripCommand =
  ({ name, help, mostRigs, run }: TripCommand): Command =>
  async (words, io) => {
    const args = readTripArguments({ command: name, words, mostRigs, isKept: isKeptTrip });
    if (!args.ok) return args;
    return args.value === null ? { ok: true, value: help } : run(args.value, io);
  };
