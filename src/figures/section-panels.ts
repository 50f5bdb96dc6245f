import { type AxisRow, degreesFromRadians, wrapToTurn } from "#core";
import { figureWord, formatBearing } from "#text";
import type { ElementView } from "./view.ts";

/** One of the two directions in which a section shows offsets. */
export interface SectionPanel {
  readonly title: string;
  /** what lies to the left and to the right of the design axis */
  readonly left: string;
  readonly right: string;
  /** the part of the offset that it shows */
  readonly component: "along" | "across";
  /** the direction in which offsets are positive, radians from "along" towards "across" */
  readonly fromAlongRad: number;
  /** positive to the right */
  offsetM(row: AxisRow): number;
}

const ALONG = { component: "along", fromAlongRad: 0 } as const;
const ACROSS = { component: "across", fromAlongRad: Math.PI / 2 } as const;

/** East and north for a plumb element whose "along" is grid north; along and across for all others. */
export function sectionPanels(view: ElementView): readonly [SectionPanel, SectionPanel] {
  const word = (name: Parameters<typeof figureWord>[0]) => figureWord(name, view.language);
  if (view.element.rakeRad === 0 && view.alongBearingRad === 0)
    return [
      {
        title: word("east"),
        left: word("west"),
        right: word("east"),
        ...ACROSS,
        offsetM: (row) => row.offsetEastM,
      },
      {
        title: word("north"),
        left: word("south"),
        right: word("north"),
        ...ALONG,
        offsetM: (row) => row.offsetNorthM,
      },
    ];
  const bearing = (turnRad: number) =>
    formatBearing(degreesFromRadians(wrapToTurn(view.alongBearingRad + turnRad)), view.language);
  return [
    {
      title: word("along"),
      left: bearing(Math.PI),
      right: bearing(0),
      ...ALONG,
      offsetM: (row) => row.alongM,
    },
    {
      title: word("across"),
      left: bearing(-Math.PI / 2),
      right: bearing(Math.PI / 2),
      ...ACROSS,
      offsetM: (row) => row.acrossM,
    },
  ];
}
