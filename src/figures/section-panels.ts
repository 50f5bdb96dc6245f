import { type AxisRow, degreesFromRadians, wrapToTurn } from "#core";
import { figureWord, formatBearing } from "#text";
import type { ElementView } from "./view.ts";

/** One of the two directions in which a section shows offsets. */
export interface SectionPanel {
  readonly title: string;
  /** what lies to the left and to the right of the design axis */
  readonly left: string;
  readonly right: string;
  /** positive to the right */
  offsetM(row: AxisRow): number;
}

/** East and north for a plumb element whose "along" is grid north; along and across for all others. */
export function sectionPanels(view: ElementView): readonly [SectionPanel, SectionPanel] {
  const word = (name: Parameters<typeof figureWord>[0]) => figureWord(name, view.language);
  if (view.element.rakeRad === 0 && view.alongBearingRad === 0)
    return [
      { title: word("east"), left: word("west"), right: word("east"), offsetM: (row) => row.offsetEastM },
      { title: word("north"), left: word("south"), right: word("north"), offsetM: (row) => row.offsetNorthM },
    ];
  const bearing = (turnRad: number) =>
    formatBearing(degreesFromRadians(wrapToTurn(view.alongBearingRad + turnRad)), view.language);
  return [
    { title: word("along"), left: bearing(Math.PI), right: bearing(0), offsetM: (row) => row.alongM },
    {
      title: word("across"),
      left: bearing(-Math.PI / 2),
      right: bearing(Math.PI / 2),
      offsetM: (row) => row.acrossM,
    },
  ];
}
