import { spawn } from "node:child_process";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { buildToeline, repository, temporaryFolder, toeline } from "./run-toeline.ts";

const folder = temporaryFolder();
afterAll(folder.remove);
beforeAll(buildToeline, 300_000);

interface Served {
  readonly lines: string[];
  readonly address: string;
  readonly stop: (signal: NodeJS.Signals) => Promise<number | null>;
}

/** Starts the bundled program and waits until it says where it is. */
async function serve(args: readonly string[]): Promise<Served> {
  const child = spawn(process.execPath, [join(repository, "dist/toeline.mjs"), "serve", ...args], {
    stdio: ["ignore", "pipe", "inherit"],
    env: { PATH: process.env["PATH"], HOME: folder.path },
  });
  const ended = new Promise<number | null>((resolve) => child.on("exit", resolve));
  const lines: string[] = [];
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.on("data", (data: Buffer) => {
      lines.push(...String(data).trimEnd().split("\n"));
      const found = /^Toeline is at (\S+)$/m.exec(lines.join("\n"))?.[1];
      if (found !== undefined) resolve(found);
    });
    void ended.then((code) => reject(new Error(`ended with ${code}`)));
  });
  const stop = (signal: NodeJS.Signals) => {
    child.kill(signal);
    return ended;
  };
  return { lines, address, stop };
}

describe("toeline serve", () => {
  test("serves until it is told to stop, and has then done what was asked", async () => {
    const { address, stop } = await serve(["--data", join(folder.path, "local"), "--port", "0"]);
    expect(new URL(address).hostname).toBe("127.0.0.1");
    expect(await (await fetch(`${address}/api/1/health/ready`)).json()).toEqual({ status: "ok" });
    expect(await stop("SIGTERM")).toBe(0);
  });

  test("prints the link for the first administrator of a team", async () => {
    const args = ["--data", join(folder.path, "team"), "--listen", "127.0.0.1:0", "--log-level", "silent"];
    const { address, lines, stop } = await serve(args);
    expect((await fetch(`${address}/api/1/jobs`)).status).toBe(401);
    expect(await stop("SIGINT")).toBe(0);
    expect(lines.join("\n")).toMatch(/first administrator .* once: http:\/\/127\.0\.0\.1:\d+\/\S+#\S{20,}/);
  });

  test("says what is wrong with a setting, and starts nothing", () => {
    const { code, stdout, stderr } = toeline(["serve", "--listen", "everywhere", "--workers", "many"]);
    expect([code, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/setting listen is everywhere/);
    expect(stderr).toMatch(/setting workers is many/);
  });
});
