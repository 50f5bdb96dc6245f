/** Colours and type of the theme, read from the page: a canvas knows no style sheet. */
export interface PlanInk {
  readonly sheet: string;
  readonly ink: string;
  readonly soft: string;
  readonly line: string;
  readonly ring: string;
  readonly outline: string;
  readonly font: string;
}

export function planInk(element: Element): PlanInk {
  const style = getComputedStyle(element);
  const token = (name: string) => style.getPropertyValue(name).trim();
  return {
    sheet: token("--sheet"),
    ink: token("--ink"),
    soft: token("--ink-soft"),
    line: token("--line"),
    ring: token("--ring"),
    outline: token("--verdict-outline"),
    font: token("--font"),
  };
}
