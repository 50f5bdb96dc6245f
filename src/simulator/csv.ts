/** Text of a table with headings, comma and point; undefined cells are left blank. */
export function csvText(
  headings: readonly string[],
  rows: readonly (readonly (string | number | undefined)[])[],
): string {
  const lines = rows.map((row) => row.map((cell) => cellText(cell)).join(","));
  return `${[headings.join(","), ...lines].join("\n")}\n`;
}

function cellText(cell: string | number | undefined): string {
  if (cell === undefined) return "";
  const text = String(cell);
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A number with the digits of the step it was rounded to; all digits where there is no step. */
export function atStep(value: number, step: number | undefined): string {
  if (Number.isNaN(value)) return "";
  if (step === undefined || step <= 0) return String(value);
  const text = value.toFixed(Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
}
