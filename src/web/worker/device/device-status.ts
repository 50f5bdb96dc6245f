import type { Issue } from "#core";
import { attemptLater } from "../../attempt.ts";
import type { DeviceStatus } from "../desk.ts";
import type { Device } from "./device.ts";

/** What the browser says of its store and of this device in it. */
export async function deviceStatus(
  writer: DeviceStatus["writer"],
  device: Device | undefined,
  trouble: Issue | undefined,
): Promise<DeviceStatus> {
  const persisted = await attemptLater(() => navigator.storage.persisted());
  const estimate = await attemptLater(() => navigator.storage.estimate());
  const { quota, usage } = estimate.ok ? estimate.value : {};
  return {
    writer,
    device: await device?.publicKey(),
    isPersisted: persisted.ok && persisted.value,
    freeBytes: quota === undefined || usage === undefined ? undefined : quota - usage,
    trouble,
  };
}
