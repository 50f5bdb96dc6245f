import type { JobDevice } from "../desk-record.ts";
import { groupBy } from "../group-by.ts";
import type { JobLog } from "../jobs/job-log.ts";
import { deviceName, personName } from "./names.ts";

/** The devices that have written into a job, this one first, then the one that wrote last. */
export function jobDevices({ entries, state }: JobLog, own: string | undefined): readonly JobDevice[] {
  const ofDevice = groupBy(entries, ({ device }) => device);
  const latest = new Map(entries.map(({ device }, i) => [device, i]));
  const known = new Set([...Object.keys(state.devices), ...ofDevice.keys()]);
  return [...known]
    .sort((a, b) => Number(b === own) - Number(a === own) || (latest.get(b) ?? -1) - (latest.get(a) ?? -1))
    .map((device) => {
      const written = ofDevice.get(device) ?? [];
      const missing = state.devices[device]?.missing ?? [];
      return {
        device,
        name: deviceName(state, device),
        isThisOne: device === own,
        people: [...new Set(written.map(({ author }) => personName(state, author)))],
        entries: written.length,
        lastWall: written.at(-1)?.clock.wall,
        missing: missing.reduce((sum, { from, to }) => sum + to - from + 1, 0),
      };
    });
}
