import { accessSentences } from "./access.ts";
import { backUpSentences } from "./back-up.ts";
import { criteriaSentences } from "./criteria.ts";
import { deskSentences } from "./desk.ts";
import { evidenceSentences } from "./evidence.ts";
import { exchangeSentences } from "./exchange.ts";
import { formatsSentences } from "./formats.ts";
import { geodesySentences } from "./geodesy.ts";
import { loggerSentences } from "./logger.ts";
import { recordsSentences } from "./records.ts";
import { reportSentences } from "./report.ts";
import type { Sentences } from "./sentences.ts";
import { serverSentences } from "./server.ts";
import { simulatorSentences } from "./simulator.ts";
import { storeSentences } from "./store.ts";
import { surveySentences } from "./survey.ts";
import { syncSentences } from "./sync.ts";
import { workSentences } from "./work.ts";

/** Every sentence in English, by finding code; an area is a file and a line here. */
export const englishSentences: Sentences = {
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
