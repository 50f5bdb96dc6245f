import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Served, serve } from "../support/served.ts";

const TOKEN = "a-token-that-is-long-enough";
const app = mkdtempSync(join(tmpdir(), "toeline-app-"));
mkdirSync(join(app, "assets"));
writeFileSync(join(app, "index.html"), "<!doctype html><title>start page</title>");
writeFileSync(join(app, "sw.js"), "// worker");
writeFileSync(join(app, "assets/main-1a2b3c.js"), "// script");
writeFileSync(join(app, ".secret"), "hidden");
const secret = mkdtempSync(join(tmpdir(), "toeline-outside-"));
writeFileSync(join(secret, "secret.txt"), "outside of the app");

let local: Served;
let shared: Served;
beforeAll(async () => {
  local = await serve({ appFolder: app });
  shared = await serve({ mode: "shared", publicAddress: "https://office.example", metricsToken: TOKEN });
});
afterAll(async () => {
  await local.close();
  await shared.close();
  for (const folder of [app, secret]) rmSync(folder, { recursive: true, force: true });
});

const host = "127.0.0.1:7410";
type Headers = Readonly<Record<string, string>>;
const get = (url: string, headers: Headers = {}) => local.app.inject({ url, headers: { host, ...headers } });
const JSON_TYPE = { "content-type": "application/json" };
const post = (headers: Headers, payload = "{}", url = "/api/1/jobs/j/heavy-work") =>
  local.app.inject({ method: "POST", url, headers: { host, ...JSON_TYPE, ...headers }, payload });

