import { accessSentences } from "./german/access.ts";
import { backUpSentences } from "./german/back-up.ts";
import { criteriaSentences } from "./german/criteria.ts";
import { deskSentences } from "./german/desk.ts";
import { evidenceSentences } from "./german/evidence.ts";
import { exchangeSentences } from "./german/exchange.ts";
import { formatsSentences } from "./german/formats.ts";
import { geodesySentences } from "./german/geodesy.ts";
import { loggerSentences } from "./german/logger.ts";
import { recordsSentences } from "./german/records.ts";
import { reportSentences } from "./german/report.ts";
import { serverSentences } from "./german/server.ts";
import { simulatorSentences } from "./german/simulator.ts";
import { storeSentences } from "./german/store.ts";
import { surveySentences } from "./german/survey.ts";
import { syncSentences } from "./german/sync.ts";
import { workSentences } from "./german/work.ts";
import type { Sentences } from "./sentences.ts";

/** Every sentence in German, by finding code; an area is a file and a line here. */
export const germanSentences: Sentences = {
  ...formatsSentences,
  ...loggerSentences,
  ...geodesySentences,
  ...surveySentences,
  ...criteriaSentences,
  ...simulatorSentences,
  ...recordsSentences,
  ...reportSentences,
  ...storeSentences,
  ...deskSentences,
  ...accessSentences,
  ...serverSentences,
  ...syncSentences,
  ...workSentences,
  ...backUpSentences,
  ...exchangeSentences,
  ...evidenceSentences,
};
