import type { Screen } from "./screen.ts";

/** Every screen there is. A new one is a folder beside this file and an entry here; its texts are an area in words/. */
export const screens: readonly Screen[] = [
  {
    id: "jobs",
    place: "app",
    path: "jobs",
    group: undefined,
    title: { en: "Jobs", de: "Aufträge" },
    load: () => import("./jobs/jobs-screen.tsx"),
  },
  {
    id: "settings",
    place: "app",
    path: "settings",
    group: undefined,
    title: { en: "Settings", de: "Einstellungen" },
    load: () => import("./settings/settings-screen.tsx"),
  },
  {
    id: "job",
    place: "job",
    path: "",
    group: "job",
    title: { en: "Site plan", de: "Lageplan" },
    load: () => import("./job/job-screen.tsx"),
  },
  {
    id: "elements",
    place: "job",
    path: "schedule",
    group: "set-up",
    title: { en: "Elements", de: "Elemente" },
    load: () => import("./elements/elements-screen.tsx"),
  },
  {
    id: "allowances",
    place: "job",
    path: "allowances",
    group: "set-up",
    title: { en: "Allowances", de: "Toleranzen" },
    load: () => import("./allowances/allowances-screen.tsx"),
  },
  {
    id: "element",
    place: "job",
    path: "elements/:element",
    group: undefined,
    title: { en: "Element", de: "Element" },
    load: () => import("./element/element-screen.tsx"),
  },
];
