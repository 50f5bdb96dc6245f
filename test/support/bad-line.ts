import { type AddressInfo, createServer, connect as dial, type Socket } from "node:net";
import { setTimeout as wait } from "node:timers/promises";

/** What a line does from now on; bytes are counted over all its connections. */
export type LineFault =
  | { readonly does: "pass" }
  /** the request arrives whole, the answer never does */
  | { readonly does: "lose-answer" }
  /** cut after so many bytes of what a device sends */
  | { readonly does: "cut-after"; readonly bytes: number }
  /** cut after so many bytes of what the office answers */
  | { readonly does: "cut-answer-after"; readonly bytes: number }
  /** taken up, and then nothing */
  | { readonly does: "silent" };

/** A real line between a device and an office, on a port of its own, that can be bad. */
export interface BadLine {
  readonly address: string;
  /** how the connections from now on fare */
  set(fault: LineFault): Promise<void>;
  /** connections that were made so far */
  readonly connections: () => number;
  stop(): Promise<void>;
}

export async function startBadLine(target: string): Promise<BadLine> {
  const { hostname, port } = new URL(target);
  let fault: LineFault = { does: "pass" };
  let passed = { there: 0, back: 0 };
  let connections = 0;
  const open = new Set<Socket>();
  const server = createServer((device) => {
    connections++;
    open.add(device);
    device.on("error", () => {}).on("close", () => open.delete(device));
    if (fault.does === "silent") return;
    lay(device, dial(Number(port), hostname), fault, passed);
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    set: async (next) => {
      fault = next;
      passed = { there: 0, back: 0 };
      // connections are kept for the next request: those would not notice
      for (const socket of open) socket.destroy();
      // until the other side has noticed
      await wait(20);
    },
    connections: () => connections,
    stop: async () => {
      for (const socket of open) socket.destroy();
      await new Promise((closed) => server.close(closed));
    },
  };
}

function lay(
  device: Socket,
  office: Socket,
  fault: LineFault,
  passed: { there: number; back: number },
): void {
  const cut = () => {
    device.destroy();
    office.destroy();
  };
  office.on("error", cut).on("close", () => device.end());
  device.on("close", () => office.end());
  const pass = (bytes: Buffer, to: Socket, way: keyof typeof passed, limit: number) => {
    const room = Math.max(0, limit - passed[way]);
    passed[way] += bytes.length;
    if (to.writableEnded || to.destroyed) return;
    if (room >= bytes.length) to.write(bytes);
    else {
      // what was on the way arrives, then nothing more
      to.end(bytes.subarray(0, room));
      (to === office ? device : office).destroy();
    }
  };
  const endless = Number.POSITIVE_INFINITY;
  const limitThere = fault.does === "cut-after" ? fault.bytes : endless;
  const limitBack = fault.does === "cut-answer-after" ? fault.bytes : endless;
  device.on("data", (bytes) => pass(bytes, office, "there", limitThere));
  office.on("data", (bytes) =>
    fault.does === "lose-answer" ? cut() : pass(bytes, device, "back", limitBack),
  );
}
