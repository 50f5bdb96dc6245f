import { describe, expect, test } from "vitest";
import { accessSuite } from "../../../test/acceptance/access-suite.ts";
import { serve } from "../../../test/support/served.ts";

accessSuite("accounts in a SQLite file", async () => ({}), 100);

describe("a server on one's own machine", () => {
  test("has one user, who may do everything, and no accounts", async () => {
    const { app, office, close } = await serve();
    const host = "127.0.0.1";
    const who = await app.inject({ url: "/api/1/session", headers: { host } });
    expect(who.json()).toMatchObject({ mode: "local", person: { by: "local", isAdmin: true } });
    const refused = await app.inject({ url: "/api/1/accounts", headers: { host } });
    expect([refused.statusCode, refused.json().code]).toEqual([409, "access.no-accounts"]);
    expect(await office.access.setUpLink()).toBeUndefined();
    // a page that pointed its own name at this machine gets nothing
    const foreign = await app.inject({ url: "/api/1/session", headers: { host: "evil.example" } });
    expect(foreign.statusCode).toBe(421);
    await close();
  });
});
