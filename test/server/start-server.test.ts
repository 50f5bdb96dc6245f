import { mkdtempSync, rmSync, statSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { type RunningServer, startServer } from "#server";
import { settingsFor } from "../support/served.ts";

const folder = mkdtempSync(join(tmpdir(), "toeline-start-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const quiet = { write: () => {} };

async function started(name: string, change = {}): Promise<RunningServer> {
  const server = await startServer(settingsFor(join(folder, name), change), () => new Date(), quiet);
  if (!server.ok) throw new Error(JSON.stringify(server.error));
  return server.value;
}

describe("a server that is started", () => {
  test("answers on real sockets, and not any more after it was stopped", async () => {
    const server = await started("plain");
    expect((await fetch(`${server.address}/api/1/health/ready`)).status).toBe(200);
    await Promise.all([server.stop(), server.stop()]);
    await expect(fetch(`${server.address}/api/1/health/live`)).rejects.toThrow();
  });

  test("is the same office after every start, with a key that only its user may read", async () => {
    const first = await started("again");
    const { id, era, signer } = first.office;
    await first.stop();
    const second = await started("again");
    expect([second.office.id, second.office.era, second.office.signer.publicKey]).toEqual([
      id,
      era,
      signer.publicKey,
    ]);
    await second.stop();
    if (process.platform !== "win32")
      for (const file of ["office.key", "era"])
        expect(statSync(join(folder, "again", file)).mode & 0o077, file).toBe(0);
  });

  test("says so if its port is taken, and has let everything go", async () => {
    const server = await started("first");
    const port = Number(new URL(server.address).port);
    const settings = settingsFor(join(folder, "second"), { port });
    const refused = await startServer(settings, () => new Date(), quiet);
    expect(refused).toMatchObject({ ok: false, error: { code: "server.port-taken" } });
    await server.stop();
    await (await started("second", { port })).stop();
  });

  test("finishes a request that runs when it is stopped", async () => {
    const server = await started("slow");
    const { status, end } = begun(`${server.address}/api/1/jobs/j/push`);
    await untilRunning(server.address, 2);
    const stopped = server.stop();
    end();
    expect(await status).toBeGreaterThanOrEqual(400);
    expect(await status).toBeLessThan(500);
    await stopped;
  });

  test("tells every open WebSocket that it goes away", async () => {
    const server = await started("socket");
    const { received } = await openSocket(`${server.address}/api/1/jobs/j/live`);
    await server.stop();
    expect((await received).includes(CLOSE_1001)).toBe(true);
  });

  test("serves nothing from outside of its folder to a client that sends what it likes", async () => {
    const server = await started("raw");
    for (const path of [
      "/../../etc/passwd",
      "//etc/passwd",
      "/..\\..\\etc\\passwd",
      "/%2e%2e/%2e%2e/etc/passwd",
    ])
      expect(await raw(server.address, path), path).not.toContain("root:");
    await server.stop();
  });
});

/** Begin of a close frame from a server with the status 1001 (RFC 6455, sections 5.2 and 7.4.1): the length is not told here. */
const CLOSE_1001 = Buffer.from([0x03, 0xe9]);

/** Opens a WebSocket by hand and gathers what comes until it is closed. */
function openSocket(url: string): Promise<{ readonly received: Promise<Buffer> }> {
  const headers = {
    connection: "Upgrade",
    upgrade: "websocket",
    "sec-websocket-version": "13",
    "sec-websocket-key": "dGhlIHNhbXBsZSBub25jZQ==",
  };
  return new Promise((resolve, reject) => {
    const asked = request(url, { headers });
    asked.on("error", reject);
    asked.on("upgrade", (_answer, socket, head) => {
      const parts: Buffer[] = [head];
      socket.on("data", (part: Buffer) => parts.push(part));
      const received = new Promise<Buffer>((closed) =>
        socket.on("close", () => closed(Buffer.concat(parts))),
      );
      resolve({ received });
    });
    asked.end();
  });
}

/** Waits until the server works on so many requests, the asking one too. */
async function untilRunning(address: string, count: number): Promise<void> {
  for (;;) {
    const text = await (await fetch(`${address}/api/1/metrics`)).text();
    if (text.includes(`toeline_http_requests_running ${count}\n`)) return;
  }
}

/** A request whose body comes only when it is told to. */
function begun(url: string): { readonly status: Promise<number>; readonly end: () => void } {
  const asked = request(url, { method: "POST", headers: { "content-type": "application/json" } });
  const status = new Promise<number>((resolve, reject) => {
    asked.on("response", (answer) => resolve(answer.statusCode ?? 0));
    asked.on("error", reject);
  });
  asked.write("{");
  return { status, end: () => void asked.end("}") };
}

/** Sends a path as it is. */
function raw(address: string, path: string): Promise<string> {
  const { hostname, port } = new URL(address);
  return new Promise((resolve, reject) => {
    const asked = request({ hostname, port, path }, (answer) => {
      let body = "";
      answer.on("data", (part) => {
        body += String(part);
      });
      answer.on("end", () => resolve(body));
    });
    asked.on("error", reject);
    asked.end();
  });
}
