import { ok } from "#core";
import { type LiveMessage, liveSchema, readShaped } from "../messages.ts";
import type { LiveSocket } from "../platform.ts";

/** Something the office says of itself over a live connection. */
export interface LiveLine {
  isOpen(): boolean;
  /** makes the connection if there is none */
  open(): void;
  close(): void;
}

/**
 * The live connection of a job. It only tells that there is something to fetch; nothing depends on it, so whatever goes wrong
 * with it just ends it, and it is made again after the next run that went well.
 *
 * @param connect undefined where a platform has none.
 */
export function liveLine(
  address: string,
  connect: ((address: string) => LiveSocket) | undefined,
  listener: { onMessage(message: LiveMessage): void; onEnd(): void },
): LiveLine {
  let socket: LiveSocket | undefined;
  const open = () => {
    if (connect === undefined || socket !== undefined) return;
    const opened = connect(address);
    socket = opened;
    const over = () => {
      if (socket !== opened) return;
      socket = undefined;
      listener.onEnd();
    };
    opened.addEventListener("close", over);
    opened.addEventListener("error", over);
    opened.addEventListener("message", ({ data }) => {
      const read = typeof data === "string" ? readShaped(data, liveSchema) : ok(undefined);
      if (read.ok && read.value !== undefined && socket === opened) listener.onMessage(read.value);
    });
  };
  return {
    isOpen: () => socket !== undefined,
    open,
    close: () => {
      const open = socket;
      socket = undefined;
      open?.close();
    },
  };
}
