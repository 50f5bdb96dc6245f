const collators = new Map<string, Intl.Collator>();

/** Compares names as people count: H2 before H10. */
export function naturalOrder(a: string, b: string, language: string): number {
  const known =
    collators.get(language) ?? new Intl.Collator(language, { numeric: true, sensitivity: "base" });
  collators.set(language, known);
  return known.compare(a, b);
}
