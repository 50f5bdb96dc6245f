import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { officeTablesSuite } from "../../../test/acceptance/office-tables-suite.ts";

officeTablesSuite("a server's tables in a SQLite file", async () => ({
  file: join(mkdtempSync(join(tmpdir(), "toeline-office-")), "office.sqlite"),
}));
