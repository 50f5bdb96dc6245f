/** Numbers that look random and are the same for the same seed, on any machine. */
export interface RandomSource {
  /** evenly spread over [0, 1), 32 bits */
  uniform(): number;
  /** normal, mean 0, standard deviation 1 */
  normal(): number;
  /** a source of its own for a named part, independent of how much was drawn here */
  fork(label: string): RandomSource;
}

/**
 * Random source from a seed; the same seed gives the same numbers.
 *
 * Source: xoshiro128++ 1.0 of D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators",
 *   ACM Transactions on Mathematical Software 47 (2021); state filled by a 32-bit mixing of the seed; normal
 *   numbers by the transformation of Box and Muller (1958).
 */
export function createRandom(seed: number | string): RandomSource {
  const key = String(seed);
  const state = stateFrom(key);
  let spare = Number.NaN;
  const uniform = () => nextWord(state) / 4294967296;
  return {
    uniform,
    normal: () => {
      if (!Number.isNaN(spare)) {
        const value = spare;
        spare = Number.NaN;
        return value;
      }
      // 1 - u lies in (0, 1], so that the logarithm is finite
      const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
      const angle = 2 * Math.PI * uniform();
      spare = radius * Math.sin(angle);
      return radius * Math.cos(angle);
    },
    fork: (label) => createRandom(`${key}/${label}`),
  };
}

/** The next 32 bits of xoshiro128++; `state` holds four words, not all zero, and is moved on. */
export function nextWord(state: Uint32Array): number {
  const [s0, s1, s2, s3] = [state[0]!, state[1]!, state[2]!, state[3]!];
  const result = (rotateLeft((s0 + s3) >>> 0, 7) + s0) >>> 0;
  const shifted = s1 << 9;
  const third = s2 ^ s0;
  const fourth = s3 ^ s1;
  state[1] = s1 ^ third;
  state[0] = s0 ^ fourth;
  state[2] = third ^ shifted;
  state[3] = rotateLeft(fourth >>> 0, 11);
  return result;
}

const rotateLeft = (word: number, by: number): number => ((word << by) | (word >>> (32 - by))) >>> 0;

function stateFrom(key: string): Uint32Array {
  let hash = 2166136261;
  for (let i = 0; i < key.length; i++) hash = Math.imul(hash ^ key.charCodeAt(i), 16777619) >>> 0;
  const state = new Uint32Array(4);
  for (let i = 0; i < 4; i++) {
    hash = (hash + 0x9e3779b9) >>> 0;
    let word = Math.imul(hash ^ (hash >>> 16), 0x21f0aaad);
    word = Math.imul(word ^ (word >>> 15), 0x735a2d97);
    state[i] = (word ^ (word >>> 15)) >>> 0;
  }
  if (state.every((word) => word === 0)) state[0] = 1;
  return state;
}
