import { useEffect, useState } from "react";
import type { DeviceStatus } from "./desk.ts";
import { desk, told } from "./desk-client.ts";

/** Whether this window writes and what the browser keeps; undefined until it is known. */
export function useDeviceStatus(): DeviceStatus | undefined {
  const [status, setStatus] = useState<DeviceStatus>();
  useEffect(() => {
    let isShown = true;
    void desk().watchDevice(
      told((now: DeviceStatus) => {
        if (isShown) setStatus(now);
      }),
    );
    return () => {
      isShown = false;
    };
  }, []);
  return status;
}
