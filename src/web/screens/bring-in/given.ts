import type { GivenSettings } from "#formats";

/** Settings by hand, the later over the earlier. Columns keep what was said of each. */
export const merged = (earlier: GivenSettings, later: GivenSettings): GivenSettings => ({
  layout: { ...earlier.layout, ...later.layout },
  columns: Object.fromEntries(
    Object.keys({ ...earlier.columns, ...later.columns })
      .map(Number)
      .map((index) => [index, { ...earlier.columns?.[index], ...later.columns?.[index] }]),
  ),
  conventions: { ...earlier.conventions, ...later.conventions },
});
