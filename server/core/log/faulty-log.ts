import type { LogFault } from '../phrases/log-faults.ts';

/** Carries why a log cannot be used up to where the outcome of learning is made. */
export class FaultyLog extends Error {
  readonly fault: LogFault;
  constructor(fault: LogFault) {
    super(fault.fault);
    this.name = 'FaultyLog';
    this.fault = fault;
  }
}
