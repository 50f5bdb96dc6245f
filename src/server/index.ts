// The door of the layer: what other layers may use, listed one by one.

export { backUp, move as moveOffice, type Restored, restore as restoreOffice } from "./backup/back-up.ts";
export type { Tally as OfficeTally } from "./backup/part.ts";
export type { OfficePlace } from "./backup/place.ts";
export type { CopyProgress } from "./backup/target.ts";
export { createApp } from "./create-app.ts";
export { openOffice } from "./office/open-office.ts";
export type { Office } from "./office.ts";
export {
  type Environment,
  readSettings,
  type ServerFlags,
  USUAL_DATA,
  USUAL_PORT,
} from "./read-settings.ts";
export type { ServerSettings } from "./settings.ts";
export { type RunningServer, startServer } from "./start-server.ts";
