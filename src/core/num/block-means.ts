import { contract } from "../result.ts";

/**
 * Means of neighbouring values, so many at a time; a rest at the end is left out.
 *
 * @param values any unit. Shape: n. A NaN makes the mean of its block NaN.
 * @param size values in a block, whole, >= 1.
 * @returns unit of the values. Shape: floor(n / size).
 * @throws ContractError if the size is not a whole number >= 1.
 *
 * Frame: none. Source: arithmetic mean.
 */
export function blockMeans(values: Float64Array, size: number): Float64Array {
  contract(Number.isInteger(size) && size >= 1, `blockMeans: blocks of ${size}`);
  const means = new Float64Array(Math.floor(values.length / size));
  for (let block = 0; block < means.length; block++) {
    const start = block * size;
    // The first value is taken off before adding, so that little is lost by rounding.
    const first = values[start]!;
    let sum = 0;
    for (let i = start; i < start + size; i++) sum += values[i]! - first;
    means[block] = first + sum / size;
  }
  return means;
}
