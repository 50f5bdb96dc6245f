import type { ComponentType } from "react";
import type { Language } from "#core";

/** Heads under which the screens of a job stand in the side navigation, in this order. */
export const GROUPS = ["job", "set-up", "measured", "judged", "record"] as const;
export type Group = (typeof GROUPS)[number];

/** One screen. It declares itself in the registry; the frame and the router ask only what stands here. */
export interface Screen {
  readonly id: string;
  /** app: path below "/". job: path below "/jobs/JOB/"; "" is the job itself */
  readonly place: "app" | "job";
  /** as the router reads it: "elements/:element" */
  readonly path: string;
  /** where it stands in the side navigation; undefined: it is reached from another screen */
  readonly group: Group | undefined;
  readonly title: Readonly<Record<Language, string>>;
  /** the screen's own chunk, fetched when it is first opened. Its file exports `Component`. */
  readonly load: () => Promise<{ readonly Component: ComponentType }>;
}
