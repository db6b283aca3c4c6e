/** A stream of reproducible random numbers: the same seed gives the same flight on every machine. */
export interface Random {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Normal with mean 0 and standard deviation 1. */
  gaussian(): number;
  /** A stream of its own, so that drawing more from one source of chance does not change another. */
  fork(name: string): Random;
}

/** Seeds by words ("late-intercept"), so that every flight has a stable seed that can be read. */
export function seededRandom(seed: string): Random {
  const uniform = sfc32(seed);
  let spare: number | null = null;
  return {
    uniform,
    gaussian() {
      if (spare !== null) {
        const kept = spare;
        spare = null;
        return kept;
      }
      const [first, second] = gaussianPair(uniform);
      spare = second;
      return first;
    },
    fork: (name) => seededRandom(`${seed}/${name}`),
  };
}

/** Marsaglia's polar method (G. Marsaglia, T. A. Bray 1964; from memory): a square root and a logarithm only. */
function gaussianPair(uniform: () => number): [number, number] {
  for (;;) {
    const x = 2 * uniform() - 1;
    const y = 2 * uniform() - 1;
    const square = x * x + y * y;
    if (square > 0 && square < 1) {
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      return [x * scale, y * scale];
    }
  }
}

/** Chris Doty-Humphrey's sfc32 (PractRand; from memory), its state filled from the text by FNV-1a. */
function sfc32(seed: string): () => number {
  let [a, b, c, counter] = [fnv1a(seed, 1), fnv1a(seed, 2), fnv1a(seed, 3), 1];
  const next = (): number => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + sum) | 0;
    return (sum >>> 0) / 2 ** 32;
  };
  for (let round = 0; round < 15; round++) next();
  return next;
}

function fnv1a(text: string, salt: number): number {
  let hash = 0x811c9dc5 ^ salt;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash | 0;
}

/** First-order (Ornstein-Uhlenbeck) noise: it wanders with a standard deviation and forgets in a time constant. */
export interface Wander {
  readonly value: number;
  step(stepS: number): number;
}

export function wander(random: Random, sd: number, timeConstantS: number): Wander {
  let value = sd * random.gaussian();
  return {
    get value() {
      return value;
    },
    step(stepS) {
      const kept = Math.exp(-stepS / timeConstantS);
      value = value * kept + sd * Math.sqrt(1 - kept * kept) * random.gaussian();
      return value;
    },
  };
}
