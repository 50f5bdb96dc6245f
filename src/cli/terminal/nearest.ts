/** The known word that differs least from the one typed; undefined where none is near. Capitals do not count. */
export function nearest(typed: string, known: readonly string[]): string | undefined {
  const ranked = known
    .map((word) => ({ word, distance: editDistance(typed.toLowerCase(), word.toLowerCase()) }))
    .sort((a, b) => a.distance - b.distance);
  const best = ranked[0];
  return best !== undefined && best.distance <= Math.ceil(typed.length / 3) ? best.word : undefined;
}

/** How many letters must be put in, taken out or changed (Levenshtein). */
function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = (previous[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min(changed, (previous[j] ?? 0) + 1, (current[j - 1] ?? 0) + 1));
    }
    previous = current;
  }
  return previous[b.length] ?? 0;
}
