import type { MappingView } from "../../worker/desk-logger.ts";

/** Settings that nothing in the file decides and nobody has set, of those that matter for its columns. */
export function openSettings({ reasons, conventions, settings }: MappingView): readonly string[] {
  const matters = (key: string): boolean => {
    const [area, name = ""] = key.split(".");
    if (area === "conventions")
      return (conventions as readonly string[]).includes(name) || name === "missing";
    if (area === "column") return !key.endsWith(".unit") || settings.columns[Number(name)]?.role !== "none";
    return true;
  };
  return Object.entries(reasons)
    .filter(([key, { sure }]) => sure === "open" && matters(key))
    .map(([key]) => key);
}
