import type { Case } from './case.ts';

/** The gate that the stability criterion stands on: 1,000 ft in instrument conditions, 500 ft else or when not stated. */
export function countingGate({ stated }: Pick<Case, 'stated'>): {
  readonly kind: 'gate-1000' | 'gate-500';
  readonly words: string;
} {
  return stated.conditions === 'imc' || stated.conditions === 'simulated'
    ? { kind: 'gate-1000', words: '1,000 ft' }
    : { kind: 'gate-500', words: '500 ft' };
}
