import type { AppInstance } from "../app-instance.ts";
import { asideRoutes } from "./aside-routes.ts";
import { fileRoutes } from "./file-routes.ts";
import { liveRoutes } from "./live-routes.ts";
import { messageRoutes } from "./message-routes.ts";
import { type SyncOffice, syncParts } from "./sync-parts.ts";

/** Everything with which devices and the office come to hold the same entries and files: docs/formats/sync.md. */
export async function syncRoutes(app: AppInstance, office: SyncOffice): Promise<void> {
  const parts = syncParts(office);
  // in a scope of their own, because they read bodies in their own way
  await app.register(async (scope: AppInstance) => messageRoutes(scope, parts));
  fileRoutes(app, office);
  asideRoutes(app, parts);
  liveRoutes(app, office);
}
