import { randomInt } from 'node:crypto';

/** In an order of chance that nobody can foretell. */
export function shuffled<T>(values: readonly T[]): T[] {
  const order = [...values];
  for (let i = order.length - 1; i > 0; i--) {
    const j = randomInt(i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}
