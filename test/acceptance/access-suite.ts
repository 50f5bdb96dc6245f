import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { beginJob, giveRole } from "../../src/server/access/members.ts";
import { bytesFromBase32 } from "../../src/server/access/secrets/base32.ts";
import { timeCode } from "../../src/server/access/secrets/time-code.ts";
import { firstBadEvent } from "../../src/server/access/security-events.ts";
import type { ServerSettings } from "../../src/server/settings.ts";
import {
  BROWSER_COOKIE,
  openPeopledOffice,
  PASSWORD,
  type PeopledOffice,
  PUBLIC_ADDRESS,
  SESSION_COOKIE,
} from "../support/office-with-people.ts";
import { SoftwareAuthenticator } from "../support/software-authenticator.ts";

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const OTHER_PASSWORD = "quite another sentence";

/**
 * What accounts, sessions and roles must do, on every SQL engine.
 *
 * @param guesses how often passwords are guessed.
 */
export function accessSuite(
  title: string,
  place: () => Promise<Partial<ServerSettings>>,
  guesses: number,
): void {
  describe(title, () => {
    let at: PeopledOffice;
    let count = 0;
    const someone = () => `person-${++count}`;
    const signIn = (id: string, more: Parameters<PeopledOffice["ask"]>[2] = {}) =>
      at.ask("POST", "/api/1/session", {
        ...more,
        body: { login: `${id}@office.example`, password: PASSWORD, ...(more.body as object) },
      });
    const isSignedIn = async (session: string | undefined) =>
      (await at.ask("GET", "/api/1/account", { session })).status === 200;
    const codeNow = (secret: string, steps = 0) =>
      timeCode(bytesFromBase32(secret), Math.floor(at.office.clock().getTime() / 30_000) + steps);

    beforeAll(async () => {
      at = await openPeopledOffice(await place());
    }, 120_000);
    afterAll(() => at.close());

    test("the first administrator makes an account with the link of the start, which works once", async () => {
      const link = await at.office.access.setUpLink();
      const [path, secret] = (link ?? "").split("#");
      expect(path).toBe("/join");
      // 256 bits, behind the #, where no log sees it
      expect(Buffer.from(secret ?? "", "base64url")).toHaveLength(32);
      expect((await at.ask("POST", "/api/1/invitations/show", { body: { secret } })).body).toMatchObject({
        job: null,
        role: "admin",
      });
      const about = { secret, login: " Chief@Office.Example ", name: "Chief", password: PASSWORD };
      const weak = await at.ask("POST", "/api/1/invitations/accept", {
        body: { ...about, password: "password1" },
      });
      expect([weak.status, weak.body["code"]]).toEqual([422, "access.password-common"]);
      const made = await at.ask("POST", "/api/1/invitations/accept", { body: about });
      expect([made.status, made.body]).toMatchObject([
        201,
        { person: { name: "Chief", isAdmin: true, hasSecondFactor: false } },
      ]);
      expect((await at.ask("POST", "/api/1/invitations/accept", { body: about })).status).toBe(410);
      expect(await at.office.access.setUpLink()).toBeUndefined();
      // an administrator may do nothing as one before there is a second factor
      const session = made.cookie(SESSION_COOKIE);
      const refused = await at.ask("GET", "/api/1/accounts", { session });
      expect([refused.status, refused.body["code"]]).toEqual([403, "access.second-factor-needed"]);
      expect(
        (
          await at.ask("POST", "/api/1/session", {
            body: { login: "CHIEF@office.example", password: PASSWORD },
          })
        ).status,
      ).toBe(200);
    });

    test("an unknown name, a wrong password and a disabled account are answered alike", async () => {
      const [right, disabled] = [someone(), someone()];
      await at.addAccount(right);
      await at.addAccount(disabled);
      await at.book.db.updateTable("accounts").set({ disabled: 1 }).where("id", "=", disabled).execute();
      const answers = [
        await signIn("nobody-at-all"),
        await signIn(right, { body: { password: "not the password" } }),
        await signIn(disabled),
      ];
      for (const { status, text, headers } of answers) {
        expect(status).toBe(401);
        expect(text).toBe(answers[0]?.text);
        expect(headers["set-cookie"]).toBeUndefined();
      }
      expect(answers[0]?.body["code"]).toBe("access.wrong-login");
    });

    test("cookies are only for this host, only over https, hidden from pages and from other sites", async () => {
      const id = someone();
      await at.addAccount(id);
      const answer = await signIn(id);
      const cookies = [answer.headers["set-cookie"]].flat().map(String);
      expect(cookies).toHaveLength(2);
      for (const cookie of cookies) {
        expect(cookie).toMatch(/^__Host-/);
        for (const part of ["Path=/", "HttpOnly", "Secure", "SameSite=Strict"])
          expect(cookie).toContain(part);
        expect(cookie).not.toContain("Domain");
      }
    });

    test("each sign-in begins a new session and ends the one it replaces", async () => {
      const id = someone();
      await at.addAccount(id);
      const first = (await signIn(id)).cookie(SESSION_COOKIE);
      const second = (await signIn(id, { session: first })).cookie(SESSION_COOKIE);
      expect(second).not.toBe(first);
      expect([await isSignedIn(first), await isSignedIn(second)]).toEqual([false, true]);
    });

    describe("a session is dead after", () => {
      const cases: Record<string, (id: string, session: string) => Promise<unknown>> = {
        "signing out": (_, session) => at.ask("DELETE", "/api/1/session", { session }),
        "twelve hours without use": async () => at.wait(12 * HOUR),
        "thirty days, however much it is used": async (_, session) => {
          for (let hours = 0; hours < 30 * 24; hours += 11) {
            at.wait(11 * HOUR);
            await isSignedIn(session);
          }
        },
        "its account was disabled": async (id) => {
          const admin = await at.signedIn(someone(), "admin");
          expect(
            (await at.ask("PATCH", `/api/1/accounts/${id}`, { session: admin, body: { isDisabled: true } }))
              .status,
          ).toBe(204);
        },
        "an administrator ended it": async (id) => {
          const admin = await at.signedIn(someone(), "admin");
          expect((await at.ask("DELETE", `/api/1/accounts/${id}/sessions`, { session: admin })).status).toBe(
            204,
          );
        },
        "the password was changed": async (_, session) => {
          const changed = await at.ask("PUT", "/api/1/account/password", {
            session,
            body: { current: PASSWORD, next: OTHER_PASSWORD },
          });
          expect(changed.status).toBe(200);
          expect(await isSignedIn(changed.cookie(SESSION_COOKIE))).toBe(true);
        },
        "it was ended from the list": async (_, session) => {
          const { body } = await at.ask("GET", "/api/1/sessions", { session });
          const [own] = body["sessions"] as { id: string; isThisOne: boolean }[];
          expect(own?.isThisOne).toBe(true);
          expect((await at.ask("DELETE", `/api/1/sessions/${own?.id}`, { session })).status).toBe(204);
        },
        "a password was set by link": async (id) => {
          const admin = await at.signedIn(someone(), "admin");
          const { body } = await at.ask("POST", `/api/1/accounts/${id}/password-link`, { session: admin });
          const secret = String(body["path"]).split("#")[1];
          const use = () =>
            at.ask("POST", "/api/1/password-links/use", { body: { secret, password: OTHER_PASSWORD } });
          expect([(await use()).status, (await use()).status]).toEqual([204, 410]);
        },
      };
      test.each(Object.entries(cases))("%s", async (_, end) => {
        const id = someone();
        const session = await at.signedIn(id, undefined, undefined, "password-only");
        expect(await isSignedIn(session)).toBe(true);
        await end(id, session);
        expect(await isSignedIn(session)).toBe(false);
      });

      test("and somebody else's session cannot be ended", async () => {
        const [mine, theirs] = [await at.signedIn(someone()), await at.signedIn(someone())];
        const { body } = await at.ask("GET", "/api/1/sessions", { session: theirs });
        const [one] = body["sessions"] as { id: string }[];
        expect((await at.ask("DELETE", `/api/1/sessions/${one?.id}`, { session: mine })).status).toBe(404);
        expect(await isSignedIn(theirs)).toBe(true);
      });
    });

    describe("guessing", () => {
      /** How many of the guesses were looked at; the others were told to wait. */
      const guess = async (id: string, guesses: number, addresses: number) => {
        let looked = 0;
        for (let i = 0; i < guesses; i++) {
          const address = `198.51.100.${i % addresses}`;
          const { status, headers } = await signIn(id, { address, body: { password: `guess number ${i}` } });
          expect([401, 429]).toContain(status);
          if (status === 401) looked++;
          else expect(Number(headers["retry-after"])).toBeGreaterThan(0);
        }
        return looked;
      };

      test(`${guesses} passwords from one address: five are looked at`, async () => {
        const id = someone();
        await at.addAccount(id);
        expect(await guess(id, guesses, 1)).toBe(5);
        at.wait(5 * MINUTE);
      });

      test(`${guesses} passwords from 50 addresses: thirty are looked at, and its user gets in from a known browser`, async () => {
        const id = someone();
        await at.addAccount(id);
        const browser = (await signIn(id, { address: "203.0.113.9" })).cookie(BROWSER_COOKIE);
        // one of thirty was used up by nobody: the right sign-in gave its try back
        expect(await guess(id, guesses, 50)).toBe(30);
        expect((await signIn(id, { address: "203.0.113.10" })).status).toBe(429);
        const known = await signIn(id, { address: "203.0.113.10", browser });
        expect(known.status).toBe(200);
        // nobody is kept out for good: a minute later there is a try again, for whoever comes first
        at.wait(MINUTE);
        expect((await signIn(id, { address: "203.0.113.10" })).status).toBe(200);
        at.wait(HOUR);
      });

      test("many at once are not more than one after the other", async () => {
        const id = someone();
        await at.addAccount(id);
        const answers = await Promise.all(
          Array.from({ length: 40 }, (_, i) =>
            signIn(id, { address: "203.0.113.77", body: { password: `at once ${i}` } }),
          ),
        );
        expect(answers.filter(({ status }) => status === 401)).toHaveLength(5);
        at.wait(HOUR);
      });

      test("a known browser of one person helps nobody else", async () => {
        const [mine, theirs] = [someone(), someone()];
        await at.addAccount(mine);
        await at.addAccount(theirs);
        const browser = (await signIn(mine)).cookie(BROWSER_COOKIE);
        const looked = [];
        for (let i = 0; i < 20; i++)
          looked.push((await signIn(theirs, { browser, body: { password: `guess ${i} of it` } })).status);
        expect(looked.filter((status) => status === 401)).toHaveLength(5);
        at.wait(HOUR);
      });
    });

    describe("the second factor", () => {
      const addTimeCodes = async (session: string) => {
        const asked = await at.ask("POST", "/api/1/account/time-codes/question", {
          session,
          body: { password: PASSWORD },
        });
        const { secret, challenge } = asked.body as { secret: string; challenge: string };
        const added = await at.ask("POST", "/api/1/account/time-codes", {
          session,
          body: { challenge, code: codeNow(secret) },
        });
        expect(added.status).toBe(200);
        return {
          secret,
          codes: added.body["recoveryCodes"] as string[],
          session: added.cookie(SESSION_COOKIE),
        };
      };
      const show = (session: string | undefined, code: string) =>
        at.ask("POST", "/api/1/session/second-factor", { session, body: { code } });

      test("codes: nothing works between the password and the code, and a code works once", async () => {
        const id = someone();
        const before = await at.signedIn(id, "engineer", "job-1", "password-only");
        const elsewhere = (await signIn(id)).cookie(SESSION_COOKIE);
        expect(
          (
            await at.ask("POST", "/api/1/account/time-codes/question", {
              session: before,
              body: { password: "wrong one here" },
            })
          ).status,
        ).toBe(403);
        const { secret, codes, session } = await addTimeCodes(before);
        expect(codes).toHaveLength(10);
        // one that gains rights begins anew, and the others have to show the factor
        expect([await isSignedIn(before), await isSignedIn(elsewhere), await isSignedIn(session)]).toEqual([
          false,
          false,
          true,
        ]);

        at.wait(MINUTE);
        const signed = await signIn(id);
        expect(signed.body).toMatchObject({
          person: null,
          secondFactor: { timeCodes: true, passkeys: false },
        });
        const pending = signed.cookie(SESSION_COOKIE);
        const refused = await at.ask("GET", "/api/1/account", { session: pending });
        expect([refused.status, refused.body["code"]]).toEqual([401, "access.second-factor-pending"]);
        expect((await show(pending, "000000")).status).toBe(403);
        const code = codeNow(secret);
        const shown = await show(pending, code);
        expect([shown.status, shown.body]).toMatchObject([200, { person: { hasSecondFactor: true } }]);
        expect(await isSignedIn(pending)).toBe(false);
        const again = (await signIn(id)).cookie(SESSION_COOKIE);
        expect((await show(again, code)).status).toBe(403);
        expect((await show(again, (codes[0] ?? "").toUpperCase().replaceAll("-", " "))).status).toBe(200);
        const third = (await signIn(id)).cookie(SESSION_COOKIE);
        expect((await show(third, codes[0] ?? "")).status).toBe(403);
      });

      test("codes cannot be tried out: five, then one a minute", async () => {
        const id = someone();
        await addTimeCodes(await at.signedIn(id, "engineer", "job-1", "password-only"));
        at.wait(10 * MINUTE);
        const pending = (await signIn(id)).cookie(SESSION_COOKIE);
        const statuses = [];
        for (let i = 0; i < 50; i++) statuses.push((await show(pending, String(i).padStart(6, "0"))).status);
        expect(statuses.filter((status) => status === 403).length).toBeLessThanOrEqual(5);
      });

      test("a session that waits for the factor is dead after ten minutes", async () => {
        const id = someone();
        const { secret } = await addTimeCodes(await at.signedIn(id, "engineer", "job-1", "password-only"));
        at.wait(HOUR);
        const pending = (await signIn(id)).cookie(SESSION_COOKIE);
        at.wait(10 * MINUTE);
        expect((await show(pending, codeNow(secret))).status).toBe(401);
      });

      test("without one nobody signs or administers, and without the last one nobody does any more", async () => {
        const { access } = at.office;
        const id = someone();
        await giveRole(at.book, "job-1", id, "engineer");
        const person = { id, name: "x", by: "session", isAdmin: false } as const;
        await at.addAccount(id);
        expect(await access.mayIn({ ...person, hasSecondFactor: false }, "job-1", "judge")).toBe(true);
        expect(await access.mayIn({ ...person, hasSecondFactor: false }, "job-1", "sign")).toBe(false);
        expect(await access.mayIn({ ...person, hasSecondFactor: true }, "job-1", "sign")).toBe(true);
        const { session } = await addTimeCodes((await signIn(id)).cookie(SESSION_COOKIE) ?? "");
        expect(
          (await at.ask("DELETE", "/api/1/account/time-codes", { session, body: { password: PASSWORD } }))
            .status,
        ).toBe(204);
        expect((await at.ask("GET", "/api/1/session", { session })).body).toMatchObject({
          person: { hasSecondFactor: false },
        });
      });

      test("passkeys: added, signed in with, shown as second factor, removed", async () => {
        const id = someone();
        let session: string | undefined = await at.signedIn(id, "reviewer", "job-1", "password-only");
        const device = new SoftwareAuthenticator(PUBLIC_ADDRESS);
        const asked = await at.ask("POST", "/api/1/account/passkeys/question", {
          session,
          body: { password: PASSWORD },
        });
        const question = asked.body as unknown as { challenge: string; options: { challenge: string } };
        const body = {
          challenge: question.challenge,
          name: "Test key",
          response: device.register(question.options.challenge),
        };
        const added = await at.ask("POST", "/api/1/account/passkeys", { session, body });
        expect([added.status, added.body]).toMatchObject([
          200,
          { session: { person: { hasSecondFactor: true } } },
        ]);
        session = added.cookie(SESSION_COOKIE);
        // the same answer a second time
        expect((await at.ask("POST", "/api/1/account/passkeys", { session, body })).status).toBe(403);

        const askNow = async (url: string, pending?: string) =>
          (await at.ask("POST", `${url}/question`, { session: pending })).body as unknown as typeof question;
        const signing = async (misuse: Parameters<SoftwareAuthenticator["show"]>[1] = {}) => {
          const { challenge, options } = await askNow("/api/1/session/passkey");
          const answer = { challenge, response: device.show(options.challenge, misuse) };
          return { answer, status: await at.ask("POST", "/api/1/session/passkey", { body: answer }) };
        };
        const good = await signing();
        expect([good.status.status, good.status.body]).toMatchObject([
          200,
          { person: { id, hasSecondFactor: true } },
        ]);
        expect((await at.ask("POST", "/api/1/session/passkey", { body: good.answer })).status).toBe(403);
        for (const misuse of [
          { origin: "https://office.example.evil.example" },
          { rpId: "evil.example" },
          { isVerified: false },
          { counter: 1 },
        ])
          expect([misuse, (await signing(misuse)).status.status]).toEqual([misuse, 403]);

        const pending = (await signIn(id)).cookie(SESSION_COOKIE);
        const second = await askNow("/api/1/session/second-factor", pending);
        const stranger = new SoftwareAuthenticator(PUBLIC_ADDRESS);
        const shownBy = (by: SoftwareAuthenticator, { challenge, options }: typeof question) =>
          at.ask("POST", "/api/1/session/second-factor", {
            session: pending,
            body: { challenge, response: by.show(options.challenge) },
          });
        expect((await shownBy(stranger, second)).status).toBe(403);
        expect((await shownBy(device, await askNow("/api/1/session/second-factor", pending))).status).toBe(
          200,
        );

        const { body: own } = await at.ask("GET", "/api/1/account", { session });
        const [listed] = own["passkeys"] as { id: string; name: string }[];
        expect(listed?.name).toBe("Test key");
        expect(
          (
            await at.ask("DELETE", `/api/1/account/passkeys/${listed?.id}`, {
              session,
              body: { password: PASSWORD },
            })
          ).status,
        ).toBe(204);
        expect((await signing()).status.status).toBe(403);
      });
    });

    describe("invitations", () => {
      const inviteTo = async (job: string, role: string, more: object = {}) => {
        const manager = await at.signedIn(someone(), "manager", job);
        const made = await at.ask("POST", `/api/1/jobs/${job}/invitations`, {
          session: manager,
          body: { role, ...more },
        });
        return { manager, secret: String(made.body["path"]).split("#")[1], status: made.status };
      };
      const join = (session: string, secret: string | undefined) =>
        at.ask("POST", "/api/1/invitations/join", { session, body: { secret } });

      test("one person joins with the role it was made for; of many at once only one does", async () => {
        const { secret, manager } = await inviteTo("job-7", "engineer");
        const people = await Promise.all(Array.from({ length: 8 }, () => at.signedIn(someone())));
        const statuses = await Promise.all(
          people.map(async (session) => (await join(session, secret)).status),
        );
        expect(statuses.filter((status) => status === 204)).toHaveLength(1);
        expect(statuses.filter((status) => status === 410)).toHaveLength(7);
        const { body } = await at.ask("GET", "/api/1/jobs/job-7/people", { session: manager });
        expect((body["people"] as { role: string }[]).map(({ role }) => role).sort()).toEqual([
          "engineer",
          "manager",
        ]);
      });

      test("a link is dead after its time and after it was withdrawn, and cannot be guessed", async () => {
        const late = await inviteTo("job-8", "technician", { days: 1 });
        const session = await at.signedIn(someone());
        const { secret, manager } = await inviteTo("job-8", "technician");
        const { body } = await at.ask("GET", "/api/1/jobs/job-8/invitations", { session: manager });
        for (const { id } of body["invitations"] as { id: string }[])
          if (id !== undefined)
            await at.ask("DELETE", `/api/1/jobs/job-8/invitations/${id}`, { session: manager });
        expect((await join(session, secret)).status).toBe(410);
        expect((await join(session, late.secret)).status).toBe(410);
        const expiring = await inviteTo("job-8", "technician", { days: 1 });
        at.wait(DAY);
        const fresh = await at.signedIn(someone());
        expect((await join(fresh, expiring.secret)).status).toBe(410);
        expect((await join(fresh, "A".repeat(43))).status).toBe(410);
      });

      test("nobody makes an administrator, or invites into another's job, by changing the request", async () => {
        const { manager, status } = await inviteTo("job-9", "admin");
        expect(status).toBe(400);
        for (const body of [
          { role: "technician", job: "job-10" },
          { role: "technician", isAdmin: true },
        ])
          expect(
            (await at.ask("POST", "/api/1/jobs/job-9/invitations", { session: manager, body })).status,
          ).toBe(400);
        expect(
          (
            await at.ask("POST", "/api/1/jobs/job-10/invitations", {
              session: manager,
              body: { role: "technician" },
            })
          ).status,
        ).toBe(404);
      });
    });

    describe("tokens", () => {
      test("do what they were made for, no more than their person, and end", async () => {
        const id = someone();
        const session = await at.signedIn(id, "manager", "job-20");
        const make = (scopes: string[], days = 1) =>
          at.ask("POST", "/api/1/account/tokens", {
            session,
            body: { password: PASSWORD, name: "script", scopes, days },
          });
        expect((await make(["administer"])).status).toBe(403);
        const { body } = await make(["read"]);
        const token = String(body["token"]);
        expect(token).toMatch(/^toe_[\w-]{43}$/);
        expect((await at.ask("GET", "/api/1/jobs/job-20/people", { token })).status).toBe(200);
        expect((await at.ask("GET", "/api/1/jobs/job-20/invitations", { token })).status).toBe(403);
        // neither the account nor its other tokens can be reached with one
        for (const url of ["/api/1/account", "/api/1/account/tokens", "/api/1/sessions"])
          expect((await at.ask("GET", url, { token })).status).toBe(403);
        const wide = String((await make(["read", "manage"])).body["token"]);
        expect((await at.ask("GET", "/api/1/jobs/job-20/invitations", { token: wide })).status).toBe(200);
        await giveRole(at.book, "job-20", id, "technician");
        expect((await at.ask("GET", "/api/1/jobs/job-20/invitations", { token: wide })).status).toBe(403);
        expect((await at.ask("DELETE", `/api/1/account/tokens/${body["id"]}`, { session })).status).toBe(204);
        expect((await at.ask("GET", "/api/1/jobs/job-20/people", { token })).status).toBe(401);
        at.wait(DAY);
        expect((await at.ask("GET", "/api/1/jobs/job-20/people", { token: wide })).status).toBe(401);
      });
    });

    test("a role that was taken away is gone with the next request", async () => {
      const id = someone();
      const session = await at.signedIn(id, "engineer", "job-30");
      const manager = await at.signedIn(someone(), "manager", "job-30");
      expect((await at.ask("GET", "/api/1/jobs/job-30/people", { session })).status).toBe(200);
      expect((await at.ask("DELETE", `/api/1/jobs/job-30/people/${id}`, { session: manager })).status).toBe(
        204,
      );
      expect((await at.ask("GET", "/api/1/jobs/job-30/people", { session })).status).toBe(404);
    });

    test("somebody has to administer: the last one cannot be disabled or made less", async () => {
      const id = someone();
      const session = await at.signedIn(id, "admin");
      await at.book.db.updateTable("accounts").set({ is_admin: 0 }).where("id", "!=", id).execute();
      for (const body of [{ isDisabled: true }, { isAdmin: false }])
        expect((await at.ask("PATCH", `/api/1/accounts/${id}`, { session, body })).status).toBe(409);
    });

    test("a new job belongs to whoever brings it, and nobody takes it over", async () => {
      const { access } = at.office;
      const [first, second, technician] = [someone(), someone(), someone()];
      for (const [id, role] of [
        [first, "engineer"],
        [second, "engineer"],
        [technician, "technician"],
      ] as const)
        await at.signedIn(id, role, "job-40");
      const person = (id: string) =>
        ({ id, name: id, by: "session", isAdmin: false, hasSecondFactor: false }) as const;
      expect(await access.begin(person(technician), "job-41")).toBe(false);
      expect(await access.begin(person(first), "job-41")).toBe(true);
      expect(await access.begin(person(second), "job-41")).toBe(false);
      expect(await access.roleIn(person(first), "job-41")).toBe("manager");
      expect(await access.roleIn(person(second), "job-41")).toBeUndefined();
      expect(await access.readable(person(second), ["job-40", "job-41"])).toEqual(["job-40"]);
      expect(await beginJob(at.book, "job-42", "no such account")).toBe(false);
    });

    test("a device belongs to one person, until it is revoked", async () => {
      const { access } = at.office;
      const [mine, theirs] = [someone(), someone()];
      const session = await at.signedIn(mine);
      await at.signedIn(theirs);
      const person = (id: string) =>
        ({ id, name: id, by: "session", isAdmin: false, hasSecondFactor: false }) as const;
      const device = "ab".repeat(32);
      expect(await access.personOfDevice(device)).toBeUndefined();
      expect(await access.rememberDevice(person(mine), device)).toBe(true);
      expect(await access.rememberDevice(person(mine), device)).toBe(true);
      expect(await access.rememberDevice(person(theirs), device)).toBe(false);
      expect(await access.personOfDevice(device)).toBe(mine);
      expect((await at.ask("DELETE", `/api/1/account/devices/${device}`, { session })).status).toBe(204);
      expect(await access.personOfDevice(device)).toBeUndefined();
      expect(await access.rememberDevice(person(mine), device)).toBe(false);
    });

    describe("requests that try to slip something in", () => {
      test.each([
        ["a field more", { login: "a", password: "b", isAdmin: true }],
        ["a field's name of every object", '{"login":"a","password":"b","__proto__":{"isAdmin":true}}'],
        ["a constructor", '{"login":"a","password":"b","constructor":{"prototype":{"isAdmin":true}}}'],
        ["a list instead of a text", { login: ["a"], password: "b" }],
        ["an operator of a database", { login: { $gt: "" }, password: "b" }],
        ["a control character", { login: "a\u0000b", password: "b" }],
        ["a line break", { login: "a\nb", password: "b" }],
      ])("%s is refused", async (_, body) => {
        expect((await at.ask("POST", "/api/1/session", { body })).status).toBe(400);
        expect(({} as Record<string, unknown>)["isAdmin"]).toBeUndefined();
      });

      test("quotes and signs of SQL are only letters", async () => {
        for (const login of ["' or 1=1 --", '"; drop table accounts; --', "%"])
          expect(
            (
              await at.ask("POST", "/api/1/session", {
                address: `2001:db8:${login.length}::1`,
                body: { login, password: "whatever it is" },
              })
            ).status,
          ).toBe(401);
        expect(await at.book.db.selectFrom("accounts").select("id").executeTakeFirst()).toBeDefined();
      });

      test.each([
        ["another origin", { origin: "https://evil.example" }],
        ["another site", { "sec-fetch-site": "cross-site", origin: PUBLIC_ADDRESS }],
        ["a form", { "content-type": "text/plain" }],
      ])("a change asked for by %s is refused, with the right cookie too", async (_, headers) => {
        const session = await at.signedIn(someone());
        expect((await at.ask("DELETE", "/api/1/sessions", { session, headers })).status).toBe(403);
        const signing = { body: { login: "a", password: "b" }, headers };
        expect((await at.ask("POST", "/api/1/session", signing)).status).toBe(403);
      });
    });

    test("what happened is listed for administrators, without secrets, and a changed line shows", async () => {
      const session = await at.signedIn(someone(), "admin");
      await at
        .signedIn(someone(), "manager", "job-50")
        .then((other) => at.ask("GET", "/api/1/security-events", { session: other }));
      const { body } = await at.ask("GET", "/api/1/security-events?count=500", { session });
      const events = body["events"] as { number: number; what: string; at: string }[];
      for (const what of [
        "signed-in",
        "sign-in-failed",
        "access-refused",
        "invitation-used",
        "second-factor-added",
        "token-made",
        "password-changed",
      ])
        expect(events.map((event) => event.what)).toContain(what);
      expect(events.every(({ at: time }) => time.endsWith("Z"))).toBe(true);
      expect((await at.ask("GET", "/api/1/security-events/check", { session })).body).toEqual({
        firstBad: null,
      });
      const { db } = at.book;
      const [newest, older] = events;
      await db
        .updateTable("security_events")
        .set({ who: "somebody-else" })
        .where("number", "=", older?.number ?? 0)
        .execute();
      expect(await firstBadEvent(at.book)).toBe(older?.number);
      await db
        .deleteFrom("security_events")
        .where("number", ">=", older?.number ?? 0)
        .execute();
      expect(await firstBadEvent(at.book)).toBe(older?.number);
      expect(newest?.number).toBe((older?.number ?? 0) + 1);
    });

    test("no secret stands in the tables: neither passwords nor sessions, links, tokens or codes", async () => {
      const id = someone();
      await at.addAccount(id);
      const signed = await signIn(id, { address: "203.0.113.200" });
      const secrets = [
        PASSWORD,
        OTHER_PASSWORD,
        signed.cookie(SESSION_COOKIE),
        signed.cookie(BROWSER_COOKIE),
      ];
      const session = signed.cookie(SESSION_COOKIE);
      const token = await at.ask("POST", "/api/1/account/tokens", {
        session,
        body: { password: PASSWORD, name: "x", scopes: ["read"] },
      });
      if (token.status === 201) secrets.push(String(token.body["token"]));
      const tables = await at.book.db.introspection.getTables();
      // PostgreSQL also names the tables of the work queue, which lie in a schema of their own
      for (const { name } of tables.filter(({ schema = "public" }) => schema === "public")) {
        const rows = JSON.stringify(
          await at.book.db
            .selectFrom(name as "accounts")
            .selectAll()
            .execute(),
        );
        for (const secret of secrets)
          expect(rows.includes(secret ?? "-"), `${name} holds a secret`).toBe(false);
      }
    });
  });
}
