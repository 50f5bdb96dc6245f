/**
 * The word of the list that a mistyped word most likely stands for, or undefined.
 *
 * At most a third of its letters, and never more than three, may have to change (edit distance).
 */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  const wanted = word.toLowerCase();
  const limit = Math.min(3, Math.floor(wanted.length / 3));
  let best: string | undefined;
  let bestDistance = limit + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - wanted.length) >= bestDistance) continue;
    const distance = editDistance(wanted, candidate.toLowerCase());
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min(change, previous[j]! + 1, current[j - 1]! + 1));
    }
    previous = current;
  }
  return previous[b.length]!;
}