describe("health and metrics", () => {
  test("a running server says that it lives and that its database answers", async () => {
    for (const url of ["/api/1/health/live", "/api/1/health/ready"])
      expect((await get(url)).json(), url).toEqual({ status: "ok" });
  });

  test("one whose database is gone lives and is not ready", async () => {
    const broken = await serve();
    await broken.office.store.close();
    expect((await broken.app.inject({ url: "/api/1/health/live", headers: { host } })).statusCode).toBe(200);
    const ready = await broken.app.inject({ url: "/api/1/health/ready", headers: { host } });
    expect([ready.statusCode, ready.json().code]).toEqual([503, "server.not-ready"]);
    await broken.close();
  });

  test("metrics count every request by its route, never by what stood in its address", async () => {
    for (const job of ["first-made-up", "second-made-up"]) await get(`/api/1/jobs/${job}`);
    const { headers, body } = await get("/api/1/metrics");
    expect(headers["content-type"]).toContain("text/plain; version=0.0.4");
    expect(body).toMatch(
      /^toeline_http_requests_total\{method="GET",route="\/api\/1\/jobs\/:job",status="404"\} 2$/m,
    );
    expect(body).not.toContain("made-up");
    expect(body).toMatch(/^toeline_http_request_duration_seconds_bucket\{.*le="\+Inf"\} \d+$/m);
    expect(body).toMatch(/^toeline_entries_appended_total 0$/m);
    expect(body).toMatch(/^process_resident_memory_bytes \d+$/m);
    for (const line of body.trimEnd().split("\n"))
      expect(line).toMatch(/^(?:# (?:HELP|TYPE) \w+ .+|\w+(?:\{.+\})? \S+)$/);
  });

  test("metrics of a shared server are as if not there without the token, wherever one comes from", async () => {
    const ask = (authorization?: string) =>
      shared.app.inject({ url: "/api/1/metrics", headers: authorization ? { authorization } : {} });
    for (const wrong of [undefined, "Bearer ", "Bearer x", TOKEN, `Bearer ${TOKEN}x`])
      expect((await ask(wrong)).statusCode, wrong).toBe(404);
    expect((await ask(`Bearer ${TOKEN}`)).statusCode).toBe(200);
  });
});

describe("every error is a problem", () => {
  test.each([
    ["nothing there", () => get("/api/1/nothing"), 404, "server.not-found"],
    ["an address that cannot be decoded", () => get("/api/1/jobs/%zz"), 400, "server.bad-address"],
    ["an address that is too long", () => get(`/api/1/jobs/${"a".repeat(400)}`), 404, "server.not-found"],
    ["no JSON", () => post({}, "{"), 400, "server.body-not-json"],
    ["an empty body", () => post({}, ""), 400, "server.body-not-json"],
    ["__proto__ in a body", () => post({}, '{"__proto__":{"a":1}}'), 400, "server.body-not-json"],
    ["another kind of body", () => post({ "content-type": "image/png" }), 415, "server.media-type"],
    ["a body that is too large", () => post({}, `"${"a".repeat(1_100_000)}"`), 413, "server.body-too-large"],
    ["a wrong method", () => post({}, "{}", "/api/1/health/live"), 404, "server.not-found"],
  ])("%s", async (_what, ask, status, code) => {
    const answer = await ask();
    expect(answer.statusCode).toBe(status);
    expect(answer.headers["content-type"]).toBe("application/problem+json; charset=utf-8");
    expect(answer.headers["cache-control"]).toBe("no-store");
    const problem = answer.json();
    expect(problem).toMatchObject({ type: "about:blank", status, code });
    expect(problem.detail).toMatch(/^[A-Z].*\.$/);
    expect(answer.body).not.toMatch(/node_modules|at \w+ \(/);
  });

  test("the wrong field is named", async () => {
    const answer = await get("/api/1/jobs/j/proof/consistency?from=x");
    expect(answer.json()).toMatchObject({ code: "server.request-field", field: "querystring.from" });
  });

  test("a mistake of the program tells nothing of its inside, and stands in the log", async () => {
    const broken = await serve();
    broken.app.get("/api/1/broken", async () => {
      throw new Error("inside /srv/secret-path");
    });
    const answer = await broken.app.inject({ url: "/api/1/broken", headers: { host } });
    expect([answer.statusCode, answer.json().code]).toEqual([500, "server.mistake"]);
    expect(answer.body).not.toContain("secret-path");
    expect(broken.log.join("")).toContain("secret-path");
    await broken.close();
  });
});

describe("what another site makes a browser ask", () => {
  test.each([
    ["a foreign site by fetch metadata", { "sec-fetch-site": "cross-site" }, "server.foreign-origin"],
    ["a neighbour under the same name", { "sec-fetch-site": "same-site" }, "server.foreign-origin"],
    ["a foreign origin from an old browser", { origin: "https://evil.example" }, "server.foreign-origin"],
    ["no origin to speak of", { origin: "null" }, "server.foreign-origin"],
    ["another port of this machine", { origin: "http://127.0.0.1:9999" }, "server.foreign-origin"],
    ["a plain text", { "content-type": "text/plain" }, "server.form-body"],
    ["a form", { "content-type": "application/x-www-form-urlencoded" }, "server.form-body"],
    ["a form with files", { "content-type": "multipart/form-data; boundary=x" }, "server.form-body"],
  ])("%s is refused", async (_what, headers, code) => {
    const answer = await post(headers as Headers);
    expect([answer.statusCode, answer.json().code]).toEqual([403, code]);
  });

  test.each([
    ["the app itself", { origin: `http://${host}` }],
    ["the app itself, by fetch metadata", { "sec-fetch-site": "same-origin" }],
    ["a program", {}],
  ])("%s is let through", async (_what, headers) => {
    expect((await post(headers as Headers)).json().code).not.toMatch(/^server\.(?:foreign|form)/);
  });

  test("a shared server knows its own origin from its public address, not from the host of the request", async () => {
    const ask = (origin: string) =>
      shared.app.inject({
        method: "POST",
        url: "/api/1/jobs/j/heavy-work",
        headers: { ...JSON_TYPE, host: "evil.example", origin },
        payload: "{}",
      });
    expect((await ask("https://evil.example")).statusCode).toBe(403);
    expect((await ask("https://office.example")).statusCode).not.toBe(403);
  });

  test("a WebSocket from a foreign page is refused", async () => {
    const headers = { host, upgrade: "websocket", connection: "upgrade", origin: "https://evil.example" };
    const answer = await get("/api/1/jobs/j/live", headers);
    expect([answer.statusCode, answer.json().code]).toEqual([403, "server.foreign-origin"]);
  });

  test.each(["evil.example", "evil.example:7410", "127.0.0.1.evil.example", "localhost@evil.example"])(
    "a name that was pointed to this machine is no name of a local server: %s",
    async (name) => {
      expect((await get("/api/1/jobs", { host: name })).statusCode).toBe(421);
    },
  );

  test.each(["127.0.0.1", "localhost:7410", "[::1]:7410", "LOCALHOST"])("%s is", async (name) => {
    expect((await get("/api/1/jobs", { host: name })).statusCode).toBe(200);
  });
});

describe("headers", () => {
  const routes = ["/", "/api/1/docs", "/api/1/nothing", "/api/1/health/live"];

  test.each(routes)("a browser is kept from running, framing or leaking: %s", async (url) => {
    const { headers } = await get(url);
    const policy = String(headers["content-security-policy"]);
    for (const part of [
      "default-src 'self'",
      "object-src 'none'",
      "base-uri 'none'",
      "frame-ancestors 'none'",
      "worker-src 'self'",
      "img-src 'self' data: blob:",
    ])
      expect(policy).toContain(part);
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
    expect(headers).toMatchObject({
      "x-content-type-options": "nosniff",
      "cross-origin-opener-policy": "same-origin",
      "referrer-policy": "no-referrer",
    });
  });

  test("an address that cannot be read is answered with nothing that could run", async () => {
    const { headers } = await get("/api/1/jobs/%zz");
    expect(headers["content-security-policy"]).toContain("default-src 'none'");
    expect(headers["x-content-type-options"]).toBe("nosniff");
  });

  test("https is asked for only where there is https", async () => {
    const plain = (await get("/api/1/health/live")).headers;
    expect(plain["strict-transport-security"]).toBeUndefined();
    expect(plain["content-security-policy"]).not.toContain("upgrade-insecure-requests");
    const secure = (await shared.app.inject({ url: "/api/1/health/live" })).headers;
    expect(secure["strict-transport-security"]).toBe("max-age=63072000");
  });
});

describe("the app", () => {
  const html = { accept: "text/html,*/*" };

  test("the start page comes for every address of the app, and is asked for anew", async () => {
    for (const url of ["/", "/jobs/wall-4/elements/P12", "/index.html"]) {
      const answer = await get(url, html);
      expect(answer.body, url).toContain("start page");
      expect(answer.headers["cache-control"], url).toBe("no-cache");
    }
  });

  test("files named by their content are kept, the service worker is not", async () => {
    expect((await get("/assets/main-1a2b3c.js")).headers["cache-control"]).toContain("immutable");
    expect((await get("/sw.js")).headers["cache-control"]).toBe("no-cache");
  });

  test.each([
    "/assets/gone.js",
    "/.secret",
    "/.git/config",
    "/../secret.txt",
    "/..%2fsecret.txt",
    "/%2e%2e/%2e%2e/etc/passwd",
    "/..%5c..%5csecret.txt",
    "/assets/..%2f..%2f..%2fetc%2fpasswd",
    "/%00",
    "/api/1/../../.secret",
  ])("nothing outside, hidden or missing is served: %s", async (url) => {
    const answer = await get(url, html);
    if (answer.statusCode === 200) expect(answer.body).toContain("start page");
    else expect([400, 403, 404]).toContain(answer.statusCode);
    expect(answer.body).not.toMatch(/outside of the app|hidden|root:/);
  });

  test.skipIf(process.platform === "win32")(
    "a link out of the folder that somebody put there leads nowhere new",
    async () => {
      symlinkSync(secret, join(app, "linked"));
      const answer = await get("/linked/../../etc/passwd", html);
      expect(answer.body).not.toContain("root:");
    },
  );
});

describe("the log", () => {
  test("a request cannot begin a line, nor bring a secret into it", async () => {
    await get("/api/1/jobs/a%0a%7B%22level%22:%22error%22%7D?token=query-secret", {
      cookie: "session=cookie-secret",
      authorization: "Bearer token-secret",
      "user-agent": "a\tb",
    });
    const text = local.log.join("");
    for (const word of ["query-secret", "cookie-secret", "token-secret"]) expect(text).not.toContain(word);
    for (const line of text.trimEnd().split("\n")) expect(() => JSON.parse(line)).not.toThrow();
  });

  test("what was refused is marked, with who and when", async () => {
    await post({ origin: "https://evil.example" });
    const line = JSON.parse(local.log.at(-1)!);
    expect(line).toMatchObject({ level: "warn", msg: "refused", status: 403, method: "POST" });
    expect(line.time).toMatch(/^\d{4}-\d\d-\d\dT.*Z$/);
  });
});

describe("how often one may ask", () => {
  test("a stranger is slowed down, and told for how long; health is always told", async () => {
    const limited = await serve({ mode: "shared" });
    let last = 200;
    let asked = 0;
    for (; last !== 429 && asked < 1000; asked += 1)
      last = (await limited.app.inject({ url: "/api/1/docs.css" })).statusCode;
    expect(asked).toBe(601);
    const answer = await limited.app.inject({ url: "/api/1/docs.css" });
    expect(answer.json()).toMatchObject({ code: "server.too-many-requests", status: 429 });
    expect(Number(answer.headers["retry-after"])).toBeGreaterThan(0);
    expect((await limited.app.inject({ url: "/api/1/health/live" })).statusCode).toBe(200);
    const other = await limited.app.inject({ url: "/api/1/docs.css", remoteAddress: "192.0.2.7" });
    expect(other.statusCode).toBe(200);
    await limited.close();
  });

  test("a made-up forwarded address is not believed", async () => {
    const limited = await serve({ mode: "shared" });
    await limited.app.inject({ url: "/api/1/docs.css", headers: { "x-forwarded-for": "192.0.2.9" } });
    expect(limited.log.join("")).not.toContain("192.0.2.9");
    await limited.close();
    const proxied = await serve({ mode: "shared", trustedProxies: ["127.0.0.1"] });
    await proxied.app.inject({ url: "/api/1/docs.css", headers: { "x-forwarded-for": "192.0.2.9" } });
    expect(proxied.log.join("")).toContain("192.0.2.9");
    await proxied.close();
  });
});
